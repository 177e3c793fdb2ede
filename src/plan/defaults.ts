import { formatLength } from '../base/units-format.js';
import type { UnitSystem } from '../base/names.js';
import type { Assumed } from './plan.js';

/** Collects the defaults that a plan leaves to the tool, in the order they are met. */
export class Defaults {
  readonly assumed: Assumed[] = [];
  readonly #units: UnitSystem;

  constructor(units: UnitSystem) {
    this.#units = units;
  }

  /** The value given, or else the fallback, noted under `path` as `words`. */
  take<T>(path: string, given: T | undefined, fallback: T, words: string = String(fallback)): T {
    if (given !== undefined) return given;
    this.assumed.push({ path, value: words });
    return fallback;
  }

  /** The same for a length in mm, noted in the plan's own unit system. */
  length(path: string, given_mm: number | undefined, fallback_mm: number): number {
    return this.take(path, given_mm, fallback_mm, formatLength(fallback_mm, this.#units));
  }
}

/** The numbers a plan falls back to, in mm, N/m, °C and %. */
export const planDefaults = {
  ply_screw: 'screw-6x32',
  ply_screw_every_mm: 200,
  nail: 'brad-18ga-25',
  glue: 'pva',
  cloth: 'cotton-duck-340',
  working_N_per_m: 200,
  /** Peak pull where only a working pull is given, over that pull; and the other way about. */
  peak_over_working: 2,
  staple_every_mm: 50,
  turn_mm: 50,
  coats: 2,
  moisture_pct: 12,
  humidity_low: 0.35,
  humidity_high: 0.6,
  temperature_C: 20,
  setback_mm: 5,
  drop_mm: 180,
  /** Share of the width that stands the wire at about 15 degrees on two hooks. */
  slack_share: 1 / 9,
  hooks: 2,
} as const;

const downToTens = (length_mm: number): number => Math.max(10, Math.floor(length_mm / 10) * 10);

/** The hanging point of a frame this high: 180 mm down, or a third of the height where that is less. */
export const usualDrop_mm = (height_mm: number): number => Math.min(planDefaults.drop_mm, downToTens(height_mm / 3));

/** The slack of a wire: a ninth of the width, but so little that the hook stays 30 mm below the top; to 5 mm. */
export const usualSlack_mm = (drop_mm: number, width_mm: number): number => Math.max(5, 5 * Math.floor(Math.min(drop_mm - 30, width_mm * planDefaults.slack_share) / 5));

/** The leg of a brace where the plan names none: a quarter of the shorter side, at most 400 mm. */
export const usualLeg_mm = (shorter_side_mm: number): number => Math.min(400, downToTens(shorter_side_mm / 4));
