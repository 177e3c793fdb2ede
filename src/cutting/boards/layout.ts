import type { PooledPiece } from '../pieces/pool.js';
import { mitreKerf_mm, nests } from './stock-problem.js';

/** A piece's place on its board, mm from the board's left end as bought. */
export interface PlacedPiece extends PooledPiece {
  /** Along its long side; of a mitred piece that is longer than its short side by `across` at each end. */
  readonly from_mm: number;
  readonly to_mm: number;
  /**
   * Which edge of the board the long side of a mitred piece lies on; mitred neighbours alternate. `both` = square ends.
   */
  readonly long_side: 'upper' | 'lower' | 'both';
}

/**
 * Lays pieces out along a board from `start_mm`: square pieces first, longest first, then each group of nested mitres,
 * longest first.
 * Returns the places and where the last piece ends.
 */
export function layOut(
  pieces: readonly PooledPiece[],
  start_mm: number,
  kerf_mm: number,
): { placed: PlacedPiece[]; end_mm: number } {
  const across = (p: PooledPiece): number => (nests(p.piece) ? p.piece.across_mm : 0);
  const sorted = [...pieces].sort(
    (p, q) => across(p) - across(q) || q.piece.cut_mm - p.piece.cut_mm || compareText(p.tag, q.tag),
  );
  const placed: PlacedPiece[] = [];
  let end_mm = start_mm;
  let turned = false;
  sorted.forEach((item, i) => {
    const before = sorted[i - 1];
    const nested = across(item) > 0 && before !== undefined && across(before) === across(item);
    turned = nested ? !turned : false;
    const gap_mm = before === undefined ? 0 : before.piece.ends === 'mitre' ? mitreKerf_mm(kerf_mm) : kerf_mm;
    const from_mm = end_mm + gap_mm - (nested ? across(item) : 0);
    end_mm = from_mm + item.piece.cut_mm;
    placed.push({
      ...item,
      from_mm,
      to_mm: end_mm,
      long_side: item.piece.ends === 'square' ? 'both' : turned ? 'lower' : 'upper',
    });
  });
  return { placed, end_mm };
}

/** Order of plain text by code units: the same on every machine. */
export function compareText(p: string, q: string): number {
  return p < q ? -1 : p > q ? 1 : 0;
}
