import { boardState } from '../risk/assess.js';
import { unpulledFor } from '../risk/lift-curve.js';
import { pulledFrame } from '../risk/lift-growth.js';
import { chanceBeyond } from '../risk/normal.js';
import { normalDeviates } from '../risk/normal-deviates.js';
import { plyKnown } from '../risk/one-ply.js';
import { measuresOf, plyAnswers } from './effects.js';
import type { Frame } from './frame.js';

/** What comes of reading so many boards at the shop and taking the ones that go best together. */
export interface SightingRow {
  readonly sighted: number;
  /** Chance of a lifted corner after the best placing found, averaged over the piles drawn, and its standard error. */
  readonly chance: number;
  readonly error: number;
}

/** The chance against the number of boards sighted. */
export interface Sighting {
  /** Boards the bars take. */
  readonly pieces: number;
  /** With boards nobody reads. */
  readonly by_luck: number;
  readonly rows: readonly SightingRow[];
}

/**
 * The corner lift as a sum over boards: what one unit of twist does in each place, what else moves the corner, and how
 * boards are spread.
 */
export interface LiftSum {
  /** Lift at no pull, mm per rad/m, for each place. */
  readonly by: readonly number[];
  /** Of everything but the twist of these boards, drying of them included: mean, mm, and variance, mm². */
  readonly rest: { readonly mean: number; readonly variance: number };
  readonly twist: { readonly mean: number; readonly sd: number };
  readonly reading_sd: number;
  readonly limit_mm: number;
}

/** The lift of a frame as a sum over its bars' boards; null where nothing can be said. */
export function liftSum(frame: Frame): LiftSum | null {
  const { model, solution, settings } = frame;
  const pulled = pulledFrame(solution);
  const [lift] = measuresOf(frame, 0);
  if (pulled === null || lift === undefined) return null;
  const limit_mm = unpulledFor(pulled.growth.curve, settings.corner_lift_limit_mm);
  const state = boardState(model);
  const bars = Object.values(model.bars);
  const by: number[] = [];
  let mean = 0;
  let variance = 0;
  for (const member of [...bars, ...model.crossbars]) {
    for (const { from, by: answers } of plyAnswers(member, [lift])) {
      const one = answers[0] as number;
      const own = from === 'twist' && bars.includes(member);
      // A reading of nothing with no reading error leaves what drying adds.
      const known = own
        ? plyKnown(
            member,
            model,
            { ...state, assumptions: { ...state.assumptions, reading_twist_rad_per_m: 0 } },
            from,
            0,
          )
        : plyKnown(member, model, state, from, null);
      for (let ply = 0; ply < member.plies; ply++) {
        if (own) by.push(one);
        mean += one * known.mean;
        variance += one * one * known.variance;
      }
    }
  }
  const twist = model.bars.top.stock.spread[model.plan.lumber.chosen].twist_rad_per_m;
  return limit_mm > 0
    ? { by, rest: { mean, variance }, twist, reading_sd: state.assumptions.reading_twist_rad_per_m, limit_mm }
    : null;
}

/** Chance of a lifted corner with boards that nobody reads. */
export function chanceByLuck({ by, rest, twist, limit_mm }: LiftSum): number {
  const all = by.reduce((total, one) => total + one, 0);
  const squared = by.reduce((total, one) => total + one * one, 0);
  return chanceBeyond(rest.mean + all * twist.mean, Math.sqrt(rest.variance + squared * twist.sd ** 2), limit_mm);
}

const usual_piles = 200;

/**
 * Draws piles of boards of one kind from a seed, reads each board with the reading error, takes the best placing that
 * small steps find (so the chance is if anything too
 * large), and says the chance that is left once what is known of each board is put together from its reading and its
 * kind. The piles grow: the
 * first boards of a larger pile are those of the smaller one, so more boards are never worse.
 */
export function sightingTable(sum: LiftSum, seed: number, piles = usual_piles): Sighting {
  const pieces = sum.by.length;
  const counts = [...new Set([1, 1.5, 2, 3].map((times) => Math.ceil(times * pieces)))];
  const most = counts.at(-1) as number;
  const fill = normalDeviates(seed);
  const draws = new Float64Array(2 * most + ((2 * most) % 2));
  const squared = sum.by.reduce((all, one) => all + one * one, 0);
  const { mean, sd } = sum.twist;
  const trust = sd === 0 ? 0 : sd ** 2 / (sd ** 2 + sum.reading_sd ** 2);
  const left_sd = Math.sqrt(sum.rest.variance + squared * trust * sum.reading_sd ** 2);
  const found = counts.map(() => [] as number[]);
  for (let pile = 0; pile < piles; pile++) {
    fill(draws);
    const readings = Array.from(
      { length: most },
      (_, b) => mean + sd * (draws[2 * b] as number) + sum.reading_sd * (draws[2 * b + 1] as number),
    );
    let nearest = Infinity;
    counts.forEach((count, k) => {
      const known = readings.slice(0, count).map((reading) => mean + trust * (reading - mean));
      nearest = Math.min(nearest, Math.abs(bestSum(sum, known)));
      (found[k] as number[]).push(chanceBeyond(nearest, left_sd, sum.limit_mm));
    });
  }
  return {
    pieces,
    by_luck: chanceByLuck(sum),
    rows: counts.map((sighted, k) => ({ sighted, ...meanOf(found[k] as number[]) })),
  };
}

function meanOf(chances: readonly number[]): { readonly chance: number; readonly error: number } {
  const chance = chances.reduce((sum, one) => sum + one, 0) / chances.length;
  const variance = chances.reduce((sum, one) => sum + (one - chance) ** 2, 0) / Math.max(1, chances.length - 1);
  return { chance, error: Math.sqrt(variance / chances.length) };
}

/** The sum nearest to nothing that small steps find: any board for any other, in place or still in the pile. */
function bestSum({ by, rest }: LiftSum, boards: readonly number[]): number {
  const order = [...boards].sort((a, b) => a - b);
  let total = by.reduce((sum, one, i) => sum + one * (order[i] as number), rest.mean);
  for (let better = true, rounds = 0; better && rounds < 50; rounds++) {
    better = false;
    for (let i = 0; i < by.length; i++)
      for (let k = i + 1; k < order.length; k++) {
        const swapped = total + ((by[i] as number) - (by[k] ?? 0)) * ((order[k] as number) - (order[i] as number));
        if (Math.abs(swapped) >= Math.abs(total) - 1e-12) continue;
        total = swapped;
        [order[i], order[k]] = [order[k] as number, order[i] as number];
        better = true;
      }
  }
  return total;
}
