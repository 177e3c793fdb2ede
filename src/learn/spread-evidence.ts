import { barNames, type BarName, type Choosing } from '../base/names.js';
import { clothOn, readingError } from '../bench-sheet/sheet.js';
import type { Model } from '../model/model.js';
import type { BoardWarp } from '../risk/ply-warp.js';
import { boardsOf } from '../risk/spread.js';
import type { WarpTerm } from '../risk/terms.js';
import type { Lumber, Normal } from '../shelf/shelf.js';
import { pullOf, termsAsRead, warpsOf, type SolvedFrame } from './answers.js';
import type { NormalReadings } from './belief-data.js';
import { middleStation, type Response } from './moments.js';
import { liftRead } from './lift-read.js';

/** Where a board's reading of each kind stands. */
export const readingOf = { twist: 'twist_rad_per_m', bow: 'bow_per_m', crook: 'crook_per_m' } as const;

/** How one movement of a frame hangs on the mean and spread of one kind of warp of its bars' boards. */
interface Split {
  readonly a: number;
  readonly B: number;
  readonly c: number;
  readonly D: number;
}

/**
 * A term's warp as weight × what is to be learned + the rest. Boards that were measured, other stock and other kinds
 * belong to the rest.
 */
function shareOfTerm(
  { warp, mean_per_m, sd_per_m }: WarpTerm,
  built: Model,
  kind: BoardWarp,
): { readonly a: number; readonly b: number; readonly mean: number; readonly variance: number } {
  const fixed = { a: 0, b: 0, mean: mean_per_m, variance: sd_per_m ** 2 };
  const build = built.bars[warp.member as BarName] ?? built.crossbars.find(({ name }) => name === warp.member);
  if (build === undefined || warp.from !== kind || build.stock.key !== built.bars.top.stock.key) return fixed;
  const shelf = normalOf(build.stock, built.plan.lumber.chosen, kind);
  const size2 = kind === 'twist' ? shelf.sd ** 2 : shelf.mean ** 2 + shelf.sd ** 2;
  const open = boardsOf(built.plan.boards, build).filter((board) => (board?.[readingOf[kind]] ?? null) === null).length;
  if (size2 === 0 || open === 0 || warp.chosen_var === 0) return fixed;
  const b = warp.chosen_var / size2;
  const a = kind === 'twist' ? Math.sqrt(b * open) : 0;
  return { a, b, mean: mean_per_m - a * shelf.mean, variance: warp.reading_var + warp.drying_var };
}

/** What the shelf says of one kind of warp. */
export function normalOf(stock: Lumber, chosen: Choosing, kind: BoardWarp): Normal {
  const spread = stock.spread[chosen];
  return kind === 'twist' ? spread.twist_rad_per_m : kind === 'bow' ? spread.bow_per_m : spread.crook_per_m;
}

function split(
  terms: readonly WarpTerm[],
  built: Model,
  kind: BoardWarp,
  of: Response,
  error_mm: number,
  elastic_mm = 0,
): Split {
  let [a, B, c, D] = [0, 0, elastic_mm, error_mm ** 2];
  for (const term of terms) {
    const share = shareOfTerm(term, built, kind);
    const each = of(term);
    a += each * share.a;
    B += each ** 2 * share.b;
    c += each * share.mean;
    D += each ** 2 * share.variance;
  }
  return { a, B, c, D };
}

function splitBoth(
  one: readonly WarpTerm[],
  other: readonly WarpTerm[],
  built: Model,
  kind: BoardWarp,
  of: Response,
): { readonly B_both: number; readonly D_both: number } {
  let [B_both, D_both] = [0, 0];
  one.forEach((term, i) => {
    const share = shareOfTerm(term, built, kind);
    const product = of(term) * of(other[i]!);
    B_both += product * share.b;
    D_both += product * share.variance;
  });
  return { B_both, D_both };
}

/**
 * What a frame's lift says of twist, and each bar's bow of the boards' bow (or of their crook, when they lie on edge):
 * before the cloth, and with it.
 */
export function frameReadings(
  frame: SolvedFrame,
  built: Model,
): readonly { readonly kind: BoardWarp; readonly readings: NormalReadings }[] {
  const warps = warpsOf(built);
  const before = frame.sheets.find(({ sheet }) => !clothOn(sheet)) ?? null;
  const after = frame.sheets.find(({ sheet }) => clothOn(sheet)) ?? null;
  const states = [before, after].flatMap((filed) => {
    if (filed === null) return [];
    const terms = termsAsRead(frame, warps, filed.sheet);
    return terms === null ? [] : [{ sheet: filed.sheet, terms }];
  });
  const found: { kind: BoardWarp; readings: NormalReadings }[] = [];
  const take = (
    kind: BoardWarp,
    of: Response,
    read: readonly { terms: readonly WarpTerm[]; y: number; signed: boolean; error_mm: number; elastic_mm: number }[],
  ): void => {
    if (read.length === 0) return;
    const splits = read.map(({ terms, error_mm, elastic_mm }) => split(terms, built, kind, of, error_mm, elastic_mm));
    if (splits.every(({ B }) => B === 0)) return;
    const both =
      read.length === 2 ? splitBoth(read[0]!.terms, read[1]!.terms, built, kind, of) : { B_both: 0, D_both: 0 };
    found.push({
      kind,
      readings: {
        y: read.map(({ y }) => y),
        signed: read.map(({ signed }) => signed),
        a: splits.map(({ a }) => a),
        c: splits.map(({ c }) => c),
        B: splits.map(({ B }) => B),
        D: splits.map(({ D }) => D),
        ...both,
      },
    });
  };
  take(
    'twist',
    (term) => term.lift,
    states.flatMap(({ sheet, terms }) => {
      const lift = liftRead(sheet);
      return lift === null
        ? []
        : [{ terms, y: lift.signed_mm, signed: lift.signed, error_mm: lift.error_mm, elastic_mm: 0 }];
    }),
  );
  const pull = pullOf(frame)?.value ?? 1;
  for (const bar of barNames) {
    take(
      built.bars[bar].lay === 'flat' ? 'bow' : 'crook',
      middleStation('bow', bar),
      states.flatMap(({ sheet, terms }) => {
        const y = sheet.bow_mm[bar];
        const elastic_mm = clothOn(sheet) ? frame.answer.solution.working.bars[bar].dish_mm * pull : 0;
        return y === undefined ? [] : [{ terms, y, signed: false, error_mm: readingError.string_mm, elastic_mm }];
      }),
    );
  }
  return found;
}
