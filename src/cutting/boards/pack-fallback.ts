import { makeReady, onlyAlone, type ReadyProblem } from './ready-problem.js';
import { cutBoards } from './pack.js';
import type { CutProblem, CutResult, Cutting } from './problem.js';

const mostPatterns = 12_000;
/** Fewer where nodes are counted instead of time: each node then takes a few milliseconds at most. */
const mostCountedPatterns = 3000;

/** How long the integer program may take: branch-and-bound nodes, the same on every machine, or milliseconds. */
export type Patience = { readonly nodes: number } | { readonly ms: number };

/**
 * The part of an integer program's solver used here: model text in, status and values out; it blocks until done or out
 * of time.
 */
export interface IntegerProgram {
  solve(
    problem: string,
    options: {
      readonly mip_rel_gap: number;
      readonly mip_abs_gap: number;
      readonly time_limit?: number;
      readonly mip_max_nodes?: number;
      readonly output_flag: boolean;
    },
  ): {
    readonly Status: string;
    readonly Columns: Readonly<Record<string, { readonly Primal?: number }>>;
  };
}

/** Fetches the solver, only when it is needed; null when there is none. */
export type LoadSolver = () => Promise<IntegerProgram | null>;

/** A full load of one board. */
export interface FullLoad {
  readonly bin: number;
  readonly counts: readonly number[];
}

/**
 * Like `cutBoards`; when the search ran out of time an integer program over all full loads, solved by the solver that
 * is passed in
 * (loaded only then), gets `patience` more to close the gap: counted in nodes, the same on every machine, or in time.
 * What it finds is recounted here; when it cannot be loaded or does not finish, the search's answer and gap stand.
 */
export async function cutBoardsExactly(
  problem: CutProblem,
  patience: Patience,
  load: LoadSolver,
  search: (problem: CutProblem) => CutResult = cutBoards,
): Promise<CutResult> {
  const found = search(problem);
  if (found.ok ? found.proven : found.reason !== 'undecided') return found;
  const bench = makeReady(problem);
  const loads = fullLoads(bench, 'nodes' in patience ? mostCountedPatterns : mostPatterns);
  if (loads === null) return found;
  const solver = await load();
  if (solver === null) return found;
  return solveByLoads(solver, problem, bench, loads, found.ok ? found : null, patience) ?? found;
}

/** Every load to which no further piece can be added, for every kind of board; null when there are more than `most`. */
export function fullLoads(bench: ReadyProblem, most: number): FullLoad[] | null {
  const { size, setup, group, count } = bench;
  const found: FullLoad[] = [];
  const counts = size.map(() => 0);
  let overflow = false;
  bench.bins.forEach((bin, b) => {
    const visit = (k: number, room: number): void => {
      if (overflow) return;
      if (k === size.length) {
        if (
          counts.some((c) => c > 0) &&
          !size.some((_, i) => (counts[i] as number) < (count[i] as number) && need(i) <= room)
        )
          found.push({ bin: b, counts: counts.slice() });
        overflow = found.length > most;
        return;
      }
      const fresh = need(k) - (size[k] as number);
      for (
        let c = Math.max(0, Math.min(count[k] as number, Math.floor((room - fresh) / (size[k] as number))));
        c >= 0;
        c--
      ) {
        counts[k] = c;
        visit(k + 1, c > 0 ? room - fresh - c * (size[k] as number) : room);
      }
      counts[k] = 0;
    };
    const need = (k: number): number => {
      const g = group[k] as number;
      const present = g >= 0 && counts.some((c, i) => c > 0 && i !== k && group[i] === g);
      return (size[k] as number) + (g >= 0 && !present && (counts[k] as number) === 0 ? (setup[k] as number) : 0);
    };
    visit(0, bin.size);
    size.forEach((_, k) => {
      if (onlyAlone(bench, k, bin)) found.push({ bin: b, counts: size.map((__, i) => (i === k ? 1 : 0)) });
    });
  });
  return overflow ? null : found;
}

/**
 * The least cost by the integer program over `loads`, recounted; null when it found nothing in time or nothing better
 * than `known`.
 */
export function solveByLoads(
  solver: IntegerProgram,
  problem: CutProblem,
  bench: ReadyProblem,
  loads: readonly FullLoad[],
  known: Cutting | null,
  patience: Patience,
): Cutting | null {
  const price = (load: FullLoad): number => bench.bins[load.bin]?.price as number;
  const sum = (terms: readonly string[]): string => (terms.length === 0 ? '0 x0' : terms.join(' + '));
  const cost = sum(loads.map((load, j) => `${price(load)} x${j}`));
  const lines = ['Minimize', ` cost: ${cost}`, 'Subject To'];
  bench.count.forEach((c, k) =>
    lines.push(
      ` piece${k}: ${sum(loads.flatMap((load, j) => ((load.counts[k] as number) > 0 ? [`${load.counts[k]} x${j}`] : [])))} >= ${c}`,
    ),
  );
  bench.bins.forEach((bin, b) => {
    if (bin.most < bench.pieces)
      lines.push(` board${b}: ${sum(loads.flatMap((load, j) => (load.bin === b ? [`1 x${j}`] : [])))} <= ${bin.most}`);
  });
  if (known !== null) lines.push(` cheaper: ${cost} <= ${known.cost - 1}`);
  lines.push('General', ` ${loads.map((_, j) => `x${j}`).join(' ')}`, 'End');
  const limit = 'nodes' in patience ? { mip_max_nodes: patience.nodes } : { time_limit: patience.ms / 1000 };
  const options = { mip_rel_gap: 0, mip_abs_gap: 0.5, output_flag: false, ...limit };
  const solution = solver.solve(lines.join('\n'), options);
  if (solution.Status === 'Infeasible' && known !== null) return { ...known, proven: true, bound: known.cost, gap: 0 };
  const uses = loads.map((_, j) => Math.round(solution.Columns[`x${j}`]?.Primal ?? 0));
  return recount(problem, bench, loads, uses, solution.Status === 'Optimal', known);
}

/**
 * Counts every piece and board of what the integer program says; null when it is no cutting, or no better than what is
 * known.
 */
function recount(
  problem: CutProblem,
  bench: ReadyProblem,
  loads: readonly FullLoad[],
  uses: readonly number[],
  optimal: boolean,
  known: Cutting | null,
): Cutting | null {
  const members = bench.members.map((list) => list.slice());
  const left = bench.bins.map((bin) => bin.most);
  const boards: { stock: number; pieces: number[] }[] = [];
  let cost = 0;
  let length = 0;
  loads.forEach((load, j) => {
    const bin = bench.bins[load.bin] as ReadyProblem['bins'][number];
    for (let n = 0; n < (uses[j] as number); n++) {
      const pieces = load.counts.flatMap((c, k) => (members[k] as number[]).splice(0, c));
      if (pieces.length === 0) continue;
      boards.push({ stock: bin.stock, pieces });
      left[load.bin] = (left[load.bin] as number) - 1;
      cost += bin.price;
      length += bin.length;
    }
  });
  if (members.some((list) => list.length > 0) || left.some((n) => n < 0)) return null;
  if (known !== null && cost >= known.cost) return null;
  const cut = problem.items.reduce((total, item) => total + item.length * item.count, 0);
  const bound = optimal ? cost : (known?.bound ?? 0);
  return {
    ok: true,
    boards,
    cost,
    waste: length - cut,
    proven: optimal,
    tiesProven: false,
    bound,
    gap: cost === 0 ? 0 : (cost - bound) / cost,
  };
}
