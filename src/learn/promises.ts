import { barNames, type BarName, type Choosing } from '../base/names.js';
import { cut_lean_sd_deg } from '../bench-sheet/lift-parts.js';
import { weightAt_kg } from '../bench-sheet/judge-material.js';
import { pullOfPush, pullOfTap, type PullRead } from '../bench-sheet/pull-read.js';
import { clothOn, readingError, type Sheet, type Stage } from '../bench-sheet/sheet.js';
import type { WarpTerm } from '../risk/terms.js';
import { diagonalsOfAngle_mm } from '../what-if/slips-geometry.js';
import { asBuilt, bareTerms, lnError, middleOf, pullOf, termsAsRead, warpsOf, type SolvedFrame } from './answers.js';
import type { FiledSheet } from './folder.js';
import { liftRead } from './lift-read.js';
import { middleStation, together, momentsOf, type Response } from './moments.js';
import { bandOf, givenFirst, normally, quantileOf, shareBelow, type Predicted } from './predicted.js';
import { promiseSpread } from './promise-spreads.js';
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

/** Readings of one frame with their promises, and those that nothing was promised for. */
export interface FramePromises {
  readonly promises: readonly RangedPromise[];
  readonly unpromised: readonly { readonly file: string; readonly reading: string; readonly why: string }[];
}

const unstable = 'at its pull this flat frame does not hold, so nothing could be promised';

/**
 * Every reading of a frame in the order it was taken, each held against what was known before: the plan, its boards as
 * read, and what was read of the
 * same frame earlier. So the ranks of an honest promise are even and do not hang together. A frame counts once bare and
 * once with its cloth.
 */
export function promisesOf(frame: SolvedFrame, rounding: Rounding): FramePromises {
  const { model } = frame.answer;
  const built = asBuilt(frame);
  const warps = warpsOf(built);
  const bare = bareTerms(frame, warps);
  const before = frame.sheets.find(({ sheet }) => !clothOn(sheet)) ?? null;
  const after = frame.sheets.find(({ sheet }) => clothOn(sheet)) ?? null;
  const promises: RangedPromise[] = [];
  const unpromised: { file: string; reading: string; why: string }[] = [];
  const { plan } = model;
  const student = frame.sheets.map(({ sheet }) => sheet.student).find((name) => name !== null) ?? null;
  const hold = (
    { file, sheet }: FiledSheet,
    kind: ReadingKind,
    of: string,
    measured: number,
    unit: KeptPromise['unit'],
    predicted: Predicted,
    to: (x: number) => number = (x) => x,
    from: (x: number) => number = (x) => x,
  ): void => {
    const step = rounding(kind);
    const ends = bandOf(predicted).map(from) as [number, number];
    const shares = [
      to(kind === 'tap' || kind === 'push' ? Math.max(measured - step, measured / 2) : measured - step),
      to(measured + step),
    ].map((x) => shareBelow(predicted, x)) as [number, number];
    const rank_between = shares[0] <= shares[1] ? shares : ([1 - shares[0], 1 - shares[1]] as const);
    promises.push({
      plan: plan.name,
      frame: frame.number,
      file,
      student,
      stock: plan.bars.stock,
      chosen: plan.lumber.chosen,
      when: sheet.when,
      kind,
      reading: of === '' ? kind : `${kind} of ${of}`,
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
  };
  const readings = (filed: FiledSheet, terms: readonly WarpTerm[] | null, earlier: FiledSheet | null): void => {
    const { sheet, file } = filed;
    const hanging = (
      kind: ReadingKind,
      of: string,
      y: number | undefined | null,
      error_mm: number,
      respond: Response,
      extra: Extra,
      first: { y: number; error_mm: number; signed: boolean } | null,
      folded: boolean,
    ): void => {
      if (y === undefined || y === null) return;
      if (terms === null)
        return void unpromised.push({ file, reading: of === '' ? kind : `${kind} of ${of}`, why: unstable });
      const own = momentsOf(terms, respond);
      const variance = own.variance + error_mm ** 2 + extra.variance;
      const mean = own.mean + extra.mean;
      const predicted =
        first === null
          ? normally(mean, variance, folded)
          : givenFirst(
              {
                mean: [momentsOf(bare, respond).mean, mean],
                variance: [momentsOf(bare, respond).variance + first.error_mm ** 2, variance],
                both: together(bare, terms, respond),
              },
              first.y,
              first.signed,
              folded,
            );
      hold(filed, kind, of, folded ? Math.abs(y) : y, 'mm', predicted);
    };
    const lift = liftRead(sheet);
    const liftBefore = earlier === null ? null : liftRead(earlier.sheet);
    if (lift !== null)
      hanging(
        lift.kind,
        '',
        lift.mm,
        lift.error_mm,
        (term) => term.lift,
        none,
        liftBefore === null
          ? null
          : { y: liftBefore.signed_mm, error_mm: liftBefore.error_mm, signed: liftBefore.signed },
        true,
      );
    const pull = clothOn(sheet) ? pullOf(frame) : null;
    for (const bar of barNames) {
      const dish = clothOn(sheet) ? frame.answer.solution.working.bars[bar].dish_mm * (pull?.value ?? 1) : 0;
      const inward = clothOn(sheet) ? inwardOf(frame, bar, pull) : none;
      const [bowBefore, inBefore] = [earlier?.sheet.bow_mm[bar], earlier?.sheet.inward_bow_mm[bar]];
      const string = readingError.string_mm;
      hanging(
        'bow',
        bar,
        sheet.bow_mm[bar],
        string,
        middleStation('bow', bar),
        { mean: dish, variance: 0 },
        bowBefore === undefined ? null : { y: bowBefore, error_mm: string, signed: false },
        true,
      );
      hanging(
        'inward-bow',
        bar,
        sheet.inward_bow_mm[bar],
        string,
        middleStation('crook', bar),
        inward,
        inBefore === undefined ? null : { y: inBefore, error_mm: string, signed: true },
        false,
      );
    }
    if (clothOn(sheet)) cloth(filed);
  };
  const cloth = (filed: FiledSheet): void => {
    const { sheet } = filed;
    const tap = pullOfTap(model, sheet);
    const push = pullOfPush(model, sheet);
    const spread = promiseSpread.ln_pull ** 2;
    if (tap !== null && sheet.tap_Hz !== null) {
      const Hz = sheet.tap_Hz;
      const perRoot = Hz / Math.sqrt(tap.value);
      hold(
        filed,
        'tap',
        '',
        Hz,
        'Hz',
        normally(0, spread + lnError(tap) ** 2, false),
        (note) => 2 * Math.log(note / perRoot),
        (ln) => perRoot * Math.exp(ln / 2),
      );
    }
    if (push !== null && sheet.push !== null) {
      const at = (sag_mm: number): number =>
        Math.log(pullOfPush(model, { ...sheet, push: { ...sheet.push!, sag_mm } })!.value);
      const noise = lnError(push) ** 2;
      const known =
        tap === null
          ? normally(0, spread + noise, false)
          : givenFirst(
              { mean: [0, 0], variance: [spread + lnError(tap) ** 2, spread + noise], both: spread },
              Math.log(tap.value),
              true,
              false,
            );
      const { sag_mm } = sheet.push;
      hold(filed, 'push', '', sag_mm, 'mm', known, at, (ln) => sagAt(at, ln, sag_mm));
    }
  };
  if (before !== null) readings(before, bare, null);
  if (after !== null) readings(after, termsAsRead(frame, warps, after.sheet), before);
  const firstWith = (has: (sheet: Sheet) => boolean): FiledSheet | undefined =>
    frame.sheets.find(({ sheet }) => has(sheet));
  const square = firstWith(({ diagonals_mm }) => diagonals_mm !== null);
  if (square?.sheet.diagonals_mm) {
    const [one, other] = square.sheet.diagonals_mm;
    const skew_mm = diagonalsOfAngle_mm(plan.face.width_mm, plan.face.height_mm, cut_lean_sd_deg * Math.SQRT1_2);
    hold(
      square,
      'diagonals',
      '',
      Math.abs(one - other),
      'mm',
      normally(0, skew_mm ** 2 + 2 * readingError.tape_mm ** 2, true),
    );
  }
  const moist = firstWith(({ moisture_pct }) => moisture_pct !== null);
  if (moist)
    hold(
      moist,
      'moisture',
      '',
      moist.sheet.moisture_pct!,
      'pct',
      normally(plan.lumber.moisture_pct, readingError.meter_pct ** 2 + promiseSpread.moisture_pct ** 2, false),
    );
  const weighed = firstWith(({ weight_kg }) => weight_kg !== null);
  if (weighed) {
    const expected = weightAt_kg(frame.answer, weighed.sheet);
    hold(
      weighed,
      'weight',
      '',
      weighed.sheet.weight_kg!,
      'kg',
      normally(expected, (promiseSpread.weight_share * expected) ** 2, false),
    );
  }
  return { promises, unpromised };
}

/**
 * A range in the order of its numbers, wider by half of what readings are rounded to; a size is never below nothing.
 */
function widened(ends: readonly [number, number], step: number, folded: boolean): readonly [number, number] {
  const low = Math.min(...ends) - step;
  return [folded ? Math.max(0, low) : low, Math.max(...ends) + step];
}

interface Extra {
  readonly mean: number;
  readonly variance: number;
}
const none: Extra = { mean: 0, variance: 0 };

/**
 * How far the cloth draws a bar in at the pull that was read, mm; at the planned one, with the spread of hands, when
 * none was.
 */
function inwardOf({ answer }: SolvedFrame, bar: BarName, pull: PullRead | null): Extra {
  const planned = middleOf(answer.solution.working.bars[bar].bow_line);
  const share = pull?.value ?? 1;
  return {
    mean: planned * share,
    variance: (planned * share * (pull === null ? promiseSpread.ln_pull : lnError(pull))) ** 2,
  };
}

/**
 * The sag that means a pull of e^ln of the planned one, mm: found between a hundredth and a hundred times the one that
 * was read.
 */
function sagAt(lnPull: (sag_mm: number) => number, ln: number, near_mm: number): number {
  let [low, high] = [near_mm / 100, near_mm * 100];
  for (let step = 0; step < 60; step++) {
    const middle = Math.sqrt(low * high);
    if (lnPull(middle) > ln) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}
