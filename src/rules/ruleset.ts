import type { Place } from '../base/wording.js';
import type { Element, FactPath } from '../facts/fact.js';
import { linesIn, type Group } from './group.js';

/** Verdict a rule may give when its requirement is not met. */
export type Blame = 'caution' | 'stop';

/** How a line of a rule compares a fact: the words of a rule file. */
export const compares = ['at-most', 'at-least', 'above', 'below', 'is', 'is-not'] as const;
export type Compare = (typeof compares)[number];

/**
 * Amounts as written, such as `3 mm` or `1/400`: one, or two thresholds. Beyond `stop` the verdict is stop, beyond
 * `caution` a caution.
 */
export type LimitAmounts = { readonly value: string } | { readonly stop: string; readonly caution: string };

/** A limit by name. With `of`, its amounts are multiplied by the fact of that path, in that fact's unit. */
export interface Limit {
  readonly name: string;
  readonly amounts: LimitAmounts;
  /** What stands in its place for plans in inches; null when nothing does. */
  readonly inches: LimitAmounts | null;
  readonly of: FactPath | null;
  /** Key in `rules/sources.yaml`, or `practice`, `proposal`, `measured`. */
  readonly source: string;
  readonly place: Place;
}

/**
 * The amounts of a limit as numbers: in the unit of the fact it is used on, or, with `of`, as multiples of that other
 * fact.
 */
export interface Thresholds {
  readonly of: FactPath | null;
  readonly value: number | null;
  readonly stop: number | null;
  readonly caution: number | null;
}

/** What a fact is compared with: a number in the fact's unit, a word, or a limit by name. */
export type Against =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'word'; readonly value: string }
  | { readonly kind: 'limit'; readonly name: string };

/** One comparison. For signed facts `at-most` and `below` compare the magnitude. */
export interface Line {
  readonly fact: FactPath;
  readonly compare: Compare;
  readonly against: Against;
  /** Where the line stands, for messages that only turn up once files are laid over each other. */
  readonly place: Place;
}

/** What a rule asks, and when. */
export type Condition = Group<Line>;

/** Every line of a condition, none without one. */
export const linesOf = (condition: Condition | null): readonly Line[] => (condition === null ? [] : linesIn(condition));

/**
 * What follows when the requirement is not met: one verdict; the two thresholds of its limit; or a caution
 * that becomes a stop beyond a second threshold. Under `by-limit`, lines of a group that have one threshold count for
 * both:
 * when such a line fails, the verdict is stop.
 */
export type Otherwise =
  | { readonly kind: 'always'; readonly verdict: Blame }
  | { readonly kind: 'by-limit' }
  | { readonly kind: 'stop-beyond'; readonly stop: Against };

/** Values of facts, in the catalogue's units, that a rule brings to show what it does. */
export interface RuleExamples {
  readonly clear: Readonly<Record<string, number | string>>;
  /** At the limit exactly, and therefore still clear; null where a limit makes no sense (words). */
  readonly edge: Readonly<Record<string, number | string>> | null;
  readonly fails: Readonly<Record<string, number | string>>;
  readonly with: Readonly<Record<string, number | string>>;
}

/**
 * What to do next. `unless` holds where the plan has it already, and the advice is then left away; null = always said.
 */
export interface Advice {
  readonly say: string;
  readonly unless: Condition | null;
}

/** A requirement of each element of a kind, with what to say and do when it is not met. */
export interface Rule {
  readonly id: string;
  /** What it looks at, in words that a value can follow: `Spacing of the staples`. */
  readonly title: string;
  readonly each: Element;
  readonly applies: Condition | null;
  readonly require: Condition;
  readonly otherwise: Otherwise;
  /** Sentence with placeholders in braces, see `say.ts`. */
  readonly say: string;
  /** Said instead when the requirement holds; null = `say` serves both. */
  readonly say_clear: string | null;
  /** Said instead when it is a stop; null = `say` serves. */
  readonly say_stop: string | null;
  /**
   * Said instead when the value is below nought and the requirement does not hold; `{actual}` is then its size. Null =
   * `say` serves.
   */
  readonly say_below_zero: string | null;
  readonly do: readonly Advice[];
  /** Ids of shop-safety cautions, see `findings/cautions.ts`. */
  readonly cautions: readonly string[];
  readonly source: string;
  readonly examples: RuleExamples | null;
  readonly place: Place;
}

/** A rule switched off by a ruleset, and why. */
export interface SwitchedOff {
  readonly id: string;
  readonly reason: string;
  readonly place: Place;
}

/** Points that a plan earns when a rule is clear. */
export interface Points {
  readonly rule: string;
  readonly points: number;
  readonly place: Place;
}

/** What one file says, before it is laid over others. */
export interface Layer {
  readonly file: string;
  readonly name: string;
  readonly version: string | null;
  /** `2026-09-01` */
  readonly date: string | null;
  /** Points that a plan earns by rules. */
  readonly points: readonly Points[];
  /** Files laid below this one, in order, and where they are named. */
  readonly builds_on: readonly { readonly written: string; readonly file: string; readonly place: Place }[];
  readonly limits: readonly Limit[];
  readonly rules: readonly Rule[];
  readonly off: readonly SwitchedOff[];
}

/** One step in the life of a limit or rule: which file set it, and to what, in words. */
export interface Change {
  readonly file: string;
  readonly ruleset: string;
  readonly said: string;
}

/** Rules ready to judge: all files laid over each other, later ones winning by rule id and limit name. */
export interface Ruleset {
  readonly name: string;
  readonly file: string;
  readonly version: string | null;
  readonly date: string | null;
  /** Points by rule id; empty where the ruleset gives none. */
  readonly points: ReadonlyMap<string, number>;
  readonly limits: ReadonlyMap<string, Limit>;
  /** Every limit as used by some rule, in the unit of the fact it is used on; keys by `thresholdKey`. */
  readonly thresholds: ReadonlyMap<string, Thresholds>;
  /** In the order in which their ids first appeared. */
  readonly rules: readonly Rule[];
  readonly off: readonly SwitchedOff[];
  /** `limit NAME` or `rule ID` → every file that set it, oldest first. */
  readonly history: ReadonlyMap<string, readonly Change[]>;
  /** The files in the order in which they were laid, the entry file last. */
  readonly layers: readonly Layer[];
}

/** Limits that the fact stage itself reads: the chances of warp are chances of passing these. */
export const limitsReadByFacts: readonly string[] = ['corner-lift', 'bar-bow'];
