import type { ReadyProblem } from './ready-problem.js';
import { meets, type Weight } from './weights.js';

/** How many boards of each kind, with what they cost and measure. */
export interface Choice {
  readonly boards: readonly number[];
  readonly cost: number;
  readonly length: number;
  readonly number: number;
}

/** Order of merit: least cost, then least length (so least waste), then fewest boards. */
export function better(p: Choice, q: Choice): number {
  return p.cost - q.cost || p.length - q.length || p.number - q.number;
}

/** Makes a choice of a list of board counts. */
export function makeChoice(bench: ReadyProblem, boards: readonly number[]): Choice {
  let cost = 0;
  let length = 0;
  let number = 0;
  boards.forEach((n, s) => {
    cost += n * (bench.bins[s]?.price as number);
    length += n * (bench.bins[s]?.length as number);
    number += n;
  });
  return { boards: boards.slice(), cost, length, number };
}

/**
 * All choices of boards that cost from `low` to `high` and meet every weight, best first. Null when there are more than
 * `most` or `tick` says stop.
 * No board is left empty in a best cutting, so a choice never has more boards than there are pieces.
 */
export function choicesBetween(
  bench: ReadyProblem,
  weights: readonly Weight[],
  low: number,
  high: number,
  most: number,
  tick: () => boolean,
): Choice[] | null {
  const { bins } = bench;
  const kinds = bins.length;
  const found: Choice[] = [];
  const boards = new Array<number>(kinds).fill(0);
  const rates = weights.map(({ capacity }) => suffixReach(bench, capacity));
  let overflow = false;
  const visit = (s: number, cost: number, number: number, carried: readonly number[]): void => {
    if (overflow || (overflow = tick())) return;
    for (let w = 0; w < weights.length; w++) {
      const reach = rates[w] as Reach;
      const can = (carried[w] as number) + (reach.free[s] as number) + (high - cost) * (reach.perCost[s] as number);
      if (can * (1 + 1e-12) < (weights[w] as Weight).demand) return;
    }
    if (s === kinds) {
      if (cost < low || !weights.every((w) => meets(w, boards))) return;
      found.push(makeChoice(bench, boards));
      overflow = found.length > most;
      return;
    }
    const { price, size, alone, most: limit } = bins[s] as (typeof bins)[number];
    const twin = s > 0 && bins[s - 1]?.size === size && bins[s - 1]?.alone === alone;
    if (twin && (boards[s - 1] as number) < (bins[s - 1]?.most as number)) return visit(s + 1, cost, number, carried);
    const top = Math.min(limit, bench.pieces - number, price > 0 ? Math.floor((high - cost) / price) : limit);
    for (let n = 0; n <= top; n++) {
      boards[s] = n;
      visit(
        s + 1,
        cost + n * price,
        number + n,
        n === 0 ? carried : carried.map((c, w) => c + n * ((weights[w] as Weight).capacity[s] as number)),
      );
      if (overflow) break;
    }
    boards[s] = 0;
  };
  visit(
    0,
    0,
    0,
    weights.map(() => 0),
  );
  return overflow ? null : found.sort(better);
}

interface Reach {
  /** Capacity of all price-0 boards of kinds s and later. */
  readonly free: readonly number[];
  /** Best capacity per unit of cost among kinds s and later. */
  readonly perCost: readonly number[];
}

function suffixReach(bench: ReadyProblem, capacity: readonly number[]): Reach {
  const free = [0];
  const perCost = [0];
  for (let s = bench.bins.length - 1; s >= 0; s--) {
    const { price, most } = bench.bins[s] as (typeof bench.bins)[number];
    const c = capacity[s] as number;
    free.unshift((free[0] as number) + (price === 0 ? c * most : 0));
    perCost.unshift(Math.max(perCost[0] as number, price > 0 ? c / price : 0));
  }
  return { free, perCost };
}

/**
 * Whether every board of `small` can be matched to its own board of `large` at least as long: then what `large` cannot
 * hold, `small` cannot.
 */
export function within(bench: ReadyProblem, small: Choice, large: Choice): boolean {
  const inStep = bench.bins.every((bin, s) => s === 0 || bin.alone <= (bench.bins[s - 1]?.alone as number));
  if (!inStep) return small.boards.every((n, s) => n <= (large.boards[s] as number));
  let surplus = 0;
  for (let s = 0; s < small.boards.length; s++) {
    surplus += (large.boards[s] as number) - (small.boards[s] as number);
    if (surplus < 0) return false;
  }
  return true;
}
