import { evenGive, type JointGive } from '../base/joint-give.js';
import type { Plan, PlanBrace, PlanCrossbar } from '../plan/plan.js';
import type { Joints } from '../shelf/shelf.js';

/** Give of the corners, in bar-widths: the plan's own, else the shelf's for this build-up. */
export function cornerGive(plan: Plan, joints: Joints): JointGive {
  const { cut, glue, nails, brace, give } = plan.corners;
  const table = joints.give;
  if (give !== null) return give;
  if (brace !== null) return evenGive(glue === null ? table.braced_dry : table.braced_glued);
  if (glue === null) return evenGive(nails === null ? table.nothing : table.mitre_nailed);
  if (cut === 'half-lap') return evenGive(table.half_lap_glued);
  if (cut === 'butt') return evenGive(table.butt_glued);
  return evenGive(nails === null ? table.mitre_glued : table.mitre_glued_nailed);
}

/** Give of the ends of a crossbar or a timber brace, in its own widths: the plan's own, else the shelf's; they are glued when the corners are. */
export function endGive({ give }: PlanCrossbar | PlanBrace, plan: Plan, joints: Joints): JointGive {
  return give ?? evenGive(plan.corners.glue === null ? joints.give.crossbar_dry : joints.give.crossbar_glued);
}
