import { formatNumber } from '../../base/units-format.js';

/** A time to wait as one says it: `45 minutes`, `3 hours`, `2 days`. */
export function waitInWords(hours: number): string {
  if (hours < 0.95) return count(Math.max(5, Math.round((hours * 60) / 5) * 5), 'minute');
  if (hours < 36) return count(Math.round(hours * 2) / 2, 'hour');
  return count(Math.round((hours / 24) * 2) / 2, 'day');
}

const count = (n: number, unit: string): string => `${formatNumber(n, 3)} ${unit}${n === 1 ? '' : 's'}`;
