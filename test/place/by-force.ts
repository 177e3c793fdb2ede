import { aimOf } from '../../src/place/aim.js';
import { change } from '../../src/place/placing.js';
import type { PlaceProblem } from '../../src/place/problem.js';

/** The least aim over every way to fill as many slots as can be filled, tried one by one with nothing left out. */
export function byForce({ slots, options, bought, boards, lengths, allGroups, measures }: PlaceProblem): { readonly filled: number; readonly aim: number } {
  const totals = { mean: new Float64Array(measures.length), variance: new Float64Array(measures.length) };
  const left = boards.map(({ length_mm }) => length_mm);
  let best = { filled: -1, aim: Infinity };
  const visit = (i: number, filled: number): void => {
    if (filled + slots.length - i < best.filled) return;
    if (i === slots.length) {
      const aim = aimOf(allGroups, totals.mean, totals.variance);
      if (filled > best.filled || aim < best.aim) best = { filled, aim };
      return;
    }
    const { length_mm, kerf_mm } = lengths[i]!;
    for (const option of [...options[i]!, bought[i]!]) {
      const before = left[option.board] ?? Infinity;
      const own = option.board >= 0;
      if (own && before < length_mm) continue;
      if (own) left[option.board] = before - length_mm - kerf_mm;
      change(totals, option, 1);
      visit(i + 1, filled + (own ? 1 : 0));
      change(totals, option, -1);
      if (own) left[option.board] = before;
    }
  };
  visit(0, 0);
  return best;
}
