import { LEAST_PENETRATION_DIAMETERS, ndsDistances } from '../fit/distances.js';
import { fasteningUse } from '../mechanics/fasteners/fastening-use.js';
import type { PlannedFastening } from '../mechanics/fasteners/planned-fastening.js';
import { plannedFastenings } from '../mechanics/fasteners/planned-fastenings.js';
import { splitRisk } from '../mechanics/fasteners/splitting.js';
import { plyScrewsInTheWay } from '../mechanics/occupancy/what-occupies.js';
import type { Model, Solution } from '../model/model.js';
import { declareFacts, known } from './declare.js';

const no_drill = 'Every drill on the shelf is wider than the hole the rule allows.';

/** One fastening that the plan really has. */
interface Fastening {
  readonly planned: PlannedFastening;
  readonly model: Model;
  readonly solution: Solution;
  /** Its distances over the least wanted. */
  readonly edge_share: number;
  readonly end_share: number;
  readonly spacing_share: number;
}

function fasteningOf(planned: PlannedFastening, model: Model, solution: Solution): Fastening {
  const least = ndsDistances(planned.shank_mm, planned.pilot_mm !== null);
  return {
    planned,
    model,
    solution,
    edge_share: planned.edge_mm / least.edge_mm,
    end_share: planned.end_mm / least.end_mm,
    spacing_share: planned.spacing_mm / least.along_grain_mm,
  };
}

function splits({ planned, model, edge_share, end_share }: Fastening): string {
  return splitRisk({
    diameter_mm: planned.shank_mm,
    thickness_mm: planned.thinnest_mm,
    density_kg_per_m3: planned.density_kg_per_m3,
    G: planned.G,
    moisture_pct: model.plan.lumber.moisture_pct,
    pilot_share: planned.pilot_mm === null ? null : planned.pilot_mm / planned.pilot_rule_mm,
    end_share,
    edge_share,
  });
}

const usually = { source: 'nds-2018', moved_by: 'build', known_from: 'plan', frame_by_frame: 'fastenings' } as const;
/** Where ply screws go follows what they give way to: crossbars as they are set back, hanging points. */
const placed = 'hanging';

/** Each fastening: hole, tip, distances, load, splitting. */
export const fasteningFacts = declareFacts(
  {
    each: 'fastening',
    of: ({ model, solution }) =>
      plannedFastenings(model).map((one) => [one.name, fasteningOf(one, model, solution)] as const),
  },
  usually,
)({
  'fastening.pilot_mm': {
    unit: 'mm',
    meaning: 'Diameter of the lead hole, as planned or as picked from the drills on hand.',
    value: ({ planned }) => known(planned.pilot_mm, no_drill),
  },
  'fastening.pilot_rule_mm': {
    unit: 'mm',
    meaning: 'Largest lead hole the density class of the wood allows.',
    value: ({ planned }) => planned.pilot_rule_mm,
  },
  'fastening.root_mm': {
    unit: 'mm',
    meaning: 'Root diameter of the screw, or diameter of the nail: a hole wider than this holds nothing.',
    value: ({ planned }) => planned.root_mm,
  },
  'fastening.role': {
    unit: 'word',
    source: 'physics',
    words: ['clamp', 'load'],
    meaning:
      'What the fastening is for: clamp = glue carries the joint and the fastening holds it while it sets; load = the fastening carries the joint for good.',
    value: ({ planned }) => planned.role,
  },
  'fastening.use': {
    unit: 'ratio',
    known_from: 'shape',
    moved_by: placed,
    meaning:
      'Load on one fastening at peak pull over its design value; nothing where glue carries the joint and the fastening only clamps.',
    value: ({ planned, model, solution }) => fasteningUse(planned, model, solution),
  },
  'fastening.exit_mm': {
    unit: 'mm',
    source: 'physics',
    signed: false,
    meaning: 'Wood left beyond the tip; negative when the tip comes out.',
    value: ({ planned }) => planned.exit_mm,
  },
  'fastening.reach_mm': {
    unit: 'mm',
    source: 'physics',
    signed: false,
    meaning: 'How far the tip goes into the piece it has to hold; negative when it stops short of it.',
    value: ({ planned }) => planned.reach_mm,
  },
  'fastening.penetration_share': {
    unit: 'share',
    meaning: 'Penetration into the holding piece over the least the standard asks (6 diameters).',
    value: ({ planned }) => planned.penetration_mm / (LEAST_PENETRATION_DIAMETERS * planned.shank_mm),
  },
  'fastening.edge_share': {
    unit: 'share',
    meaning: 'Distance to the edge over the least wanted.',
    value: ({ edge_share }) => edge_share,
  },
  'fastening.end_share': {
    unit: 'share',
    meaning: 'Distance to the end of the piece over the least wanted.',
    value: ({ end_share }) => end_share,
  },
  'fastening.spacing_share': {
    unit: 'share',
    moved_by: placed,
    meaning: 'Spacing along the grain over the least wanted.',
    value: ({ spacing_share }) => spacing_share,
  },
  'fastening.split_risk': {
    unit: 'word',
    source: 'en1995-1-1',
    moved_by: 'boards',
    words: ['low', 'some', 'high'],
    meaning: 'How likely the wood splits, from thickness, density, moisture and the hole drilled.',
    value: splits,
  },
  'fastening.in_the_way_count': {
    unit: 'count',
    source: 'physics',
    moved_by: placed,
    meaning:
      'How many of this fastening would meet a brace, a crossbar, a hanging point or another screw, and could not be moved.',
    value: ({ planned, model }) => (planned.name === 'ply-screws' ? plyScrewsInTheWay(model).length : 0),
  },
  'fastening.count': {
    unit: 'count',
    source: 'physics',
    moved_by: placed,
    meaning: 'How many of this fastening the frame takes.',
    value: ({ planned }) => planned.count,
  },
});
