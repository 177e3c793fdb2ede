import type { JointGive } from '../base/joint-give.js';
import { nailHolds, nailPath } from '../fit/nail-path.js';
import type { BuiltSize } from '../plan/build-up.js';
import type { Plan, PlanBrace, PlanCrossbar } from '../plan/plan.js';
import type { JointBuild, Joints, Shelf } from '../shelf/shelf.js';

/** The name of a joint as the shelf file writes it. */
export const jointKey = (joint: JointBuild): string => joint.replaceAll('_', '-');

/**
 * The name by which the shelf knows corners built like this. Nails that do not reach the other piece make no nailed
 * joint.
 */
export function cornerJoint(plan: Plan, shelf: Shelf, bar: BuiltSize): JointBuild {
  const { cut, glue } = plan.corners;
  if (cut === 'keyed') return 'keyed';
  const nailed = nailsHold(plan, shelf, bar);
  if (glue === null) return nailed ? 'mitre_nailed' : 'nothing';
  if (cut === 'half-lap') return 'half_lap_glued';
  if (cut === 'butt') return 'butt_glued';
  return nailed ? 'mitre_glued_nailed' : 'mitre_glued';
}

/**
 * Give of the corners' own joints, in bar-widths: the plan's own, else the shelf's for this build-up. A brace leaves it
 * as it is: a timber one is an element of its own,
 * a plate (gusset, angle) lies beside it (`plate-stiffness`).
 */
export function cornerGive(plan: Plan, shelf: Shelf, bar: BuiltSize): JointGive {
  return plan.corners.give ?? shelf.joints.give[cornerJoint(plan, shelf, bar)];
}

function nailsHold({ corners, face }: Plan, shelf: Shelf, bar: BuiltSize): boolean {
  const { cut, nails } = corners;
  const nail = nails === null ? undefined : shelf.nails[nails.use];
  if (nail === undefined || nails === null || cut === 'keyed') return false;
  return nailHolds(
    nailPath({ cut, ...bar, span_mm: Math.min(face.width_mm, face.height_mm) - bar.w_mm, each: nails.each }, nail),
    nail,
  );
}

/**
 * Give of the ends of a crossbar or a timber brace, in its own widths: the plan's own, else the shelf's; they are glued
 * when the corners are, and tongued like them where those are keyed.
 */
export function endGive({ give }: PlanCrossbar | PlanBrace, plan: Plan, joints: Joints): JointGive {
  if (plan.corners.cut === 'keyed') return give ?? joints.give.keyed;
  return give ?? (plan.corners.glue === null ? joints.give.crossbar_dry : joints.give.crossbar_glued);
}
