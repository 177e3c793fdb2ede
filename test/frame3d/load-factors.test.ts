import { expect, it } from 'vitest';
import { smallestLoadFactors } from '../../src/frame3d/load-factors.js';

/** Load factors as given, of a problem that is diagonal; and how often it was solved. */
function diagonal(factors: readonly number[]) {
  let solved = 0;
  return {
    n: factors.length,
    solve: () => void solved++,
    addProduct: (x: Float64Array, y: Float64Array) => factors.forEach((factor, i) => (y[i]! -= x[i]! / factor)),
    countBelow: (limit: number) => factors.filter((factor) => factor > 0 && factor < limit).length,
    times: () => solved,
  };
}

/** A square frame with crossbars has pairs of equal factors: two are wanted, and the second is one of such a pair. */
it.each([[[1, 2, 2], 60], [[1, 1, 2], 60], [[1, 2, 2, 2], 160], [[1, 1.5, 2], 20]])('the two smallest of %j and many larger ones, exactly and within %d solutions', (smallest, most) => {
  const problem = diagonal([...smallest, ...Array.from({ length: 197 }, (_, i) => 3 + 0.05 * i), -1.5, -4]);
  const found = smallestLoadFactors(problem, 2);
  expect(found.map(({ factor }) => factor)).toEqual([expect.closeTo(smallest[0]!, 8), expect.closeTo(smallest[1]!, 8)]);
  expect(problem.times()).toBeLessThanOrEqual(most);
});
