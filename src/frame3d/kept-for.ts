type Numbers = ArrayLike<number>;

export function sameNumbers(one: Numbers, two: Numbers): boolean {
  let n = 0;
  if (one.length === two.length) while (n < one.length && one[n] === two[n]) n++;
  return one === two || (n === one.length && n === two.length);
}

/**
 * What hangs on some lists of numbers alone, made once for each of those asked for lately: at most `most` of them are
 * kept.
 */
export function keptFor<V>(most: number): (key: readonly Numbers[], make: () => V) => V {
  const kept: { readonly key: readonly Numbers[]; readonly value: V }[] = [];
  return (key, make) => {
    const known = kept.find((one) => key.every((numbers, n) => sameNumbers(one.key[n]!, numbers)));
    if (known) return known.value;
    const value = make();
    if (kept.push({ key, value }) > most) kept.shift();
    return value;
  };
}
