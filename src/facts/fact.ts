import type { About } from '../base/names.js';

/** What a rule may be asked of: one run of the rule per element. */
export const elements = ['frame', 'bar', 'crossbar', 'corner', 'board', 'fastening', 'cloth', 'hanging', 'cutting'] as const;
export type Element = (typeof elements)[number];

/** Units a fact may carry; the suffix of its path says the same. */
export type FactUnit = 'mm' | 'mrad' | 'N' | 'Nm' | 'N/m' | 'kg' | 'deg' | 'Hz' | 'share' | 'chance' | 'pct' | 'cost' | 'count' | 'ratio' | 'days' | 'ml' | 'MPa' | 'C' | 'word';

/** One entry of the catalogue: what a fact means, whatever plan it is asked of. */
export interface FactSpec {
  /** `bar.inward_bow_mm` */
  readonly path: string;
  readonly each: Element;
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
}

/** One computed value. `value` is null when it cannot be known; `reason` then says why in a sentence. */
export interface Fact {
  readonly path: string;
  readonly about: About;
  readonly value: number | string | null;
  readonly unit: FactUnit;
  readonly reason?: string;
}
