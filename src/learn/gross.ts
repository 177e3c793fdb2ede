import type { BoardRead, Evidence } from './evidence.js';
import { learnFrom, type Nig } from './nig.js';
import { priorOfSpread } from './prior-of-spread.js';
import { lnGamma } from './special.js';

/** A board's reading that is likelier a slip of the pen than a true one, with the odds. */
export interface GrossReading extends BoardRead {
  /** How many times likelier a lost or added decimal place is than a true reading. */
  readonly odds: number;
  /** What other boards of its kind say: mean and standard deviation of the next one. */
  readonly expected: { readonly mean: number; readonly sd: number };
}

/** How often a reading is written with its point one place off: one in two hundred (`proposal`). */
const slips = 1 / 200;
/** From these odds on a reading is asked about. */
const asked_from = 1;

/**
 * Board readings that are likelier ten times too large or too small than true: each against what the shelf and all
 * other boards of its kind say (Student's t of the
 * next reading), the odds by Bayes' rule. They count until somebody corrects them.
 */
export function grossReadings({ spreads }: Evidence): readonly GrossReading[] {
  return [...spreads]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, { stock, chosen, kind, boards }]) => {
      const prior = priorOfSpread(stock, chosen, kind);
      if (prior === null) return [];
      return boards.flatMap((read, i): GrossReading[] => {
        const next = nextReading(
          learnFrom(
            prior.nig,
            boards.filter((_, k) => k !== i).map(({ value }) => value),
            prior.fixed_mean,
          ),
          prior.fixed_mean,
        );
        const right = next.density(read.value);
        const wrong = (next.density(read.value / 10) / 10 + next.density(read.value * 10) * 10) / 2;
        const odds = right > 0 ? (slips * wrong) / ((1 - slips) * right) : Infinity;
        return odds > asked_from ? [{ ...read, odds, expected: { mean: next.mean, sd: next.sd } }] : [];
      });
    });
}

/** What the next reading is expected to be: Student's t about the mean, wider where the mean itself is learned. */
export function nextReading(
  { mean, worth, shape, scale }: Nig,
  fixedMean: boolean,
): { readonly mean: number; readonly sd: number; readonly density: (x: number) => number } {
  const df = 2 * shape;
  const width = Math.sqrt(((scale / shape) * (fixedMean ? worth : worth + 1)) / worth);
  const ln0 = lnGamma((df + 1) / 2) - lnGamma(df / 2) - Math.log(width) - Math.log(df * Math.PI) / 2;
  return {
    mean,
    sd: width * Math.sqrt(df / (df - 2)),
    density: (x) => Math.exp(ln0 - ((df + 1) / 2) * Math.log1p(((x - mean) / width) ** 2 / df)),
  };
}
