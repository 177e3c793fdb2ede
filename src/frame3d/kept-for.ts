export const sameNumbers = (one: readonly number[], two: readonly number[]): boolean =>
  one.length === two.length && one.every((value, n) => value === two[n]);

/**
 * What hangs on a list of numbers alone, made once for each of the lists asked for lately: at most `most` of them are
 * kept.
 */
export function keptFor<V>(most: number): (key: readonly number[], make: () => V) => V {
  const kept: { readonly key: readonly number[]; readonly value: V }[] = [];
  return (key, make) => {
    const known = kept.find((one) => sameNumbers(one.key, key));
    if (known) return known.value;
    const value = make();
    if (kept.push({ key, value }) > most) kept.shift();
    return value;
  };
}
