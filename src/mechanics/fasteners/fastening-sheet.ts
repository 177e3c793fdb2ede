import type { Model } from '../../model/model.js';
import type { Drill } from '../../shelf/shelf.js';
import type { FasteningRow, PlannedFastening, FasteningWay } from './planned-fastening.js';
import { plannedFastenings } from './planned-fastenings.js';

/** One fastening as the fastening page shows it: what to pick up, how wide, how deep, how many and where. */
export interface FasteningLine {
  readonly name: PlannedFastening['name'];
  readonly fastening: string;
  /** `load`: it carries; `clamp`: it only holds the joint while the glue sets. */
  readonly role: PlannedFastening['role'];
  readonly length_mm: number;
  readonly count: number;
  /** Drill for the first piece; null = none. */
  readonly clearance: Drill | null;
  /**
   * Drill where the thread or nail bites (null = none), the one on hand of that size (null = none is), and how deep
   * from the surface.
   */
  readonly pilot_mm: number | null;
  readonly pilot_label: string | null;
  readonly pilot_depth_mm: number;
  /** True when the plan names a hole wider than the rule. */
  readonly pilot_too_wide: boolean;
  /** Width of the countersink, mm; null for nails and steel plates. */
  readonly countersink_mm: number | null;
  readonly way: FasteningWay;
  readonly rows: readonly FasteningRow[];
  /**
   * Wood left beyond the tip, mm, and in sixteenths of an inch rounded down; null when it runs along the grain and
   * cannot come out.
   */
  readonly exit_mm: number | null;
  readonly exit_sixteenths: number | null;
}

/**
 * How deep the lead hole goes, mm from the surface: nine tenths of the fastening, never within 1 mm of the far face
 * (practice).
 */
function depth_mm(f: PlannedFastening): number {
  return Math.round(Math.min(0.9 * f.length_mm, f.length_mm + f.exit_mm - 1));
}

/** True for screws whose heads lie in a steel angle. */
const onSteel = (model: Model, f: PlannedFastening): boolean =>
  f.name === 'brace-screws' && model.plan.corners.brace?.kind === 'steel-angle';

/** Every fastening of the plan as a line of the fastening page, in the order they are driven. */
export function fasteningSheet(model: Model): readonly FasteningLine[] {
  return plannedFastenings(model).map((f) => ({
    name: f.name,
    fastening: f.label,
    role: f.role,
    length_mm: f.length_mm,
    count: f.count,
    clearance: f.clearance,
    pilot_label: f.pilot_label,
    pilot_mm: f.pilot_mm,
    pilot_depth_mm: depth_mm(f),
    pilot_too_wide: f.pilot_mm !== null && f.pilot_mm > f.pilot_rule_mm + 1e-9,
    countersink_mm: f.kind === 'nail' || onSteel(model, f) ? null : f.head_mm,
    way: f.way,
    rows: f.rows,
    exit_mm: f.along_grain ? null : f.exit_mm,
    exit_sixteenths: f.along_grain ? null : Math.floor(f.exit_mm / 1.5875),
  }));
}
