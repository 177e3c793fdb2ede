import { formatNumber } from '../../base/units-format.js';

/**
 * How much of a limit is used: per cent first, then ten small squares, so it is never colour alone. More than all of it
 * shows a plus; empty where a share makes no sense.
 */
export function usedBar(used: number | null): string {
  if (used === null || !Number.isFinite(used) || used < 0) return '';
  const share = used > 9.99 ? 'over 999 %' : `${formatNumber(Math.round(used * 100), 3)} %`;
  const full = Math.min(10, Math.round(used * 10));
  return `${share} ${'■'.repeat(full)}${'□'.repeat(10 - full)}${used > 1 ? '+' : ''}`;
}
