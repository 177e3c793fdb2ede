import type { Stretch } from '../pile/stretches.js';

/** A length to find room for, with the saw cut that parts it from its neighbour. */
export interface Length {
  readonly length_mm: number;
  readonly kerf_mm: number;
}

/** Where each length begins on its board, mm from the marked end, in the order given. */
export type Room = readonly number[];

/** Lengths are laid out to a thousandth of a millimetre. */
const dust_mm = 1e-3;

/**
 * Finds room for lengths on the sound stretches of one board, each saw cut paid, so that what is left is of most use:
 * the squares of the lengths
 * left add up to most, so one long leftover is better than two short ones. Null when they do not fit.
 */
export function roomFor(stretches: readonly Stretch[], lengths: readonly Length[]): Room | null {
  const order = lengths
    .map((_, i) => i)
    .sort((a, b) => (lengths[b] as Length).length_mm - (lengths[a] as Length).length_mm || a - b);
  const next = stretches.map(({ from_mm }) => from_mm);
  const begins = new Array<number>(lengths.length).fill(0);
  let best: { readonly use: number; readonly begins: number[] } | null = null;
  /** Equal lengths take their stretches in order: no arrangement is tried twice. */
  const visit = (k: number, first: number): void => {
    if (k === order.length) {
      const use = stretches.reduce((sum, { to_mm }, s) => sum + Math.max(0, to_mm - (next[s] as number)) ** 2, 0);
      if (best === null || use > best.use + dust_mm) best = { use, begins: begins.slice() };
      return;
    }
    const i = order[k] as number;
    const { length_mm, kerf_mm } = lengths[i] as Length;
    for (let s = first; s < stretches.length; s++) {
      const { to_mm } = stretches[s] as Stretch;
      const from_mm = next[s] as number;
      if (from_mm + length_mm > to_mm + dust_mm) continue;
      begins[i] = from_mm;
      next[s] = from_mm + length_mm + kerf_mm;
      visit(k + 1, (lengths[order[k + 1] ?? i] as Length).length_mm === length_mm ? s : 0);
      next[s] = from_mm;
    }
  };
  visit(0, 0);
  return (best as { readonly begins: number[] } | null)?.begins ?? null;
}

/**
 * What is left of a board's stretches after pieces were cut from it, the saw cut that parts them taken off; in order
 * along the board.
 */
export function leftOf(
  stretches: readonly Stretch[],
  pieces: readonly { readonly from_mm: number; readonly length_mm: number; readonly kerf_mm: number }[],
): readonly Stretch[] {
  return stretches.flatMap(({ from_mm, to_mm }) => {
    const inside = pieces.filter((piece) => piece.from_mm >= from_mm - dust_mm && piece.from_mm < to_mm);
    const end_mm = inside.reduce(
      (end, piece) => Math.max(end, piece.from_mm + piece.length_mm + piece.kerf_mm),
      from_mm,
    );
    return to_mm - end_mm > dust_mm ? [{ from_mm: end_mm, to_mm }] : [];
  });
}
