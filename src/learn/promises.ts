import { weightAt_kg } from '../bench-sheet/judge-material.js';
import { cut_lean_sd_deg } from '../bench-sheet/lift-parts.js';
import { clothOn, readingError, type Sheet } from '../bench-sheet/sheet.js';
import { diagonalsOfAngle_mm } from '../what-if/slips-geometry.js';
import { asBuilt, bareTerms, termsAsRead, warpsOf, type SolvedFrame } from './answers.js';
import type { FiledSheet } from './folder.js';
import { normally } from './predicted.js';
import { PromiseLedger, type RangedPromise } from './promise-ledger.js';
import { promiseSpread } from './promise-spreads.js';
import { holdCloth } from './promised-cloth.js';
import { holdWarp } from './promised-warp.js';
import type { Rounding } from './rounding.js';

/** Readings of one frame with their promises, and those that nothing was promised for. */
export interface FramePromises {
  readonly promises: readonly RangedPromise[];
  readonly unpromised: readonly { readonly file: string; readonly reading: string; readonly why: string }[];
}

/**
 * Every reading of a frame in the order it was taken, each held against what was known before: the plan, its boards as
 * read, and what was read of the same frame earlier. So the ranks of an honest promise are even and do not hang
 * together. A frame counts once bare and once with its cloth.
 */
export function promisesOf(frame: SolvedFrame, rounding: Rounding): FramePromises {
  const ledger = new PromiseLedger(frame, rounding);
  const warps = warpsOf(asBuilt(frame));
  const bare = bareTerms(frame, warps);
  const before = frame.sheets.find(({ sheet }) => !clothOn(sheet)) ?? null;
  const after = frame.sheets.find(({ sheet }) => clothOn(sheet)) ?? null;
  if (before !== null) holdWarp(ledger, frame, bare, bare, before, null);
  if (after !== null) {
    holdWarp(ledger, frame, bare, termsAsRead(frame, warps, after.sheet), after, before);
    holdCloth(ledger, frame, after);
  }
  holdMade(ledger, frame);
  return ledger;
}

/** What is read of the frame as made, cloth or not: diagonals, moisture and weight, each the first time it was read. */
function holdMade(ledger: PromiseLedger, { answer, sheets }: SolvedFrame): void {
  const { plan } = answer.model;
  const firstWith = (has: (sheet: Sheet) => boolean): FiledSheet | undefined => sheets.find(({ sheet }) => has(sheet));
  const square = firstWith(({ diagonals_mm }) => diagonals_mm !== null);
  if (square?.sheet.diagonals_mm) {
    const [one, other] = square.sheet.diagonals_mm;
    const skew_mm = diagonalsOfAngle_mm(plan.face.width_mm, plan.face.height_mm, cut_lean_sd_deg * Math.SQRT1_2);
    ledger.hold(square, {
      kind: 'diagonals',
      of: '',
      measured: Math.abs(one - other),
      unit: 'mm',
      predicted: normally(0, skew_mm ** 2 + 2 * readingError.tape_mm ** 2, true),
    });
  }
  const moist = firstWith(({ moisture_pct }) => moisture_pct !== null);
  if (moist)
    ledger.hold(moist, {
      kind: 'moisture',
      of: '',
      measured: moist.sheet.moisture_pct!,
      unit: 'pct',
      predicted: normally(
        plan.lumber.moisture_pct,
        readingError.meter_pct ** 2 + promiseSpread.moisture_pct ** 2,
        false,
      ),
    });
  const weighed = firstWith(({ weight_kg }) => weight_kg !== null);
  if (weighed) {
    const expected = weightAt_kg(answer, weighed.sheet);
    ledger.hold(weighed, {
      kind: 'weight',
      of: '',
      measured: weighed.sheet.weight_kg!,
      unit: 'kg',
      predicted: normally(expected, (promiseSpread.weight_share * expected) ** 2, false),
    });
  }
}
