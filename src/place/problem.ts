import type { PileBoard } from '../pile/pile.js';
import { soundStretches, type Stretch } from '../pile/stretches.js';
import { fitsAsIs } from '../cutting/pieces/as-is.js';
import { mitreKerf_mm } from '../cutting/boards/stock-problem.js';
import { tapeMark_mm, upToMark } from '../base/tape.js';
import type { MemberBuild } from '../model/model.js';
import { boardState } from '../risk/assess.js';
import { groupsOf, type Group } from './aim.js';
import { effectOf, measuresOf, plyAnswers, type Effect, type Measure } from './effects.js';
import type { Frame, Slot } from './frame.js';
import { roomFor, type Length } from './room.js';
import { allLies, asLying, liesFor, type Lie, type Lying } from './turning.js';

/** A board that a slot may take, and the ways to lay it that come to the same. */
export interface Option extends Effect {
  /** Index into the pile; −1 for a board to be bought, which nobody has read. */
  readonly board: number;
  readonly lies: readonly Lie[];
}

/** Everything the search needs: numbers only. */
export interface PlaceProblem {
  readonly frames: readonly Frame[];
  readonly slots: readonly Slot[];
  readonly boards: readonly PileBoard[];
  readonly measures: readonly Measure[];
  /** The groups that a placing can move at all, and all of them. */
  readonly groups: readonly Group[];
  readonly allGroups: readonly Group[];
  readonly lengths: readonly Length[];
  readonly stretches: readonly (readonly Stretch[])[];
  /** Boards of one kind are alike in everything, so it does not matter which of them is taken. */
  readonly kinds: readonly number[];
  /** What each slot may take, boards of the pile only. */
  readonly options: readonly (readonly Option[])[];
  /** A bought board in each slot. */
  readonly bought: readonly Option[];
}

/**
 * A measure whose mean could never come nearer to its limit than this many standard deviations is left out of the
 * search: its chance is below one in a hundred thousand million.
 */
const out_of_reach = 7;

/** A cut piece may be so much shorter than the piece it becomes and count as fitting: half the tape's coarsest mark. */
const longer_by_mm = 1;

/** Puts the search's problem together. Throws on a slot that its frame does not have. */
export function placeProblem(
  frames: readonly Frame[],
  slots: readonly Slot[],
  boards: readonly PileBoard[],
  kerf_mm: number,
): PlaceProblem {
  const measures = frames
    .flatMap((frame, f) => measuresOf(frame, f))
    .filter(({ scale_mm }) => Number.isFinite(scale_mm));
  const lengths = slots.map((slot): Length => ({
    length_mm: slot.piece.cut_mm,
    kerf_mm: sawCut_mm(slot, frames, kerf_mm),
  }));
  const stretches = boards.map((board) =>
    board.cut === null ? soundStretches(board) : [{ from_mm: 0, to_mm: board.length_mm + longer_by_mm }],
  );
  const kinds = kindsOf(boards);
  const made = slots.map((slot, i) =>
    slotOptions(slot, lengths[i] as Length, frames, { boards, stretches, kinds, measures }),
  );
  const options = made.map(({ own }) => own);
  const bought = made.map((one) => one.bought);
  const reachable = reach(measures, options, bought);
  return {
    frames,
    slots,
    boards,
    measures,
    groups: groupsOf(measures, (j) => reachable[j] === true),
    allGroups: groupsOf(measures, () => true),
    lengths,
    stretches,
    kinds,
    options,
    bought,
  };
}

/** What parts a piece from its neighbour, up to the next mark of the tape, so that every cut lies on one. */
function sawCut_mm({ frame, piece }: Slot, frames: readonly Frame[], kerf_mm: number): number {
  const units = frames[frame]?.model.plan.units ?? 'metric';
  return upToMark(piece.ends === 'mitre' ? mitreKerf_mm(kerf_mm) : kerf_mm, tapeMark_mm(units));
}

/** A number for each board, the same for boards alike in everything but their marks. */
function kindsOf(boards: readonly PileBoard[]): number[] {
  const known = new Map<string, number>();
  return boards.map(({ mark: _mark, marked: _marked, ...rest }) => {
    const key = JSON.stringify(rest);
    const kind = known.get(key) ?? known.size;
    known.set(key, kind);
    return kind;
  });
}

interface OnOffer {
  readonly boards: readonly PileBoard[];
  readonly stretches: readonly (readonly Stretch[])[];
  readonly kinds: readonly number[];
  readonly measures: readonly Measure[];
}

function slotOptions(
  slot: Slot,
  length: Length,
  frames: readonly Frame[],
  { boards, stretches, kinds, measures }: OnOffer,
): { readonly own: readonly Option[]; readonly bought: Option } {
  const frame = frames[slot.frame] as Frame;
  const member = memberOf(frame, slot);
  const ofFrame = measures.filter((measure) => measure.frame === slot.frame);
  const answers = plyAnswers(member, ofFrame);
  const state = boardState(frame.model);
  const effect = (board: Lying | null): Effect => spreadOut(effectOf(frame.model, state, member, answers, board));
  const first = measures.findIndex((measure) => measure.frame === slot.frame);
  const spreadOut = ({ mean, variance }: Effect): Effect => {
    const all = { mean: new Float64Array(measures.length), variance: new Float64Array(measures.length) };
    if (first >= 0) {
      all.mean.set(mean, first);
      all.variance.set(variance, first);
    }
    return all;
  };
  const ofKind = new Map<number, readonly Omit<Option, 'board'>[]>();
  const own = boards.flatMap((board, b) => {
    if (board.stock !== slot.piece.stock || roomFor(stretches[b] as readonly Stretch[], [length]) === null) return [];
    if (
      board.cut !== null &&
      !fitsAsIs({ length_mm: board.length_mm, as_is: board.cut }, slot.piece, tapeMark_mm(frame.model.plan.units))
    )
      return [];
    const kind = kinds[b] as number;
    let ways = ofKind.get(kind);
    if (ways === undefined)
      ofKind.set(
        kind,
        (ways = waysToLie((lie) => effect(asLying(board, slot.piece, lie)), liesFor(board, slot.piece))),
      );
    return ways.map((way): Option => ({ ...way, board: b }));
  });
  return { own, bought: { ...effect(null), board: -1, lies: allLies } };
}

/** The built-up bar or crossbar a slot belongs to. */
export function memberOf({ model }: Frame, { piece }: Slot): MemberBuild {
  const member = [...Object.values(model.bars), ...model.crossbars].find(({ name }) => name === piece.about);
  if (member === undefined) throw new Error(`the frame has no ${piece.about}`);
  return member;
}

/** Lies that do the same to every measure stand together. */
function waysToLie(effect: (lie: Lie) => Effect, lies: readonly Lie[]): readonly Omit<Option, 'board'>[] {
  const ways: { mean: Float64Array; variance: Float64Array; lies: Lie[] }[] = [];
  for (const lie of lies) {
    const made = effect(lie);
    const same = ways.find(({ mean }) => mean.every((value, j) => Math.abs(value - (made.mean[j] as number)) < 1e-9));
    if (same === undefined) ways.push({ ...made, lies: [lie] });
    else same.lies.push(lie);
  }
  return ways;
}

function reach(
  measures: readonly Measure[],
  options: readonly (readonly Option[])[],
  bought: readonly Option[],
): readonly boolean[] {
  return measures.map(({ limit_mm, bar }, j) => {
    if (bar === null) return true;
    let size = 0;
    let variance = 0;
    options.forEach((own, i) => {
      const all = [...own, bought[i] as Option];
      size += Math.max(...all.map(({ mean }) => Math.abs(mean[j] as number)));
      variance += Math.max(...all.map((one) => one.variance[j] as number));
    });
    return size + out_of_reach * Math.sqrt(variance) > limit_mm;
  });
}
