import { drawer, shuffled } from './draw.js';
import { liftFrom } from '../risk/lift-curve.js';
import { chanceBeyond } from '../risk/normal.js';
import { improve } from './improve.js';
import type { Placed } from './place.js';
import { change, roomOn, totalsOf, type HasRoom, type Placing, type Totals } from './placing.js';
import type { Option, PlaceProblem } from './problem.js';
import { fillInOrder } from './start.js';

/** What becomes of one frame when nobody looks which board goes where. */
export interface Luck {
  /** Chance of a lifted corner over all ways to take the boards. */
  readonly mean_chance: number;
  /** Standard error of the mean chance where it was sampled; 0 where every way was tried. */
  readonly error: number;
  /** The largest lift expected of any placing, mm, whichever way. */
  readonly worst_mm: number;
}

/** Up to this many orders every one is tried, beyond it so many are drawn. */
const all_orders = 5040;
const draws = 2000;

/**
 * Luck and the worst of every frame; `placing` is any placing that fills as much of the pile as can be. The lift's
 * measure stands first in a frame.
 */
export function luckOf(
  { problem, placing }: Pick<Placed, 'problem' | 'placing'>,
  seed: number,
): readonly (Luck | null)[] {
  const hasRoom = roomOn(problem);
  const ways = waysByLuck(problem, hasRoom, seed);
  return problem.frames.map((_, f) => {
    const lift = problem.measures.findIndex(({ frame, bar }) => frame === f && bar === null);
    const measure = problem.measures[lift];
    if (measure === undefined || measure.growth === null) return null;
    const { limit_mm, growth } = measure;
    const chances = ways.placings.map((totals) =>
      chanceBeyond(totals.mean[lift] as number, Math.sqrt(totals.variance[lift] as number), limit_mm),
    );
    const mean_chance = chances.reduce((sum, chance) => sum + chance, 0) / chances.length;
    const spread = chances.reduce((sum, chance) => sum + (chance - mean_chance) ** 2, 0) / chances.length;
    return {
      mean_chance,
      error: ways.complete ? 0 : Math.sqrt(spread / chances.length),
      worst_mm: liftFrom(growth, worstLift(problem, placing, hasRoom, lift, seed)),
    };
  });
}

/**
 * Boards taken as they come, one for each piece, turned as they come: every order where they are few and each piece
 * fits each board, else a seeded sample.
 */
function waysByLuck(
  problem: PlaceProblem,
  hasRoom: HasRoom,
  seed: number,
): { readonly placings: readonly Totals[]; readonly complete: boolean } {
  const { slots, boards, options } = problem;
  let orders = 1;
  for (let i = 0; i < slots.length; i++) orders *= Math.max(0, boards.length - i);
  const simple =
    boards.length >= slots.length &&
    options.every(
      (own) => new Set(own.map(({ board }) => board)).size === boards.length && own.length === boards.length,
    );
  if (simple && orders <= all_orders) return { placings: everyOrder(problem), complete: true };
  const below = drawer(seed);
  const inOrder = slots.map((_, i) => i);
  const placings = Array.from({ length: draws }, () =>
    totalsOf(
      problem,
      fillInOrder(
        problem,
        inOrder,
        shuffled(
          boards.map((_, b) => b),
          below,
        ),
        hasRoom,
        (all) => all[below(all.length)] as Option,
      ),
    ),
  );
  return { placings, complete: false };
}

function everyOrder({ slots, options, measures }: PlaceProblem): readonly Totals[] {
  const found: Totals[] = [];
  const totals: Totals = { mean: new Float64Array(measures.length), variance: new Float64Array(measures.length) };
  const used = new Set<number>();
  const visit = (i: number): void => {
    if (i === slots.length) {
      found.push({ mean: totals.mean.slice(), variance: totals.variance.slice() });
      return;
    }
    for (const option of options[i] ?? []) {
      if (used.has(option.board)) continue;
      used.add(option.board);
      change(totals, option, 1);
      visit(i + 1);
      change(totals, option, -1);
      used.delete(option.board);
    }
  };
  visit(0);
  return found;
}

/** The largest mean lift at no pull that any placing reaches, by improving from several starts towards either sign. */
function worstLift(problem: PlaceProblem, placing: Placing, hasRoom: HasRoom, lift: number, seed: number): number {
  const below = drawer(seed);
  const inOrder = problem.slots.map((_, i) => i);
  const starts = [
    placing,
    ...Array.from({ length: 4 }, () =>
      fillInOrder(
        problem,
        inOrder,
        shuffled(
          problem.boards.map((_, b) => b),
          below,
        ),
        hasRoom,
      ),
    ),
  ];
  let worst = 0;
  for (const start of starts)
    for (const sign of [1, -1]) {
      const end = improve(problem, start, hasRoom, ({ mean }) => -sign * (mean[lift] as number));
      worst = Math.max(worst, -end.score);
    }
  return worst;
}
