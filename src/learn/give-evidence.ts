import { barNames } from '../base/names.js';
import { clothOn, readingError } from '../bench-sheet/sheet.js';
import { jointError_mm, jointMoves_mm } from '../measure/measure-joint.js';
import type { Model } from '../model/model.js';
import type { JointGive } from '../base/joint-give.js';
import { bareTerms, gives, lnError, pullOf, warpsOf, withPlane, type SolvedFrame } from './answers.js';
import { middleStation, momentsOf } from './moments.js';
import { promiseSpread } from './promise-spreads.js';

/**
 * How far the cloth drew the bars in says how much the corners give: the reading with the cloth, less the one before it
 * where there is one.
 */
export function giveFromBars(frame: SolvedFrame, built: Model): readonly ((lnGive: number) => number)[] {
  const before = frame.sheets.find(({ sheet }) => !clothOn(sheet))?.sheet ?? null;
  const after = frame.sheets.find(({ sheet }) => clothOn(sheet))?.sheet ?? null;
  if (after === null || barNames.every((bar) => after.inward_bow_mm[bar] === undefined)) return [];
  const pull = pullOf(frame);
  const share = pull?.value ?? 1;
  const share_error = pull === null ? promiseSpread.ln_pull : lnError(pull);
  const bare = bareTerms(frame, warpsOf(built));
  const at = frame.answer.inwardAt();
  const read = barNames.flatMap((bar) => {
    const y = after.inward_bow_mm[bar];
    if (y === undefined) return [];
    const earlier = before?.inward_bow_mm[bar];
    const crook = momentsOf(bare, middleStation('crook', bar));
    const noise =
      earlier === undefined ? crook.variance + readingError.string_mm ** 2 : 2 * readingError.string_mm ** 2;
    return [{ bar, y: y - (earlier ?? crook.mean), noise }];
  });
  return [
    (lnGive) => {
      const expected = read.map(
        ({ bar }) =>
          share *
          between(
            at.map((bows) => bows[bar]),
            lnGive,
          ),
      );
      // The pull's error is one for all bars: the readings hang together by it.
      return lnManyWithOne(
        read.map(({ y }, i) => y - expected[i]!),
        read.map(({ noise }) => noise),
        expected.map((mm) => mm * share_error),
      );
    },
  ];
}

/**
 * ln likelihood of differences with independent noise and one shared error of given sizes (matrix determinant lemma).
 */
function lnManyWithOne(off: readonly number[], noise: readonly number[], shared: readonly number[]): number {
  const inner = 1 + shared.reduce((sum, s, i) => sum + s ** 2 / noise[i]!, 0);
  const along = off.reduce((sum, d, i) => sum + (d * shared[i]!) / noise[i]!, 0);
  const square = off.reduce((sum, d, i) => sum + d ** 2 / noise[i]!, 0) - along ** 2 / inner;
  return -0.5 * (square + Math.log(inner) + noise.reduce((sum, v) => sum + Math.log(v), 0));
}

/** Logarithms of the least and the most give that is told apart. */
export const lnGiveRange = [Math.log(gives[0]!) - 2, Math.log(gives.at(-1)!) + 2] as const;

/** A value between those at `gives`, even in the logarithm; beyond them the last. */
function between(values: readonly number[], lnGive: number): number {
  const place = Math.min(gives.length - 1, Math.max(0, (lnGive - Math.log(gives[0]!)) / Math.LN2));
  const i = Math.min(gives.length - 2, Math.floor(place));
  return values[i]! + (place - i) * (values[i + 1]! - values[i]!);
}

/** Corners that were loaded at the bench. */
export function giveFromTestJoints(
  { sheets, answer: { model } }: SolvedFrame,
  usual: JointGive,
): readonly ((lnGive: number) => number)[] {
  const bar = model.bars.top.section;
  return sheets
    .flatMap(({ sheet }) => sheet.test_joints)
    .map((joint) => (lnGive: number) => {
      const give = withPlane(usual, Math.exp(lnGive));
      const error_mm = jointError_mm(joint, bar, give);
      return -Math.log(error_mm) - 0.5 * ((joint.moves_mm - jointMoves_mm(joint, bar, give)) / error_mm) ** 2;
    });
}
