import { formatLength } from '../base/units-format.js';
import { KEYS_PER_CORNER } from '../fit/keyed-sizes.js';
import type { Model } from '../model/model.js';
import { glueSheet } from './glue/glue-sheet.js';
import { hangingPoints } from './occupancy/hanging-points.js';
import { plannedFastenings } from './fasteners/planned-fastenings.js';

/** One step at the bench. */
export interface WorkStep {
  readonly id: string;
  readonly text: string;
  /** How long to wait before the next step, h; null = go on at once. */
  readonly wait_h: number | null;
  /** What the waiting is for. */
  readonly wait_for: string;
  /** Ids of the shop-safety cautions that belong to the step. */
  readonly cautions: readonly string[];
}

const step = (id: string, text: string, cautions: readonly string[], wait_h: number | null = null, wait_for = ''): WorkStep => ({ id, text, wait_h, wait_for, cautions });
const plural = (n: number, one: string, many: string): string => (n === 1 ? one : many);

/** The outside diagonal, in the plan's units. */
const diagonalOf = ({ plan }: Model): string => formatLength(Math.hypot(plan.face.width_mm, plan.face.height_mm), plan.units);

function plySteps(model: Model): readonly WorkStep[] {
  const { bars } = model.plan;
  const built = [...Object.values(model.bars), ...model.crossbars].some(({ plies }) => plies > 1);
  if (!built || bars.bond === 'none') return [];
  const sheet = glueSheet(model);
  const glued = bars.bond === 'glue' || bars.bond === 'glue+screws';
  const screws = plannedFastenings(model).find((f) => f.name === 'ply-screws');
  const screwed = screws ? ` and drive the ${screws.count} ply screws` : '';
  const pairing = bars.pairing === 'opposed' ? ' Lay the plies so that their bows oppose each other.' : bars.pairing === 'matched' ? ' Lay the plies so that their bows agree.' : '';
  if (!glued || sheet === null) return [step('plies', `Clamp the plies of each bar together flush${screwed}.${pairing}`, ['drill-slip', 'eye-protection'])];
  return [
    step(
      'plies',
      `Glue the plies of each bar: spread one face, close it within ${sheet.open_min} minutes, set ${sheet.clamps_count} ${plural(sheet.clamps_count, 'clamp', 'clamps')} along the longest bar${screwed}.${pairing}`,
      ['clamp-fingers', 'solvent', ...(screws ? ['drill-slip', 'eye-protection'] : [])],
      Math.max(sheet.handle_h, 3),
      'the glue between the plies, before the bars are cut to length',
    ),
  ];
}

function cornerSteps(model: Model): readonly WorkStep[] {
  const { corners } = model.plan;
  if (corners.cut === 'keyed') return [step('assemble-corners', `Push every tongue into its slot${model.crossbars.length > 0 ? ', crossbars first' : ''}, dry, without glue or nails; close the shoulders and push the longer diagonal until both are ${diagonalOf(model)}. Leave the keys out.`, [])];
  const sheet = glueSheet(model);
  const nails = plannedFastenings(model).find((f) => f.name === 'corner-nails');
  const glued = corners.glue !== null && sheet !== null;
  const steps: WorkStep[] = [];
  if (glued && sheet) {
    const size = corners.cut === 'half-lap' ? '' : 'Brush a thin coat of glue on the end grain, wait five minutes, then ';
    const text = `${size === '' ? 'G' : `${size}g`}lue the four corners and clamp them on a flat surface; measure both diagonals and push the longer one until both are ${diagonalOf(model)}.`;
    steps.push(step('glue-corners', text, ['clamp-fingers', 'solvent'], sheet.clamp_min / 60, nails ? 'the glue to hold before the nails are driven' : 'the glue to hold in the clamps'));
  }
  if (nails) steps.push(step('nail-corners', `Drive ${nails.count / 4 === 1 ? 'one nail' : `${nails.count / 4} nails`} into each corner, from ${nails.drive_from}.`, ['eye-protection']));
  if (glued && sheet) steps.push(step('set-corners', 'Take off the clamps and leave the frame lying flat.', [], Math.max(0, sheet.handle_h - sheet.clamp_min / 60), 'the corners to bear handling'));
  return steps;
}

function innerSteps(model: Model): readonly WorkStep[] {
  const { plan } = model;
  const planned = plannedFastenings(model);
  const cross = planned.find((f) => f.name === 'crossbar-screws');
  const brace = planned.find((f) => f.name === 'brace-screws');
  const glue = plan.corners.glue === null ? '' : 'glue and ';
  const cure_h = glueSheet(model)?.cure_h ?? 0;
  const steps: WorkStep[] = [];
  if (plan.corners.cut === 'keyed') return [];
  const n = plan.crossbars.length;
  if (n > 0) {
    const lap = new Set(plan.crossbars.map((c) => c.runs)).size > 1 ? ' Half-lap them where they cross.' : '';
    steps.push(step('crossbars', `Fit the ${n === 1 ? 'crossbar' : `${n} crossbars`} set back from the front of the bars, ${glue}screw ${n === 1 ? 'it' : 'them'}${cross ? ` with ${cross.count} screws from ${cross.drive_from}` : ''}.${lap}`, ['drill-slip', 'eye-protection']));
  }
  if (plan.corners.brace) {
    const what = { timber: 'corner braces', 'ply-gusset': 'corner gussets', 'steel-angle': 'corner angles' }[plan.corners.brace.kind];
    const own = plan.corners.brace.kind === 'steel-angle' ? '' : glue;
    steps.push(step('braces', `Set the four ${what}, ${own}screw them${brace ? ` with ${brace.count} screws from ${brace.drive_from}` : ''}.`, ['drill-slip', 'eye-protection']));
  }
  if (steps.length > 0 && glue !== '') steps.push(step('cure', 'Leave the frame lying flat.', [], cure_h, 'all glue to reach full strength before the cloth pulls on it'));
  return steps;
}

/** Every step from boards to the wall that this plan really has, in order, with waiting times and cautions. */
export function orderOfWork(model: Model): readonly WorkStep[] {
  const { plan } = model;
  const diagonal = diagonalOf(model);
  const cut = { mitre: 'Cut the mitres', butt: 'Cut the bars square to length', 'half-lap': 'Cut the bars to length and saw the half-laps', keyed: 'Cut the bars to length, saw the tongues and slots and mitre their shoulders' }[plan.corners.cut];
  const large = plan.face.width_mm * plan.face.height_mm > 1.5e6;
  const glueOnly = plan.crossbars.length === 0 && plan.corners.brace === null && plan.corners.glue !== null;
  const cure_h = glueSheet(model)?.cure_h ?? 0;
  const ground = Object.values(model.shelf.grounds)[0];
  const coats = plan.ground.coats;
  return [
    step('sort', 'Sight along every board, mark its bow, and lay the straightest aside for the longest bars.', []),
    ...(plan.bars.plies > 1 ? [step('rough-cut', 'Saw the plies a little over length.', ['saw-blade', 'eye-protection', 'dust'])] : []),
    ...plySteps(model),
    step('cut', `${cut} of each pair of bars together, so that opposite bars come out equal to a hair.`, ['saw-blade', 'eye-protection', 'dust']),
    step('dry-fit', 'Lay the frame out dry: corners closed, no rocking on a flat floor.', []),
    ...cornerSteps(model),
    ...innerSteps(model),
    step('square', `Measure both diagonals again: equal, ${diagonal} each.`, [], glueOnly ? cure_h : null, glueOnly ? 'the glue to reach full strength before the cloth pulls on it' : ''),
    step('edge', plan.bars.lip_mm > 0 ? 'Glue on or plane the raised lip, and round its outer edge.' : 'Round the front outer edge, so that it does not cut the cloth, and bevel the front inward so that only the edge touches it.', ['dust']),
    step('stretch', `Stretch the cloth from the middle of each side outwards, opposite sides in turn, and staple every ${formatLength(plan.cloth.fixing.every_mm, plan.units)} on the ${plan.cloth.fixing.to}.`, ['staple-gun', 'eye-protection']),
    ...(plan.corners.cut === 'keyed' ? [step('keys', `Slip ${4 * KEYS_PER_CORNER} keys, ${KEYS_PER_CORNER} to a corner, into the inner corners by hand. Tap them in, all four corners in turn, only when the finished cloth has gone slack.`, ['eye-protection'])] : []),
    ...(coats > 0
      ? [step('ground', `Brush on ${coats === 1 ? 'one coat' : `${coats} coats`} of ground, letting each dry.`, ['solvent'], ground ? ground.dry_h * coats : null, 'the ground to dry')]
      : []),
    ...(plan.hang.by === 'none' ? [] : [step('hang', `Drill for the ring screws, ${formatLength(hangingPoints(model).drop_mm, plan.units)} below the top edge, and hang the piece.`, ['drill-slip', 'lifting', ...(large || model.weight.total_kg > 10 ? ['overhead-hanging'] : [])])]),
  ];
}
