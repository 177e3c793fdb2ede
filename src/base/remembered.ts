/** The same function, worked out once for each object it is asked of; nothing is kept beyond the object's own life. */
export function remembered<K extends object, V>(make: (of: K) => V): (of: K) => V {
  const known = new WeakMap<K, { readonly value: V }>();
  return (of) => {
    const before = known.get(of);
    if (before !== undefined) return before.value;
    const value = make(of);
    known.set(of, { value });
    return value;
  };
}
