import { cornerNames, type CornerName } from '../base/names.js';
import { lazily } from '../base/lazily.js';
import { cornerUse, type CornerUse } from '../mechanics/corners/corner-use.js';
import { DURATION } from '../mechanics/fasteners/load-duration.js';
import { lengthShrinkage, movement_mm } from '../mechanics/moisture/movement.js';
import { mitreGap_mm } from '../mechanics/moisture/mitre-gap.js';
import { roomMoisture } from '../mechanics/moisture/room-moisture.js';
import type { Model, Solution } from '../model/model.js';
import { declareFacts } from './declare.js';

/** One corner: as planned, and what pulls at it. */
interface Corner {
  readonly name: CornerName;
  readonly model: Model;
  readonly solution: Solution;
  /** At the peak pull. */
  readonly normal: CornerUse;
}

const cornerOf = (name: CornerName, model: Model, solution: Solution): Corner =>
  lazily(
    { normal: () => cornerUse(model, solution.peak.corners[name], model.peak, DURATION.normal) },
    { name, model, solution },
  );

/**
 * Only a mitre opens: the square faces of a butt or half-lap joint stay parallel as the bars shrink. All four bars are
 * alike, so all four corners are.
 */
function opens_mm(model: Model): number {
  const room = roomMoisture(model.plan.room);
  const { section, stock } = model.bars.top;
  const now_pct = model.plan.lumber.moisture_pct;
  const dries = model.plan.corners.cut === 'mitre' && now_pct > room.driest_pct;
  const across = dries ? -movement_mm(1, stock.species.change_tangential, now_pct, room.driest_pct) : 0;
  const along = dries ? lengthShrinkage((now_pct - room.driest_pct) / 100) : 0;
  return mitreGap_mm(section.w_mm, across, along);
}

/**
 * Each corner: what the plan chose for it, its moment, and how much of its strength the peak pull and an accidental
 * pull use.
 */
export const cornerFacts = declareFacts(
  {
    each: 'corner',
    of: ({ model, solution }) => cornerNames.map((name) => [name, cornerOf(name, model, solution)] as const),
  },
  { source: 'physics', moved_by: 'build' },
)({
  'corner.moment_Nm': {
    unit: 'Nm',
    known_from: 'shape',
    meaning: 'In-plane bending moment in the corner at peak pull.',
    value: ({ name, solution }) => Math.abs(solution.peak.corners[name].moment_Nmm) / 1000,
  },
  'corner.use_normal': {
    unit: 'ratio',
    known_from: 'shape',
    meaning: 'Demand over capacity of the corner at peak pull.',
    value: ({ normal }) => normal.use,
  },
  'corner.use_accidental': {
    unit: 'ratio',
    known_from: 'shape',
    meaning: 'Demand over capacity of the corner at the accidental pull (a knock, a soaked cloth).',
    value: ({ name, model, solution }) =>
      cornerUse(model, solution.accidental.corners[name], model.accidental, DURATION.knock).use,
  },
  'corner.governs': {
    unit: 'word',
    known_from: 'shape',
    words: ['glue', 'nails', 'tongue', 'brace', 'gusset', 'angle', 'nothing'],
    told: {
      glue: 'only the glue holds it',
      nails: 'only the nails hold it',
      tongue: 'only the tongue holds it',
      brace: 'it holds as much as its brace does',
      gusset: 'it holds as much as its gusset does',
      angle: 'it holds as much as its angle does',
      nothing: 'nothing holds it',
    },
    meaning: 'The part of the corner whose capacity decides.',
    value: ({ normal }) => normal.governs,
  },
  'corner.cut': {
    unit: 'word',
    known_from: 'plan',
    words: ['mitre', 'butt', 'half-lap', 'keyed'],
    meaning: 'How the corner is cut.',
    value: ({ model: { plan } }) => plan.corners.cut,
  },
  'corner.glue': {
    unit: 'word',
    known_from: 'plan',
    meaning: 'The glue of the corner: its key on the shelf, or none.',
    value: ({ model: { plan } }) => plan.corners.glue ?? 'none',
  },
  'corner.nail': {
    unit: 'word',
    known_from: 'plan',
    meaning: 'The nail of the corner: its key on the shelf, or none.',
    value: ({ model: { plan } }) => plan.corners.nails?.use ?? 'none',
  },
  'corner.nails_count': {
    unit: 'count',
    known_from: 'plan',
    meaning: 'How many nails hold the corner.',
    value: ({ model: { plan } }) => plan.corners.nails?.each ?? 0,
  },
  'corner.brace': {
    unit: 'word',
    known_from: 'plan',
    words: ['none', 'timber', 'ply-gusset', 'steel-angle'],
    meaning: 'What stiffens the corner.',
    value: ({ model: { plan } }) => plan.corners.brace?.kind ?? 'none',
  },
  'corner.mitre_gap_mm': {
    unit: 'mm',
    known_from: 'plan',
    moved_by: 'boards',
    frame_by_frame: 'boards',
    meaning: 'How far one end of the mitre opens when the boards dry from their moisture now to the room’s driest.',
    value: ({ model }) => opens_mm(model),
  },
});
