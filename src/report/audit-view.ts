import type { JudgedFinding } from '../bench-sheet/make-finding.js';
import type { Measured } from '../bench-sheet/measured.js';
import type { Source } from '../base/sources.js';
import type { Supplies } from '../cost/supplies.js';
import type { CutPlan } from '../cutting/boards/purchase.js';
import type { Fact } from '../facts/fact.js';
import type { Applied } from '../findings/applied.js';
import type { Verdict } from '../findings/finding.js';
import type { ToolsAtHand } from '../order-of-work/tools-at-hand.js';
import type { FactSettings, Model, Solution } from '../model/model.js';
import type { Sighting } from '../place/sighting.js';
import type { Sheets } from '../sheets/sheets.js';
import type { Assumed, Plan } from '../plan/plan.js';
import type { Shelf } from '../shelf/shelf.js';

/** What a picture of a frame is drawn from. */
export type Drawn = Pick<Audit, 'plan' | 'model' | 'shelf'>;

/** A change to the plan with what it would do, each computed by auditing the changed plan. */
export interface Change {
  /** In words, as advice: `Turn the bars on edge.` */
  readonly words: string;
  readonly verdict: Verdict;
  readonly twist_reserve: number | null;
  readonly lift_chance: number | null;
  readonly cost: number | null;
  readonly weight_kg: number | null;
  /** The changed plan, to be drawn beside the plan as it is. */
  readonly drawn: Drawn;
}

/** Everything a report may speak of: the finished audit of one plan. The report never sees rules. */
export interface Audit {
  readonly plan: Plan;
  readonly shelf: Shelf;
  readonly model: Model;
  readonly solution: Solution;
  readonly facts: readonly Fact[];
  /** Gravest first. */
  readonly findings: readonly JudgedFinding[];
  readonly verdict: Verdict;
  /** Rules that did not speak, and why. */
  readonly silent: readonly { readonly rule: string; readonly why_read: string }[];
  readonly assumed: readonly Assumed[];
  /** What the model leaves out, in sentences. */
  readonly left_out: readonly string[];
  /** The ruleset it was judged by, and what that relaxes. */
  readonly applied: Applied;
  readonly seed: number;
  readonly samples: number;
  /** Most useful first; empty when not asked for. */
  readonly changes: readonly Change[];
  /** What the facts were computed with. */
  readonly settings: FactSettings;
  /** What to buy and how to cut it for this plan. */
  readonly cut: CutPlan;
  /** Every amount the plan takes, for one frame and for all, and what to buy. */
  readonly supplies: Supplies;
  /** What the pages tell beyond facts and findings. */
  readonly sheets: Sheets;
  /** What the workshop has, where the audit was told. */
  readonly tools?: ToolsAtHand;
  /** The list of sources, so that the report can name them in full; a key that is not in it is printed as it is. */
  readonly sources: readonly Source[];
  /** What sighting more boards at the shop would bring; only where it was asked for and matters. */
  readonly sighting?: Sighting;
  /** Readings taken while building, held against the promise; their findings stand among the others. */
  readonly measured?: Measured;
}
