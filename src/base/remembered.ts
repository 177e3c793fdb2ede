/**
 * The same function, worked out once for each object it is asked of; nothing is kept beyond the object's own life.
 * It is kept with the object itself, out of sight, since the values of a WeakMap outlive every collection of young
 * objects; those of objects that are closed to new properties have to.
 */
export function remembered<K extends object, V>(make: (of: K) => V): (of: K) => V {
  const kept = Symbol('kept');
  const ofClosed = new WeakMap<K, { readonly value: V }>();
  return (of) => {
    const open = Object.isExtensible(of);
    const before = open ? (of as { readonly [kept]?: { readonly value: V } })[kept] : ofClosed.get(of);
    if (before !== undefined) return before.value;
    const value = { value: make(of) };
    if (open) Object.defineProperty(of, kept, { value });
    else ofClosed.set(of, value);
    return value.value;
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
