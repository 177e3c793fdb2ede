import type { BarName, CornerName } from '../base/names.js';
import type { Bond, Lay, Pairing, Plan, Stack } from '../plan/plan.js';
import type { Lumber, Shelf } from '../shelf/shelf.js';
import type { EdgePull, FrameShape, JointGive, PointForce, Section } from './frame-shape.js';
import type { Plate } from './plates.js';
import type { Influence, Propeller, Stability, Statics } from './frame-results.js';

/** One bar or crossbar as built: which boards, how they lie, what section they make. */
export interface MemberBuild {
  /** `top` … or `crossbar-1` … */
  readonly name: string;
  readonly stock: Lumber;
  readonly lay: Lay;
  readonly plies: number;
  readonly stack: Stack;
  readonly bond: Bond;
  readonly pairing: Pairing;
  /** Size of one ply in the plane of the cloth and at right angles to it. */
  readonly ply_w_mm: number;
  readonly ply_d_mm: number;
  /** Section for shape (slip modulus K). */
  readonly section: Section;
  /** Section for stability (2/3 K). */
  readonly section_stability: Section;
  /** Times an in-plane moment over `section.I_plane_mm4`: the largest bending stress in any of its plies. */
  readonly fibre_mm: number;
  /** Centre-line length between the corners or crossings it joins. */
  readonly span_mm: number;
  /** Mass of the wood, from outside lengths. */
  readonly mass_kg: number;
}

/** A plan made into something that can be solved: geometry, sections, joints and pulls. */
export interface Model {
  readonly plan: Plan;
  readonly shelf: Shelf;
  readonly bars: Readonly<Record<BarName, MemberBuild>>;
  readonly crossbars: readonly MemberBuild[];
  /** Timber braces; empty for gussets and angles, which only stiffen the joint. */
  readonly braces: readonly {
    readonly corner: CornerName;
    readonly leg_mm: number;
    readonly stock: Lumber;
    readonly section: Section;
    readonly give: JointGive;
    readonly mass_kg: number;
  }[];
  /** The plates across the corners as built; null where there are none. */
  readonly plate: Plate | null;
  readonly shape: FrameShape;
  readonly shape_stability: FrameShape;
  /**
   * The stability shape with softer joints: each gives twice its own, at least the shelf's `second-give` (8), in every
   * way; plates half as stiff.
   */
  readonly shape_soft: FrameShape;
  readonly working: EdgePull;
  readonly peak: EdgePull;
  readonly accidental: EdgePull;
  /** Creep factor by service class of the room. */
  readonly k_def: number;
  readonly service_class: 1 | 2 | 3;
  readonly weight: {
    readonly wood_kg: number;
    readonly cloth_kg: number;
    readonly ground_kg: number;
    readonly paint_kg: number;
    readonly hardware_kg: number;
    readonly total_kg: number;
  };
}

/** The solved frame: shape at the three pulls, stability, and how natural warp moves it. */
export interface Solution {
  readonly working: Statics;
  /** The part of `working` that the pull along the width makes by itself. */
  readonly working_x: Statics;
  readonly peak: Statics;
  readonly accidental: Statics;
  /** Working pull with the hanging forces; null when it does not hang by a wire. */
  readonly hung: Statics | null;
  /** Factors on the working pull, mean stiffness. */
  readonly stability: Stability;
  /** Factor on the peak pull distribution, mean stiffness. */
  readonly peak_factor: number | null;
  /** The first mode at the peak pull that lifts a corner, as `stability.propeller` is at the working pull. */
  readonly peak_propeller: Propeller | null;
  /** The same with every joint softer, as `shape_soft` has it. */
  readonly soft_peak_factor: number | null;
  /** Null when the flat frame is already unstable at working pull. */
  readonly influence: readonly Influence[] | null;
  /** The same without any pull, which every frame has. */
  readonly influence_unpulled: readonly Influence[];
  readonly hanging_forces: readonly PointForce[];
}

/** What the judging side needs from outside the mechanics when facts are computed. */
export interface FactSettings {
  /** Limit on corner lift that defines `warp.corner_lift_chance`, mm. */
  readonly corner_lift_limit_mm: number;
  /** Limit on natural bow of each bar that defines `warp.bar_bow_chance`, mm. */
  readonly bar_bow_limit_mm: Readonly<Record<BarName, number>>;
  readonly seed: number;
  /** What is sampled is as sure as from counting so many imagined frames; below 1 nothing is. */
  readonly samples: number;
}
