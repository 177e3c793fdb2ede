import type { Model } from '../model/model.js';
import { boardState } from '../risk/assess.js';
import { liftRisk } from '../risk/closed-form.js';
import { barWarps } from '../risk/spread.js';
import { warpTerms, type WarpTerm } from '../risk/terms.js';
import { solveInfluence } from '../solve/analyse-frame.js';
import { factOf, finite, type Promised } from './promised.js';
import { readingError } from './sheet.js';

/** What a lift is held against at one stage, mm; null where it is not known. */
export interface LiftPromise {
  /** More shows on the wall: the ruleset's limit. */
  readonly limit_mm: number | null;
  /** What nine in ten such frames stay under. */
  readonly p90_mm: number | null;
  /**
   * Good up to here, read off a table and over two sticks: the smaller of the limit and what nine in ten stay under,
   * with the reading error.
   */
  readonly table_mm: number | null;
  readonly sticks_mm: number | null;
}

/**
 * The promise with the cloth on, or before it with the terms of the bare frame (null when it cannot be told). The sheet
 * prints it and the judgement holds readings against it.
 */
export function liftPromise(promised: Promised, bare: readonly WarpTerm[] | null | 'cloth-on'): LiftPromise {
  const limit_mm = finite(promised.settings.corner_lift_limit_mm);
  const p90_mm =
    bare === 'cloth-on'
      ? factOf(promised, 'warp.corner_lift_p90_mm')
      : bare === null
        ? null
        : finite(liftRisk(bare).p90_mm);
  const upTo = (error_mm: number): number | null =>
    limit_mm === null || p90_mm === null ? null : Math.min(limit_mm, p90_mm + error_mm);
  return { limit_mm, p90_mm, table_mm: upTo(readingError.table_mm), sticks_mm: upTo(readingError.stick_mm) };
}

/** How the bare frame, before the cloth, answers the natural warp of its boards. */
export function bareTerms(model: Model): readonly WarpTerm[] | null {
  const influence = solveInfluence(model.shape, { x: 0, y: 0 });
  return influence === null ? null : warpTerms(barWarps(model, boardState(model)), influence);
}
