import { assessWarp } from '../risk/assess.js';
import { liftFrom } from '../risk/lift-curve.js';
import { chanceBeyond } from '../risk/normal.js';
import { measuresOf, plyAnswers } from './effects.js';
import type { Frame } from './frame.js';

/** Whether the measured boards of a plan lie in the best places, and what would change. */
export interface BetterPlaces {
  /** Boards whose twist was measured. */
  readonly boards: number;
  /** Lift to expect as they lie, and in the places found, mm. */
  readonly now_mm: number;
  readonly then_mm: number;
  readonly chance_now: number;
  readonly chance_then: number;
  /** Pairs of places that swap their boards, one after the other; empty when nothing would be gained. */
  readonly swaps: readonly (readonly [string, string])[];
}

/** A gain smaller than this share of the limit is not worth a walk round the frame. */
const worth_share = 0.1;

/**
 * Looks for better places for the measured boards among themselves, swap by swap, the one that helps most first; null
 * when fewer than two were measured, or nothing can be said.
 */
export function betterPlaces(frame: Frame): BetterPlaces | null {
  const { model, solution, settings } = frame;
  const measured = model.plan.boards.filter(({ twist_rad_per_m }) => twist_rad_per_m !== null);
  const risk = measured.length < 2 ? null : assessWarp(model, solution, settings);
  const [lift] = measuresOf(frame, 0);
  if (risk === null || lift === undefined || lift.growth === null) return null;
  const members = [...Object.values(model.bars), ...model.crossbars];
  const places = measured.map((board) => {
    const member = members.find(({ name }) => name === board.for);
    const by = member === undefined ? 0 : (plyAnswers(member, [lift]).find(({ from }) => from === 'twist')?.by[0] ?? 0);
    return {
      name: member !== undefined && member.plies > 1 ? `${board.for}, ply ${board.ply}` : board.for,
      stock: member?.stock.key,
      by,
    };
  });
  const twists = measured.map(({ twist_rad_per_m }) => twist_rad_per_m as number);
  const start = risk.lift.unpulled.mean;
  let total = start;
  const swaps: (readonly [string, string])[] = [];
  for (let round = 0; round < measured.length; round++) {
    const best = bestSwap(places, twists, total);
    if (best === null || Math.abs(total) - Math.abs(best.total) < worth_share * lift.limit_mm) break;
    [twists[best.i], twists[best.k]] = [twists[best.k] as number, twists[best.i] as number];
    total = best.total;
    swaps.push([places[best.i]?.name ?? '', places[best.k]?.name ?? '']);
  }
  const { growth, limit_mm } = lift;
  const { sd } = risk.lift.unpulled;
  return {
    boards: measured.length,
    now_mm: Math.abs(liftFrom(growth, start)),
    then_mm: Math.abs(liftFrom(growth, total)),
    chance_now: chanceBeyond(start, sd, limit_mm),
    chance_then: chanceBeyond(total, sd, limit_mm),
    swaps,
  };
}

/** The swap of two boards of one kind that leaves the smallest lift; null when none leaves less. */
function bestSwap(
  places: readonly { readonly by: number; readonly stock: string | undefined }[],
  twists: readonly number[],
  total: number,
): { readonly i: number; readonly k: number; readonly total: number } | null {
  let best: { readonly i: number; readonly k: number; readonly total: number } | null = null;
  for (let i = 0; i < places.length; i++)
    for (let k = 0; k < i; k++) {
      const [a, b] = [places[i], places[k]];
      if (a === undefined || b === undefined || a.stock !== b.stock) continue;
      const swapped = total + (a.by - b.by) * ((twists[k] as number) - (twists[i] as number));
      if (Math.abs(swapped) < Math.abs(best?.total ?? total)) best = { i, k, total: swapped };
    }
  return best;
}
