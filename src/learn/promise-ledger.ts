import type { Choosing } from '../base/names.js';
import type { Stage } from '../bench-sheet/sheet.js';
import type { SolvedFrame } from './answers.js';
import type { FiledSheet } from './folder.js';
import { bandOf, quantileOf, shareBelow, type Predicted } from './predicted.js';
import type { ReadingKind, Rounding } from './rounding.js';

/** One reading, and where it fell in what was promised before it was taken. */
export interface KeptPromise {
  readonly plan: string;
  readonly frame: number;
  readonly file: string;
  readonly student: string | null;
  /** Key and choosing of the side bars' boards. */
  readonly stock: string;
  readonly chosen: Choosing;
  readonly when: Stage;
  readonly kind: ReadingKind;
  /** `corner-lift`, or `bow of top`. */
  readonly reading: string;
  readonly unit: 'mm' | 'Hz' | 'pct' | 'kg';
  readonly measured: number;
  /**
   * Share of what was promised that lies below the reading, 0 to 1: the middle of the shares that its rounding leaves
   * open.
   */
  readonly rank: number;
  readonly rank_between: readonly [number, number];
  /** Nine tenths of what was promised: the middle ones, or of sizes the least. */
  readonly low: number;
  readonly high: number;
}

/** The same with the ranges of all chances. */
export interface RangedPromise extends KeptPromise {
  /**
   * What was promised but for this chance on either side, its rounding given away: a reading beyond is asked about when
   * the chance is small.
   */
  readonly allBut: (tail: number) => readonly [number, number];
}

/** One reading and what it was promised to be. */
export interface HeldReading {
  readonly kind: ReadingKind;
  /** The bar it was taken on; empty for the whole frame. */
  readonly of: string;
  readonly measured: number;
  readonly unit: KeptPromise['unit'];
  readonly predicted: Predicted;
  /** From the reading to what is predicted, and back, where these are not the same. */
  readonly to?: (x: number) => number;
  readonly from?: (x: number) => number;
}

/** `corner-lift`, or `bow of top`. */
export const readingName = (kind: ReadingKind, of: string): string => (of === '' ? kind : `${kind} of ${of}`);

const same = (x: number): number => x;

/** Where the readings of one frame fell in what was promised of each. */
export class PromiseLedger {
  readonly promises: RangedPromise[] = [];
  readonly unpromised: { readonly file: string; readonly reading: string; readonly why: string }[] = [];
  readonly #frame: SolvedFrame;
  readonly #rounding: Rounding;
  readonly #student: string | null;

  constructor(frame: SolvedFrame, rounding: Rounding) {
    this.#frame = frame;
    this.#rounding = rounding;
    this.#student = frame.sheets.map(({ sheet }) => sheet.student).find((name) => name !== null) ?? null;
  }

  /** Enters a reading, with the room that its rounding leaves. */
  hold(
    { file, sheet }: FiledSheet,
    { kind, of, measured, unit, predicted, to = same, from = same }: HeldReading,
  ): void {
    const { plan } = this.#frame.answer.model;
    const step = this.#rounding(kind);
    const ends = bandOf(predicted).map(from) as [number, number];
    const shares = [
      to(kind === 'tap' || kind === 'push' ? Math.max(measured - step, measured / 2) : measured - step),
      to(measured + step),
    ].map((x) => shareBelow(predicted, x)) as [number, number];
    const rank_between = shares[0] <= shares[1] ? shares : ([1 - shares[0], 1 - shares[1]] as const);
    this.promises.push({
      plan: plan.name,
      frame: this.#frame.number,
      file,
      student: this.#student,
      stock: plan.bars.stock,
      chosen: plan.lumber.chosen,
      when: sheet.when,
      kind,
      reading: readingName(kind, of),
      unit,
      measured,
      rank: (rank_between[0] + rank_between[1]) / 2,
      rank_between,
      low: Math.min(...ends),
      high: Math.max(...ends),
      allBut: (tail) =>
        widened(
          [quantileOf(predicted, tail), quantileOf(predicted, 1 - tail)].map(from) as [number, number],
          step,
          predicted.folded,
        ),
    });
  }

  /** Enters a reading of which nothing could be promised. */
  leave(file: string, kind: ReadingKind, of: string, why: string): void {
    this.unpromised.push({ file, reading: readingName(kind, of), why });
  }
}

/**
 * A range in the order of its numbers, wider by half of what readings are rounded to; a size is never below nothing.
 */
function widened(ends: readonly [number, number], step: number, folded: boolean): readonly [number, number] {
  const low = Math.min(...ends) - step;
  return [folded ? Math.max(0, low) : low, Math.max(...ends) + step];
}
