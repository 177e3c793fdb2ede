import type { JointGive } from '../base/joint-give.js';
import { nailHolds, nailPath } from '../fit/nail-path.js';
import type { BuiltSize } from '../plan/build-up.js';
import type { Plan, PlanBrace, PlanCrossbar } from '../plan/plan.js';
import type { Joints, Shelf } from '../shelf/shelf.js';

/**
 * Give of the corners' own joints, in bar-widths: the plan's own, else the shelf's for this build-up. A brace leaves it as it is: a timber one is an element of its own,
 * a plate (gusset, angle) lies beside it (`plate-stiffness`). Nails that do not reach the other piece make no nailed joint.
 */
export function cornerGive(plan: Plan, shelf: Shelf, bar: BuiltSize): JointGive {
  const { cut, glue, give } = plan.corners;
  const table = shelf.joints.give;
  if (give !== null) return give;
  if (cut === 'keyed') return table.keyed;
  const nailed = nailsHold(plan, shelf, bar);
  if (glue === null) return nailed ? table.mitre_nailed : table.nothing;
  if (cut === 'half-lap') return table.half_lap_glued;
  if (cut === 'butt') return table.butt_glued;
  return nailed ? table.mitre_glued_nailed : table.mitre_glued;
}

function nailsHold({ corners, face }: Plan, shelf: Shelf, bar: BuiltSize): boolean {
  const { cut, nails } = corners;
  const nail = nails === null ? undefined : shelf.nails[nails.use];
  if (nail === undefined || nails === null || cut === 'keyed') return false;
  return nailHolds(nailPath({ cut, ...bar, span_mm: Math.min(face.width_mm, face.height_mm) - bar.w_mm, each: nails.each }, nail), nail);
}

/** Give of the ends of a crossbar or a timber brace, in its own widths: the plan's own, else the shelf's; they are glued when the corners are, and tongued like them where those are keyed. */
export function endGive({ give }: PlanCrossbar | PlanBrace, plan: Plan, joints: Joints): JointGive {
  if (plan.corners.cut === 'keyed') return give ?? joints.give.keyed;
  return give ?? (plan.corners.glue === null ? joints.give.crossbar_dry : joints.give.crossbar_glued);
}
