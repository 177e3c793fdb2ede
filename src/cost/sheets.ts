import type { Supply } from '../shelf/shelf.js';
import { buyPacks, type BoughtPacks } from './packs.js';

/** Squares of this side that a sheet gives, cut in rows, a kerf between them. */
export function squaresOf([a_mm, b_mm]: readonly [number, number], side_mm: number, kerf_mm: number): number {
  const along = (length_mm: number): number => Math.floor((length_mm + kerf_mm) / (side_mm + kerf_mm) + 1e-9);
  return along(a_mm) * along(b_mm);
}

/**
 * The sheets to buy for so many right-angled triangles, two to a square: the cheapest kind alone. Null when none is
 * large enough or none has a price.
 */
export function buySheets(
  sheets: readonly Supply[],
  leg_mm: number,
  triangles: number,
  kerf_mm: number,
): { readonly sheet: Supply; readonly bought: BoughtPacks } | null {
  const side_mm = leg_mm + kerf_mm * Math.SQRT2;
  const ways = sheets.flatMap((sheet) => {
    const each = sheet.sheet_mm === null ? 0 : squaresOf(sheet.sheet_mm, side_mm, kerf_mm);
    const bought = each === 0 ? null : buyPacks(sheet.packs, Math.ceil(Math.ceil(triangles / 2) / each));
    return bought === null ? [] : [{ sheet, bought }];
  });
  return ways.sort((p, q) => p.bought.cost - q.bought.cost)[0] ?? null;
}

/**
 * Strips of one length for pieces cut from them, the longest first, each into the first strip with room: never too few.
 * Null when a piece is longer than a strip.
 */
export function stripsFor(pieces_mm: readonly number[], strip_mm: number, kerf_mm: number): number | null {
  const left: number[] = [];
  for (const piece_mm of [...pieces_mm].sort((a, b) => b - a)) {
    if (piece_mm > strip_mm) return null;
    const at = left.findIndex((room_mm) => room_mm >= piece_mm);
    if (at < 0) left.push(strip_mm - piece_mm - kerf_mm);
    else left[at] = (left[at] as number) - piece_mm - kerf_mm;
  }
  return left.length;
}
