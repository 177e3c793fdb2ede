/** Mean and spread of a lift that grows with the pull, against the sum over lifts at no pull, which is another way round. */
import { describe, expect, it } from 'vitest';
import { causeInWords } from '../../src/base/warp-words.js';
import { liftCauses } from '../../src/risk/causes.js';
import { barRisk } from '../../src/risk/closed-form.js';
import { foldedQuantile, normalDensity } from '../../src/risk/normal.js';
import { grownMoments, liftFrom, type LiftCurve } from '../../src/risk/lift-curve.js';
import type { WarpTerm } from '../../src/risk/terms.js';

/** Σ over the spread of boards, each side of straight by itself (there a frame past its critical pull jumps), by Simpson's rule. */
function byBoards(curve: LiftCurve, mean: number, sd: number): { mean: number; sd: number } {
  const zero = Math.max(-9, Math.min(9, -mean / sd));
  let [weight, first, second] = [0, 0, 0];
  for (const [from, to, hand] of [[-9, zero, -1], [zero, 9, 1]] as const) {
    const n = 4000;
    const h = (to - from) / n;
    for (let i = 0; h > 0 && i <= n; i++) {
      const unpulled = mean + sd * (from + i * h);
      // At the very jump the side that the frame leans to from there.
      const y = hand * Math.abs(liftFrom(curve, unpulled));
      const w = ((i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * h * normalDensity(from + i * h)) / 3;
      weight += w;
      first += w * y;
      second += w * y * y;
    }
  }
  const average = first / weight;
  return { mean: average, sd: Math.sqrt(second / weight - average ** 2) };
}

describe.each([[0.4, 2e-5], [0.93, 4e-6], [1, 5e-6], [1.15, 5e-6], [1.7, 3e-5]])('at %d of the critical pull, β %d', (pull_share, beta_per_mm2) => {
  it.each([[0, 0.4], [0.3, 0.2], [-2, 1.5], [1.2, 3], [8, 2]])('boards that lift by %d ± %d', (mean, sd) => {
    const curve = { pull_share, beta_per_mm2 };
    const [found, expected] = [grownMoments(curve, { mean, sd }), byBoards(curve, mean, sd)];
    expect(Math.abs(found.mean - expected.mean)).toBeLessThan(2e-4 * expected.sd);
    expect(found.sd / expected.sd).toBeCloseTo(1, 4);
  });
});

it('either side of a frame past its critical pull counts to its very edge: mirrored boards lift it as far the other way', () => {
  for (let made = 1; made <= 200; made++) {
    const curve = { pull_share: 1 + made / 400, beta_per_mm2: 3e-6 * (1 + Math.sin(made)) + 1e-7 };
    const sd = 2 + (made % 17);
    const [one, other] = [0.3, -0.3].map((lean) => grownMoments(curve, { mean: lean * sd, sd }));
    expect(Math.abs(one!.mean + other!.mean)).toBeLessThan(1e-9 * one!.sd);
    expect(other!.sd / one!.sd).toBeCloseTo(1, 9);
    expect(Math.abs(grownMoments(curve, { mean: 0, sd }).mean)).toBeLessThan(1e-9 * one!.sd);
  }
});

describe('causes and stations', () => {
  const term = (member: string, lift: number, bow: readonly number[], more: Partial<WarpTerm> = {}): WarpTerm =>
    ({ warp: { member, kind: 'twist', from: 'twist', mean_per_m: 0, chosen_var: 1, drying_var: 0, reading_var: 0 }, mean_per_m: 0, sd_per_m: 1, lift, bow: { top: Float64Array.from(bow), bottom: new Float64Array(bow.length), left: new Float64Array(bow.length), right: new Float64Array(bow.length) }, crook: {}, ...more }) as unknown as WarpTerm;
  it('upright bars stand together, and apart from level ones and from crossbars', () => {
    const causes = liftCauses([term('left', 1, []), term('right', 2, []), term('top', 4, []), term('crossbar-1', 3, [])]);
    expect(causes.map((cause) => [causeInWords(cause), Math.round(cause.share * 30)])).toEqual([['twist of top as chosen', 16], ['twist of crossbar 1 as chosen', 9], ['twist of left and right as chosen', 5]]);
  });
  it('a bar’s risk is at the station where nine in ten stray most: by mean or by spread', () => {
    const spread = [term('top', 0, [0, 1, 3, 2, 0])];
    expect(barRisk(spread, 'bow').top).toEqual({ station: 2, mean: 0, sd: 3, p90_mm: expect.closeTo(3 * 1.6448536269514722, 9) });
    const sure = [term('top', 0, [0, 1, 1, 1, 0]), term('left', 0, [0, 0, 2, 5, 1], { mean_per_m: 2, sd_per_m: 0 })];
    expect(barRisk(sure, 'bow').top).toMatchObject({ station: 3, mean: 10, sd: 1 });
    expect(barRisk([], 'bow').top).toEqual({ station: 0, mean: 0, sd: 0, p90_mm: 0 });
    expect(barRisk(spread, 'bow').left).toEqual({ station: 0, mean: 0, sd: 0, p90_mm: 0 });
  });
  it('is that of every station looked at, whether its mean or its spread leads', () => {
    let by_mean = 0;
    for (let made = 1; made <= 200; made++) {
      const number = (k: number): number => Math.sin(7.13 * made + 2.39 * k) * 10 ** Math.round(Math.sin(made * (k % 5)));
      const list = [0, 1, 2].map((k) => term('top', 0, [0, 1, 2, 3, 4, 5].map((s) => number(8 * k + s)), { mean_per_m: 0.8 * number(k), sd_per_m: Math.abs(number(k + 31)) }));
      const each = [0, 1, 2, 3, 4, 5].map((s) => {
        const sum = (of: (one: WarpTerm) => number): number => list.reduce((all, one) => all + of(one), 0);
        const [mean, sd] = [sum((one) => one.bow.top[s]! * one.mean_per_m), Math.sqrt(sum((one) => (one.bow.top[s]! * one.sd_per_m) ** 2))];
        return { station: s, sd, p90_mm: foldedQuantile(mean, sd, 0.9) };
      });
      const most = each.reduce((worst, one) => (one.p90_mm > worst.p90_mm ? one : worst));
      expect(barRisk(list, 'bow').top).toMatchObject({ station: most.station, p90_mm: most.p90_mm });
      if (each.some(({ sd }) => sd > 1.05 * most.sd)) by_mean += 1;
    }
    expect(by_mean).toBeGreaterThan(10);
  });
});
