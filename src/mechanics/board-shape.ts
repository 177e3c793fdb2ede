/**
 * Twist rate, rad per unit of length, of a board whose free corner stands `rise` off the table over its `width`, along
 * `length`.
 */
export function twistRateOf(rise: number, width: number, length: number): number {
  return Math.atan(rise / width) / length;
}
