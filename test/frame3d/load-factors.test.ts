import { describe, expect, it } from 'vitest';
import { smallestLoadFactors } from '../../src/frame3d/load-factors.js';
import { symmetricEigen } from '../../src/frame3d/small-eigen.js';

/** Load factors as given (Infinity: none), of a problem with stiffnesses `k` that is diagonal; and how often it was solved. */
function diagonal(factors: readonly number[], k: readonly number[] = factors.map(() => 1)) {
  let solved = 0;
  return {
    n: factors.length,
    solve: (b: Float64Array) => { solved++; k.forEach((stiff, i) => (b[i]! /= stiff)); },
    addProduct: (x: Float64Array, y: Float64Array) => factors.forEach((factor, i) => (y[i]! -= (k[i]! * x[i]!) / factor)),
    countBelow: (limit: number) => factors.filter((factor) => factor > 0 && factor < limit).length,
    times: () => solved,
  };
}
const many = Array.from({ length: 197 }, (_, i) => 3 + 0.05 * i);

/** A square frame with crossbars has pairs of equal factors: two are wanted, and the second is one of such a pair. */
it.each([[[1, 2, 2], 60], [[1, 1, 2], 60], [[1, 2, 2, 2], 160], [[1, 1.5, 2], 20]])('the two smallest of %j and many larger ones, exactly and within %d solutions', (smallest, most) => {
  const problem = diagonal([...smallest, ...many, -1.5, -4]);
  const found = smallestLoadFactors(problem, 2);
  expect(found.map(({ factor }) => factor)).toEqual([expect.closeTo(smallest[0]!, 8), expect.closeTo(smallest[1]!, 8)]);
  expect(problem.times()).toBeLessThanOrEqual(most);
});

describe('however many there are', () => {
  const factorsOf = (factors: readonly number[], wanted: number): readonly number[] => smallestLoadFactors(diagonal(factors), wanted).map(({ factor }) => factor);

  it.each<[string, readonly number[], number, readonly number[]]>([
    ['fewer than are wanted', [5, -2, 3, Infinity, -7], 4, [3, 5]],
    ['none: all loads stiffen', [-2, -3, -9, -4], 2, []],
    ['none: no load does anything', [Infinity, Infinity, Infinity], 2, []],
    ['a single unknown', [7], 2, [7]], ['a single unknown that stiffens', [-7], 1, []], ['no unknown', [], 2, []],
    ['as many as unknowns, two alike', [4, 2, 2, 9], 4, [2, 2, 4, 9]],
    ['all alike', [2, 2, 2, 2, 2], 3, [2, 2, 2]],
    ['very unlike', [1e-4, 1e4, 3], 3, [1e-4, 3, 1e4]],
  ])('%s', (_, factors, wanted, expected) => {
    const found = factorsOf(factors, wanted);
    expect(found).toHaveLength(expected.length);
    found.forEach((factor, i) => expect(factor / expected[i]!).toBeCloseTo(1, 8));
  });

  it('gives the modes with them, of energy one, each by itself', () => {
    const k = Array.from({ length: 60 }, (_, i) => 1 + (i % 7));
    const factors = Array.from({ length: 60 }, (_, i) => (i % 5 === 4 ? -1 - i : 2 + ((i * 23) % 60)));
    const found = smallestLoadFactors(diagonal(factors, k), 3);
    const rising = factors.map((factor, i) => ({ factor, i })).filter(({ factor }) => factor > 0).sort((p, q) => p.factor - q.factor);
    found.forEach(({ factor, mode }, n) => {
      expect(factor / rising[n]!.factor).toBeCloseTo(1, 8);
      mode.forEach((x, i) => expect(Math.abs(x) * Math.sqrt(k[i]!)).toBeCloseTo(i === rising[n]!.i ? 1 : 0, 3));
    });
  });
});

describe('from a start that is near the first mode', () => {
  const factors = [1, 1.4, 1.9, ...many, -2];
  const start = (parts: Readonly<Record<number, number>>) => {
    const v = Float64Array.from(factors, (_, i) => parts[i] ?? 0);
    return { v, p: v.slice() };
  };
  it('finds the same with fewer solutions', () => {
    const [far, near] = [diagonal(factors), diagonal(factors)];
    const first = smallestLoadFactors(far, 1);
    const again = smallestLoadFactors(near, 1, start({ 0: 5, 1: 0.01, 40: 0.001 }));
    expect([first[0]!.factor, again[0]!.factor]).toEqual([expect.closeTo(1, 8), expect.closeTo(1, 8)]);
    expect(near.times()).toBeLessThan(far.times());
    expect([near.times(), far.times()].every((times) => times > 1)).toBe(true);
  });
  it('one that is a mode by itself hides no smaller factor, and no start is as good as none', () => {
    for (const parts of [{ 0: 3 }, { 2: 3 }, { 0: 1, 2: 1 }, { 203: 1 }]) {
      const problem = diagonal(factors.map((factor, i) => (i === 203 ? Infinity : factor)));
      expect(smallestLoadFactors(problem, 2, start(parts)).map(({ factor }) => factor)).toEqual([expect.closeTo(1, 8), expect.closeTo(1.4, 8)]);
    }
    const [bare, empty] = [diagonal(factors), diagonal(factors)];
    const [a, b] = [smallestLoadFactors(bare, 2), smallestLoadFactors(empty, 2, start({}))];
    expect(b.map(({ factor }) => factor)).toEqual(a.map(({ factor }) => expect.closeTo(factor, 8)));
  });
});

describe('eigenvalues of a small matrix', () => {
  const rows = (full: readonly (readonly number[])[]) => full.map((row) => Float64Array.from(row));
  it('are the roots of its characteristic polynomial, falling', () => {
    // 3 x 3 with known roots: A = Q diag(9, 4, -2) Qᵀ, Q = [2 -1 2; 2 2 -1; -1 2 2]/3.
    const Q = [[2, -1, 2], [2, 2, -1], [-1, 2, 2]].map((row) => row.map((v) => v / 3));
    const A = Q.map((p) => Q.map((q) => 9 * p[0]! * q[0]! + 4 * p[1]! * q[1]! - 2 * p[2]! * q[2]!));
    const { values, vectors } = symmetricEigen(rows(A), 3);
    [9, 4, -2].forEach((value, r) => expect(values[r]).toBeCloseTo(value, 12));
    vectors.forEach((vector, r) => {
      const sign = Math.sign(vector.reduce((sum, v, i) => sum + v * Q[i]![r]!, 0));
      vector.forEach((v, i) => expect(sign * v).toBeCloseTo(Q[i]![r]!, 9));
    });
    // Only the lower half counts, and only the first of more rows.
    const half = A.map((row, i) => row.map((v, j) => (j > i ? 99 : v)));
    expect(symmetricEigen(rows(half), 3).values).toEqual(values);
    expect(symmetricEigen(rows(half), 2).values.reduce((sum, v) => sum + v, 0)).toBeCloseTo(A[0]![0]! + A[1]![1]!, 12);
  });
  it('equal diagonals are parted too, and what is diagonal stays', () => {
    expect(symmetricEigen(rows([[1, 0], [5, 1]]), 2).values).toEqual([6, -4].map((v) => expect.closeTo(v, 12)));
    expect(symmetricEigen(rows([[1, 0], [0, 3]]), 2)).toEqual({ values: [3, 1], vectors: [Float64Array.of(0, 1), Float64Array.of(1, 0)] });
    expect(symmetricEigen([], 0)).toEqual({ values: [], vectors: [] });
  });
});
