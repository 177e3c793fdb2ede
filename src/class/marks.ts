import type { UnitSystem } from '../base/names.js';
import { formatQuantity, formatShare, type QuantityUnit } from '../base/units-format.js';
import type { Finding, Verdict } from '../findings/finding.js';
import { sortFindings } from '../findings/summary.js';
import { badge } from '../report/words/verdict.js';

/** What one rule made of one plan: its gravest verdict, and the value it was given for. */
export interface Mark {
  readonly verdict: Verdict;
  /** The value in the units of the plan; empty when it is unknown. */
  readonly value: string;
}

/** The marks of a plan by rule; a rule that did not speak has none. */
export type Marks = ReadonlyMap<string, Mark>;

/**
 * One mark for each rule that spoke: of several findings the gravest, of equals the one that uses most of its limit.
 */
export function marksOf(findings: readonly Finding[], units: UnitSystem, currency = ''): Marks {
  const marks = new Map<string, Mark>();
  for (const { rule, verdict, actual, unit } of sortFindings(findings))
    if (!marks.has(rule)) marks.set(rule, { verdict, value: valueInWords(actual, unit, units, currency) });
  return marks;
}

/** A value as short as a cell needs it; a chance too small to matter is told as that. */
export function valueInWords(value: Finding['actual'], unit: string, units: UnitSystem, currency = ''): string {
  if (value === null) return '';
  if (unit === 'chance' && typeof value === 'number' && value < least_chance)
    return `under ${formatShare(least_chance)}`;
  return formatQuantity(value, unit as QuantityUnit, units, currency);
}

const least_chance = 0.001;

/** A mark as a shape and a letter, so that neither colour nor print quality decides. */
export const markSign: Readonly<Record<Verdict, string>> = {
  clear: badge('clear', 'C'),
  caution: badge('caution', 'K'),
  unknown: badge('unknown', 'U'),
  stop: badge('stop', 'S'),
};

/** What the signs mean. */
export const markLegend = `${markSign.clear} clear · ${markSign.caution} cut with care (caution) · ${markSign.unknown} unknown · ${markSign.stop} stop · empty: the rule was not asked of this plan.`;

/** Share of a rule's points that a verdict earns: all, half, none. */
const earned: Readonly<Record<Verdict, number>> = { clear: 1, caution: 0.5, unknown: 0, stop: 0 };

/** Points of one plan: what it earned, of what the rules that were asked could give. */
export interface PointsEarned {
  readonly earned: number;
  readonly of: number;
}

/**
 * Adds up a plan's points; null where the ruleset gives none. Rules that were not asked of the plan count for nothing.
 */
export function pointsOf(marks: Marks, points: ReadonlyMap<string, number>): PointsEarned | null {
  if (points.size === 0) return null;
  let sum = 0;
  let of = 0;
  for (const [rule, worth] of points) {
    const mark = marks.get(rule);
    if (mark === undefined) continue;
    sum += worth * earned[mark.verdict];
    of += worth;
  }
  return { earned: sum, of };
}
