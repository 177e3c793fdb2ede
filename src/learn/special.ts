/** Functions that the distributions of `learn` rest on. */

const lanczos = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/**
 * Logarithm of the gamma function for x > 0, by Lanczos' sum (g = 7, nine terms; from memory); relative error about
 * 1e-15.
 */
export function lnGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - lnGamma(1 - x);
  const z = x - 1;
  const t = z + 7.5;
  const sum = lanczos.slice(1).reduce((total, c, i) => total + c / (z + i + 1), lanczos[0]!);
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

/**
 * Share of a gamma distribution of shape `a` and scale 1 below x: the series below a + 1, Legendre's continued fraction
 * above.
 */
export function gammaShare(a: number, x: number): number {
  if (x <= 0) return 0;
  const front = Math.exp(a * Math.log(x) - x - lnGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; term > sum * 1e-16 && n < 10_000; n++) sum += term *= x / (a + n);
    return front * sum;
  }
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let h = d;
  for (let i = 1; i < 10_000; i++) {
    const an = -i * (i - a);
    b += 2;
    d = 1 / (an * d + b);
    c = b + an / c;
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < 1e-15) break;
  }
  return 1 - front * h;
}

/** Share of a beta distribution (a, b) below x, by its continued fraction (Lentz). */
export function betaShare(a: number, b: number, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - betaShare(b, a, 1 - x);
  const front = Math.exp(lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * Math.log(x) + b * Math.log1p(-x)) / a;
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m < 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + even * d);
    c = 1 + even / c;
    h *= c * d;
    d = 1 / (1 + odd * d);
    c = 1 + odd / c;
    const step = c * d;
    h *= step;
    if (Math.abs(step - 1) < 1e-15) break;
  }
  return front * h;
}

/** Where an increasing function reaches `target`, between two bounds that hold it; to the last digit that counts. */
export function solveRising(f: (x: number) => number, target: number, low: number, high: number): number {
  let [from, to] = [low, high];
  for (let step = 0; step < 200 && to - from > 1e-13 * Math.max(Math.abs(from), Math.abs(to), 1e-300); step++) {
    const middle = (from + to) / 2;
    if (f(middle) < target) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}
