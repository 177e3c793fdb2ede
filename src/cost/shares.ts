import { clothCutOf } from '../mechanics/cloth/cloth-sheet.js';
import { clothCutSize } from '../mechanics/cloth/cut-size.js';
import type { Model } from '../model/model.js';
import { needsOf } from './needs.js';
import type { Supplies } from './supplies.js';

/**
 * What each plan uses of a bill that all share, in money: of the boards of each stock by the length of its pieces, of
 * each cloth by its area, of everything else by
 * its own amount. What is left over is shared in the same way. The parts add up to the priced lines; models and bill
 * are of the same plans in one order.
 */
export function usedParts(models: readonly Model[], { cut, boards, cloths, lines }: Supplies): readonly number[] {
  const parts = models.map(() => 0);
  const share = (cost: number, uses: readonly number[]): void => {
    const all = uses.reduce((sum, use) => sum + use, 0);
    if (all > 0)
      uses.forEach((use, i) => {
        parts[i] = (parts[i] as number) + (cost * use) / all;
      });
  };
  for (const { stock, boards: bought } of cut.stocks) {
    const pieces = bought.flatMap((board) => board.pieces);
    const cost = boards.filter((line) => line.stock === stock).reduce((sum, line) => sum + line.cost, 0);
    const used_mm = models.map(() => 0);
    for (const { plan, piece } of pieces) used_mm[plan]! += piece.cut_mm;
    share(cost, used_mm);
  }
  for (const { cloth, layout, bought_cost } of cloths)
    share(
      bought_cost ?? 0,
      models.map(({ plan }, i) => {
        if (plan.cloth.use !== cloth.key || (plan.cloth.roll_mm ?? cloth.roll_mm) !== layout.roll_mm) return 0;
        const { width_mm, height_mm } = clothCutSize(clothCutOf(models[i] as Model));
        return width_mm * height_mm * plan.count;
      }),
    );
  const needs = models.map((model) => needsOf(model));
  for (const { kind, entry, name, measures, cost } of lines)
    share(
      cost ?? 0,
      needs.map(
        (own, i) =>
          own
            .filter(
              (need) =>
                need.kind === kind &&
                need.entry === entry &&
                (entry !== null || (need.name === name && need.measures.every(({ mm }, m) => mm === measures[m]?.mm))),
            )
            .reduce((sum, { amount }) => sum + amount, 0) * (models[i] as Model).plan.count,
      ),
    );
  return parts;
}

/**
 * What each plan pays of a sum that all pay together: in proportion to its part. In whole cents that add up to the
 * sum; the cents left by rounding go to the largest remainders, of equals to the first. Null for each where a cost is
 * not known.
 */
export function costShares(total: number | null, parts: readonly (number | null)[]): readonly (number | null)[] {
  const sum = parts.reduce<number | null>((all, cost) => (all === null || cost === null ? null : all + cost), 0);
  if (total === null || sum === null || sum <= 0) return parts.map(() => null);
  const cents = Math.round(total * 100);
  const exact = parts.map((cost) => (cents * cost!) / sum);
  const whole = exact.map(Math.floor);
  const left = cents - whole.reduce((all, one) => all + one, 0);
  const byRemainder = exact
    .map((value, i) => ({ i, rest: value - whole[i]! }))
    .sort((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of byRemainder.slice(0, left)) whole[i]! += 1;
  return whole.map((one) => one / 100);
}
