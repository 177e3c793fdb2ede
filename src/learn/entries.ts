import type { Choosing } from '../base/names.js';
import { planDefaults } from '../plan/defaults.js';
import { jointKey } from '../model/joint-give.js';
import type { Shelf } from '../shelf/shelf.js';
import type { Evidence } from './evidence.js';
import { believe, learnFrom, type Known } from './nig.js';
import { knownOf, type Belief, type KnownBoth } from './on-a-grid.js';
import { priorOfSpread } from './prior-of-spread.js';

/** What a number is about. */
export type LearnedWhat = 'twist' | 'bow' | 'crook' | 'give' | 'pull' | 'moisture';

/** One number of the shelf: what was believed of it before the frames, and after them. */
export interface LearnedEntry {
  /**
   * As on the shelf: `strip-19x38`, `mitre-glued-nailed`, `cotton-duck-340`; `moisture` for what the plans say of it.
   */
  readonly key: string;
  readonly what: LearnedWhat;
  /** The usual value, or how far single ones lie from it (standard deviation). */
  readonly of: 'spread' | 'mean';
  /** Way of choosing, for boards. */
  readonly chosen: Choosing | null;
  readonly unit: 'deg/m' | '/m' | 'bar-widths' | 'N/m' | 'pct';
  /** What the shelf says. */
  readonly shelf: number;
  readonly prior: Known;
  readonly posterior: Known;
  /** Frames that told of it, boards that were read one by one, and test corners. */
  readonly from: number;
  readonly boards: number;
  readonly joints: number;
}

/** What was believed after an earlier folder, by entry; so that a second one can go on from there. */
export type Beliefs = ReadonlyMap<string, Belief>;

/** Entries, and the beliefs behind them. */
export interface Learning {
  readonly entries: readonly LearnedEntry[];
  readonly beliefs: Beliefs;
  /** What each of them comes to. */
  readonly known: ReadonlyMap<string, KnownBoth>;
}

/** One joint in three gives less than half, or more than twice, what is usual (`proposal`). */
const joint_ln_sd = Math.LN2;
/** Pull reached from frame to frame, standard deviation of its logarithm (`proposal`). */
const pull_ln_sd = 0.2;
/** Moisture on the day from plan to plan, percentage points (`proposal`). */
const moisture_sd_pct = 2;
const deg = 180 / Math.PI;

/**
 * Every number that the evidence tells of, before and after. What earlier folders said goes before what the shelf says.
 */
export function learnEntries(evidence: Evidence, shelf: Shelf, earlier: Beliefs = new Map()): Learning {
  const beliefs = new Map<string, Belief>(earlier);
  const known = new Map<string, KnownBoth>();
  const entries: LearnedEntry[] = [];
  const learn = (
    name: string,
    prior: () => Belief,
    readings: readonly number[],
    evidenceOf: Belief['evidence'],
  ): { readonly before: KnownBoth; readonly after: KnownBoth } => {
    const before = earlier.get(name) ?? prior();
    const after: Belief = {
      ...before,
      nig: learnFrom(before.nig, readings, before.fixed_mean),
      evidence: [...before.evidence, ...evidenceOf],
    };
    beliefs.set(name, after);
    const both = { before: knownOf(before), after: knownOf(after) };
    known.set(name, both.after);
    return both;
  };
  for (const [name, { stock, chosen, kind, boards, frames, frame_ids }] of sorted(evidence.spreads)) {
    const prior = priorOfSpread(stock, chosen, kind);
    if (prior === null) continue;
    const { size, mean } = prior;
    const { before, after } = learn(
      name,
      () => ({ nig: prior.nig, fixed_mean: prior.fixed_mean, evidence: [] }),
      boards.map(({ value }) => value),
      frames,
    );
    const common = {
      key: stock.key,
      what: kind,
      chosen,
      unit: kind === 'twist' ? ('deg/m' as const) : ('/m' as const),
      from: frame_ids.size,
      boards: boards.length,
      joints: 0,
    };
    const per = kind === 'twist' ? deg : 1;
    entries.push({
      ...common,
      of: 'spread',
      shelf: size * per,
      prior: times(before.spread, per),
      posterior: times(after.spread, per),
    });
    if (kind === 'twist')
      entries.push({
        ...common,
        of: 'mean',
        shelf: mean * per,
        prior: times(before.mean, per),
        posterior: times(after.mean, per),
      });
  }
  // What is learned is the give in the plane; the other two ways keep their proportion to it.
  for (const [joint, { likelihoods, joints, frame_ids }] of sorted(evidence.gives)) {
    const give = shelf.joints.give[joint].plane;
    if (!(give > 0)) continue;
    const { before, after } = learn(
      `give ${joint}`,
      () => ({ nig: believe(Math.log(give), joint_ln_sd), fixed_mean: false, evidence: [] }),
      [],
      likelihoods,
    );
    entries.push({
      key: jointKey(joint),
      what: 'give',
      of: 'mean',
      chosen: null,
      unit: 'bar-widths',
      shelf: give,
      prior: before.exp_mean,
      posterior: after.exp_mean,
      from: frame_ids.size,
      boards: 0,
      joints,
    });
  }
  for (const [cloth, { likelihoods, frame_ids }] of sorted(evidence.pulls)) {
    const { before, after } = learn(
      `pull ${cloth}`,
      () => ({ nig: believe(0, pull_ln_sd), fixed_mean: false, evidence: [] }),
      [],
      likelihoods,
    );
    const per = usualPull_N_per_m(shelf, cloth);
    entries.push({
      key: cloth,
      what: 'pull',
      of: 'mean',
      chosen: null,
      unit: 'N/m',
      shelf: per,
      prior: times(before.exp_mean, per),
      posterior: times(after.exp_mean, per),
      from: frame_ids.size,
      boards: 0,
      joints: 0,
    });
  }
  const { likelihoods, frame_ids } = evidence.moisture;
  if (likelihoods.length > 0) {
    const { before, after } = learn(
      'moisture',
      () => ({ nig: believe(0, moisture_sd_pct), fixed_mean: false, evidence: [] }),
      [],
      likelihoods,
    );
    entries.push({
      key: 'moisture',
      what: 'moisture',
      of: 'mean',
      chosen: null,
      unit: 'pct',
      shelf: 0,
      prior: before.mean,
      posterior: after.mean,
      from: frame_ids.size,
      boards: 0,
      joints: 0,
    });
  }
  return { entries, beliefs, known };
}

/** The usual working pull of a cloth: the shelf's own, else what plans take that name none. */
export const usualPull_N_per_m = (shelf: Shelf, cloth: string): number =>
  shelf.cloths[cloth]?.pull_N_per_m ?? planDefaults.working_N_per_m;

/** By name, so that the order of the files makes no difference. */
const sorted = <K extends string, V>(map: ReadonlyMap<K, V>): readonly (readonly [K, V])[] =>
  [...map].sort(([a], [b]) => (a < b ? -1 : 1));

const times = ({ mean, sd, low, high }: Known, by: number): Known => ({
  mean: mean * by,
  sd: sd * by,
  low: low * by,
  high: high * by,
});
