/**
 * Curvature of a bar that departs by `rise` in its middle from the chord of `length` (one unit for both):
 * 8·rise/length², per unit; flat arcs.
 */
export function curvatureOf(rise: number, length: number): number {
  return (8 * rise) / length ** 2;
}

/**
 * Twist rate, rad per unit of length, of a board whose free corner stands `rise` off the table over its `width`, along
 * `length`.
 */
export function twistRateOf(rise: number, width: number, length: number): number {
  return Math.atan(rise / width) / length;
}
