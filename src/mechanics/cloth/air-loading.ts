import { airCoefficientFree } from './air-free.js';
import { airCoefficientWalled } from './air-walled.js';
import { aspectRatio, shorterSide_m, type ClothSpan } from '../../fit/span.js';

/**
 * How the air can move round the cloth: `free` past all edges, or `walled` as if the frame stood in a wide wall. A real
 * frame lies between.
 */
export type AirSurround = 'free' | 'walled';

/** Density of air in a heated room near sea level, kg/m³ (practice). */
export const roomAir_kg_per_m3 = 1.2;

/**
 * Mass of air that moves with the cloth in its lowest note, kg per m² of cloth: C · air density · shorter side.
 * For a light cloth this is as much as the cloth itself: leaving it out halves the pull read from a note.
 */
export function airMass_kg_per_m2(span: ClothSpan, surround: AirSurround, air_kg_per_m3 = roomAir_kg_per_m3): number {
  const aspect = aspectRatio(span);
  const C = surround === 'free' ? airCoefficientFree(aspect) : airCoefficientWalled(aspect);
  return C * air_kg_per_m3 * shorterSide_m(span);
}
