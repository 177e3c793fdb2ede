import { chanceInWords } from '../base/chance-words.js';
import type { UnitSystem } from '../base/names.js';
import { formatLength } from '../base/units-format.js';
import type { PileBoard } from '../pile/pile.js';
import { aimOf } from './aim.js';
import type { Placed } from './place.js';
import { change, slotsByBoard, totalsOf, type Placing } from './placing.js';
import type { Option, PlaceProblem } from './problem.js';
import { leftOf } from './room.js';
import type { LeftBoard } from './result.js';

/** What goes back on the rack: the rest of every board, and for those left whole why. */
export function leftBoards({ problem, placing, from_mm }: Placed, units: UnitSystem): readonly LeftBoard[] {
  const used = slotsByBoard(placing);
  return problem.boards.flatMap((board, b): LeftBoard[] => {
    const slots = used.get(b) ?? [];
    const pieces = slots.map((i) => ({
      from_mm: from_mm[i] as number,
      ...(problem.lengths[i] as PlaceProblem['lengths'][number]),
    }));
    if (board.cut !== null && slots.length > 0) return [];
    const left =
      board.cut !== null ? [{ from_mm: 0, to_mm: board.length_mm }] : leftOf(problem.stretches[b] ?? [], pieces);
    if (left.length === 0 && slots.length > 0) return [];
    return [
      { board, left, whole: slots.length === 0, why: slots.length === 0 ? whyLeft(problem, placing, b, units) : '' },
    ];
  });
}

function whyLeft(problem: PlaceProblem, placing: Placing, b: number, units: UnitSystem): string {
  const board = problem.boards[b] as PileBoard;
  const wanted = problem.slots.filter(({ piece }) => piece.stock === board.stock);
  if (wanted.length === 0) return 'No piece is made of this kind.';
  const shortest_mm = Math.min(...wanted.map(({ piece }) => piece.cut_mm));
  if (!problem.options.some((own) => own.some((option) => option.board === b))) {
    if (board.cut !== null) return 'It is cut already, and no piece has its length and ends.';
    return board.length_mm < shortest_mm
      ? `Too short: the shortest piece takes ${formatLength(shortest_mm, units)}.`
      : `Its knots leave no sound stretch of ${formatLength(shortest_mm, units)}.`;
  }
  const best = bestInstead(problem, placing, b);
  if (best === null) return 'Every piece has its board.';
  const now = chanceOf(problem, placing);
  if (best.chance <= now * 1.01 + 1e-4) return 'Every piece has its board, and this one would do no better.';
  return `Every piece has its board. With this one in, even where it does best, ${chanceInWords(best.chance)} of such frames would have a lifted corner or a bowed bar; as placed it is ${chanceInWords(now)}.`;
}

const chanceOf = (problem: PlaceProblem, placing: Placing): number => {
  const { mean, variance } = totalsOf(problem, placing);
  return Math.min(1, aimOf(problem.allGroups, mean, variance));
};

/** The best that comes of putting this board in the place of another. */
function bestInstead(problem: PlaceProblem, placing: Placing, b: number): { readonly chance: number } | null {
  const totals = totalsOf(problem, placing);
  let best: { readonly chance: number } | null = null;
  problem.options.forEach((own, i) => {
    for (const option of own.filter((one) => one.board === b)) {
      const old = placing[i] as Option;
      change(totals, old, -1);
      change(totals, option, 1);
      const chance = Math.min(1, aimOf(problem.allGroups, totals.mean, totals.variance));
      if (best === null || chance < best.chance) best = { chance };
      change(totals, option, -1);
      change(totals, old, 1);
    }
  });
  return best;
}
