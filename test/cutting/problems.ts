import fc from 'fast-check';
import type { CutProblem, CutResult } from '../../src/cutting/boards/problem.js';
import { workClock } from '../../src/cutting/cut-plan.js';

/** Enough readings of the clock for any of the small problems here. */
const readings = 100_000;

/** A problem with its clock wound up afresh: the search reads it, so it must not be used twice. */
export function fresh(problem: Omit<CutProblem, 'now' | 'timeLimit_ms'>): CutProblem {
  return { ...problem, timeLimit_ms: readings, now: workClock() };
}

/** A length from a wide range, or one of a few, so that boards come in twins and pieces fill them to the last. */
const lengthFrom = (min: number, max: number, ...few: readonly number[]): fc.Arbitrary<number> => fc.oneof({ weight: 3, arbitrary: fc.integer({ min, max }) }, { weight: 2, arbitrary: fc.constantFrom(...few) });

/** Small problems with uneven boards, some longer for a piece alone, leftovers on hand, limits, and pieces of which some nest; often a board is filled to the last, or two are alike. */
export const smallProblem: fc.Arbitrary<Omit<CutProblem, 'now' | 'timeLimit_ms'>> = fc.record({
  kerf: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 5 })),
  stock: fc.array(
    fc
      .record({
        length: lengthFrom(250, 1000, 400, 500, 800),
        extra: fc.oneof(fc.constant(0), fc.constant(100), fc.integer({ min: 0, max: 200 })),
        price: fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 5, arbitrary: lengthFrom(40, 500, 200, 300) }),
        available: fc.option(fc.integer({ min: 1, max: 4 }), { nil: null }),
      })
      .map(({ extra, ...stock }) => (extra === 0 ? stock : { ...stock, alone: stock.length + extra })),
    { minLength: 1, maxLength: 4 },
  ),
  setups: fc.tuple(lengthFrom(0, 60, 20), lengthFrom(0, 40, 20)),
  items: fc.array(
    fc.oneof(
      fc.record({ length: lengthFrom(40, 500, 100, 200, 300), count: fc.integer({ min: 1, max: 3 }) }),
      fc.record({ length: lengthFrom(40, 450, 80, 180, 280), count: fc.integer({ min: 1, max: 3 }), group: fc.integer({ min: 0, max: 1 }) }),
    ),
    { minLength: 1, maxLength: 6 },
  ),
});

/** Recounts a cutting: null when each piece is on exactly one board, each board is long enough with kerf and setups, and the sums are right; else what is wrong. */
export function fault(problem: Omit<CutProblem, 'now' | 'timeLimit_ms'>, result: CutResult): string | null {
  if (!result.ok) return null;
  const left = problem.items.map(({ count }) => count);
  const taken = problem.stock.map(() => 0);
  let cost = 0;
  let length = 0;
  for (const board of result.boards) {
    const stock = problem.stock[board.stock];
    if (stock === undefined) return 'unknown board';
    const groups = new Set<number>();
    let used = (board.pieces.length - 1) * problem.kerf;
    for (const i of board.pieces) {
      const item = problem.items[i];
      if (item === undefined) return 'unknown piece';
      left[i] = (left[i] as number) - 1;
      used += item.length;
      if (item.group !== undefined) groups.add(item.group);
    }
    for (const group of groups) used += problem.setups?.[group] ?? 0;
    if (used > (board.pieces.length === 1 ? (stock.alone ?? stock.length) : stock.length)) return `overfull: ${used} on ${stock.length}`;
    taken[board.stock] = (taken[board.stock] as number) + 1;
    cost += stock.price;
    length += stock.length;
  }
  if (left.some((n) => n !== 0)) return 'a piece is missing or cut twice';
  if (problem.stock.some(({ available }, s) => available != null && (taken[s] as number) > available)) return 'more boards than available';
  if (cost !== result.cost) return 'wrong cost';
  const pieces = problem.items.reduce((sum, item) => sum + item.length * item.count, 0);
  if (length - pieces !== result.waste) return 'wrong waste';
  return result.bound > result.cost ? 'bound above cost' : null;
}

/** Best (cost, waste, boards) over every way to share the pieces out, by plain enumeration of set partitions; null when there is none. For up to about seven pieces. */
export function bruteForce(problem: Omit<CutProblem, 'now' | 'timeLimit_ms'>): { cost: number; waste: number; boards: number } | null {
  const pieces = problem.items.flatMap(({ length, count, group }) => Array.from({ length: count }, () => ({ length, group })));
  let best: { cost: number; waste: number; boards: number } | null = null;
  const used = (bundle: typeof pieces): number => {
    const groups = new Set(bundle.flatMap(({ group }) => (group === undefined ? [] : [group])));
    const setups = [...groups].reduce((sum, g) => sum + (problem.setups?.[g] ?? 0), 0);
    return bundle.reduce((sum, { length }) => sum + length, 0) + (bundle.length - 1) * problem.kerf + setups;
  };
  const total = pieces.reduce((sum, { length }) => sum + length, 0);
  const assign = (needs: readonly { used: number; pieces: number }[], k: number, taken: readonly number[], cost: number, length: number): void => {
    if (k === needs.length) {
      const found = { cost, waste: length - total, boards: needs.length };
      if (best === null || found.cost < best.cost || (found.cost === best.cost && (found.waste < best.waste || (found.waste === best.waste && found.boards < best.boards)))) best = found;
      return;
    }
    problem.stock.forEach(({ length: size, price, available, alone }, s) => {
      const { used: need, pieces: number } = needs[k] as (typeof needs)[number];
      if ((number === 1 ? (alone ?? size) : size) < need || (available != null && (taken[s] as number) >= available)) return;
      assign(needs, k + 1, taken.map((n, t) => (t === s ? n + 1 : n)), cost + price, length + size);
    });
  };
  const share = (i: number, bundles: (typeof pieces)[]): void => {
    if (i === pieces.length) return assign(bundles.map((bundle) => ({ used: used(bundle), pieces: bundle.length })), 0, problem.stock.map(() => 0), 0, 0);
    const piece = pieces[i] as (typeof pieces)[number];
    bundles.forEach((bundle, b) => share(i + 1, bundles.map((other, o) => (o === b ? [...bundle, piece] : other))));
    share(i + 1, [...bundles, [piece]]);
  };
  share(0, []);
  return best;
}
