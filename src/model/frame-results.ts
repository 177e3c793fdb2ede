import type { BarName, CornerName } from '../base/names.js';

/**
 * Forces in a bar at one place, `s` 0..1 along it: axial (tension positive), N, and the bending moments in the plane of
 * the cloth and out of it, N·mm.
 */
export interface BarForces {
  readonly s: number;
  readonly axial_N: number;
  readonly plane_Nmm: number;
  readonly out_Nmm: number;
}

/** What the linear solution says of one bar. Stations run from the left or bottom end. */
export interface BarStatics {
  /** Departure of largest magnitude of the centre line from the chord between its ends, inward positive, mm. */
  readonly inward_bow_mm: number;
  /** Same out of plane, towards the viewer positive, mm. */
  readonly dish_mm: number;
  /** Largest-magnitude rotation about the bar's own axis, front edge inward positive, mrad. */
  readonly roll_mrad: number;
  /** Largest-magnitude axial force, tension positive, N. */
  readonly axial_N: number;
  /** Largest-magnitude in-plane bending moment along the bar, N·mm. */
  readonly moment_Nmm: number;
  /** Forces along the bar, from end to end; twice where they jump. */
  readonly forces: readonly BarForces[];
  /** Stations 0..1 along the bar with inward bow from the chord (mm), for pictures. */
  readonly bow_line: readonly { readonly s: number; readonly inward_mm: number }[];
}

export interface CrossbarStatics {
  readonly name: string;
  readonly axial_N: number;
  /** Largest-magnitude departure from its chord, in the plane of the cloth, mm (signless). */
  readonly bow_mm: number;
  readonly span_mm: number;
}

/** Internal actions where a bar meets its corner: the larger of the two bar ends, magnitudes. */
export interface CornerStatics {
  /**
   * In-plane moment carried by the corner's own joint, N·mm; a plate beside it carries `plate_moment_Nmm` of its own.
   */
  readonly moment_Nmm: number;
  readonly plate_moment_Nmm: number;
  /** Out-of-plane moment and torque, N·mm. */
  readonly out_moment_Nmm: number;
  readonly torque_Nmm: number;
  /** Axial force and in-plane shear in the bar end, N (tension positive / magnitude). */
  readonly axial_N: number;
  readonly shear_N: number;
}

export interface Statics {
  readonly bars: Readonly<Record<BarName, BarStatics>>;
  readonly crossbars: readonly CrossbarStatics[];
  readonly corners: Readonly<Record<CornerName, CornerStatics>>;
  /** Largest-magnitude dish of any bar, mm, towards the viewer positive. */
  readonly dish_mm: number;
  /**
   * How far the pull racks the frame: the rising diagonal between corner nodes less the falling one, mm (0 for a
   * symmetric frame).
   */
  readonly racking_mm: number;
}

export type ModeName = 'propeller' | 'sideways';

/**
 * A shape of the whole frame for pictures: lines of points along each member, offsets in mm (scaled to unit largest).
 */
export interface ModeLine {
  readonly member: string;
  readonly points: readonly {
    readonly x: number;
    readonly y: number;
    readonly dx: number;
    readonly dy: number;
    readonly dz: number;
  }[];
}

/**
 * How a frame leaves its plane near and past its critical pull: with f the pull over the critical one, the lift y of
 * the fourth corner obeys
 * y (1 − f) + β y³ = y₀, y₀ the lift at no pull. Elastic, hence the same for boards of any stiffness; an upper bound
 * for cloth that stretches.
 */
export interface Propeller {
  /** Factor on the given pull at which this mode takes over. */
  readonly factor: number;
  readonly beta_per_mm2: number;
}

export interface Stability {
  /** Smallest positive factor on the given pull at which the flat state stops being stable; null when none exists. */
  readonly load_factor: number | null;
  readonly second_factor: number | null;
  readonly mode: ModeName | null;
  /** In words: `propeller`, `crossbar 1 bows in the plane`, `left bar bows in the plane` … */
  readonly mode_words: string | null;
  readonly second_mode_words: string | null;
  readonly mode_shape: readonly ModeLine[];
  /** The first of the modes found that lifts a corner; null when none of them does. */
  readonly propeller: Propeller | null;
}

/** The kinds of natural curvature a member can have as built into the frame. */
export type WarpKind = 'twist' | 'out' | 'plane';

/**
 * Responses to a unit natural curvature of one member (side bar or crossbar), uniform along it, on the tangent
 * stiffness.
 */
export interface Influence {
  /** Side bar name or `crossbar-1` … */
  readonly member: string;
  /**
   * `twist`: rad/mm, right-handed positive along the member; `out`, `plane`: curvature 1/mm, the free member's middle
   * going towards the viewer / in +y or +x positive.
   */
  readonly kind: WarpKind;
  /** z of the top-right corner above the plane of the other three, mm per unit. */
  readonly corner_lift: number;
  /** Out-of-plane departure of every side bar from its chord at equal stations, mm per unit. */
  readonly bar_bow: Readonly<Record<BarName, Float64Array>>;
  /** In-plane inward departure of every side bar, mm per unit. */
  readonly bar_crook: Readonly<Record<BarName, Float64Array>>;
}
