import { barNames, type BarName } from '../base/names.js';
import type { Influence } from '../model/frame-results.js';
import type { MemberBuild, Model } from '../model/model.js';
import { torsionConstant } from '../model/section.js';
import { plyKnown } from '../risk/one-ply.js';
import { warpWeights, type BoardWarp } from '../risk/ply-warp.js';
import type { BoardState } from '../risk/spread.js';
import { unpulledFor, type LiftCurve } from '../risk/lift-curve.js';
import { pulledFrame } from '../risk/lift-growth.js';
import type { Frame } from './frame.js';
import type { Lying } from './turning.js';

/** One thing that must not grow too large: the lift of a corner, or how far a bar departs at one place along it. */
export interface Measure {
  readonly frame: number;
  /** Null for the corner lift. */
  readonly bar: BarName | null;
  /** What it must not pass: for the lift, the lift at no pull that grows into the limit under pull. */
  readonly limit_mm: number;
  /** The limit itself, as a scale. */
  readonly scale_mm: number;
  /** How the lift grows under pull; null for a bar. */
  readonly growth: LiftCurve | null;
  /** Answer to each member's warps, mm per rad/m or 1/m: from `<member> <kind>`. */
  readonly answers: ReadonlyMap<string, number>;
}

/** What one board in one place adds to every measure: mean in mm and variance in mm². */
export interface Effect {
  readonly mean: Float64Array;
  readonly variance: Float64Array;
}

/** Bars are looked at in eighths of their span. */
const every = 2;
/** Influence numbers are per 1/mm, boards per metre. */
const per_m = 1e-3;

/**
 * The measures of one frame, the corner lift at no pull first; none when a bar bows sideways, for then nothing can be
 * said, and the lift alone past the critical pull.
 */
export function measuresOf({ solution, settings }: Frame, frame: number): readonly Measure[] {
  const pulled = pulledFrame(solution);
  if (pulled === null) return [];
  const {
    influence,
    growth: { terms_share, curve },
  } = pulled;
  const answers = (of: (one: Influence) => number): ReadonlyMap<string, number> =>
    new Map(influence.map((one) => [`${one.member} ${one.kind}`, of(one) * per_m]));
  const steps = (influence[0]?.bar_bow.top.length ?? 1) - 1;
  const along = Array.from({ length: Math.max(0, Math.floor((steps - 1) / every)) }, (_, i) => (i + 1) * every);
  const scale_mm = settings.corner_lift_limit_mm;
  const lift: Measure = {
    frame,
    bar: null,
    limit_mm: Math.max(0, unpulledFor(curve, scale_mm)),
    scale_mm,
    growth: curve,
    answers: answers((one) => one.corner_lift * terms_share),
  };
  if (pulled.past_critical) return [lift];
  return [
    lift,
    ...barNames.flatMap((bar) =>
      along.map((station): Measure => ({
        frame,
        bar,
        limit_mm: settings.bar_bow_limit_mm[bar],
        scale_mm: settings.bar_bow_limit_mm[bar],
        growth: null,
        answers: answers((one) => one.bar_bow[bar][station] ?? 0),
      })),
    ),
  ];
}

/** What one unit of each warp of one ply does to the measures, mm per rad/m or 1/m. */
export type PlyAnswers = readonly { readonly from: BoardWarp; readonly by: Float64Array }[];

/** The answers of the measures of its frame to one ply of a member. */
export function plyAnswers(member: MemberBuild, measures: readonly Measure[]): PlyAnswers {
  const weights = warpWeights({
    ...member,
    J_ply_mm4: torsionConstant(member.ply_w_mm, member.ply_d_mm),
    J_bar_mm4: member.section.J_mm4,
  });
  return weights.map(({ kind, from, weight }) => ({
    from,
    by: Float64Array.from(measures, ({ answers }) => weight * (answers.get(`${member.name} ${kind}`) ?? 0)),
  }));
}

/** What a board, lying so or unread, adds to each of the measures as one ply of a member. */
export function effectOf(
  model: Model,
  state: BoardState,
  member: MemberBuild,
  answers: PlyAnswers,
  board: Lying | null,
): Effect {
  const width = answers[0]?.by.length ?? 0;
  const mean = new Float64Array(width);
  const variance = new Float64Array(width);
  for (const { from, by } of answers) {
    const known = plyKnown(
      member,
      model,
      state,
      from,
      board === null
        ? null
        : from === 'twist'
          ? board.twist_rad_per_m
          : from === 'bow'
            ? board.bow_per_m
            : board.crook_per_m,
    );
    for (let j = 0; j < width; j++) {
      const one = by[j] as number;
      mean[j] = (mean[j] as number) + one * known.mean;
      variance[j] = (variance[j] as number) + one * one * known.variance;
    }
  }
  return { mean, variance };
}
