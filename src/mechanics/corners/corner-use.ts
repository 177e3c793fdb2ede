import type { CornerStatics } from '../../model/frame-results.js';
import type { EdgePull } from '../../model/frame-shape.js';
import type { Model } from '../../model/model.js';
import { braceMoment_Nmm } from './brace-capacity.js';
import { bareCornerMoment_Nmm } from './corner-demand.js';
import { bondUse, buttStress, halfLapStress, mitreStress } from './glued-face.js';
import { cornerNailUse } from './corner-nail-use.js';
import { tongueUse } from './keyed-corner.js';
import { NOTHING_HOLDS } from './nailed-corner.js';

export type Governs = 'glue' | 'nails' | 'tongue' | 'brace' | 'gusset' | 'angle' | 'nothing';

export interface CornerUse {
  readonly use: number;
  readonly governs: Governs;
}

const least = (list: readonly CornerUse[]): CornerUse =>
  list.reduce((a, b) => (b.use < a.use ? b : a), { use: NOTHING_HOLDS, governs: 'nothing' } as CornerUse);
const most = (list: readonly CornerUse[]): CornerUse => list.reduce((a, b) => (b.use > a.use ? b : a));

/** Demand over capacity of the joint itself, without brace: glue or nails, whichever holds better; they do not add. */
function jointUse(model: Model, corner: CornerStatics, duration: number): CornerUse {
  const { corners } = model.plan;
  const { w_mm, d_mm } = model.bars.top.section;
  const { bond_MPa } = model.shelf.joints;
  if (corners.cut === 'keyed') return { use: tongueUse(corner, w_mm, d_mm), governs: 'tongue' };
  const ways: CornerUse[] = [];
  if (corners.glue !== null) {
    const use =
      corners.cut === 'mitre'
        ? bondUse(mitreStress(corner, w_mm, d_mm), bond_MPa.mitre)
        : corners.cut === 'butt'
          ? bondUse(buttStress(corner, w_mm, d_mm), bond_MPa.butt)
          : bondUse(halfLapStress(corner, w_mm), bond_MPa.half_lap);
    ways.push({ use, governs: 'glue' });
  }
  if (corners.nails) ways.push({ use: cornerNailUse(model, corner, duration), governs: 'nails' });
  return least(ways);
}

/** Steps in which the sharing between a screwed plate and the joint is tried. */
const SHARES = 16;

/**
 * In-plane stiffness of the corner's own joint between its two bars, the two bar ends in series, N·mm per radian;
 * Infinity when it is rigid.
 */
function ownStiffness_Nmm_per_rad({ shape }: Model): number {
  const { plane } = shape.corner_give['top-left'];
  const compliance = [shape.bars.top, shape.bars.left].reduce(
    (sum, { E_MPa, I_plane_mm4, w_mm }) => sum + (plane * w_mm) / (E_MPa * I_plane_mm4),
    0,
  );
  return 1 / compliance;
}

/**
 * How stiffly the bare bars hold a corner of the closed frame from turning in the plane, no crossbars counted, N·mm per
 * radian: 2 E/(L_x/I_x + L_y/I_y). Source: physics section 3.
 */
function barStiffness_Nmm_per_rad({ shape }: Model): number {
  const { top, left } = shape.bars;
  return (
    1 / (shape.span_x_mm / (2 * top.E_MPa * top.I_plane_mm4) + shape.span_y_mm / (2 * left.E_MPa * left.I_plane_mm4))
  );
}

/**
 * Demand over capacity of one corner, and the part that decides.
 * Without a brace: the joint, under the moment that the statics give it. Behind a timber brace the better of two honest
 * pictures: joint and brace share as the frame solution says (the joint
 * takes its moment, the brace the rest of the bare frame's), the worse of the two deciding; or the joint has let go in
 * the plane and the brace carries the bare frame's whole moment
 * alone, the joint only what comes out of the plane. A gusset or angle lies beside the joint and carries as much more
 * as it is stiffer; screws give way before they break, so a screwed
 * plate may leave some of its part to the joint, and the joint may carry all.
 * What comes out of the plane is never left to the brace: a corner with neither glue nor nails has nothing to hold it,
 * brace or not.
 * `duration` multiplies what nails and screws hold (1.6 for a knock). Source: physics sections 8 and 14.
 */
export function cornerUse(model: Model, corner: CornerStatics, pull: EdgePull, duration: number): CornerUse {
  const joint = jointUse(model, corner, duration);
  const { brace, glue } = model.plan.corners;
  if (!brace) return joint;
  const capacity = braceMoment_Nmm(model, duration);
  const named: Governs = brace.kind === 'timber' ? 'brace' : brace.kind === 'ply-gusset' ? 'gusset' : 'angle';
  if (capacity <= 0) return joint;
  const own_Nmm = Math.abs(corner.moment_Nmm);
  const whole = Math.max(bareCornerMoment_Nmm(model.shape, pull), own_Nmm);
  const withMoment = (moment_Nmm: number): CornerUse => jointUse(model, { ...corner, moment_Nmm }, duration);
  const afterwards = most([{ use: whole / capacity, governs: named }, withMoment(0)]);
  if (brace.kind === 'timber')
    return least([most([joint, { use: (whole - own_Nmm) / capacity, governs: named }]), afterwards]);
  const own_stiffness = ownStiffness_Nmm_per_rad(model);
  const plate_stiffness = model.shape.corner_plate_Nmm_per_rad['top-left'];
  const plate_Nmm = corner.plate_moment_Nmm;
  /** What the joint takes over when the plate lets go: the corner then turns further, and the bars take their part. */
  const taken_Nmm = own_Nmm * (plate_stiffness / (own_stiffness + barStiffness_Nmm_per_rad(model)));
  const screwed = brace.kind === 'steel-angle' || glue === null;
  const shed = screwed ? Array.from({ length: SHARES + 1 }, (_, i) => i / SHARES) : [0, 1];
  const shared = shed.map((part) =>
    most([withMoment(own_Nmm + part * taken_Nmm), { use: ((1 - part) * plate_Nmm) / capacity, governs: named }]),
  );
  return least([...shared, afterwards]);
}
