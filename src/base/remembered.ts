/**
 * The same function, worked out once for each object it is asked of first; nothing is kept beyond the object's own
 * life. `also` names another object of which the answer is the same.
 * It is kept with the object itself, out of sight, since the values of a WeakMap outlive every collection of young
 * objects. Of an object that is closed to new properties it is worked out each time.
 */
export function remembered<K extends object, V, More = void>(
  make: (of: K, more: More) => V,
  also?: (value: V) => K,
): (of: K, more: More) => V {
  const kept = Symbol('kept');
  const keep = (of: K, value: V): void => {
    if (Object.isExtensible(of)) Object.defineProperty(of, kept, { value: { value } });
  };
  return (of, more) => {
    const before = (of as { readonly [kept]?: { readonly value: V } })[kept];
    if (before !== undefined) return before.value;
    const value = make(of, more);
    keep(of, value);
    if (also !== undefined) keep(also(value), value);
    return value;
  };
}

/**
 * The same for what a key of words and numbers tells fully: at most `most` answers are kept, all forgotten when one
 * more comes.
 */
export function rememberedBy<A extends readonly unknown[], V>(
  key: (...of: A) => string,
  make: (...of: A) => V,
  most: number,
): (...of: A) => V {
  const known = new Map<string, { readonly value: V }>();
  return (...of) => {
    const name = key(...of);
    const before = known.get(name);
    if (before !== undefined) return before.value;
    const value = make(...of);
    if (known.size >= most) known.clear();
    known.set(name, { value });
    return value;
  };
}
