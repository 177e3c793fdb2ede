import { lazily } from '../base/lazily.js';
import { barNames, type BarName } from '../base/names.js';
import { barStress } from '../mechanics/bar-stress.js';
import type { BarStatics } from '../model/frame-results.js';
import type { MemberBuild, Model, Solution } from '../model/model.js';
import { declareFacts } from './declare.js';

/** Bending strength of the weakest common softwood class, C14 of EN 338:2016. */
const weakestBendingStrength_MPa = 14;

/** One bar: as built, and as the working pull leaves it. */
interface Bar {
  readonly name: BarName;
  readonly model: Model;
  readonly solution: Solution;
  readonly build: MemberBuild;
  readonly statics: BarStatics;
}

const barOf = (name: BarName, model: Model, solution: Solution): Bar =>
  lazily({ statics: () => solution.working.bars[name] }, { name, model, solution, build: model.bars[name] });

/** Largest stress of a bar at peak pull, at its weakest section. */
function bendingStress_MPa({ name, build, model, solution }: Bar): number {
  const { bar_MPa, lap_MPa } = barStress(build, solution.peak.bars[name].forces, model.plan.corners.cut === 'half-lap');
  return Math.max(bar_MPa, lap_MPa ?? 0);
}

function unsupported_mm({ name, model, build }: Bar): number {
  const level = name === 'top' || name === 'bottom';
  const stops = model.shape.crossbars.filter((c) => (c.runs === 'upright') === level).map((c) => c.at);
  let from = 0;
  let widest = 0;
  for (const to of [...stops.sort((p, q) => p - q), 1]) {
    widest = Math.max(widest, to - from);
    from = to;
  }
  return widest * build.span_mm;
}

const usually = { source: 'physics', moved_by: 'build', known_from: 'shape' } as const;

/** Each bar: its size, and its shape under the working pull, at once and after years. */
export const barFacts = declareFacts(
  { each: 'bar', of: ({ model, solution }) => barNames.map((name) => [name, barOf(name, model, solution)] as const) },
  usually,
)({
  'bar.span_mm': {
    unit: 'mm',
    known_from: 'plan',
    meaning: 'Length of the bar along its centre line, corner to corner.',
    value: ({ build }) => build.span_mm,
  },
  'bar.unsupported_mm': {
    unit: 'mm',
    known_from: 'plan',
    meaning: 'Longest stretch of the bar between corners and crossbars.',
    value: unsupported_mm,
  },
  'bar.w_mm': {
    unit: 'mm',
    known_from: 'plan',
    meaning: 'Size of the built-up bar in the plane of the cloth.',
    value: ({ build }) => build.section.w_mm,
  },
  'bar.d_mm': {
    unit: 'mm',
    known_from: 'plan',
    meaning: 'Size of the built-up bar at right angles to the cloth.',
    value: ({ build }) => build.section.d_mm,
  },
  'bar.plies_count': {
    unit: 'count',
    known_from: 'plan',
    meaning: 'How many boards make up the bar.',
    value: ({ build }) => build.plies,
  },
  'bar.bond': {
    unit: 'word',
    known_from: 'plan',
    words: ['single', 'none', 'screws', 'glue', 'glue+screws'],
    meaning: 'What holds the boards of the bar together.',
    value: ({ build }) => (build.plies === 1 ? 'single' : build.bond),
  },
  'bar.inward_bow_mm': {
    unit: 'mm',
    signed: true,
    meaning: 'Largest departure of the bar from straight, inward positive, at working pull, elastic.',
    value: ({ statics }) => statics.inward_bow_mm,
  },
  'bar.inward_bow_long_term_mm': {
    unit: 'mm',
    signed: true,
    source: 'en1995-1-1',
    meaning: 'The inward bow after years: elastic bow times one plus the creep factor.',
    value: ({ model, statics }) => (1 + model.k_def) * statics.inward_bow_mm,
  },
  'bar.dish_mm': {
    unit: 'mm',
    signed: true,
    meaning:
      'Largest departure of the bar out of the plane of its corners at working pull, towards the viewer positive.',
    value: ({ statics }) => statics.dish_mm,
  },
  'bar.dish_long_term_mm': {
    unit: 'mm',
    signed: true,
    source: 'en1995-1-1',
    meaning: 'The dish of the bar after years: elastic dish times one plus the creep factor.',
    value: ({ model, statics }) => (1 + model.k_def) * statics.dish_mm,
  },
  'bar.roll_mrad': {
    unit: 'mrad',
    signed: true,
    meaning: 'How far the bar rolls about its own axis at working pull, front edge inward positive.',
    value: ({ statics }) => statics.roll_mrad,
  },
  'bar.roll_long_term_mrad': {
    unit: 'mrad',
    signed: true,
    source: 'en1995-1-1',
    meaning: 'The roll of the bar after years: elastic roll times one plus the creep factor.',
    value: ({ model, statics }) => (1 + model.k_def) * statics.roll_mrad,
  },
  'bar.axial_N': {
    unit: 'N',
    signed: true,
    meaning: 'Largest force along the bar at working pull, tension positive.',
    value: ({ statics }) => statics.axial_N,
  },
  'bar.stress_share': {
    unit: 'share',
    source: 'en338-2016',
    meaning:
      'Stress at peak pull (both bendings and axial force together, at the weakest section: a half-lap leaves half the depth) over the bending strength of the weakest common softwood class (C14, 14 MPa).',
    value: (bar) => bendingStress_MPa(bar) / weakestBendingStrength_MPa,
  },
  'bar.stock': {
    unit: 'word',
    known_from: 'plan',
    meaning: 'What the bar is made of: its key on the shelf.',
    value: ({ model }) => model.plan.bars.stock,
  },
  'bar.lay': {
    unit: 'word',
    known_from: 'plan',
    words: ['flat', 'edge'],
    meaning: 'How the boards of the bar lie: flat against the cloth, or on edge.',
    value: ({ model }) => model.plan.bars.lay,
  },
});
