import { formatNumber, formatQuantity } from '../base/units-format.js';
import type { CauseKind } from './diagnose.js';
import { promisedNote } from './pull-read.js';
import { factOf, type Promised } from './promised.js';
import { clothOn, type Sheet } from './sheet.js';
import { cornerStiffener, crossbarToAdd } from './stiffen.js';

/** What to do about a cause of a lifted corner, in a sentence or two; differs once the cloth is on. Common practice. */
export function cureFor(kind: CauseKind, sheet: Sheet, promised: Promised): string {
  const stretched = clothOn(sheet);
  const stiffener = cornerStiffener(promised.plan);
  const crossbar = crossbarToAdd(promised.plan);
  switch (kind) {
    case 'past-critical':
      return `Take pull off now: lift the staples from the middle of each side outwards and fix the cloth again at ${noteWords(promised, sheet)}. Then stiffen the frame: ${stiffener}, or ${crossbar}, glued while it is held flat.`;
    case 'pull':
      return `Ease the cloth: lift the staples from the middle of each side outwards and fix it again at ${noteWords(promised, sheet)}.`;
    case 'corners':
      return stretched
        ? `Clamp the frame flat on a true table and glue ${stiffener} while it is held; when it is taken apart one day, check the mitres with a square and plane those that lean.`
        : 'Hold a square to the cut faces and look for the joint that leans. Open it, plane or recut the face upright, and glue again with the frame clamped flat; set the blade before the next frame.';
    case 'twist-drying':
    case 'bow-drying':
    case 'crook-drying':
      return `The boards were still drying. Leave the frame clamped flat in the room ${waiting(promised)}, then glue ${stiffener} while it is held; next time let the boards settle first.`;
    case 'twist-chosen':
    case 'twist-reading':
      return stretched
        ? `Ease the cloth, clamp the frame flat on a true table, bent a little past flat, and glue ${stiffener}, or ${crossbar}, while it is held.`
        : `Exchange one of the two bars for a board that twists the other way or hardly at all. Or clamp the frame flat, bent a little past flat, and glue ${stiffener} while it is held.`;
    case 'bow-chosen':
    case 'bow-reading':
    case 'crook-chosen':
    case 'crook-reading':
      return stretched
        ? `Clamp the frame flat and glue ${crossbar} to the bowed bar while it is held.`
        : 'Turn one of the two bars over, so that it bows the other way, or exchange it for a straighter board.';
    case 'reading':
      return 'Measure again on a table you have checked with a straight edge.';
    case 'rest':
      return '';
  }
}

function noteWords({ model, solution }: Promised, sheet: Sheet): string {
  const { low_Hz, high_Hz } = promisedNote(model, solution, sheet);
  const { working } = model.plan.cloth;
  return `a note of ${formatNumber(low_Hz, 2)} to ${formatNumber(high_Hz, 2)} Hz (${formatQuantity(Math.max(working.x_N_per_m, working.y_N_per_m), 'N/m', model.plan.units)})`;
}

function waiting(promised: Promised): string {
  const days = factOf(promised, 'lumber.wait_days');
  return days === null || days < 0.5
    ? 'for some days'
    : `for about ${formatQuantity(days, 'days', promised.plan.units)}`;
}
