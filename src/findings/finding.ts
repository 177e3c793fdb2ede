import type { About } from '../base/names.js';

export const verdicts = ['clear', 'caution', 'unknown', 'stop'] as const;
/** In order of gravity: clear < caution < unknown < stop. */
export type Verdict = (typeof verdicts)[number];

/** What one rule says of one element. `Path` is what it may name as the fact that decided. */
export interface Finding<Path extends string = string> {
  readonly rule: string;
  /** What the rule looks at, in words that a value can follow: `Spacing of the staples`. */
  readonly title: string;
  readonly about: About;
  readonly verdict: Verdict;
  /** Path of the fact that decided, for `because` look-ups. */
  readonly fact: Path;
  readonly actual: number | string | null;
  readonly limit: number | string | null;
  readonly unit: string;
  /** Share of the limit used: actual/limit for at-most, limit/actual for at-least; null when it makes no sense. */
  readonly used: number | null;
  readonly say: string;
  readonly do: readonly string[];
  readonly cautions: readonly string[];
  readonly source: string;
}
