/** An estimate with its standard error, in the same unit. */
export interface Estimate {
  readonly value: number;
  readonly se: number;
}

/**
 * Quantile of a sample by selection (the array is reordered), with the standard error read off the neighbouring order
 * statistics:
 * half the distance between those one binomial standard deviation to either side. `smaller` more values belong to the
 * sample
 * but not to the array; they must all be smaller than the quantile.
 */
export function sampleQuantile(values: Float64Array, share: number, smaller = 0): Estimate {
  const n = values.length + smaller;
  const last = values.length - 1;
  const clamp = (rank: number): number => Math.min(last, Math.max(0, Math.round(rank) - smaller));
  const aside = Math.sqrt(n * share * (1 - share));
  const rank = share * n - 0.5;
  const k_below = clamp(rank - aside);
  const k_above = clamp(rank + aside);
  const below = select(values, k_below, 0, last);
  const above = select(values, k_above, k_below, last);
  return { value: select(values, clamp(rank), k_below, k_above), se: (above - below) / 2 };
}

/**
 * Brings the k-th smallest (0-based) to its place among low..high and returns it, by Hoare's selection around a median
 * of three.
 */
function select(values: Float64Array, k: number, low: number, high: number): number {
  while (low < high) {
    const a = values[low] as number;
    const b = values[(low + high) >> 1] as number;
    const c = values[high] as number;
    const pivot = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    let i = low;
    let j = high;
    while (i <= j) {
      while ((values[i] as number) < pivot) i++;
      while ((values[j] as number) > pivot) j--;
      if (i > j) break;
      const swap = values[i] as number;
      values[i++] = values[j] as number;
      values[j--] = swap;
    }
    if (k <= j) high = j;
    else if (k >= i) low = i;
    else break;
  }
  return values[k] as number;
}

/** Share of a sample with its binomial standard error. */
export function sampleShare(hits: number, n: number): Estimate {
  const value = hits / n;
  return { value, se: Math.sqrt((value * (1 - value)) / n) };
}
