import type { Piece, PieceList } from './piece.js';

/** What the pieces make when put together, found from the pieces alone. */
export interface Assembly {
  readonly width_mm: number;
  readonly height_mm: number;
  /** Widest gap left at any corner or crossbar end, mm; 0 when all joints close. */
  readonly opening_mm: number;
  /** Most that a crossbar is longer than the room for it, mm: to be planed off. */
  readonly tight_mm: number;
  /** True when every joint closes and the outside is the face, or larger by less than one mark of the tape. */
  readonly fits: boolean;
  /** What does not fit, a sentence each. */
  readonly faults: readonly string[];
}

/**
 * Puts the pieces of one frame together: outside size, gaps at corners and crossbar ends, and whether that is the face
 * of the plan.
 */
export function piecesAssemble(list: PieceList): Assembly {
  const { w_mm, mark_mm, face, corner } = list;
  /** The tape lets a thousandth of a mark pass. */
  const dust_mm = 1.001e-3 * mark_mm;
  const faults = [...list.faults];
  const outer = (about: string): { long_mm: number; short_mm: number } => {
    const plies = list.pieces.filter((piece) => piece.about === about);
    const first = plies.find((piece) => piece.ply === 1);
    const last = plies.at(-1);
    if (first === undefined || last === undefined) {
      faults.push(`There is no piece for ${about}.`);
      return { long_mm: 0, short_mm: 0 };
    }
    return { long_mm: finished(first).long_mm, short_mm: finished(last).short_mm };
  };
  const [top, bottom, left, right] = [outer('top'), outer('bottom'), outer('left'), outer('right')];
  const pairs = Math.max(Math.abs(top.long_mm - bottom.long_mm), Math.abs(left.long_mm - right.long_mm));
  if (pairs > dust_mm) faults.push('Opposite bars differ in length.');
  const between = corner === 'butt' ? 2 * w_mm : 0;
  const width_mm = Math.max(top.long_mm, bottom.long_mm) + between;
  const height_mm = Math.max(left.long_mm, right.long_mm);
  let opening_mm = pairs;
  if (corner === 'mitre')
    for (const bar of [top, bottom, left, right]) {
      // At 45° the long and short points of a bar as wide as w lie w apart at each end: anything more or less shows as
      // a gap.
      const off_mm = bar.long_mm - bar.short_mm - 2 * w_mm;
      if (off_mm > mark_mm + dust_mm) faults.push('The inner plies are too short for the corners to close.');
      if (off_mm < -dust_mm) opening_mm = Math.max(opening_mm, -off_mm);
    }
  let tight_mm = 0;
  /** In keyed frames a crossbar's tongues reach to the middle of either bar. */
  const tongues_mm = corner === 'keyed' ? w_mm : 0;
  for (const piece of list.pieces) {
    if (piece.part === 'bar') continue;
    const room_mm =
      piece.part === 'brace'
        ? piece.exact_mm
        : (piece.runs === 'upright' ? height_mm : width_mm) - 2 * w_mm + tongues_mm;
    const over_mm = finished(piece).long_mm - room_mm;
    opening_mm = Math.max(opening_mm, -over_mm);
    if (over_mm < -dust_mm) faults.push(`${piece.label} is shorter than the room for it.`);
    if (over_mm >= mark_mm) faults.push(`${piece.label} is more than a mark of the tape longer than the room for it.`);
    if (piece.part === 'crossbar') tight_mm = Math.max(tight_mm, over_mm);
  }
  for (const [name, size_mm, wanted_mm] of [
    ['width', width_mm, face.width_mm],
    ['height', height_mm, face.height_mm],
  ] as const)
    if (size_mm < wanted_mm - dust_mm || size_mm >= wanted_mm + mark_mm)
      faults.push(`The ${name} comes out ${size_mm} mm instead of ${wanted_mm} mm.`);
  return {
    width_mm,
    height_mm,
    opening_mm: opening_mm > dust_mm ? opening_mm : 0,
    tight_mm,
    fits: faults.length === 0 && opening_mm <= dust_mm,
    faults,
  };
}

/** Long and short point of a piece once all its cuts are made. */
function finished(piece: Piece): { long_mm: number; short_mm: number } {
  const { cut_mm, short_mm } = piece.later ?? piece;
  return { long_mm: cut_mm, short_mm };
}
