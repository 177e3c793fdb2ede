import { assessWarp, boardState } from '../risk/assess.js';
import { usefulReadings } from '../risk/readings.js';
import type { MemberBuild, Model } from '../model/model.js';
import { isRead } from '../pile/pile.js';
import type { PlanBoard } from '../plan/plan.js';
import { aimOf } from './aim.js';
import type { Frame, Slot } from './frame.js';
import type { Luck } from './luck.js';
import type { Placed } from './place.js';
import { totalsOf } from './placing.js';
import type { Place, PlacedFrame } from './result.js';
import { asLying } from './turning.js';

/** What is known of one frame once its boards are placed. */
interface Found {
  readonly places: readonly Place[];
  readonly missing: readonly Slot[];
  readonly luck: Luck | null;
  readonly placed: Placed;
  /** Index of the frame. */
  readonly index: number;
}

/** The frame with its boards, judged by the same closed form as in the audit. */
export function judgeFrame(frame: Frame, { places, missing, luck, placed, index }: Found): PlacedFrame {
  const boards = planBoards(places);
  const model = withBoards(frame.model, boards);
  const risk = assessWarp(model, frame.solution, frame.settings);
  const shared = { plan: frame.model.plan, copy: frame.copy, places, missing, boards };
  if (risk === null)
    return { ...shared, lift: null, reason: 'bows-sideways', bow_chance: null, luck: null, readings: [] };
  const { mean, sd, p90_mm } = risk.lift;
  return {
    ...shared,
    lift: { mean_mm: mean, sd_mm: sd, p90_mm, chance: risk.lift_chance, limit_mm: frame.settings.corner_lift_limit_mm },
    reason: null,
    bow_chance: risk.frame.past_critical ? null : bowChance(placed, index),
    luck,
    readings: usefulReadings(model, risk.terms, boardState(model).assumptions),
  };
}

/** What was read of the boards, as the plan writes it; boards of which nothing was read are left out. */
export const planBoards = (places: readonly Place[]): readonly PlanBoard[] =>
  places
    .filter(({ board }) => isRead(board))
    .map(({ slot: { piece }, board, from_mm, lie }) => ({
      for: piece.about,
      ply: piece.ply,
      ...asLying(board, piece, lie),
      on: { mark: board.mark, from_mm },
    }));

/**
 * The model of the same frame made of these boards; boards placed one by one are not paired by luck any more, so unread
 * ones keep their own spread.
 */
export function withBoards(model: Model, boards: readonly PlanBoard[]): Model {
  const alone = (build: MemberBuild): MemberBuild => ({ ...build, pairing: 'unsorted' });
  const { top, bottom, left, right } = model.bars;
  return {
    ...model,
    plan: { ...model.plan, boards },
    bars: { top: alone(top), bottom: alone(bottom), left: alone(left), right: alone(right) },
    crossbars: model.crossbars.map(alone),
  };
}

function bowChance({ problem, placing }: Placed, index: number): number {
  const { mean, variance } = totalsOf(problem, placing);
  const bars = problem.allGroups.filter(
    ({ measures: [first] }) =>
      first !== undefined && problem.measures[first]?.frame === index && problem.measures[first]?.bar !== null,
  );
  return Math.min(1, aimOf(bars, mean, variance));
}
