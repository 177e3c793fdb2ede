import { barNames, type BarName } from '../base/names.js';
import type { PullRead } from '../bench-sheet/pull-read.js';
import { clothOn, readingError } from '../bench-sheet/sheet.js';
import type { WarpTerm } from '../risk/terms.js';
import { lnError, middleOf, pullOf, type SolvedFrame } from './answers.js';
import type { FiledSheet } from './folder.js';
import { liftRead } from './lift-read.js';
import { middleStation, momentsOf, together, type Response } from './moments.js';
import { givenFirst, normally } from './predicted.js';
import type { PromiseLedger } from './promise-ledger.js';
import { promiseSpread } from './promise-spreads.js';
import type { ReadingKind } from './rounding.js';

const unstable = 'at its pull this flat frame does not hold, so nothing could be promised';

/** The same thing read earlier on this frame, before its cloth was on. */
interface Earlier {
  readonly y: number;
  readonly error_mm: number;
  /** Whether the reading has a sign, or is a size. */
  readonly signed: boolean;
}

/** A reading of the warp of a frame. */
interface WarpReading {
  readonly kind: ReadingKind;
  readonly of: string;
  readonly y: number | undefined | null;
  readonly error_mm: number;
  /** What it answers to each term of warp. */
  readonly respond: Response;
  /** What the cloth adds. */
  readonly extra: Extra;
  readonly first: Earlier | null;
  /** Only its size is read. */
  readonly folded: boolean;
}

interface Extra {
  readonly mean: number;
  readonly variance: number;
}
const none: Extra = { mean: 0, variance: 0 };

/**
 * Lift and bows of one sheet, held against the warp of the boards under this sheet's pull (`terms`; null where the flat
 * frame does not hold) and, where the same was read bare before (`bare`), against that reading too.
 */
export function holdWarp(
  ledger: PromiseLedger,
  frame: SolvedFrame,
  bare: readonly WarpTerm[],
  terms: readonly WarpTerm[] | null,
  filed: FiledSheet,
  earlier: FiledSheet | null,
): void {
  const { sheet, file } = filed;
  const hold = ({ kind, of, y, error_mm, respond, extra, first, folded }: WarpReading): void => {
    if (y === undefined || y === null) return;
    if (terms === null) return ledger.leave(file, kind, of, unstable);
    const own = momentsOf(terms, respond);
    const variance = own.variance + error_mm ** 2 + extra.variance;
    const mean = own.mean + extra.mean;
    const before = momentsOf(bare, respond);
    const predicted =
      first === null
        ? normally(mean, variance, folded)
        : givenFirst(
            {
              mean: [before.mean, mean],
              variance: [before.variance + first.error_mm ** 2, variance],
              both: together(bare, terms, respond),
            },
            first.y,
            first.signed,
            folded,
          );
    ledger.hold(filed, { kind, of, measured: folded ? Math.abs(y) : y, unit: 'mm', predicted });
  };
  const lift = liftRead(sheet);
  const liftBefore = earlier === null ? null : liftRead(earlier.sheet);
  if (lift !== null)
    hold({
      kind: lift.kind,
      of: '',
      y: lift.mm,
      error_mm: lift.error_mm,
      respond: (term) => term.lift,
      extra: none,
      first:
        liftBefore === null
          ? null
          : { y: liftBefore.signed_mm, error_mm: liftBefore.error_mm, signed: liftBefore.signed },
      folded: true,
    });
  const pull = clothOn(sheet) ? pullOf(frame) : null;
  const error_mm = readingError.string_mm;
  for (const bar of barNames) {
    const dish = clothOn(sheet) ? frame.answer.solution.working.bars[bar].dish_mm * (pull?.value ?? 1) : 0;
    const [bowBefore, inBefore] = [earlier?.sheet.bow_mm[bar], earlier?.sheet.inward_bow_mm[bar]];
    hold({
      kind: 'bow',
      of: bar,
      y: sheet.bow_mm[bar],
      error_mm,
      respond: middleStation('bow', bar),
      extra: { mean: dish, variance: 0 },
      first: bowBefore === undefined ? null : { y: bowBefore, error_mm, signed: false },
      folded: true,
    });
    hold({
      kind: 'inward-bow',
      of: bar,
      y: sheet.inward_bow_mm[bar],
      error_mm,
      respond: middleStation('crook', bar),
      extra: clothOn(sheet) ? inwardOf(frame, bar, pull) : none,
      first: inBefore === undefined ? null : { y: inBefore, error_mm, signed: true },
      folded: false,
    });
  }
}

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
