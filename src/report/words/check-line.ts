import { chanceInWords } from '../../base/chance-words.js';
import { formatQuantity, formatShare, type QuantityUnit } from '../../base/units-format.js';
import type { UnitSystem } from '../../base/names.js';
import type { Finding } from '../../findings/finding.js';
import { userText } from '../clean-text.js';

/** What a rule is about, from its readable id: `hanging/wire-strength` is `wire strength`. */
export const ruleInWords = (rule: string): string => userText(rule.slice(rule.indexOf('/') + 1).replaceAll('-', ' '), 60);

/** The same where the subject is not said above: `corners/use` is `corner use`. */
export function ruleAndSubject(rule: string): string {
  const name = ruleInWords(rule);
  return name.includes(' ') ? name : `${userText(rule.slice(0, rule.indexOf('/')).replace(/s$/u, ''), 40)} ${name}`;
}

/** What a clear check is when its share of the limit says all there is to say. */
const inOrder = 'in order';

/** A limit passed by this much or more is met with plenty. */
const plentyShare = 0.1;

/** The value of a check and what it is held against, as short as it goes: `79 N, at most 200 N`. Where the share of the limit says it all, or the limit is nothing at all: `in order`. */
export function valueAndLimit(finding: Finding, units: UnitSystem): string {
  const { actual, limit, unit, used } = finding;
  const amount = (value: number): string => none(unit === 'chance' ? chanceInWords(value) : formatQuantity(value, unit as QuantityUnit, units));
  if (typeof actual !== 'number') return actual === null ? 'unknown' : userText(actual, 60);
  if (typeof limit !== 'number' || limit === 0 || ((unit === 'ratio' || unit === 'share') && limit === 1)) return inOrder;
  const size = Math.abs(actual);
  if (unit === 'chance') return `${amount(size)}, at most ${formatShare(limit)}`;
  const least = close(used, Math.abs(limit) / size);
  const most = close(used, size / Math.abs(limit));
  if (least === most) return `${amount(actual)}, limit ${amount(limit)}`;
  return least ? `${used !== null && used < plentyShare ? 'plenty' : amount(actual)}, at least ${amount(limit)}` : `${amount(size)}, at most ${amount(limit)}`;
}

const close = (used: number | null, share: number): boolean => used !== null && Number.isFinite(share) && Math.abs(used - share) <= 1e-6 * Math.max(1, share);

/** An amount of nothing. */
const none = (words: string): string => (/^0(?: (?:mm|in|N|lbf|ml|tsp)|°)$/u.test(words) ? 'none' : words);
