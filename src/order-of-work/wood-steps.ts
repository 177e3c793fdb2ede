import type { Model } from '../model/model.js';
import type { Plan } from '../plan/plan.js';
import { formatLength } from '../base/units-format.js';
import { glueSheet } from '../mechanics/glue/glue-sheet.js';
import { plannedFastenings } from '../mechanics/fasteners/planned-fastenings.js';
import { sawAdvice, sawReach } from './saw-reach.js';
import { counted, step, type WorkStep } from './step.js';
import { fewBarClamps, weighing, type ToolsAtHand } from './tools-at-hand.js';

/** From boards to bars: sorting, joining plies, shaping the front edge, the trial joint, the cut. */
export function woodSteps(model: Model, tools: ToolsAtHand): readonly WorkStep[] {
  const { plan } = model;
  const inShop = tools.saw === 'none';
  return [
    ...(tools.moisture_meter === false ? [step('weigh', weighing)] : []),
    step(
      'sort',
      'Sight along every board again, mark its bow and which way it twists, and lay the straightest aside for the longest bars.',
    ),
    ...(plan.bars.plies > 1
      ? [
          step(
            'rough-cut',
            `${inShop ? 'Have the shop saw' : 'Saw'} the plies a little over length.`,
            inShop ? [] : sawing,
          ),
        ]
      : []),
    ...plySteps(model, tools),
    ...(plan.bars.lip_mm > 0
      ? []
      : [
          step(
            'edge',
            'While the bars are still long and square-ended, round the front outer edge, so that it does not cut the cloth, and plane a bevel inward from it, so that only the edge touches the cloth.',
            ['dust'],
          ),
        ]),
    trial(model, tools),
    cut(model, tools),
    ...(lipOnBars(plan) ? lipStep(model, tools) : []),
  ];
}

/**
 * Bars whose ends are mitred in front carry their strip each; behind a mitred lip of butted or half-lapped bars the
 * frame must be closed first.
 */
export const lipOnBars = ({ corners: { cut } }: Plan): boolean => cut === 'mitre' || cut === 'keyed';

/** Strips are sawn and glued on; nothing where the plan has no lip. */
export function lipStep(model: Model, { saw }: ToolsAtHand): readonly WorkStep[] {
  const { plan } = model;
  if (plan.bars.lip_mm <= 0) return [];
  const sheet = glueSheet(model);
  const where = lipOnBars(plan)
    ? 'each bar, the points of the strip even with the points of the bar'
    : 'the closed frame, their mitres meeting at its corners';
  const text = `${saw === 'none' ? 'Have the strips of the lip sawn' : 'Saw the strips of the lip'} to the cut list, 45° at both ends, and glue them along the front outer edge of ${where}, flush with the outer side and held with tape; round what still stands sharp, so that it does not cut the cloth.`;
  return [
    step(
      'edge',
      text,
      [...(saw === 'none' ? [] : sawing), 'solvent'],
      sheet === null ? null : sheet.clamp_min / 60,
      sheet === null ? '' : 'the glue of the lip to hold',
    ),
  ];
}

function plySteps(model: Model, tools: ToolsAtHand): readonly WorkStep[] {
  const { bars } = model.plan;
  const joined = [...Object.values(model.bars), ...model.crossbars].some(
    ({ plies, bond }) => plies > 1 && bond !== 'none',
  );
  if (!joined) return [];
  const sheet = glueSheet(model);
  const glued = bars.bond === 'glue' || bars.bond === 'glue+screws';
  const screws = plannedFastenings(model).find((f) => f.name === 'ply-screws');
  const screwed = screws ? ` and drive the ${screws.count} ply screws of a frame` : '';
  const pairing =
    bars.pairing === 'opposed'
      ? ' Lay the plies so that their bows oppose each other.'
      : bars.pairing === 'matched'
        ? ' Lay the plies so that their bows agree.'
        : '';
  if (!glued || sheet === null)
    return [
      step('plies', `Clamp the plies of each bar together flush${screwed}.${pairing}`, [
        'drill-slip',
        'eye-protection',
      ]),
    ];
  return [
    step(
      'plies',
      `Glue the plies of each bar: spread one face, close it within ${sheet.open_min} minutes, set ${counted(sheet.clamps_count, 'clamp')} along the longest bar, snug and even, until a thin bead shows${screwed}.${pairing}${fewBarClamps(tools, sheet.clamps_count, model.plan.units)}`,
      ['clamp-fingers', 'solvent', ...(screws ? ['drill-slip', 'eye-protection'] : [])],
      Math.max(sheet.handle_h, 3),
      'the glue between the plies, before the bars are cut to length',
    ),
  ];
}

const sawing = ['saw-blade', 'eye-protection', 'dust'];
const shopTrial = 'There is no saw here: ask the shop for the trial first.';
const byHand =
  ' There is no mitre box: screw two upright boards and a bottom into one and saw a 45° slot through both sides, or mark with a mitre square, leave the line standing and plane the ends true against a stop.';

/** Two scraps tell whether saw and hand are true before a bar is spoilt. */
function trial(model: Model, { saw }: ToolsAtHand): WorkStep {
  const { corners, units } = model.plan;
  const { w_mm, d_mm } = model.bars.top.section;
  const half = `${formatLength(w_mm, units)} long and ${formatLength(d_mm / 2, units)} deep`;
  const text = {
    mitre: `Make a trial joint of two scraps of the same section: two 45° cuts, held together against a square. ${saw === 'hand' ? 'Plane the ends until it closes inside and outside, and see which way your saw leans.' : 'Set the saw again until it closes inside and outside.'}`,
    butt: 'Make a trial joint of two scraps of the same section: one square end against one edge, held against a square, with no light between them.',
    'half-lap': `Make a trial joint of two scraps of the same section: on each saw a lap ${half}, the shoulder first, then the cheek. Put together they lie flush on both faces; leave the line standing where they do not.`,
    keyed:
      'Make a trial corner of two scraps of the same section: tongue, slot and mitred shoulders; it goes together by hand, closes at the shoulder, and opens again without rocking.',
  }[corners.cut];
  if (saw === 'none') return step('trial', `${shopTrial} ${text}`);
  return step('trial', `${text}${saw === 'hand' && corners.cut === 'mitre' ? byHand : ''}`, sawing);
}

function cut(model: Model, tools: ToolsAtHand): WorkStep {
  const { corners, units } = model.plan;
  const { w_mm, d_mm } = model.bars.top.section;
  const pairs = 'Opposite bars together, so that they come out equal to a hair.';
  const text = {
    mitre: `Cut the mitres. ${pairs}`,
    butt: `Cut the bars square to length. ${pairs}`,
    'half-lap': `Cut the bars square to length. ${pairs} Then saw the half-laps: at each end mark a shoulder ${formatLength(w_mm, units)} from the end and a line ${formatLength(d_mm / 2, units)} deep, top and bottom bar from the back, left and right bar from the front; saw the shoulders on the waste side, then the cheeks, and pare them until each corner lies flush.`,
    keyed: `Cut the bars to length, saw the tongues and slots and mitre their shoulders. ${pairs}`,
  }[corners.cut];
  if (tools.saw === 'none')
    return step(
      'cut',
      `There is no saw here: give the cut list to the shop. ${text} What the shop cannot do, such as laps, tongues and slots, plan otherwise or have a joiner do.`,
    );
  return step(
    'cut',
    `${text}${sawAdvice(sawReach(model, tools), corners.cut === 'mitre', units, tools.saw_height_mm !== undefined)}`,
    sawing,
  );
}
