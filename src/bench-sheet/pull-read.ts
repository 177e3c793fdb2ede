import { clothSheet, padOn, type ClothSheet } from '../mechanics/cloth/cloth-sheet.js';
import { pushSpan, tapSpan } from '../mechanics/cloth/frame-spans.js';
import { pullFromPush_N_per_m } from '../mechanics/cloth/push-test.js';
import { clothOf, groundOf } from '../mechanics/cloth/shelf-numbers.js';
import { pullFromTap } from '../mechanics/cloth/tap-note.js';
import type { Model, Solution } from '../model/model.js';
import { clothOn, groundOn, readingError, type Sheet } from './sheet.js';

/**
 * The pull of the cloth that was read, as shares of the plan's working pull (the two directions keep the plan's
 * proportion).
 */
export interface PullRead {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Pull along the width in N/m → share of the planned one. */
const shares = ({ plan }: Model, pull: PullRead): PullRead => {
  const planned = plan.cloth.working.x_N_per_m;
  return { value: pull.value / planned, low: pull.low / planned, high: pull.high / planned };
};

const yOverX = ({ plan }: Model): number => plan.cloth.working.y_N_per_m / plan.cloth.working.x_N_per_m;

/** Mass of the cloth that swings, kg/m²: bare, or with the coats of ground the plan gives it. */
function clothMass(model: Model, sheet: Sheet): number {
  const ground = groundOn(sheet) ? (groundOf(model)?.mass_g_per_m2_per_coat ?? 0) * model.plan.ground.coats : 0;
  return (clothOf(model).mass_g_per_m2 + ground) / 1000;
}

/** Pull from the tapped note; null when none was read. */
export function pullOfTap(model: Model, sheet: Sheet): PullRead | null {
  if (sheet.tap_Hz === null || !clothOn(sheet)) return null;
  const band = pullFromTap(
    tapSpan(model),
    sheet.tap_Hz,
    clothMass(model, sheet),
    Math.min(readingError.note_Hz, sheet.tap_Hz / 2),
    yOverX(model),
  );
  return shares(model, { value: band.value_N_per_m, low: band.low_N_per_m, high: band.high_N_per_m });
}

/** Pull from the sag under a weight; null when none was read. The pad is taken no larger than the opening. */
export function pullOfPush(model: Model, { push, ...sheet }: Sheet): PullRead | null {
  if (push === null || !clothOn({ push, ...sheet })) return null;
  const span = pushSpan(model);
  const pad_mm = Math.min(push.pad_mm ?? padOn(model), span.width_mm, span.height_mm);
  const at = (sag_mm: number): number => pullFromPush_N_per_m(span, sag_mm, push.weight_g, pad_mm, yOverX(model));
  const least_sag_mm = Math.max(push.sag_mm - readingError.sag_mm, push.sag_mm / 2);
  return shares(model, { value: at(push.sag_mm), low: at(push.sag_mm + readingError.sag_mm), high: at(least_sag_mm) });
}

/**
 * The pull that all readings of the cloth together mean: midway between them, as wide as both. Null when none was
 * taken.
 */
export function pullRead(model: Model, sheet: Sheet): PullRead | null {
  const reads = [pullOfTap(model, sheet), pullOfPush(model, sheet)].filter((read) => read !== null);
  if (reads.length === 0) return null;
  return {
    value: reads.reduce((sum, { value }) => sum + value, 0) / reads.length,
    low: Math.min(...reads.map(({ low }) => low)),
    high: Math.max(...reads.map(({ high }) => high)),
  };
}

/** Notes that mean the working pull at this stage, bare or with the ground. */
export function promisedNote(model: Model, solution: Solution, sheet: Sheet): ClothSheet['tap']['bare'] {
  const { tap } = clothSheet(model, solution);
  return groundOn(sheet) ? tap.grounded : tap.bare;
}
