import type { Model } from '../model/model.js';
import { liftChance, liftRisk } from './closed-form.js';
import type { PulledFrame } from './lift-growth.js';
import { barWarps, type BoardState } from './spread.js';
import { warpTerms } from './terms.js';

/** Let the boards dry before choosing them, pick them, or both. */
export type RemedyWay = 'dry' | 'pick' | 'dry-and-pick';

/** Something to do with the boards, the frame staying as it is, and what it does to the corner lift. */
export interface Remedy {
  readonly way: RemedyWay;
  readonly lift_p90_mm: number;
  readonly chance: number;
  /** New P90 over the present one. */
  readonly ratio: number;
}

/**
 * What handling of the boards alone can do, mildest first, each worked out on the same frame: dry first, pick, both.
 * Only steps not already taken, and only those that help.
 */
export function boardRemedies(
  model: Model,
  { influence, growth }: PulledFrame,
  state: BoardState,
  limit_mm: number,
): readonly Remedy[] {
  const p90 = (changed: Model, changedState: BoardState): { p90_mm: number; chance: number } => {
    const lift = liftRisk(warpTerms(barWarps(changed, changedState), influence), growth);
    return { p90_mm: lift.p90_mm, chance: liftChance(lift, limit_mm) };
  };
  const now = p90(model, state);
  const picked: Model = { ...model, plan: { ...model.plan, lumber: { ...model.plan.lumber, chosen: 'picked' } } };
  const dried: BoardState = { ...state, drying_pct: 0 };
  const wet = state.drying_pct > 0;
  const careless = model.plan.lumber.chosen !== 'picked';
  const tries: { way: RemedyWay; model: Model; state: BoardState }[] = [];
  if (wet) tries.push({ way: 'dry', model, state: dried });
  if (careless) tries.push({ way: 'pick', model: picked, state });
  if (wet && careless) tries.push({ way: 'dry-and-pick', model: picked, state: dried });
  return tries
    .map(({ way, model: changed, state: changedState }) => {
      const then = p90(changed, changedState);
      return {
        way,
        lift_p90_mm: then.p90_mm,
        chance: then.chance,
        ratio: now.p90_mm === 0 ? 1 : then.p90_mm / now.p90_mm,
      };
    })
    .filter((remedy) => remedy.ratio < 0.995);
}

/** The mildest remedy that at least halves the P90 of the corner lift; null when none does. */
export function whatHalves(remedies: readonly Remedy[]): Remedy | null {
  return remedies.find((remedy) => remedy.ratio <= 0.5) ?? null;
}
