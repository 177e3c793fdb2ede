import type { CornerStatics } from '../../model/frame-results.js';
import type { EdgePull } from '../../model/frame-shape.js';
import { cornerGive } from '../../model/joint-give.js';
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

const least = (list: readonly CornerUse[]): CornerUse => list.reduce((a, b) => (b.use < a.use ? b : a), { use: NOTHING_HOLDS, governs: 'nothing' } as CornerUse);
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

/** Share of the in-plane moment that stays in the joint when a gusset or angle lies beside it: stiffness goes as one over give. */
function jointShare(model: Model): number {
  const { plan, shelf } = model;
  const braced = cornerGive({ ...plan, corners: { ...plan.corners, give: null } }, shelf.joints).plane;
  const bare = cornerGive({ ...plan, corners: { ...plan.corners, give: null, brace: null } }, shelf.joints).plane;
  return bare > 0 ? Math.min(1, braced / bare) : 1;
}

/**
 * Demand over capacity of one corner, and the part that decides.
 * Without a brace: the joint. With one, the better of two honest pictures: joint and brace share as the frame solution says (the joint takes its moment, the brace the rest of the
 * bare frame's), the worse of the two deciding; or the joint has let go in the plane and the brace carries the bare frame's whole moment alone, the joint only what comes
 * out of the plane. Gussets and angles lie beside the joint: they share its moment as the shelf's gives say (the joint's share = give with brace over give without);
 * screws give way before they break, so a screwed plate may leave more of it to the joint. The joint alone is a third way.
 * What comes out of the plane is never left to the brace: a corner with neither glue nor nails has nothing to hold it, brace or not.
 * `duration` multiplies what nails and screws hold (1.6 for a knock). Source: physics section 8.
 */
export function cornerUse(model: Model, corner: CornerStatics, pull: EdgePull, duration: number): CornerUse {
  const joint = jointUse(model, corner, duration);
  const brace = model.plan.corners.brace;
  if (!brace) return joint;
  const capacity = braceMoment_Nmm(model, duration);
  const named: Governs = brace.kind === 'timber' ? 'brace' : brace.kind === 'ply-gusset' ? 'gusset' : 'angle';
  if (capacity <= 0) return joint;
  const whole = Math.max(bareCornerMoment_Nmm(model.shape, pull), Math.abs(corner.moment_Nmm));
  const loose = jointUse(model, { ...corner, moment_Nmm: 0 }, duration);
  const alone = { use: whole / capacity, governs: named };
  const afterwards = most([alone, loose]);
  if (brace.kind !== 'timber') {
    const shared = (share: number): CornerUse => {
      const part = jointUse(model, { ...corner, moment_Nmm: share * corner.moment_Nmm }, duration);
      return most([part, { use: ((1 - share) * Math.abs(corner.moment_Nmm)) / capacity, governs: named }]);
    };
    const elastic = jointShare(model);
    const screwed = brace.kind === 'steel-angle' || model.plan.corners.glue === null;
    const shares = screwed ? Array.from({ length: SHARES + 1 }, (_, i) => elastic + ((1 - elastic) * i) / SHARES) : [elastic];
    return least([...shares.map(shared), afterwards, joint]);
  }
  const shared = most([joint, { use: (whole - Math.abs(corner.moment_Nmm)) / capacity, governs: named }]);
  return least([shared, afterwards]);
}
