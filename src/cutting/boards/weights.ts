import type { Bin, ReadyProblem } from './ready-problem.js';
import { bestBoardLoad } from './knapsack.js';

/**
 * A necessary condition on any choice of boards: give every piece a weight; then the boards' capacities for that weight
 * must reach the
 * pieces' total. All numbers are whole, so the condition is exact; a capacity may be too large but never too small.
 */
export interface Weight {
  readonly value: readonly number[];
  /** Most weight one board of each kind can carry. */
  readonly capacity: readonly number[];
  /** Weight of all pieces. */
  readonly demand: number;
  /** Best weight per length among this kind and the shorter ones. */
  readonly rate: readonly number[];
}

/** Completes whole weights to a necessary condition. */
export const makeWeight = (bench: ReadyProblem, value: readonly number[]): Weight =>
  weightOf(bench, value, (bin) => bestBoardLoad(bench, value, bin).value);

/** The same with the most that a board can carry worked out otherwise: never too little. */
export const weightOf = (bench: ReadyProblem, value: readonly number[], most: (bin: Bin) => number): Weight => ({
  value,
  capacity: bench.bins.map(most),
  ...totals(bench, value),
});

function totals(bench: ReadyProblem, value: readonly number[]): Pick<Weight, 'demand' | 'rate'> {
  const rate = new Array<number>(value.length + 1).fill(0);
  for (let k = value.length - 1; k >= 0; k--)
    rate[k] = Math.max(rate[k + 1] as number, (value[k] as number) / (bench.size[k] as number));
  return { demand: value.reduce((sum, v, i) => sum + v * (bench.count[i] as number), 0), rate };
}

/** The weights that cost nothing to find: length itself, and for each length the number of pieces at least so long. */
export function plainWeights(bench: ReadyProblem): Weight[] {
  const weights = [makeWeight(bench, bench.size)];
  bench.size.forEach((from, k) => {
    if (from === bench.size[k + 1]) return;
    const value = bench.size.map((size) => (size >= from ? 1 : 0));
    const capacity = bench.bins.map((bin) => Math.max(mostPieces(bench, k, bin.size), bin.alone > bin.size ? 1 : 0));
    weights.push({ value, capacity, ...totals(bench, value) });
  });
  return weights;
}

/** How many pieces of kinds 0..k one board can carry at most (setups left out: never too small). */
function mostPieces(bench: ReadyProblem, k: number, room: number): number {
  let number = 0;
  for (let i = k; i >= 0 && room > 0; i--) {
    if ((bench.size[i] as number) + (bench.setup[i] as number) > room && number === 0) continue;
    const take = Math.min(bench.count[i] as number, Math.floor(room / (bench.size[i] as number)));
    number += take;
    room -= take * (bench.size[i] as number);
  }
  return number;
}

/** Whether a choice of boards (how many of each kind) meets a weight. */
export function meets(weight: Weight, choice: readonly number[]): boolean {
  let sum = 0;
  for (let s = 0; s < choice.length; s++) sum += (choice[s] as number) * (weight.capacity[s] as number);
  return sum >= weight.demand;
}

/**
 * Least cost of boards that meet one weight, boards being divisible: a lower bound on every cutting's cost. Infinity
 * when none do.
 */
export function costBound(bench: ReadyProblem, weight: Weight): number {
  const order = bench.bins.map((_, s) => s).filter((s) => (weight.capacity[s] as number) > 0);
  const rate = (s: number): number => (bench.bins[s]?.price as number) / (weight.capacity[s] as number);
  order.sort((p, q) => rate(p) - rate(q));
  let need = weight.demand;
  let cost = 0;
  for (const s of order) {
    if (need <= 0) break;
    const capacity = weight.capacity[s] as number;
    const { most, price } = bench.bins[s] as ReadyProblem['bins'][number];
    if (most * capacity >= need) return Math.ceil((cost + (need / capacity) * price) * (1 - 1e-12) - 1e-7);
    cost += most * price;
    need -= most * capacity;
  }
  return need > 0 ? Infinity : Math.ceil(cost);
}
