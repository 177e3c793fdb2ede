import { lazily } from '../base/lazily.js';
import { remembered } from '../base/remembered.js';
import { equilibriumMoisture_pct } from '../mechanics/moisture/equilibrium.js';
import type { FactSettings, Model, Solution } from '../model/model.js';
import { warpAssumptions } from './assumptions.js';
import { liftCauses, type Cause } from './causes.js';
import { barRisk, liftChance, liftRisk, type LiftRisk, type StationRisk } from './closed-form.js';
import { pulledFrame, softBoards, type PulledFrame } from './lift-growth.js';
import type { BarName } from '../base/names.js';
import { barWarps, type BoardState } from './spread.js';
import { warpTerms, type WarpTerm } from './terms.js';

/**
 * Why there is no number of natural warp: a bar of the flat frame bows sideways at working pull; the frame is past its
 * critical pull, where the bow of single bars is not followed; it would lift by more than its shorter side, where the
 * curve no longer holds.
 */
export type NoWarp = 'bows-sideways' | 'past-critical' | 'folds';

/** Everything that can be said of natural warp in closed form. */
export interface WarpRisk {
  readonly terms: readonly WarpTerm[];
  readonly lift: LiftRisk;
  /** Chance of more lift than the limit, for average boards and for boards as soft as one in twenty. */
  readonly lift_chance: number;
  readonly lift_chance_soft: number;
  /** What all of it rests on. */
  readonly frame: PulledFrame;
  readonly causes: readonly Cause[];
  /** Out of plane and in the plane, at each bar's worst station. */
  readonly bow: Readonly<Record<BarName, StationRisk>>;
  readonly crook: Readonly<Record<BarName, StationRisk>>;
}

/**
 * How far the boards still have to dry in this room, percentage points (the middle of its humidity range), and the
 * shelf's assumptions.
 */
export function boardState(model: Model): BoardState {
  const { room, lumber } = model.plan;
  const settled_pct = equilibriumMoisture_pct((room.humidity_low + room.humidity_high) / 2, room.temperature_C);
  return { drying_pct: Math.max(0, lumber.moisture_pct - settled_pct), assumptions: warpAssumptions(model.shelf) };
}

interface Asked {
  readonly model: Model;
  readonly settings: FactSettings;
  readonly risk: WarpRisk | null;
}

/** What was asked last of a solution. */
const lastOf = remembered((_: Solution): { asked: Asked | null } => ({ asked: null }));

/**
 * Natural warp in closed form; null when a bar of the flat frame bows sideways at working pull. Facts, sections and
 * what-ifs ask it of one audit: it is worked out once.
 */
export function assessWarp(model: Model, solution: Solution, settings: FactSettings): WarpRisk | null {
  const last = lastOf(solution);
  if (last.asked === null || last.asked.model !== model || last.asked.settings !== settings)
    last.asked = { model, settings, risk: workOut(model, solution, settings) };
  return last.asked.risk;
}

function workOut(model: Model, solution: Solution, settings: FactSettings): WarpRisk | null {
  const frame = pulledFrame(solution);
  if (frame === null) return null;
  const terms = warpTerms(barWarps(model, boardState(model)), frame.influence);
  const lift = liftRisk(terms, frame.growth);
  const soft = { unpulled: lift.unpulled, growth: softBoards(lift.growth, model) };
  return lazily(
    { causes: () => liftCauses(terms), crook: () => barRisk(terms, 'crook') },
    {
      terms,
      frame,
      lift,
      lift_chance: liftChance(lift, settings.corner_lift_limit_mm),
      lift_chance_soft: liftChance(soft, settings.corner_lift_limit_mm),
      bow: barRisk(terms, 'bow'),
    },
  );
}
