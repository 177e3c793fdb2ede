import type { MemberBuild, Model } from '../model/model.js';
import type { WarpAssumptions } from './assumptions.js';
import { liftCauses } from './causes.js';
import { boardsOf } from './spread.js';
import type { WarpTerm } from './terms.js';

/** What is read: the moisture of the boards, or the twist of one; `ply` is null where a bar is one board. */
export type ReadingOf = 'moisture' | { readonly bar: string; readonly ply: number | null };

/** A reading a person could take, and how much of the variance of the corner lift it would settle. */
export interface Reading {
  readonly of: ReadingOf;
  /**
   * Share of the present variance it takes away, 0..1. For moisture: at most, when the boards turn out to be as dry as
   * the room.
   */
  readonly settles: number;
}

/** Readings that differ by less settle the same and keep their order, bar by bar. */
const least_step = 1e-6;

/**
 * Single readings worth taking, the most telling first. Twist of one board: its choosing gives way to the reading
 * error. Moisture: if
 * the boards turn out dry, nothing is added after choosing. Readings that would settle nothing are left out.
 */
export function usefulReadings(
  model: Model,
  terms: readonly WarpTerm[],
  assumptions: WarpAssumptions,
): readonly Reading[] {
  const total = terms.reduce((sum, term) => sum + (term.lift * term.sd_per_m) ** 2, 0);
  if (total === 0) return [];
  const drying = liftCauses(terms).reduce((sum, cause) => sum + (cause.part === 'drying' ? cause.share : 0), 0);
  const moisture: Reading = { of: 'moisture', settles: drying };
  const twists = Object.values(model.bars).flatMap((build) => twistReadings(build, model, terms, assumptions, total));
  const steps = (reading: Reading): number => Math.round(reading.settles / least_step);
  return [moisture, ...twists].filter((reading) => steps(reading) > 0).sort((a, b) => steps(b) - steps(a));
}

function twistReadings(
  build: MemberBuild,
  model: Model,
  terms: readonly WarpTerm[],
  assumptions: WarpAssumptions,
  total: number,
): readonly Reading[] {
  const term = terms.find(({ warp }) => warp.member === build.name && warp.kind === 'twist');
  const unmeasured = boardsOf(model.plan.boards, build).flatMap((board, i) =>
    board?.twist_rad_per_m == null ? [i + 1] : [],
  );
  if (term === undefined || unmeasured.length === 0) return [];
  const { sd } = build.stock.spread[model.plan.lumber.chosen].twist_rad_per_m;
  const one_board = term.warp.chosen_var / unmeasured.length;
  const left = sd === 0 ? 1 : Math.min(1, (assumptions.reading_twist_rad_per_m / sd) ** 2);
  const settles = (term.lift ** 2 * one_board * (1 - left)) / total;
  return unmeasured.map((ply) => ({
    of: { bar: build.name, ply: build.plies > 1 ? ply : null },
    settles,
  }));
}
