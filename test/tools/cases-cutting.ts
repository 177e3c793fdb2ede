import { cutBoards } from '../../src/cutting/boards/pack.js';
import type { CutProblem, CutResult } from '../../src/cutting/boards/problem.js';

/** What running a file of cutting cases says: a line per case, and how many were proven, right and in time. */
export interface CuttingCases {
  readonly lines: string[];
  readonly within: number;
  readonly total: number;
  readonly tolerance: string;
}

/** A case with several board lengths, as in `cutting.yaml`. */
export interface LengthsCase {
  readonly id: string;
  readonly kerf: number;
  readonly stock: readonly { readonly length: number; readonly price: number; readonly available?: number }[];
  readonly items: readonly { readonly length: number; readonly count: number }[];
  readonly optimumCost: number;
}

/** A case with one board length, as in `binpacking-*.json`: fewest boards. */
export interface OneLengthCase {
  readonly name: string;
  readonly capacity: number;
  readonly items: readonly { readonly length: number; readonly count: number }[];
  readonly optimum: number;
}

/** Whether a document is a file of cutting cases, of either kind. */
export function isCuttingCases(document: unknown): boolean {
  const first = casesOf(document)[0];
  return typeof first === 'object' && first !== null && 'items' in first && ('optimumCost' in first || 'optimum' in first);
}

/** The problem a case stands for; one board length has price 1, so that cost counts boards. */
export function problemOf(item: LengthsCase | OneLengthCase, timeLimit_ms: number, now: () => number): CutProblem {
  if ('capacity' in item) return { kerf: 0, stock: [{ length: item.capacity, price: 1 }], items: item.items, timeLimit_ms, now };
  return { kerf: item.kerf, stock: item.stock, items: item.items, timeLimit_ms, now };
}

/** Why a result is not a cutting of the case, recounted from the boards alone; null when it is one. */
export function wrongCutting(problem: CutProblem, result: CutResult): string | null {
  if (!result.ok) return result.reason;
  const left = problem.items.map(({ count }) => count);
  const taken = problem.stock.map(() => 0);
  let cost = 0;
  for (const { stock, pieces } of result.boards) {
    const board = problem.stock[stock];
    if (board === undefined) return 'a board that is not on offer';
    const length = pieces.reduce((sum, i) => sum + (problem.items[i]?.length ?? Number.NaN), 0) + Math.max(0, pieces.length - 1) * problem.kerf;
    if (!(length <= board.length)) return `a board of ${board.length} holds ${length}`;
    for (const i of pieces) left[i] = (left[i] ?? 0) - 1;
    taken[stock] = (taken[stock] ?? 0) + 1;
    cost += board.price;
  }
  if (left.some((n) => n !== 0)) return 'not every piece is cut exactly once';
  if (problem.stock.some(({ available }, s) => available !== undefined && available !== null && (taken[s] ?? 0) > available)) return 'more boards than there are';
  return cost === result.cost ? null : `boards cost ${cost}, not ${result.cost}`;
}

/** Runs every case of a document: `{ cases: [...] }` with several lengths within 1 s each, or an array with one length within 2 s each. */
export async function runCuttingCases(document: unknown): Promise<CuttingCases> {
  const cases = casesOf(document) as (LengthsCase | OneLengthCase)[];
  const oneLength = Array.isArray(document);
  const limit_ms = oneLength ? 2000 : 1000;
  const lines: string[] = [];
  let within = 0;
  for (const item of cases) {
    const start = performance.now();
    const problem = problemOf(item, limit_ms, () => performance.now());
    const result = cutBoards(problem);
    const took_ms = performance.now() - start;
    const expected = 'capacity' in item ? item.optimum : item.optimumCost;
    const wrong = wrongCutting(problem, result);
    const proven = result.ok && result.proven;
    const right = wrong === null && proven && result.ok && result.cost === expected && took_ms <= limit_ms;
    if (right) within++;
    const found = result.ok ? `${result.cost} (at least ${result.bound})` : result.reason;
    const fault = wrong !== null ? `WRONG: ${wrong}` : proven && result.ok && result.cost !== expected ? 'WRONG PROOF' : proven ? 'proven' : 'not proven';
    lines.push(`${right ? 'ok  ' : 'OFF '} ${'capacity' in item ? item.name : item.id}: found ${found}, expected ${expected}, ${fault}, ${took_ms.toFixed(1)} ms`);
  }
  return { lines, within, total: cases.length, tolerance: `${limit_ms / 1000} s, proven optimum` };
}

function casesOf(document: unknown): unknown[] {
  if (Array.isArray(document)) return document;
  const cases = (document as { cases?: unknown } | null)?.cases;
  return Array.isArray(cases) ? cases : [];
}
