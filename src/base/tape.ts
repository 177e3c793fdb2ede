import type { UnitSystem } from './names.js';

/** The finest mark read on a shop tape: 1/16 in, or half a millimetre (practice). */
export function tapeMark_mm(units: UnitSystem): number {
  return units === 'inch' ? 25.4 / 16 : 0.5;
}

/** Up to the next mark of the tape; a length within a thousandth of a mark stays. */
export function upToMark(length_mm: number, mark_mm: number): number {
  return Math.ceil(length_mm / mark_mm - 1e-3) * mark_mm;
}

/** Down to the last mark of the tape; a length within a thousandth of a mark stays. */
export function downToMark(length_mm: number, mark_mm: number): number {
  return Math.floor(length_mm / mark_mm + 1e-3) * mark_mm;
}

/** To the nearest mark of the tape. */
export function nearestMark(length_mm: number, mark_mm: number): number {
  return Math.round(length_mm / mark_mm) * mark_mm;
}

/** Up to the next mark of the tape of this unit system. */
export const upToTape = (length_mm: number, units: UnitSystem): number => upToMark(length_mm, tapeMark_mm(units));
