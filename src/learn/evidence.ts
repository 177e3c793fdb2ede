import type { Choosing } from '../base/names.js';
import { readingError } from '../bench-sheet/sheet.js';
import { cornerJoint } from '../model/joint-give.js';
import type { BoardWarp } from '../risk/ply-warp.js';
import type { Joints, Lumber } from '../shelf/shelf.js';
import { asBuilt, lnError, pullOf, type SolvedFrame } from './answers.js';
import { averaged, lnLikelihood, type NormalReadings } from './belief-data.js';
import { giveFromBars, lnGiveRange, giveFromTestJoints } from './give-evidence.js';
import type { Likelihood } from './on-a-grid.js';
import { frameReadings, readingOf } from './spread-evidence.js';

/** What was read of one board, and where that is written. */
export interface BoardRead {
  readonly kind: BoardWarp;
  /** rad/m or 1/m. */
  readonly value: number;
  /** The sheet's file; null where the plan says it. */
  readonly file: string | null;
  readonly plan: string;
  /** Which of the plan's frames. */
  readonly frame: number;
  readonly for: string;
  readonly ply: number;
}

/**
 * What the frames and boards say of one kind of board, chosen one way: readings of boards, and of frames made of them.
 */
export interface BoardEvidence {
  readonly boards: BoardRead[];
  readonly frames: Likelihood[];
  readonly frame_ids: Set<string>;
}

/** Everything the folder says of the numbers on the shelf. */
export interface Evidence {
  /** By `stock chosen kind`. */
  readonly spreads: ReadonlyMap<
    string,
    BoardEvidence & { readonly stock: Lumber; readonly chosen: Choosing; readonly kind: BoardWarp }
  >;
  readonly gives: ReadonlyMap<
    keyof Joints['give'],
    { readonly likelihoods: readonly Likelihood[]; readonly joints: number; readonly frame_ids: ReadonlySet<string> }
  >;
  readonly pulls: ReadonlyMap<
    string,
    { readonly likelihoods: readonly Likelihood[]; readonly frame_ids: ReadonlySet<string> }
  >;
  readonly moisture: { readonly likelihoods: readonly Likelihood[]; readonly frame_ids: ReadonlySet<string> };
}

const kinds: readonly BoardWarp[] = ['twist', 'bow', 'crook'];

/** A number for a frame, so that frames that told of a number can be counted. */
const idOf = (frame: SolvedFrame): string => `${frame.number} ${frame.plan.name}`;

/** Gathers what frames say; nothing is believed yet. Readings of boards that `leaves` names are left out. */
export function gatherEvidence(
  frames: readonly SolvedFrame[],
  leaves: (read: BoardRead) => boolean = () => false,
): Evidence {
  const spreads = new Map<string, BoardEvidence & { stock: Lumber; chosen: Choosing; kind: BoardWarp }>();
  const giveOf = new Map<keyof Joints['give'], { likelihoods: Likelihood[]; joints: number; frame_ids: Set<string> }>();
  const pulls = new Map<string, { likelihoods: Likelihood[]; frame_ids: Set<string> }>();
  const moisture = { likelihoods: [] as Likelihood[], frame_ids: new Set<string>() };
  const countedPlans = new Set<string>();
  /** Readings of marked boards: one board cut into several frames, or told on several sheets, counts once. */
  const seen = new Set<string>();
  for (const frame of frames) {
    const built = asBuilt(frame);
    const { plan } = built;
    const { stock } = frame.answer.model.bars.top;
    const { chosen } = plan.lumber;
    const spreadOf = (kind: BoardWarp): BoardEvidence => {
      const key = `${stock.key} ${chosen} ${kind}`;
      let found = spreads.get(key);
      if (found === undefined)
        spreads.set(key, (found = { boards: [], frames: [], frame_ids: new Set(), stock, chosen, kind }));
      return found;
    };
    const own = frame.sheets.flatMap(({ file, sheet }) => sheet.boards.map((board) => ({ ...board, file })));
    const planned = countedPlans.has(plan.name)
      ? []
      : frame.plan.boards.filter((board) => !own.some((other) => other.for === board.for && other.ply === board.ply));
    countedPlans.add(plan.name);
    for (const board of [...own, ...planned.map((one) => ({ ...one, file: null, mark: one.on?.mark ?? null }))])
      for (const kind of kinds) {
        const value = board[readingOf[kind]];
        if (value === null) continue;
        const read: BoardRead = {
          kind,
          value,
          file: board.file,
          plan: plan.name,
          frame: frame.number,
          for: board.for,
          ply: board.ply,
        };
        if (leaves(read) || seen.has(`${board.mark} ${kind} ${value}`)) continue;
        if (board.mark !== null) seen.add(`${board.mark} ${kind} ${value}`);
        spreadOf(kind).boards.push(read);
        spreadOf(kind).frame_ids.add(idOf(frame));
      }
    for (const { kind, readings } of frameReadings(frame, built)) {
      spreadOf(kind).frames.push((mu, sigma) => lnLikelihood(readings, mu, sigma));
      spreadOf(kind).frame_ids.add(idOf(frame));
    }
    const pull = pullOf(frame);
    if (pull !== null) {
      const entry = pulls.get(plan.cloth.use) ?? { likelihoods: [], frame_ids: new Set<string>() };
      pulls.set(plan.cloth.use, entry);
      entry.likelihoods.push(single(Math.log(pull.value), lnError(pull) ** 2));
      entry.frame_ids.add(idOf(frame));
    }
    const moist = frame.sheets.find(({ sheet }) => sheet.moisture_pct !== null)?.sheet.moisture_pct ?? null;
    if (moist !== null) {
      moisture.likelihoods.push(single(moist - frame.plan.lumber.moisture_pct, readingError.meter_pct ** 2));
      moisture.frame_ids.add(idOf(frame));
    }
    if (frame.plan.corners.give === null) {
      const { shelf, bars } = frame.answer.model;
      const joint = cornerJoint(frame.plan, shelf, bars.top.section);
      const told = [...giveFromBars(frame, built), ...giveFromTestJoints(frame, shelf.joints.give[joint])];
      if (told.length > 0) {
        const entry = giveOf.get(joint) ?? { likelihoods: [], joints: 0, frame_ids: new Set<string>() };
        giveOf.set(joint, entry);
        entry.likelihoods.push(...told.map((lnOf) => averaged(lnOf, ...lnGiveRange)));
        entry.joints += frame.sheets.reduce((sum, { sheet }) => sum + sheet.test_joints.length, 0);
        entry.frame_ids.add(idOf(frame));
      }
    }
  }
  return { spreads, gives: giveOf, pulls, moisture };
}

const single = (y: number, D: number): Likelihood => {
  const readings: NormalReadings = { y: [y], signed: [true], a: [1], c: [0], B: [1], D: [D], B_both: 0, D_both: 0 };
  return (mu, sigma) => lnLikelihood(readings, mu, sigma);
};
