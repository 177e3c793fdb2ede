import type { About } from '../base/names.js';
import type { QuantityUnit } from '../base/units-format.js';
import type { Supplies } from '../cost/supplies.js';
import type { CutPlan } from '../cutting/boards/purchase.js';
import type { FactSettings, Model, Solution } from '../model/model.js';

/** What a rule may be asked of: one run of the rule per element. */
export const elements = [
  'frame',
  'bar',
  'crossbar',
  'corner',
  'board',
  'fastening',
  'cloth',
  'hanging',
  'cutting',
] as const;
export type Element = (typeof elements)[number];

/** Units a fact may carry; the suffix of its path says the same. Percentage points are told, but no fact has them. */
export type FactUnit = Exclude<QuantityUnit, 'points'>;

/**
 * What kind of change moves a fact: how the frame is built, how its boards are chosen, dried and paired, how it hangs,
 * how far its crossbars stand back.
 * Where two kinds do, the one with which a search over plans asks for it. A plan is settled in the order build,
 * setback, hanging: a wire follows the crossbars as they are set back, and
 * ply screws give way to both, so another setback may move what hangs as well, and nothing else moves anything but its
 * own.
 */
export type MovedBy = 'build' | 'boards' | 'hanging' | 'setback';

/**
 * What must be known before a fact can be, cheapest first: the sizes that are cut, the plan and its shelf, the shape
 * under the pulls, stability, the shape
 * with the pull of the wire, what natural warp does in closed form, sampled frames.
 */
export type KnownFrom = 'cut' | 'plan' | 'shape' | 'stability' | 'wire' | 'warp' | 'samples';

/** What is decided frame by frame, whatever its size: a chart of sizes does not ask it. */
export type FrameByFrame = 'hanging' | 'cloth' | 'spending' | 'fastenings' | 'boards' | 'door' | 'lifting' | 'squaring';

/** What a fact means, whatever plan it is asked of. */
export interface Declared {
  readonly unit: FactUnit;
  /** One sentence for people. */
  readonly meaning: string;
  /** Key in `rules/sources.yaml`, or `physics`. */
  readonly source: string;
  /** True when `at-most` must compare the magnitude. */
  readonly signed?: boolean;
  /** In what it is told, where that is not its unit: a difference of per cents in points, a word as half a sentence. */
  readonly told?: 'points' | Readonly<Record<string, string>>;
  /** For `word` facts: what it can be. */
  readonly words?: readonly string[];
  readonly moved_by: MovedBy;
  readonly known_from: KnownFrom;
  /** Left out where a chart of sizes asks for it. */
  readonly frame_by_frame?: FrameByFrame;
}

/** A value that cannot be known, and why, in a sentence. */
export interface Unknown {
  readonly unknown: string;
}

/** A number or a word; unknown with its reason; null where this plan has no such thing. */
export type FactValue = number | string | Unknown | null;

/** The value, or why it is not known where there is none or it is no number that can be worked with. */
export const known = (value: number | null | undefined, reason: string): FactValue =>
  value === null || value === undefined || !Number.isFinite(value) ? { unknown: reason } : value;

/** From what facts are worked out; each part is made when it is first read. */
export interface FactInput {
  readonly model: Model;
  readonly solution: Solution;
  readonly cut: CutPlan;
  /** How many pieces are longer than any board: told without a cutting where none is. */
  readonly too_long: number;
  readonly bought: Supplies;
  readonly settings: FactSettings;
}

/**
 * What the facts of one group share: which elements there are, and what each works with, each part made when it is
 * first read.
 */
export interface Group<Work> {
  readonly each: Element;
  readonly of: (input: FactInput) => readonly (readonly [about: About, work: Work])[];
}

/** What most facts of a group have in common; each may say otherwise. */
type Usually = Pick<Declared, 'source' | 'moved_by' | 'known_from' | 'frame_by_frame'>;

/** One fact as it is declared: what it means, and how it is worked out. */
type Declaration<Work, Given extends Partial<Usually>> = Omit<Declared, keyof Given> &
  Partial<Pick<Declared, keyof Given & keyof Declared>> & {
    readonly value: (of: Work) => FactValue;
  };

/** A group of declared facts: the catalogue reads what they mean, the audit works them out. */
export interface FactGroup<Path extends string> {
  readonly each: Element;
  readonly declared: ReadonlyMap<Path, Declared>;
  /** The elements that a plan has, each with what its facts are worked out from. */
  readonly of: (input: FactInput) => readonly (readonly [about: About, work: unknown])[];
  /** How a fact is worked out, from the work of an element of this group. */
  readonly valueOf: (path: Path) => (work: unknown) => FactValue;
}

/** Declares the facts of a group: everything that is to be said of a fact stands in its declaration. */
export function declareFacts<Work, Given extends Partial<Usually>>({ each, of }: Group<Work>, usually: Given) {
  return <Path extends string>(facts: Readonly<Record<Path, Declaration<Work, Given>>>): FactGroup<Path> => {
    const entries = Object.entries(facts) as [Path, Declaration<Work, Given>][];
    return {
      each,
      declared: new Map(
        entries.map(([path, { value: _, ...declared }]) => [path, { ...usually, ...declared } as unknown as Declared]),
      ),
      of,
      valueOf: (path) => facts[path].value as (work: unknown) => FactValue,
    };
  };
}
