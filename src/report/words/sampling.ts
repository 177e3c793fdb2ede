import { formatNumber } from '../../base/units-format.js';

/** How sure the one chance is that may take a sample, and what makes it come out the same again. */
export function samplingInWords({ seed, samples }: { readonly seed: number; readonly samples: number }): string {
  const most_pct = Math.ceil(500 / Math.sqrt(samples)) / 10;
  return `The chance that a bar bows off the wall has a standard error of at most ${most_pct} %, no more than from counting ${thousands(samples)} imagined frames; the same seed, ${seed}, gives the same numbers.`;
}

/** 20000 → 20,000. */
const thousands = (n: number): string => formatNumber(n, 15).replace(/\B(?=(\d{3})+$)/gu, ',');
