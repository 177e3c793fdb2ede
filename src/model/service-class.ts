/**
 * Service class of EN 1995-1-1 clause 2.3.1.3 from the room's highest relative humidity (fraction): 1 up to 65 %, 2 up
 * to 85 %, else 3.
 */
export function serviceClass(humidity_high: number): 1 | 2 | 3 {
  return humidity_high <= 0.65 ? 1 : humidity_high <= 0.85 ? 2 : 3;
}
