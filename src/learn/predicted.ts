import { normalCdf, normalDensity } from '../risk/normal.js';
import { nine_in_ten } from '../risk/closed-form.js';
import { bandEnds } from './nig.js';
import { solveRising } from './special.js';

/** One of several normals that a reading may come from. */
interface Branch {
  readonly weight: number;
  readonly mean: number;
  readonly sd: number;
}

/** What a reading was predicted to be: normals with their weights, and whether only its size is read. */
export interface Predicted {
  readonly branches: readonly Branch[];
  readonly folded: boolean;
}

/** Something normal, sd above zero. */
export const normally = (mean: number, variance: number, folded: boolean): Predicted => ({
  branches: [{ weight: 1, mean, sd: Math.sqrt(variance) }],
  folded,
});

/** Two readings that hang together: means, variances (reading errors included) and covariance. */
export interface Pair {
  readonly mean: readonly [number, number];
  readonly variance: readonly [number, number];
  readonly both: number;
}

/** What the second of a pair is predicted to be once the first is read; a size without a sign may have been either. */
export function givenFirst(
  { mean: [m0, m1], variance: [v0, v1], both }: Pair,
  first: number,
  signed: boolean,
  folded: boolean,
): Predicted {
  const sd0 = Math.sqrt(v0);
  const sd = Math.sqrt(v1 - both ** 2 / v0);
  const at = (y: number, weight: number): Branch => ({ weight, mean: m1 + (both / v0) * (y - m0), sd });
  if (signed) return { branches: [at(first, 1)], folded };
  const [plus, minus] = [normalDensity((first - m0) / sd0), normalDensity((-first - m0) / sd0)];
  const share = plus + minus > 0 ? plus / (plus + minus) : 0.5;
  return { branches: [at(first, share), at(-first, 1 - share)], folded };
}

/** Chance that the reading is at most x. */
export function shareBelow({ branches, folded }: Predicted, x: number): number {
  if (folded && x <= 0) return 0;
  return branches.reduce(
    (sum, { weight, mean, sd }) =>
      sum + weight * (normalCdf((x - mean) / sd) - (folded ? normalCdf((-x - mean) / sd) : 0)),
    0,
  );
}

/** Where the prediction reaches a share. */
export function quantileOf(predicted: Predicted, share: number): number {
  const reach = Math.max(...predicted.branches.map(({ mean, sd }) => Math.abs(mean) + 9 * sd));
  return solveRising((x) => shareBelow(predicted, x), share, predicted.folded ? 0 : -reach, reach);
}

/** Nine tenths of what was predicted: the middle ones; of a size the least, from nothing on. */
export const bandOf = (predicted: Predicted): readonly [number, number] =>
  predicted.folded
    ? [0, quantileOf(predicted, nine_in_ten)]
    : [quantileOf(predicted, bandEnds[0]), quantileOf(predicted, bandEnds[1])];
