import type { ReadyProblem } from './ready-problem.js';
import { patternsWith, type Pattern } from './patterns.js';
import type { Weight } from './weights.js';

/**
 * Whether a choice of boards can hold all pieces: the loads that do it, a proof that none do, or neither before the
 * allowance was used up.
 */
export type Filling =
  | { readonly verdict: 'fits'; readonly loads: readonly Pattern[] }
  | { readonly verdict: 'cannot' }
  | { readonly verdict: 'ran-out' };

/** How long the search may go on: a number of steps, and a clock asked now and then. */
export interface Allowance {
  readonly steps: number;
  readonly outOfTime: () => boolean;
}

const memoryLimit = 400_000;
const stepsBetweenLooks = 4096;

/**
 * Depth-first search: the longest piece left goes on one of the boards left, by every load worth trying, tightest
 * first.
 * Points of the search found hopeless are remembered by what is left of pieces and boards. `weights[0]` must be length
 * itself.
 */
export function fillBoards(
  bench: ReadyProblem,
  choice: readonly number[],
  weights: readonly Weight[],
  allowance: Allowance,
): Filling {
  const kinds = bench.size.length;
  const counts = Uint16Array.from(bench.count);
  const boards = Uint16Array.from(choice);
  const spare = weights.map((w) => choice.reduce((sum, n, s) => sum + n * (w.capacity[s] as number), 0) - w.demand);
  if (spare.some((s) => s < 0)) return { verdict: 'cannot' };
  const dead = new Set<string>();
  const loads: Pattern[] = [];
  let steps = 0;
  let stopped = false;
  const tick = (): boolean => {
    steps++;
    if (steps >= allowance.steps || (steps % stepsBetweenLooks === 0 && allowance.outOfTime())) stopped = true;
    return stopped;
  };
  const visit = (from: number): boolean => {
    let first = from;
    while (first < kinds && counts[first] === 0) first++;
    if (first === kinds) return true;
    if (tick()) return false;
    const key = String.fromCharCode(...boards) + String.fromCharCode(...counts.subarray(first));
    if (dead.has(key)) return false;
    const options: Pattern[] = [];
    for (let s = 0; s < boards.length && !stopped; s++)
      if (boards[s] !== 0) options.push(...patternsWith(bench, first, s, { counts, spare }, weights, tick));
    if (stopped) return false;
    options.sort((p, q) => p.loss - q.loss);
    for (const option of options) {
      move(option, first, -1);
      loads.push(option);
      if (visit(first)) return true;
      loads.pop();
      move(option, first, 1);
      if (stopped) return false;
    }
    if (dead.size < memoryLimit) dead.add(key);
    return false;
  };
  const move = ({ bin, counts: load }: Pattern, first: number, sign: 1 | -1): void => {
    boards[bin] = (boards[bin] as number) + sign;
    for (let k = first; k < kinds; k++) counts[k] = (counts[k] as number) + sign * (load[k] as number);
    for (let w = 0; w < weights.length; w++) {
      const { value, capacity } = weights[w] as Weight;
      let lost = capacity[bin] as number;
      for (let k = first; k < kinds; k++) lost -= (load[k] as number) * (value[k] as number);
      spare[w] = (spare[w] as number) + sign * lost;
    }
  };
  if (visit(0)) return { verdict: 'fits', loads };
  return { verdict: stopped ? 'ran-out' : 'cannot' };
}
