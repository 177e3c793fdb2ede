import { lazily } from '../base/lazily.js';
import type { CrossbarStatics } from '../model/frame-results.js';
import type { MemberBuild, Solution } from '../model/model.js';
import { declareFacts } from './declare.js';

/** One crossbar: as built, and as the working pull leaves it. */
interface Crossbar {
  readonly build: MemberBuild;
  readonly statics: CrossbarStatics;
}

const crossbarOf = (build: MemberBuild, solution: Solution): Crossbar =>
  lazily({ statics: () => staticsOf(build, solution) }, { build });

function staticsOf({ name: wanted }: MemberBuild, solution: Solution): CrossbarStatics {
  const statics = solution.working.crossbars.find(({ name }) => name === wanted);
  if (statics === undefined) throw new Error(`no solution for ${wanted}`);
  return statics;
}

/** Each crossbar: its size, its force and its bow. */
export const crossbarFacts = declareFacts(
  {
    each: 'crossbar',
    of: ({ model, solution }) => model.crossbars.map((build) => [build.name, crossbarOf(build, solution)] as const),
  },
  { source: 'physics', moved_by: 'build' },
)({
  'crossbar.span_mm': {
    unit: 'mm',
    known_from: 'shape',
    meaning: 'Length of the crossbar between the centre lines it joins.',
    value: ({ statics }) => statics.span_mm,
  },
  'crossbar.axial_N': {
    unit: 'N',
    signed: true,
    known_from: 'shape',
    meaning: 'Largest force along the crossbar at working pull, tension positive.',
    value: ({ statics }) => statics.axial_N,
  },
  'crossbar.bow_mm': {
    unit: 'mm',
    known_from: 'shape',
    meaning: 'Largest in-plane departure of the crossbar from straight at working pull.',
    value: ({ statics }) => statics.bow_mm,
  },
  'crossbar.stock': {
    unit: 'word',
    known_from: 'plan',
    meaning: 'What the crossbar is made of: its key on the shelf.',
    value: ({ build }) => build.stock.key,
  },
  'crossbar.w_mm': {
    unit: 'mm',
    known_from: 'plan',
    meaning: 'Size of the built-up crossbar in the plane of the cloth.',
    value: ({ build }) => build.section.w_mm,
  },
  'crossbar.d_mm': {
    unit: 'mm',
    known_from: 'plan',
    meaning: 'Size of the built-up crossbar at right angles to the cloth.',
    value: ({ build }) => build.section.d_mm,
  },
});
