import { equilibriumMoisture_pct } from '../mechanics/moisture/equilibrium.js';
import type { FactSettings, Model, Solution } from '../model/model.js';
import { warpAssumptions } from './assumptions.js';
import { liftCauses, type Cause } from './causes.js';
import { barRisk, liftChance, liftRisk, type LiftRisk, type StationRisk } from './closed-form.js';
import type { BarName } from '../base/names.js';
import { barWarps, type BoardState } from './spread.js';
import { warpTerms, type WarpTerm } from './terms.js';

/** Everything that can be said of natural warp in closed form. */
export interface WarpRisk {
  readonly terms: readonly WarpTerm[];
  readonly lift: LiftRisk;
  /** Chance of more lift than the limit. */
  readonly lift_chance: number;
  readonly causes: readonly Cause[];
  /** Out of plane and in the plane, at each bar's worst station. */
  readonly bow: Readonly<Record<BarName, StationRisk>>;
  readonly crook: Readonly<Record<BarName, StationRisk>>;
}

/** Why nothing can be said of warp when the flat frame does not hold. */
export const unstable_reason = 'The flat frame is already unstable at working pull, so natural warp would grow without a limit that can be worked out.';

/** How far the boards still have to dry in this room, percentage points (the middle of its humidity range), and the shelf's assumptions. */
export function boardState(model: Model): BoardState {
  const { room, lumber } = model.plan;
  const settled_pct = equilibriumMoisture_pct((room.humidity_low + room.humidity_high) / 2, room.temperature_C);
  return { drying_pct: Math.max(0, lumber.moisture_pct - settled_pct), assumptions: warpAssumptions(model.shelf) };
}

/** Natural warp in closed form; null when the flat frame is unstable at working pull. */
export function assessWarp(model: Model, solution: Solution, settings: FactSettings): WarpRisk | null {
  if (solution.influence === null) return null;
  const terms = warpTerms(barWarps(model, boardState(model)), solution.influence);
  const lift = liftRisk(terms);
  return {
    terms,
    lift,
    lift_chance: liftChance(lift, settings.corner_lift_limit_mm),
    causes: liftCauses(terms),
    bow: barRisk(terms, 'bow'),
    crook: barRisk(terms, 'crook'),
  };
}
