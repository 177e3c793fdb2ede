import { dotSegments } from './profile-matrix.js';
import { symmetricEigen } from './small-eigen.js';

/** K φ = −λ B φ with K positive definite and B symmetric: the load factors λ at which a state stops being stable. */
export interface StabilityProblem {
  /** Number of unknowns. */
  readonly n: number;
  /** b ← K⁻¹ b. */
  readonly solve: (b: Float64Array) => void;
  /** y += B x. */
  readonly addProduct: (x: Float64Array, y: Float64Array) => void;
  /** How many load factors lie between 0 and `factor`, counted without an eigenvalue solver. */
  readonly countBelow: (factor: number) => number;
}

export interface LoadFactor {
  readonly factor: number;
  readonly mode: Float64Array;
}

/** A direction v of the search, and p = K v. */
export interface Direction {
  readonly v: Float64Array;
  readonly p: Float64Array;
}

/** Largest size of the search space; far more than ever needed, so that the search ends whatever the input. */
const largestSpace = 160;

const dot = (a: Float64Array, b: Float64Array): number => dotSegments(a, 0, b, 0, a.length);

function addMultiple(target: Float64Array, share: number, v: Float64Array): void {
  for (let i = 0; i < target.length; i++) target[i]! += share * v[i]!;
}

/**
 * The smallest positive load factors, rising, at most `wanted` of them (fewer when the problem has fewer).
 *
 * Lanczos steps on −K⁻¹ B in the energy product of K, kept orthogonal in full. A found set is only believed when
 * counting below its last member gives the same number; otherwise (two equal factors, an unlucky start) the search
 * goes on from a fresh direction. The start is `near`, thought to lie close to the first mode, or a fixed
 * sequence, so the answer is the same every time.
 */
export function smallestLoadFactors(problem: StabilityProblem, wanted: number, near?: Direction): LoadFactor[] {
  const { n } = problem;
  const V: Float64Array[] = [];
  const KV: Float64Array[] = [];
  const H: Float64Array[] = [];
  let seed = 1;
  const fresh = (): Direction => {
    const p = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
      p[i] = seed / 2 ** 32 - 0.5;
    }
    const v = p.slice();
    problem.solve(v);
    return { v, p };
  };
  /**
   * Takes out of v and p = K v what lies along earlier directions: first along the last two, where nearly all of it
   * lies, then along each; once more when less than half was left, for the rounding, which would grow step by step.
   */
  const orthogonalise = (v: Float64Array, p: Float64Array, record: Float64Array | null): void => {
    let before = Infinity;
    for (let pass = 0; pass < 3; pass++) {
      const size = dot(v, p);
      if (pass === 2 && size > 0.5 * before) break;
      before = size;
      for (let j = pass === 0 ? Math.max(0, V.length - 2) : 0; j < V.length; j++) {
        const share = dot(KV[j]!, v);
        if (record) record[j]! += share;
        addMultiple(v, -share, V[j]!);
        addMultiple(p, -share, KV[j]!);
      }
    }
  };

  let next = near && dot(near.v, near.p) > 0 ? near : fresh();
  let size = Math.sqrt(Math.max(0, dot(next.v, next.p)));
  const limit = Math.min(n, largestSpace);
  let check = near ? 5 : 8;
  /** Equal factors that end the set are all looked for: else it would never be as many as are counted. */
  let asked = wanted;
  while (V.length < limit) {
    if (!(size > 0)) break;
    const { v, p } = next;
    for (let i = 0; i < n; i++) {
      v[i]! /= size;
      p[i]! /= size;
    }
    V.push(v);
    KV.push(p);
    const w = new Float64Array(n);
    problem.addProduct(v, w);
    for (let i = 0; i < n; i++) w[i] = -w[i]!;
    const pw = w.slice();
    problem.solve(w);
    const before = Math.sqrt(Math.max(0, dot(w, pw)));
    const row = new Float64Array(V.length);
    orthogonalise(w, pw, row);
    H.push(row);
    next = { v: w, p: pw };
    size = Math.sqrt(Math.max(0, dot(w, pw)));
    const exhausted = !(size > 1e-11 * before);
    if (V.length >= check || exhausted || V.length === limit) {
      check = V.length + (near ? 2 : 4);
      const found = converged(V, H, exhausted ? 0 : size, asked, V.length === limit);
      const there = found === null || found.length === 0 ? 0 : countTo(problem, found);
      // A space that is exhausted by itself, as from a start that is a mode, says nothing of what lies outside it.
      const enough = found !== null && (!exhausted || found.length >= wanted);
      if (enough && there <= found.length) return found.slice(0, wanted);
      asked = Math.max(asked, there);
      if (found || exhausted) {
        next = fresh();
        check = V.length + 12;
        orthogonalise(next.v, next.p, null);
        size = Math.sqrt(Math.max(0, dot(next.v, next.p)));
        if (found?.length === 0) return [];
      }
    }
  }
  return converged(V, H, 0, wanted, true)?.slice(0, wanted) ?? [];
}

/** How many load factors there are up to the last one found, those that hide among them too. */
function countTo(problem: StabilityProblem, found: readonly LoadFactor[]): number {
  const last = found[found.length - 1]!.factor;
  return problem.countBelow(last * (1 + 1e-6));
}

/** The Ritz pairs with positive values once the first `wanted` have settled; null before. */
function converged(
  V: readonly Float64Array[],
  H: readonly Float64Array[],
  residual: number,
  wanted: number,
  last: boolean,
): LoadFactor[] | null {
  const k = V.length;
  const { values, vectors } = symmetricEigen(H, k);
  const largest = Math.max(Math.abs(values[0] ?? 0), Math.abs(values[k - 1] ?? 0));
  const found: LoadFactor[] = [];
  for (let r = 0; r < Math.min(k, wanted); r++) {
    const value = values[r]!;
    const error = residual * Math.abs(vectors[r]![k - 1]!);
    // The factor is off by no more than this, and by no more than its square over the distance to the next one, which
    // may itself not be seen yet: so both are asked to be small.
    const gap = Math.min(value - (values[r + 1] ?? -Infinity), (values[r - 1] ?? Infinity) - value);
    const off = Math.min(error, (error * error) / gap);
    const settled = off <= 1e-8 * Math.abs(value) && error <= 1e-5 * Math.abs(value);
    if (!last && !settled && error > 1e-12 * largest) return null;
    if (!(value > 1e-12 * largest)) break;
    const mode = new Float64Array(V[0]!.length);
    for (let j = 0; j < k; j++) addMultiple(mode, vectors[r]![j]!, V[j]!);
    found.push({ factor: 1 / value, mode });
  }
  return found;
}
