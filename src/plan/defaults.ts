import { formatLength } from '../base/units-format.js';
import type { UnitSystem } from '../base/names.js';
import type { Assumed } from './plan.js';

/** Collects the defaults that a plan leaves to the tool, in the order they are met. */
export class Defaults {
  readonly assumed: Assumed[] = [];
  constructor(readonly units: UnitSystem) {}

  /** The lengths a plan of this system falls back to. */
  get lengths(): UsualLengths {
    return usualLengths[this.units];
  }

  /** The value given, or else the fallback, noted under `path` as `words`. */
  take<T>(path: string, given: T | undefined, fallback: T, words: string = String(fallback)): T {
    if (given !== undefined) return given;
    this.assumed.push({ path, value: words });
    return fallback;
  }

  /** The same for a length in mm, noted in the plan's own unit system. */
  length(path: string, given_mm: number | undefined, fallback_mm: number): number {
    return this.take(path, given_mm, fallback_mm, formatLength(fallback_mm, this.units));
  }
}

/** The numbers a plan falls back to, in N/m, °C and %; its lengths are in `usualLengths`. */
export const planDefaults = {
  ply_screw: 'screw-6x32',
  nail: 'brad-18ga-25',
  glue: 'pva',
  cloth: 'cotton-duck-340',
  working_N_per_m: 200,
  /** Peak pull where only a working pull is given, over that pull; and the other way about. */
  peak_over_working: 2,
  coats: 2,
  moisture_pct: 12,
  humidity_low: 0.35,
  humidity_high: 0.6,
  temperature_C: 20,
  /** Share of the width that stands the wire at about 15 degrees on two hooks. */
  slack_share: 1 / 9,
  hooks: 2,
} as const;

/** Lengths that a plan falls back to, mm, as one says them in each unit system. */
interface UsualLengths {
  readonly ply_screw_every_mm: number;
  readonly staple_every_mm: number;
  readonly turn_mm: number;
  readonly setback_mm: number;
  readonly drop_mm: number;
  /** Least that a hook stays below the top edge. */
  readonly hidden_mm: number;
  readonly most_leg_mm: number;
  /** Drops and legs go down to whole steps of this, and slacks of the other. */
  readonly step_mm: number;
  readonly slack_step_mm: number;
}

const inch = 25.4;

/** The lengths that a plan falls back to. */
export const usualLengths: Readonly<Record<UnitSystem, UsualLengths>> = {
  metric: {
    ply_screw_every_mm: 200,
    staple_every_mm: 50,
    turn_mm: 50,
    setback_mm: 5,
    drop_mm: 180,
    hidden_mm: 30,
    most_leg_mm: 400,
    step_mm: 10,
    slack_step_mm: 5,
  },
  inch: {
    ply_screw_every_mm: 8 * inch,
    staple_every_mm: 2 * inch,
    turn_mm: 2 * inch,
    setback_mm: (3 / 16) * inch,
    drop_mm: 7 * inch,
    hidden_mm: 1.25 * inch,
    most_leg_mm: 16 * inch,
    step_mm: inch / 2,
    slack_step_mm: inch / 4,
  },
};

/** Down to a whole step, at least one. */
const downTo = (length_mm: number, step_mm: number): number =>
  Math.max(step_mm, Math.floor(length_mm / step_mm + 1e-9) * step_mm);

/**
 * The hanging point: 180 mm (7 in) down, on a wide frame as much more as lets its wire stand steeply enough below the
 * top edge; at most a third of the height.
 */
export function usualDrop_mm(height_mm: number, width_mm: number, units: UnitSystem): number {
  const { drop_mm, hidden_mm, step_mm } = usualLengths[units];
  const steep_mm = Math.ceil((width_mm * planDefaults.slack_share + hidden_mm) / step_mm) * step_mm;
  return Math.min(Math.max(drop_mm, steep_mm), downTo(height_mm / 3, step_mm));
}

/**
 * The slack of a wire: a ninth of the width, up to whole 5 mm (1/4 in) so that it never stands flatter than that, but
 * so little that the hook stays 30 mm (1-1/4 in) below the top.
 */
export function usualSlack_mm(drop_mm: number, width_mm: number, units: UnitSystem): number {
  const { hidden_mm, slack_step_mm } = usualLengths[units];
  const wanted_mm = Math.ceil((width_mm * planDefaults.slack_share) / slack_step_mm - 1e-9) * slack_step_mm;
  return downTo(Math.min(drop_mm - hidden_mm, wanted_mm), slack_step_mm);
}

/** The leg of a brace where the plan names none: a quarter of the shorter side, at most 400 mm (16 in). */
export function usualLeg_mm(shorter_side_mm: number, units: UnitSystem): number {
  const { most_leg_mm, step_mm } = usualLengths[units];
  return Math.min(most_leg_mm, downTo(shorter_side_mm / 4, step_mm));
}
