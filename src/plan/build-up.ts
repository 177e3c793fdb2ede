import type { Lumber } from '../shelf/shelf.js';
import type { Lay, Stack } from './plan.js';

/** Outside size of a bar as built, mm: `w` in the plane of the cloth, `d` at right angles to it. */
export interface BuiltSize {
  readonly w_mm: number;
  readonly d_mm: number;
}

/**
 * The size of one board as it is laid: flat puts its wide side in the plane of the cloth, edge puts it off the wall.
 */
export function laidSize(lumber: Pick<Lumber, 'thickness_mm' | 'width_mm'>, lay: Lay): BuiltSize {
  return lay === 'flat'
    ? { w_mm: lumber.width_mm, d_mm: lumber.thickness_mm }
    : { w_mm: lumber.thickness_mm, d_mm: lumber.width_mm };
}

/** The size of a bar of several plies: side by side they add up in w, front to back in d. */
export function builtSize(
  lumber: Pick<Lumber, 'thickness_mm' | 'width_mm'>,
  lay: Lay,
  plies: number,
  stack: Stack,
): BuiltSize {
  const { w_mm, d_mm } = laidSize(lumber, lay);
  return stack === 'side-by-side' ? { w_mm: w_mm * plies, d_mm } : { w_mm, d_mm: d_mm * plies };
}

/** The thickness of one ply in the direction a ply screw is driven, mm. */
export function plyThickness_mm(lumber: Pick<Lumber, 'thickness_mm' | 'width_mm'>, lay: Lay, stack: Stack): number {
  const { w_mm, d_mm } = laidSize(lumber, lay);
  return stack === 'side-by-side' ? w_mm : d_mm;
}
