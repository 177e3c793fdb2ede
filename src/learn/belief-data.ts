/** One or two readings that hang on the mean μ and spread σ of something normal: y ~ N(a μ + c, B σ² + D). */
export interface NormalReadings {
  readonly y: readonly number[];
  /** False where only the size was read. */
  readonly signed: readonly boolean[];
  readonly a: readonly number[];
  readonly c: readonly number[];
  /** Variances, and the covariance of two. */
  readonly B: readonly number[];
  readonly D: readonly number[];
  readonly B_both: number;
  readonly D_both: number;
}

const ln2pi = Math.log(2 * Math.PI);

/** Logarithm of how likely the readings are; sizes without a sign may be either. Throws for more than two readings. */
export function lnLikelihood(
  { y, signed, a, c, B, D, B_both, D_both }: NormalReadings,
  mu: number,
  sigma: number,
): number {
  const s2 = sigma ** 2;
  const [y0 = 0, y1 = 0] = y;
  const m0 = a[0]! * mu + c[0]!;
  const v0 = B[0]! * s2 + D[0]!;
  if (y.length === 1) return lnSum([normal1(y0 - m0, v0), ...(signed[0] ? [] : [normal1(-y0 - m0, v0)])]);
  if (y.length !== 2) throw new RangeError('one or two readings at a time');
  const m1 = a[1]! * mu + c[1]!;
  const v1 = B[1]! * s2 + D[1]!;
  const both = B_both * s2 + D_both;
  const terms: number[] = [];
  for (const f0 of signed[0] ? [1] : [1, -1])
    for (const f1 of signed[1] ? [1] : [1, -1]) terms.push(normal2(f0 * y0 - m0, f1 * y1 - m1, v0, v1, both));
  return lnSum(terms);
}

const normal1 = (off: number, variance: number): number => -0.5 * (ln2pi + Math.log(variance) + off ** 2 / variance);

function normal2(off0: number, off1: number, v0: number, v1: number, both: number): number {
  const left = v1 - both ** 2 / v0;
  const rest = off1 - (both / v0) * off0;
  return normal1(off0, v0) + normal1(rest, left);
}

function lnSum(terms: readonly number[]): number {
  const most = Math.max(...terms);
  return most + Math.log(terms.reduce((sum, term) => sum + Math.exp(term - most), 0));
}

/** Points and weights by which a normal is averaged over (Gauss–Hermite, seven points; from memory). */
const averaging = [
  [0, 16 / 35],
  [1.1544053947399682, 0.2401231786050127],
  [-1.1544053947399682, 0.2401231786050127],
  [2.3667594107345415, 0.0307571239675865],
  [-2.3667594107345415, 0.0307571239675865],
  [3.7504397177257425, 0.0005482688559722],
  [-3.7504397177257425, 0.0005482688559722],
] as const;

/**
 * Likelihood of readings that hang on one draw from N(μ, σ²), given the logarithm of how likely they are for a draw.
 * That is tabulated once, evenly from
 * `from` to `to`; beyond the table its ends hold.
 */
export function averaged(
  lnOf: (draw: number) => number,
  from: number,
  to: number,
): (mu: number, sigma: number) => number {
  const step = (to - from) / table_steps;
  const table = Float64Array.from({ length: table_steps + 1 }, (_, i) => lnOf(from + i * step));
  const at = (draw: number): number => {
    const place = Math.min(table_steps, Math.max(0, (draw - from) / step));
    const i = Math.min(table_steps - 1, Math.floor(place));
    return table[i]! + (place - i) * (table[i + 1]! - table[i]!);
  };
  const lnWeights = averaging.map(([, weight]) => Math.log(weight));
  return (mu, sigma) => lnSum(averaging.map(([z], i) => lnWeights[i]! + at(mu + z * sigma)));
}

const table_steps = 240;
