import type { JointGive } from '../base/joint-give.js';
import type { BarName, CornerName } from '../base/names.js';

export type { JointGive };

/**
 * The cross-section of one bar as built, in N and mm. `w` lies in the plane of the cloth, `d` at right angles to it.
 */
export interface Section {
  readonly w_mm: number;
  readonly d_mm: number;
  readonly A_mm2: number;
  /** Second moment for bending in the plane of the cloth. */
  readonly I_plane_mm4: number;
  /** Second moment for bending out of that plane. */
  readonly I_out_mm4: number;
  /** Saint-Venant torsion constant. */
  readonly J_mm4: number;
  readonly E_MPa: number;
  readonly G_MPa: number;
}

export interface CrossbarShape {
  /** `crossbar-1` … in the plan's order. */
  readonly name: string;
  readonly runs: 'upright' | 'level';
  /** Fraction of the centre-line span: from the left for an upright, from the bottom for a level one. */
  readonly at: number;
  readonly section: Section;
  /** Joint give at both ends, in widths of this crossbar; 0 = rigid. */
  readonly give: JointGive;
}

export interface BraceShape {
  readonly corner: CornerName;
  /** Distance from the corner along both centre lines. */
  readonly leg_mm: number;
  readonly section: Section;
  /** Joint give at both ends, in widths of this brace; 0 = rigid. */
  readonly give: JointGive;
}

/** Everything the mechanics needs to know of a frame: centre lines, sections, joints. No wood, no cloth. */
export interface FrameShape {
  /** Centre-line length of top and bottom (physics: 2a), and of left and right (2b). */
  readonly span_x_mm: number;
  readonly span_y_mm: number;
  readonly bars: Readonly<Record<BarName, Section>>;
  /** How far in front of each bar's centre line the pull acts (d/2 + lip), mm. */
  readonly eccentricity_mm: Readonly<Record<BarName, number>>;
  /** Joint give of a bar end at its corner, in widths of that bar; 0 = rigid. */
  readonly corner_give: Readonly<Record<CornerName, JointGive>>;
  /**
   * What a plate across a corner adds in the plane, N·mm per radian between its two bars, in parallel with the corner's
   * own joint; its hold on
   * either bar is already in it. 0 = no plate, or one that nothing holds. A corner rigid in the plane leaves it nothing
   * to do.
   */
  readonly corner_plate_Nmm_per_rad: Readonly<Record<CornerName, number>>;
  readonly crossbars: readonly CrossbarShape[];
  readonly braces: readonly BraceShape[];
}

/** A pull in N/mm: x acts along the width (on left and right), y along the height (on top and bottom). */
export interface EdgePull {
  readonly x: number;
  readonly y: number;
}

/**
 * Point forces on a side bar (hanging hardware), global axes, N; `at` is the fraction along the bar from its left or
 * bottom end.
 */
export interface PointForce {
  readonly bar: BarName;
  readonly at: number;
  readonly Fx: number;
  readonly Fy: number;
  readonly Fz: number;
}
