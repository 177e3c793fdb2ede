import { fasteningUse } from '../mechanics/fasteners/fastening-use.js';
import { LEAST_PENETRATION_DIAMETERS, ndsDistances } from '../fit/distances.js';
import { plannedFastenings } from '../mechanics/fasteners/planned-fastenings.js';
import { splitRisk } from '../mechanics/fasteners/splitting.js';
import { plyScrewsInTheWay } from '../mechanics/occupancy/what-occupies.js';
import type { Model, Solution } from '../model/model.js';
import type { Fact } from './fact.js';

export { fasteningSheet, type FasteningLine } from '../mechanics/fasteners/fastening-sheet.js';

/** Facts about every fastening the plan really has: hole, tip, distances, load, splitting. */
export function fasteningFacts(model: Model, solution: Solution): Fact[] {
  return plannedFastenings(model).flatMap((f): Fact[] => {
    const least = ndsDistances(f.shank_mm, f.pilot_mm !== null);
    const edge_share = f.edge_mm / least.edge_mm;
    const end_share = f.end_mm / least.end_mm;
    const risk = splitRisk({
      diameter_mm: f.shank_mm,
      thickness_mm: f.thinnest_mm,
      density_kg_per_m3: f.density_kg_per_m3,
      G: f.G,
      moisture_pct: model.plan.lumber.moisture_pct,
      pilot_share: f.pilot_mm === null ? null : f.pilot_mm / f.pilot_rule_mm,
      end_share,
      edge_share,
    });
    const noDrill = 'Every drill on the shelf is wider than the hole the rule allows.';
    return [
      f.pilot_mm === null
        ? { path: 'fastening.pilot_mm', about: f.name, value: null, unit: 'mm', reason: noDrill }
        : { path: 'fastening.pilot_mm', about: f.name, value: f.pilot_mm, unit: 'mm' },
      { path: 'fastening.pilot_rule_mm', about: f.name, value: f.pilot_rule_mm, unit: 'mm' },
      { path: 'fastening.root_mm', about: f.name, value: f.root_mm, unit: 'mm' },
      { path: 'fastening.role', about: f.name, value: f.role, unit: 'word' },
      { path: 'fastening.use', about: f.name, value: fasteningUse(f, model, solution), unit: 'ratio' },
      { path: 'fastening.exit_mm', about: f.name, value: f.exit_mm, unit: 'mm' },
      { path: 'fastening.reach_mm', about: f.name, value: f.reach_mm, unit: 'mm' },
      { path: 'fastening.penetration_share', about: f.name, value: f.penetration_mm / (LEAST_PENETRATION_DIAMETERS * f.shank_mm), unit: 'share' },
      { path: 'fastening.edge_share', about: f.name, value: edge_share, unit: 'share' },
      { path: 'fastening.end_share', about: f.name, value: end_share, unit: 'share' },
      { path: 'fastening.spacing_share', about: f.name, value: f.spacing_mm / least.along_grain_mm, unit: 'share' },
      { path: 'fastening.split_risk', about: f.name, value: risk, unit: 'word' },
      { path: 'fastening.in_the_way_count', about: f.name, value: f.name === 'ply-screws' ? plyScrewsInTheWay(model).length : 0, unit: 'count' },
      { path: 'fastening.count', about: f.name, value: f.count, unit: 'count' },
    ];
  });
}
