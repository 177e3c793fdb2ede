import type { Plan } from '../../plan/plan.js';
import type { Drill, Screw, Shelf } from '../../shelf/shelf.js';
import { clearanceDrill, nearestDrill, nailHole_mm, screwHole_mm } from './lead-hole.js';
import type { PlannedFastening } from './planned-fastening.js';

type Holes = Pick<PlannedFastening, 'pilot_rule_mm' | 'pilot_mm' | 'pilot_label' | 'pilot_planned' | 'clearance'>;

/** Label of a planned hole: that of the drill on hand of its size, or null. */
const labelOf = (drills: readonly Drill[], mm: number): string | null =>
  drills.find((drill) => Math.abs(drill.diameter_mm - mm) < 0.02)?.label ?? null;

/**
 * Holes for a screw: the planned pilot, else the nearest drill under the rule. Through steel, and where it only clamps,
 * the screw gets a hole in the first piece through
 * which it slips; one that carries load through wood gets the largest drill under the standard's shank rule.
 */
export function screwHoles(
  screw: Screw,
  G: number,
  role: 'clamp' | 'load' | 'steel',
  plan: Plan,
  shelf: Shelf,
  planned_mm: number | null,
): Holes {
  const pilot_rule_mm = screwHole_mm(screw, G, 'thread');
  const picked = nearestDrill(shelf.drills, pilot_rule_mm, plan.units);
  const clearance =
    role !== 'load'
      ? clearanceDrill(shelf.drills, screw.shank_mm, plan.units)
      : nearestDrill(shelf.drills, screwHole_mm(screw, G, 'shank'), plan.units);
  return planned_mm === null
    ? {
        pilot_rule_mm,
        pilot_mm: picked?.diameter_mm ?? null,
        pilot_label: picked?.label ?? null,
        pilot_planned: false,
        clearance,
      }
    : {
        pilot_rule_mm,
        pilot_mm: planned_mm,
        pilot_label: labelOf(shelf.drills, planned_mm),
        pilot_planned: true,
        clearance,
      };
}

/** Hole for a nail: the nearest drill under the rule; no clearance hole. */
export function nailHoles(diameter_mm: number, G: number, plan: Plan, shelf: Shelf): Holes {
  const pilot_rule_mm = nailHole_mm(diameter_mm, G);
  const picked = nearestDrill(shelf.drills, pilot_rule_mm, plan.units);
  return {
    pilot_rule_mm,
    pilot_mm: picked?.diameter_mm ?? null,
    pilot_label: picked?.label ?? null,
    pilot_planned: false,
    clearance: null,
  };
}
