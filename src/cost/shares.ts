/**
 * What each plan pays of a sum that all pay together: in proportion to what it would pay alone, so that all save alike. In whole cents that add up to the
 * sum; the cents left by rounding go to the largest remainders, of equals to the first. Null for each where a cost is not known.
 */
export function costShares(total: number | null, alone: readonly (number | null)[]): readonly (number | null)[] {
  const sum = alone.reduce<number | null>((all, cost) => (all === null || cost === null ? null : all + cost), 0);
  if (total === null || sum === null || sum <= 0) return alone.map(() => null);
  const cents = Math.round(total * 100);
  const exact = alone.map((cost) => (cents * cost!) / sum);
  const whole = exact.map(Math.floor);
  const left = cents - whole.reduce((all, one) => all + one, 0);
  const byRemainder = exact.map((value, i) => ({ i, rest: value - whole[i]! })).sort((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of byRemainder.slice(0, left)) whole[i]! += 1;
  return whole.map((one) => one / 100);
}
