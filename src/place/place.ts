import { aimOf, outOfTrue, type Group } from './aim.js';
import { improve } from './improve.js';
import { drawer, shuffled } from './draw.js';
import { layOutPlacing, roomOn, slotsByBoard, totalsOf, type HasRoom, type Placing, type Totals } from './placing.js';
import type { PlaceProblem } from './problem.js';
import { leftOf } from './room.js';
import { searchPlacing } from './search.js';
import { equal_aim } from './search-state.js';
import { filledOf, fillInOrder, fullest } from './start.js';

/** The best placing of a pile, how good it is, and how sure that is. */
export interface Placed {
  readonly problem: PlaceProblem;
  readonly placing: Placing;
  /** Where each slot's piece begins on its board, mm from the marked end; null where a board must be bought. */
  readonly from_mm: readonly (number | null)[];
  /** Chance of a lifted corner plus the chances of bowed bars, over all frames. */
  readonly aim: number;
  /** No placing that takes as many pieces from the pile has less. */
  readonly bound: number;
  /** True when none is better by more than one in ten million, and none takes more pieces from the pile. */
  readonly proven: boolean;
}

/** How long to search. The same numbers give the same answer on every machine. */
export interface Effort {
  readonly seed: number;
  /** Starts from which small steps are tried. */
  readonly starts: number;
  /** Branches of the proof. */
  readonly nodes: number;
}

export const usualEffort: Effort = { seed: 1, starts: 8, nodes: 100_000 };

/**
 * Which board goes where: first as many pieces from the pile as it holds, then the least aim; of equal ones the least
 * lift, then the least bow, then the one
 * whose leftovers are of most use. Branch and bound; where it is cut short the bound says how much better another could
 * be.
 */
export function placeBoards(problem: PlaceProblem, effort: Effort = usualEffort): Placed {
  const hasRoom = roomOn(problem);
  const full = fullest(problem, hasRoom);
  const starts = startsOf(problem, full.placing, hasRoom, effort);
  const start = starts[0] as Placing;
  const most_bought = problem.slots.length - filledOf(full.placing);
  const found =
    problem.slots.length === 0 || problem.groups.length === 0
      ? { placing: start, aim: 0, bound: 0 }
      : searchPlacing(problem, start, hasRoom, most_bought, effort.nodes);
  const placing = settleTies(problem, [found.placing, ...starts], hasRoom);
  const { mean, variance } = totalsOf(problem, placing);
  const aim = aimOf(problem.allGroups, mean, variance);
  return {
    problem,
    placing,
    from_mm: layOutPlacing(problem, placing),
    aim,
    bound: Math.min(found.bound, aim),
    proven: full.proven && found.bound >= found.aim - equal_aim,
  };
}

/** What small steps find from several starts, the fullest placing among them; best first. */
function startsOf(
  problem: PlaceProblem,
  full: Placing,
  hasRoom: HasRoom,
  { seed, starts }: Effort,
): readonly Placing[] {
  const below = drawer(seed);
  const inOrder = problem.slots.map((_, i) => i);
  const boards = problem.boards.map((_, b) => b);
  const filled = filledOf(full);
  const score = ({ mean, variance }: Totals): number => aimOf(problem.groups, mean, variance);
  const ends = [improve(problem, full, hasRoom, score)];
  for (let n = 1; n < starts; n++) {
    const start = fillInOrder(problem, shuffled(inOrder, below), shuffled(boards, below), hasRoom);
    if (filledOf(start) === filled) ends.push(improve(problem, start, hasRoom, score));
  }
  return ends.sort((a, b) => a.score - b.score).map(({ placing }) => placing);
}

/** Lifts and bows that differ by less than this share of their limit cannot be told apart at a table. */
const same_share = 0.02;

/**
 * Among placings as good as the first: the least lift, then the least bow, then leftovers of most use; by small steps
 * from each that is as good.
 */
function settleTies(
  problem: PlaceProblem,
  [first, ...others]: readonly [Placing, ...Placing[]],
  hasRoom: HasRoom,
): Placing {
  const aim = ({ mean, variance }: Totals): number => aimOf(problem.groups, mean, variance);
  const most_aim = aim(totalsOf(problem, first)) + equal_aim;
  const isLift = ({ measures: [j] }: Group): boolean => problem.measures[j ?? 0]?.bar === null;
  const lifts = problem.allGroups.filter(isLift);
  const bars = problem.allGroups.filter((group) => !isLift(group));
  const lift = ({ mean, variance }: Totals): number => outOfTrue(lifts, mean, variance);
  const bow = ({ mean, variance }: Totals): number => outOfTrue(bars, mean, variance);
  const flattest = [first, ...others.filter((one) => aim(totalsOf(problem, one)) <= most_aim)]
    .map((one) => improve(problem, one, hasRoom, (totals) => (aim(totals) > most_aim ? Infinity : lift(totals))))
    .reduce((best, one) => (one.score < best.score ? one : best));
  const most_lift = flattest.score + same_share;
  const straightest = improve(problem, flattest.placing, hasRoom, (totals) =>
    lift(totals) > most_lift || aim(totals) > most_aim ? Infinity : bow(totals),
  );
  const most_bow = straightest.score + same_share;
  return improve(problem, straightest.placing, hasRoom, (totals, now) =>
    lift(totals) > most_lift || bow(totals) > most_bow || aim(totals) > most_aim
      ? Infinity
      : -useOfLeftovers(problem, now),
  ).placing;
}

/** How useful what is left of the pile is: the squares of the sound lengths added up, m². */
export function useOfLeftovers(problem: PlaceProblem, placing: Placing): number {
  const from = layOutPlacing(problem, placing);
  const bySlot = slotsByBoard(placing);
  return problem.stretches.reduce((sum, stretches, b) => {
    const pieces = (bySlot.get(b) ?? []).map((i) => ({
      from_mm: from[i] as number,
      ...(problem.lengths[i] as PlaceProblem['lengths'][number]),
    }));
    return (
      sum + leftOf(stretches, pieces).reduce((all, { from_mm, to_mm }) => all + ((to_mm - from_mm) / 1000) ** 2, 0)
    );
  }, 0);
}
