import type { UnitSystem } from '../base/names.js';
import type { SawKind } from './shop-schema.js';

/** One session: a lesson, an evening. */
export interface Session {
  /** Days since 1970. */
  readonly day: number;
  /** When it begins, minutes since the first midnight of 1970, local; and how long it lasts. */
  readonly start_min: number;
  readonly length_min: number;
  /** How many work at a time; null = one for each frame. */
  readonly people: number | null;
}

/** One kind of saw. */
export interface Saw {
  readonly kind: SawKind;
  readonly count: number;
  /** How high a piece may stand in it, mm; null where nobody said. */
  readonly most_mm: number | null;
}

/**
 * The workshop, read; what the file leaves out is null and not counted. Text fields are the user's own and untrusted.
 */
export interface Shop {
  readonly name: string;
  readonly units: UnitSystem;
  /** In order of time; repeated ones go on for `longest_sessions`. Empty where the file has none. */
  readonly sessions: readonly Session[];
  /** Whether they go on every week. */
  readonly repeated: boolean;
  /** Whether the file says at which hour they begin. */
  readonly at_known: boolean;
  readonly corner_clamps: number | null;
  readonly bar_clamps: number | null;
  readonly saws: readonly Saw[] | null;
  readonly flat_places: number | null;
  readonly moisture_meter: boolean | null;
  readonly tools: readonly { readonly name: string; readonly price: number; readonly count: number }[];
  readonly compare_with: { readonly price: number; readonly width_mm: number; readonly height_mm: number } | null;
}

/** Sessions that go on every week are looked at no further than this many. */
export const longest_sessions = 120;
