import type { Problem } from '../base/problem.js';
import type { SawAtHand } from '../base/saw.js';
import type { Applied } from '../findings/applied.js';
import type { ClassRow, NotRead } from './class-row.js';
import type { Pooled } from './pooled.js';
import type { RollUp } from './roll-up.js';

/** Everything a page about many plans speaks of. */
export interface ClassFindings {
  /** The plans, in the order of the files. */
  readonly rows: readonly ClassRow[];
  /** The other files, in their order: what could not be read, and what is no plan. */
  readonly others: readonly NotRead[];
  readonly roll_up: RollUp;
  /** Problems of the files that could not be read. */
  readonly broken: readonly Problem[];
  /** What the plans take that are neither stopped nor unknown; null when there are none. */
  readonly pooled: Pooled | null;
  /** Positions among the rows of the plans that were pooled, in the order of their numbers. */
  readonly pooled_rows: readonly number[];
  /** What each of the pooled plans pays of the whole, in the same order; null where it cannot be told. */
  readonly shares: readonly (number | null)[];
  /** Ids of the rules that were asked, in the order of the ruleset. */
  readonly rules: readonly string[];
  /** Whether the ruleset gives points. */
  readonly points: boolean;
  /** The ruleset all were judged by, and what it relaxes. */
  readonly applied: Applied;
  readonly shelf_name: string;
  /** The shelf's numbers that the studio measured itself, see `Shelf.measured`. */
  readonly measured: readonly string[];
  readonly currency: string;
  /** How pieces are cut here, where somebody said so. */
  readonly saw?: SawAtHand;
  readonly seed: number;
  readonly samples: number;
}
