/** How a class lies in one figure. Positions are those of the values given. */
export interface Spread {
  readonly known: number;
  readonly median: number;
  /** The middle half of the class lies between these. */
  readonly low: number;
  readonly high: number;
  readonly least: { readonly value: number; readonly at: number };
  readonly most: { readonly value: number; readonly at: number };
}

/** Median and quartiles (linear between neighbours), least and most; null when no value is known. */
export function spreadOf(values: readonly (number | null)[]): Spread | null {
  const known = values
    .flatMap((value, at) => (value === null || !Number.isFinite(value) ? [] : [{ value, at }]))
    .sort((a, b) => a.value - b.value || a.at - b.at);
  const [least] = known;
  const most = known.at(-1);
  if (least === undefined || most === undefined) return null;
  const quantile = (share: number): number => {
    const place = share * (known.length - 1);
    const [below, above] = [known[Math.floor(place)]!, known[Math.ceil(place)]!];
    return below.value + (place - Math.floor(place)) * (above.value - below.value);
  };
  return { known: known.length, median: quantile(0.5), low: quantile(0.25), high: quantile(0.75), least, most };
}
