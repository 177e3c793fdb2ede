import { chanceInWords } from '../base/chance-words.js';
import type { FactSettings, Model, Solution } from '../model/model.js';
import { publishedAnchors, type WarpAnchor } from './anchors.js';
import { assessWarp, boardState, unstable_reason } from './assess.js';
import type { Cause } from './causes.js';
import type { LiftRisk } from './closed-form.js';
import type { Normal } from '../shelf/shelf.js';
import { grownDensity, liftFrom, type LiftCurve } from './lift-curve.js';
import { usefulReadings, type Reading } from './readings.js';
import { boardRemedies, whatHalves, type Remedy } from './remedies.js';

/** What a report tells of the corner lift. */
export interface WarpStory {
  readonly limit_mm: number;
  readonly mean_mm: number;
  readonly sd_mm: number;
  readonly p90_mm: number;
  readonly chance: number;
  /** The same for boards as soft as one in twenty. */
  readonly chance_soft: number;
  /** The lift at no pull, and how it grows: working pull over critical pull, average boards (1 and more is past it). */
  readonly unpulled: Normal;
  readonly growth: LiftCurve;
  /** `about 1 in 6` */
  readonly chance_words: string;
  /** Largest first, shares summing to 1. */
  readonly causes: readonly Cause[];
  /** The single readings that would settle most, most telling first. */
  readonly readings: readonly Reading[];
  /** Handling of the boards that helps, mildest first. */
  readonly remedies: readonly Remedy[];
  readonly halves: Remedy | null;
  /** Published figures to hold the shelf's spread against. */
  readonly anchors: readonly WarpAnchor[];
  /**
   * The bell of the signed lift for a picture: lift in mm, density per mm; even steps over everything that matters and
   * both limits.
   */
  readonly bell: readonly { readonly lift_mm: number; readonly per_mm: number }[];
}

/** The story, or the sentence that says why there is none. */
export type WarpTold =
  { readonly story: WarpStory; readonly reason?: undefined } | { readonly story: null; readonly reason: string };

const bell_points = 121;
const bell_sds = 3.5;

/** Everything the report's page on warp needs, in closed form (no sampling). */
export function warpStory(model: Model, solution: Solution, settings: FactSettings): WarpTold {
  const risk = assessWarp(model, solution, settings);
  if (risk === null) return { story: null, reason: unstable_reason };
  const limit_mm = settings.corner_lift_limit_mm;
  const state = boardState(model);
  const remedies = boardRemedies(model, risk.frame, state, limit_mm);
  const { lift } = risk;
  return {
    story: {
      limit_mm,
      mean_mm: lift.mean,
      sd_mm: lift.sd,
      p90_mm: lift.p90_mm,
      chance: risk.lift_chance,
      chance_soft: risk.lift_chance_soft,
      unpulled: lift.unpulled,
      growth: lift.growth,
      chance_words: chanceInWords(risk.lift_chance),
      causes: risk.causes,
      readings: usefulReadings(model, risk.terms, state.assumptions),
      remedies,
      halves: whatHalves(remedies),
      anchors: publishedAnchors,
      bell: bell(lift, limit_mm),
    },
  };
}

function bell({ unpulled, growth }: LiftRisk, limit_mm: number): WarpStory['bell'] {
  if (unpulled.sd === 0) return [];
  const reach = Math.max(liftFrom(growth, Math.abs(unpulled.mean) + bell_sds * unpulled.sd), 1.15 * limit_mm);
  return Array.from({ length: bell_points }, (_, i) => {
    const lift_mm = reach * ((2 * i) / (bell_points - 1) - 1);
    return { lift_mm, per_mm: grownDensity(growth, unpulled, lift_mm) };
  });
}
