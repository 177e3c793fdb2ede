import { HOOKS_APART_SHARE } from '../../fit/wire-depth.js';
import type { Plan } from '../../plan/plan.js';

/** How a loaded wire lies between its two rings and the hook or hooks above them. */
export interface WireGeometry {
  /** Straight distance between the rings. */
  readonly ring_span_mm: number;
  /** How high the hook stands above the rings under load. */
  readonly rise_mm: number;
  /** Distance between the outer hooks; 0 for one hook. */
  readonly hooks_apart_mm: number;
  /** Angle of the slanting parts to the horizontal. */
  readonly angle_deg: number;
  readonly wire_mm: number;
}

/** Distance between the rings: on the inner faces of the side bars, or on the middle of their backs. */
export function ringSpan_mm(plan: Plan, bar_w_mm: number): number {
  return plan.face.width_mm - (plan.hang.from === 'inside' ? 2 : 1) * bar_w_mm;
}

/**
 * The shape of the wire from its slack: how far a finger draws its middle up from the straight line between the rings,
 * mm. That fixes the wire's
 * length, 2·√((span/2)² + slack²). Drawn up by one hook it makes a triangle; by two hooks a trapezoid whose middle
 * stays level, so the slanting parts
 * are shorter and steeper: `rise² = leg² − run²` with run the level distance from ring to hook and leg what is left of
 * the wire for one side.
 * Null when there is no slack or no room: a straight wire can carry no weight.
 * Source: statics (physics).
 */
export function wireGeometry(ring_span_mm: number, slack_mm: number, hooks: number): WireGeometry | null {
  if (!(ring_span_mm > 0) || !(slack_mm > 0)) return null;
  const wire_mm = 2 * Math.hypot(ring_span_mm / 2, slack_mm);
  const hooks_apart_mm = hooks >= 2 ? ring_span_mm * HOOKS_APART_SHARE : 0;
  const run = (ring_span_mm - hooks_apart_mm) / 2;
  const leg = (wire_mm - hooks_apart_mm) / 2;
  const rise_mm = Math.sqrt(leg ** 2 - run ** 2);
  return { ring_span_mm, rise_mm, hooks_apart_mm, angle_deg: (Math.atan2(rise_mm, run) * 180) / Math.PI, wire_mm };
}
