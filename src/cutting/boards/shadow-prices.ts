import type { ReadyProblem } from './ready-problem.js';
import { bestBoardLoad } from './knapsack.js';

/**
 * What a linear relaxation is asked: price of a board of each kind, how many may be used (null = endless), and the
 * penalty for leaving a piece uncut.
 */
export interface Relaxation {
  readonly price: readonly number[];
  readonly most: readonly (number | null)[];
  readonly penalty: readonly number[];
}

interface Column {
  readonly cost: number;
  readonly entries: readonly (readonly [row: number, value: number])[];
  /** The board kind and load it stands for; absent for a surplus, a slack or an uncut piece. */
  readonly load?: { readonly bin: number; readonly counts: readonly number[] };
}

/** The relaxation's answer: a shadow price for every kind of piece, and how much of which load it uses. */
export interface Relaxed {
  readonly prices: readonly number[];
  readonly loads: readonly { readonly bin: number; readonly counts: readonly number[]; readonly share: number }[];
}

const tiny = 1e-9;

/**
 * Shadow prices of the pieces in the relaxation where boards are divisible, by column generation on a revised simplex
 * with an explicit
 * inverse. They are floating-point and maybe cut short: good for finding a strong weight, never a proof by themselves.
 */
export function shadowPrices(bench: ReadyProblem, relaxation: Relaxation, outOfTime: () => boolean): Relaxed {
  const kinds = bench.size.length;
  const bounded = relaxation.most.flatMap((most, s) => (most === null ? [] : [s]));
  const rows = kinds + bounded.length;
  const boundRow = new Map(bounded.map((s, k) => [s, kinds + k]));
  const b = Float64Array.from([...bench.count, ...bounded.map((s) => relaxation.most[s] as number)]);
  const inverse = new Float64Array(rows * rows);
  for (let r = 0; r < rows; r++) inverse[r * rows + r] = 1;
  const basisCost = Float64Array.from({ length: rows }, (_, r) => (r < kinds ? (relaxation.penalty[r] as number) : 0));
  const x = b.slice();
  const basis = new Array<Column['load']>(rows).fill(undefined);
  const dual = new Float64Array(rows);
  const direction = new Float64Array(rows);

  for (let round = 0; round < 50 * rows + 200; round++) {
    dual.fill(0);
    for (let r = 0; r < rows; r++) {
      const cost = basisCost[r] as number;
      if (cost !== 0)
        for (let c = 0; c < rows; c++) dual[c] = (dual[c] as number) + cost * (inverse[r * rows + c] as number);
    }
    if (round % 16 === 15 && outOfTime()) break;
    const column = entering(bench, relaxation, boundRow, dual, kinds, rows);
    if (column === null) break;
    direction.fill(0);
    for (const [row, value] of column.entries)
      for (let r = 0; r < rows; r++)
        direction[r] = (direction[r] as number) + value * (inverse[r * rows + row] as number);
    let pivot = -1;
    let step = Infinity;
    for (let r = 0; r < rows; r++) {
      const d = direction[r] as number;
      if (d <= 1e-7) continue;
      const ratio = Math.max(0, x[r] as number) / d;
      if (ratio < step - tiny || (ratio < step + tiny && pivot >= 0 && d > (direction[pivot] as number))) {
        pivot = r;
        step = ratio;
      }
    }
    if (pivot < 0) break;
    const at = pivot * rows;
    const scale = 1 / (direction[pivot] as number);
    for (let c = 0; c < rows; c++) inverse[at + c] = (inverse[at + c] as number) * scale;
    for (let r = 0; r < rows; r++) {
      const d = direction[r] as number;
      if (r === pivot || d === 0) continue;
      x[r] = (x[r] as number) - d * step;
      for (let c = 0; c < rows; c++)
        inverse[r * rows + c] = (inverse[r * rows + c] as number) - d * (inverse[at + c] as number);
    }
    x[pivot] = step;
    basisCost[pivot] = column.cost;
    basis[pivot] = column.load;
  }
  const loads = basis.flatMap((load, r) =>
    load === undefined || (x[r] as number) < 1e-6 ? [] : [{ ...load, share: x[r] as number }],
  );
  return { prices: Array.from(dual.slice(0, kinds)), loads };
}

/** The column that improves most: a surplus, a slack, or the best load of some board. Null when nothing does. */
function entering(
  bench: ReadyProblem,
  relaxation: Relaxation,
  boundRow: ReadonlyMap<number, number>,
  dual: Float64Array,
  kinds: number,
  rows: number,
): Column | null {
  let best = -1e-7 * Math.max(1, ...relaxation.price);
  let column: Column | null = null;
  for (let r = 0; r < rows; r++) {
    const reduced = r < kinds ? (dual[r] as number) : -(dual[r] as number);
    if (reduced < best) {
      best = reduced;
      column = { cost: 0, entries: [[r, r < kinds ? -1 : 1]] };
    }
  }
  if (column !== null) return column;
  const value = Array.from(dual.slice(0, kinds), (p) => Math.max(0, p));
  bench.bins.forEach((bin, s) => {
    const row = boundRow.get(s);
    const load = bestBoardLoad(bench, value, bin, bench.count, 3000);
    const worth = load.counts.reduce((sum, c, i) => sum + c * (value[i] as number), 0);
    const price = relaxation.price[s] as number;
    const reduced = price - (row === undefined ? 0 : (dual[row] as number)) - worth;
    if (reduced >= best) return;
    best = reduced;
    const entries: [number, number][] = load.counts.flatMap((c, i): [number, number][] => (c > 0 ? [[i, c]] : []));
    if (row !== undefined) entries.push([row, 1]);
    column = { cost: price, entries, load: { bin: s, counts: load.counts } };
  });
  return column;
}

/** Shadow prices scaled to whole numbers, so that the weight made of them is exact. */
export function wholePrices(prices: readonly number[]): number[] {
  const top = Math.max(...prices);
  return top <= 0 ? prices.map(() => 0) : prices.map((p) => Math.floor(Math.max(0, (p / top) * 1e6)));
}
