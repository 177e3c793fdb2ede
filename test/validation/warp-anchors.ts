import { twistRateOf } from '../../src/mechanics/board-shape.js';

/**
 * Curvature of a bar that departs by `rise` in its middle from the chord of `length` (one unit for both):
 * 8·rise/length², per unit; flat arcs.
 */
export function curvatureOf(rise: number, length: number): number {
  return (8 * rise) / length ** 2;
}

/**
 * Curvature (1/m) of a board whose two edges shrink along the grain by strains differing by `strain`, a `breadth_m`
 * apart.
 */
export function gradientCurvature_per_m(strain: number, breadth_m: number): number {
  return strain / breadth_m;
}

/**
 * Twist rate (rad/m) that spiral grain gives a board as it dries: 2 θ s / (r (1 + s)), θ the grain angle (rad), s the
 * shrinkage along the rings
 * (fraction), r the distance from the pith (m). Source stevens-johnston-1960 (from memory); it explains about two
 * thirds of what is measured.
 */
export function spiralTwist_rad_per_m(grain_rad: number, shrinkage: number, from_pith_m: number): number {
  return (2 * grain_rad * shrinkage) / (from_pith_m * (1 + shrinkage));
}

/** A published figure to hold the shelf's spread against; the spread itself is a proposal. */
export interface WarpAnchor {
  readonly what: string;
  /** Degrees per metre; null when the figure speaks of curvature. */
  readonly twist_deg_per_m: number | null;
  /** 1/m; null when the figure speaks of twist. */
  readonly curve_per_m: number | null;
  /** Key in `rules/sources.yaml`. */
  readonly source: string;
}

const deg_per_rad = 180 / Math.PI;
const inch_m = 0.0254;
const stud_length_m = 96 * inch_m;

/** What others have measured or allow, in the units of the shelf's spread. */
export const publishedAnchors: readonly WarpAnchor[] = [
  curve('most bow of an 8 ft stud of the Stud grade', curvatureOf(0.75 * inch_m, stud_length_m), 'wwpa-1998'),
  curve('most crook of an 8 ft stud of the Stud grade', curvatureOf(0.25 * inch_m, stud_length_m), 'wwpa-1998'),
  twist('most twist of an 8 ft stud of the Stud grade', twistRateOf(0.375, 3.5, stud_length_m), 'wwpa-1998'),
  curve('most bow of structural timber above class C18', curvatureOf(0.01, 2), 'en14081-1'),
  curve('most crook of structural timber above class C18', curvatureOf(0.008, 2), 'en14081-1'),
  twist('most twist of structural timber above class C18', twistRateOf(1, 25, 2), 'en14081-1'),
  twist('mean twist of studs at 18 % moisture', twistRateOf(7.3, 100, 2), 'pre-twisting-chalmers'),
  twist('least twist of unrestrained spruce boards next to the pith', 10 / deg_per_rad, 'twist-spruce-2011'),
  twist(
    'twist of a board 50 mm from the pith with 2° of spiral grain, shrunk 2 % along its rings',
    spiralTwist_rad_per_m(2 / deg_per_rad, 0.02, 0.05),
    'stevens-johnston-1960',
  ),
  curve(
    'bow when one face of a 38 mm board shrinks lengthwise as sticks do on average and the other not at all, over 6 % of moisture',
    gradientCurvature_per_m(0.000111 * 6, 0.038),
    'bow-crook-wfs-1542',
  ),
];

function curve(what: string, curve_per_m: number, source: string): WarpAnchor {
  return { what, twist_deg_per_m: null, curve_per_m, source };
}

function twist(what: string, rad_per_m: number, source: string): WarpAnchor {
  return { what, twist_deg_per_m: rad_per_m * deg_per_rad, curve_per_m: null, source };
}
