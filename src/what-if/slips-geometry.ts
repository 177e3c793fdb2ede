import { mitreGap_mm } from '../mechanics/moisture/mitre-gap.js';

const rad_per_deg = Math.PI / 180;

/**
 * Gap at one end of a mitre whose saw stood off by an angle in the plane, mm, the frame held square: bar width × √2 ×
 * angle. Angle in degrees.
 */
export function gapOfSawAngle_mm(bar_w_mm: number, off_deg: number): number {
  return mitreGap_mm(bar_w_mm, off_deg * rad_per_deg, 0);
}

/**
 * Difference of the two diagonals of a frame pushed over sideways, mm: √((a+x)²+b²) − √((a−x)²+b²), `a` and `b` its
 * outside width and height,
 * `x` how far the top has gone over the bottom. Near enough 2ax/D.
 */
export function diagonalsOfPush_mm(width_mm: number, height_mm: number, pushed_mm: number): number {
  return Math.hypot(width_mm + pushed_mm, height_mm) - Math.hypot(width_mm - pushed_mm, height_mm);
}

/** The same difference of diagonals when every corner is off square by an angle in degrees. */
export function diagonalsOfAngle_mm(width_mm: number, height_mm: number, off_deg: number): number {
  return diagonalsOfPush_mm(width_mm, height_mm, height_mm * Math.tan(off_deg * rad_per_deg));
}

/**
 * What each corner is off square, rad, when one of two opposite bars is too long and the frame is set so that its
 * diagonals agree:
 * an even trapezium, its corners off by the angle whose sine is half the surplus over the bars between.
 */
export function cornerAngleOfLongBar_rad(surplus_mm: number, between_mm: number): number {
  return Math.asin(surplus_mm / (2 * between_mm));
}

/** Gap at one end of each mitre of that even trapezium, mm. */
export function gapOfLongBar_mm(bar_w_mm: number, surplus_mm: number, between_mm: number): number {
  return mitreGap_mm(bar_w_mm, cornerAngleOfLongBar_rad(surplus_mm, between_mm), 0);
}

/**
 * Difference of the diagonals, mm, when instead one end of the too long bar is square and the other takes the surplus:
 * √((a+x)²+b²) − √(a²+b²).
 */
export function diagonalsOfLongBar_mm(bar_mm: number, between_mm: number, surplus_mm: number): number {
  return Math.hypot(bar_mm + surplus_mm, between_mm) - Math.hypot(bar_mm, between_mm);
}

/**
 * How far the end of a bar stands off the table, mm, when the face of its one cut leans and is glued up tight: the bar
 * turns by that
 * angle about the line of the cut, so it rises by length × sin(lean) × sin(angle between bar and cut): 45° for a mitre,
 * 90° for a square cut.
 */
export function riseOfTilt_mm(bar_mm: number, tilt_deg: number, cut_deg: 45 | 90): number {
  return bar_mm * Math.sin(tilt_deg * rad_per_deg) * Math.sin(cut_deg * rad_per_deg);
}
