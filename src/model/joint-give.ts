import type { Plan, PlanCrossbar } from '../plan/plan.js';
import type { Joints } from '../shelf/shelf.js';

/** Give of the corners, in bar-widths: the plan's own number, else the shelf's for this build-up. Zero is rigid. */
export function cornerGive(plan: Plan, joints: Joints): number {
  const { cut, glue, nails, brace, give } = plan.corners;
  const table = joints.give;
  if (give !== null) return give;
  if (brace !== null) return glue === null ? table.braced_dry : table.braced_glued;
  if (glue === null) return nails === null ? table.nothing : table.mitre_nailed;
  if (cut === 'half-lap') return table.half_lap_glued;
  if (cut === 'butt') return table.butt_glued;
  return nails === null ? table.mitre_glued : table.mitre_glued_nailed;
}

/** Give of a crossbar's ends, in widths of the crossbar; they are glued when the corners are. */
export function crossbarGive(crossbar: PlanCrossbar, plan: Plan, joints: Joints): number {
  return crossbar.give ?? (plan.corners.glue === null ? joints.give.crossbar_dry : joints.give.crossbar_glued);
}
