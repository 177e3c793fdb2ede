import type { CutProblem } from './problem.js';

/**
 * One kind of board as the search sees it: the kerf after the last piece is added to its size, so sizes simply add up.
 */
export interface Bin {
  readonly size: number;
  /** Size for a piece that lies alone; never less than `size`. */
  readonly alone: number;
  readonly length: number;
  readonly price: number;
  /** Never more than there are pieces. */
  readonly most: number;
  /** Index into the problem's stock. */
  readonly stock: number;
}

/**
 * A problem made ready for the search: kerf inside the sizes, equal pieces merged, longest first, boards longest first.
 */
export interface ReadyProblem {
  readonly size: readonly number[];
  readonly count: readonly number[];
  /** Setup of the group a kind belongs to, and the group itself (−1 = none). */
  readonly setup: readonly number[];
  readonly group: readonly number[];
  readonly bins: readonly Bin[];
  readonly pieces: number;
  /** For every kind, the items of the problem it stands for: one entry per piece. */
  readonly members: readonly (readonly number[])[];
}

/**
 * Makes a problem ready. Boards too short for every piece, and boards beaten by an endless cheaper one at least as
 * long, drop out.
 */
export function makeReady(problem: CutProblem): ReadyProblem {
  const { kerf } = problem;
  const kinds = new Map<string, { size: number; group: number; members: number[] }>();
  problem.items.forEach((item, index) => {
    if (item.count === 0) return;
    const group = item.group ?? -1;
    const key = `${item.length}/${group}`;
    const kind = kinds.get(key) ?? { size: item.length + kerf, group, members: [] };
    for (let i = 0; i < item.count; i++) kind.members.push(index);
    kinds.set(key, kind);
  });
  const sorted = [...kinds.values()].sort((p, q) => q.size - p.size || p.group - q.group);
  const setupOf = (group: number): number => (group < 0 ? 0 : (problem.setups?.[group] ?? 0));
  const pieces = sorted.reduce((sum, kind) => sum + kind.members.length, 0);
  const least = Math.min(...sorted.map((kind) => kind.size + setupOf(kind.group)));
  const bins = problem.stock
    .map((stock, index): Bin => ({
      size: stock.length + kerf,
      alone: (stock.alone ?? stock.length) + kerf,
      length: stock.length,
      price: stock.price,
      most: Math.min(stock.available ?? pieces, pieces),
      stock: index,
    }))
    .filter((bin) => bin.most > 0 && bin.alone >= least);
  const kept = bins.filter(
    (bin) =>
      !bins.some(
        (other) =>
          other.most === pieces && other.price < bin.price && other.length >= bin.length && other.alone >= bin.alone,
      ),
  );
  kept.sort((p, q) => q.size - p.size || q.alone - p.alone || p.price - q.price || p.stock - q.stock);
  return {
    size: sorted.map((kind) => kind.size),
    count: sorted.map((kind) => kind.members.length),
    group: sorted.map((kind) => kind.group),
    setup: sorted.map((kind) => setupOf(kind.group)),
    members: sorted.map((kind) => kind.members),
    bins: kept,
    pieces,
  };
}

/** Length a kind of piece needs on a board by itself. */
export function needAlone(bench: ReadyProblem, kind: number): number {
  return (bench.size[kind] as number) + (bench.setup[kind] as number);
}

/**
 * Whether a kind of piece goes on a board only by itself, because it is longer than what is left of it beside knots.
 */
export function onlyAlone(bench: ReadyProblem, kind: number, bin: Bin): boolean {
  const need = needAlone(bench, kind);
  return need > bin.size && need <= bin.alone;
}
