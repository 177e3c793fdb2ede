import { besideLimit } from '../../base/beside-limit.js';
import { chanceInWords } from '../../base/chance-words.js';
import { formatQuantity, formatShare, type QuantityUnit } from '../../base/units-format.js';
import type { UnitSystem } from '../../base/names.js';
import { isFactPath } from '../../facts/catalogue.js';
import { toldUnit } from '../../facts/told.js';
import type { Finding } from '../../findings/finding.js';
import { userText } from '../clean-text.js';

/** A limit passed by this much or more is met with plenty. */
const plentyShare = 0.1;

/**
 * The value of a check and what it is held against, as short as it goes: `79 N; at most 200 N`. What is a share of one
 * whole is told in per cent.
 */
export function valueAndLimit(finding: Finding, units: UnitSystem, currency: string): string {
  const { actual, limit, used, fact } = finding;
  const unit = isFactPath(fact) && toldUnit(fact) === 'points' ? 'points' : (finding.unit as QuantityUnit);
  const amount = (value: number): string =>
    none(unit === 'chance' ? chanceInWords(value) : formatQuantity(value, unit, units, userText(currency, 8)), value);
  if (typeof actual !== 'number') return actual === null ? 'unknown' : userText(actual, 60);
  const size = Math.abs(actual);
  if (typeof limit !== 'number') return amount(actual);
  // What must not pass nought, and stays below it, is none; what must not fall below it is told.
  if (limit === 0) return actual <= 0 ? 'none' : amount(actual);
  if (unit === 'chance') return `${amount(size)}; at most ${formatShare(limit)}`;
  // What reaches below nought where something is wanted uses no share of its limit.
  if (used === null && actual < 0 && limit > 0) return `less than none, ${amount(actual)}; at least ${amount(limit)}`;
  const beside = (value: number): string => besideLimit(amount(value), amount(limit), value, limit);
  const least = close(used, Math.abs(limit) / size);
  const most = close(used, size / Math.abs(limit));
  if ((unit === 'ratio' || unit === 'share') && limit === 1)
    return `${formatShare(actual)}; ${least ? 'at least' : 'at most'} 100 %`;
  if (least && most) return `${amount(actual)}, just the limit`;
  if (least) return `${used !== null && used < plentyShare ? 'plenty' : beside(actual)}; at least ${amount(limit)}`;
  return `${beside(size)}; at most ${amount(limit)}`;
}

const close = (used: number | null, share: number): boolean =>
  used !== null && Number.isFinite(share) && Math.abs(used - share) <= 1e-6 * Math.max(1, share);

/** An amount of nothing is told so, also where a unit stands behind the nought. */
const none = (words: string, value: number): string => (value === 0 && !/[a-z]{4}/u.test(words) ? 'none' : words);
