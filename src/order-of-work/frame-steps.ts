import { formatLength } from '../base/units-format.js';
import { wayInWords } from './fastening-words.js';
import type { Model } from '../model/model.js';
import { glueSheet } from '../mechanics/glue/glue-sheet.js';
import { plannedFastenings } from '../mechanics/fasteners/planned-fastenings.js';
import { step, type WorkStep } from './step.js';
import { fewCornerClamps, flatPlace, type ToolsAtHand } from './tools-at-hand.js';
import { lipOnBars, lipStep } from './wood-steps.js';

/** The outside diagonal, in the plan's units. */
const diagonalOf = ({ plan }: Model): string =>
  formatLength(Math.hypot(plan.face.width_mm, plan.face.height_mm), plan.units);

/** From bars to a frame: dry fit, corners, crossbars, braces, square. */
export function frameSteps(model: Model, tools: ToolsAtHand): readonly WorkStep[] {
  const { plan } = model;
  const glueOnly = plan.crossbars.length === 0 && plan.corners.brace === null && plan.corners.glue !== null;
  const glue = glueSheet(model);
  // the corners have already set for as long as they were left to bear handling
  const cure_h = Math.max(0, (glue?.cure_h ?? 0) - (glue?.handle_h ?? 0));
  return [
    step('dry-fit', `Lay the frame out dry: corners closed, no rocking ${flatPlace(tools, 'on a flat floor')}.`),
    ...cornerSteps(model, tools),
    ...(lipOnBars(plan) ? [] : lipStep(model, tools)),
    ...innerSteps(model),
    step(
      'square',
      `Measure both diagonals again: equal, ${diagonalOf(model)} each. Lay the frame ${flatPlace(tools, 'on a flat table')} and look under the fourth corner.`,
      [],
      glueOnly ? cure_h : null,
      glueOnly ? 'the glue to reach full strength before the cloth pulls on it' : '',
    ),
  ];
}

function cornerSteps(model: Model, tools: ToolsAtHand): readonly WorkStep[] {
  const { corners } = model.plan;
  if (corners.cut === 'keyed')
    return [
      step(
        'assemble-corners',
        `Push every tongue into its slot${model.crossbars.length > 0 ? ', crossbars first' : ''}, dry, without glue or nails; close the shoulders and push the longer diagonal until both are ${diagonalOf(model)}. Leave the keys out.`,
      ),
    ];
  const sheet = glueSheet(model);
  const nails = plannedFastenings(model).find((f) => f.name === 'corner-nails');
  const glued = corners.glue !== null && sheet !== null;
  const steps: WorkStep[] = [];
  if (glued && sheet) {
    const size =
      corners.cut === 'half-lap' ? '' : 'Brush a thin coat of glue on the end grain, wait five minutes, then ';
    const text = `${size === '' ? 'G' : `${size}g`}lue the four corners and ${tools.corner_clamps === 0 ? 'press' : 'clamp'} them ${flatPlace(tools, 'on a flat surface')}, snug and even; measure both diagonals and push the longer one until both are ${diagonalOf(model)}.${fewCornerClamps(tools, Math.round(sheet.clamp_min))}`;
    steps.push(
      step(
        'glue-corners',
        text,
        ['clamp-fingers', 'solvent'],
        sheet.clamp_min / 60,
        nails ? 'the glue to hold before the nails are driven' : 'the glue to hold in the clamps',
      ),
    );
  }
  if (nails)
    steps.push(
      step(
        'nail-corners',
        `Drive ${nails.count / 4 === 1 ? 'one nail' : `${nails.count / 4} nails`} into each corner, from ${wayInWords(nails.way, model.plan.units).from}.`,
        ['eye-protection'],
      ),
    );
  if (glued && sheet)
    steps.push(
      step(
        'set-corners',
        `Take off the ${tools.corner_clamps === 0 ? 'cord' : 'clamps'} and leave the frame lying flat.`,
        [],
        Math.max(0, sheet.handle_h - sheet.clamp_min / 60),
        'the corners to bear handling',
      ),
    );
  return steps;
}

function innerSteps(model: Model): readonly WorkStep[] {
  const { plan } = model;
  const planned = plannedFastenings(model);
  const cross = planned.find((f) => f.name === 'crossbar-screws');
  const brace = planned.find((f) => f.name === 'brace-screws');
  const glue = plan.corners.glue === null ? '' : 'glue and ';
  const cure_h = glueSheet(model)?.cure_h ?? 0;
  if (plan.corners.cut === 'keyed') return [];
  const steps: WorkStep[] = [];
  const n = plan.crossbars.length;
  if (n > 0) {
    const setbacks = [...new Set(plan.crossbars.map(({ setback_mm }) => formatLength(setback_mm, plan.units)))].join(
      ' or ',
    );
    const lap = new Set(plan.crossbars.map((c) => c.runs)).size > 1 ? ' Half-lap them where they cross.' : '';
    steps.push(
      step(
        'crossbars',
        `Fit the ${n === 1 ? 'crossbar' : `${n} crossbars`}, ${setbacks} behind the front of the bars, ${glue}screw ${n === 1 ? 'it' : 'them'}${cross ? ` with ${cross.count} screws from ${wayInWords(cross.way, plan.units).from}` : ''}.${lap}`,
        ['drill-slip', 'eye-protection'],
      ),
    );
  }
  if (plan.corners.brace) {
    const what = { timber: 'corner braces', 'ply-gusset': 'corner gussets', 'steel-angle': 'corner angles' }[
      plan.corners.brace.kind
    ];
    const own = plan.corners.brace.kind === 'steel-angle' ? '' : glue;
    const flush = plan.corners.brace.kind === 'timber' ? ', flush with the backs' : '';
    steps.push(
      step(
        'braces',
        `Set the four ${what}${flush}, ${own}screw them${brace ? ` with ${brace.count} screws from ${wayInWords(brace.way, plan.units).from}` : ''}.`,
        ['drill-slip', 'eye-protection'],
      ),
    );
  }
  if (steps.length > 0 && glue !== '')
    steps.push(
      step(
        'cure',
        'Leave the frame lying flat.',
        [],
        cure_h,
        'all glue to reach full strength before the cloth pulls on it',
      ),
    );
  return steps;
}
