import fc from 'fast-check';
import { makeReady, type ReadyProblem } from '../../src/cutting/boards/ready-problem.js';
import { fresh, smallProblem } from './problems.js';

/** Small problems as the search sees them; those without a board or a piece are left out. */
export const readyProblem: fc.Arbitrary<ReadyProblem> = smallProblem
  .map((problem) => makeReady(fresh(problem)))
  .filter(({ bins, pieces }) => bins.length > 0 && pieces > 0 && pieces <= 9);

/** Length that a load takes of a board: its pieces, and the setup of every group that is there. */
export function takes({ size, group, setup }: ReadyProblem, counts: readonly number[]): number {
  const present = new Map<number, number>();
  counts.forEach((c, k) => { if (c > 0 && group[k]! >= 0) present.set(group[k]!, setup[k]!); });
  return counts.reduce((sum, c, k) => sum + c * size[k]!, 0) + [...present.values()].reduce((sum, s) => sum + s, 0);
}

const number = (counts: readonly number[]): number => counts.reduce((sum, c) => sum + c, 0);

/** Whether a board of a kind holds a load; a piece alone may be longer. */
export const holds = (bench: ReadyProblem, bin: number, counts: readonly number[]): boolean =>
  takes(bench, counts) <= (number(counts) === 1 ? bench.bins[bin]!.alone : bench.bins[bin]!.size);

/** Every way to take none to all of each kind, up to a limit. */
export function everyCount(limit: readonly number[]): number[][] {
  return limit.reduce<number[][]>((all, most) => all.flatMap((one) => Array.from({ length: most + 1 }, (_, c) => [...one, c])), [[]]);
}

/** Every load of a board of a kind, the empty one too. */
export const everyLoad = (bench: ReadyProblem, bin: number, limit: readonly number[] = bench.count): number[][] =>
  everyCount(limit).filter((counts) => number(counts) === 0 || holds(bench, bin, counts));

/** Whether boards, so many of each kind, hold all pieces: every load of every board is tried. */
export function canHold(bench: ReadyProblem, choice: readonly number[]): boolean {
  const boards = choice.flatMap((n, bin) => Array.from({ length: n }, () => bin));
  const seen = new Set<string>();
  const visit = (b: number, left: readonly number[]): boolean => {
    if (left.every((c) => c === 0)) return true;
    if (b === boards.length || seen.has(`${b}/${left}`)) return false;
    seen.add(`${b}/${left}`);
    return everyLoad(bench, boards[b]!, left).some((load) => visit(b + 1, left.map((c, k) => c - load[k]!)));
  };
  return visit(0, bench.count);
}
