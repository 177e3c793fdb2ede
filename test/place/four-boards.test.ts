import { describe, expect, test } from 'vitest';
import { barNames } from '../../src/base/names.js';
import type { Influence } from '../../src/model/frame-results.js';
import { placePlans } from '../../src/place/place-plans.js';
import { assessWarp } from '../../src/risk/assess.js';
import { liftFrom } from '../../src/risk/lift-curve.js';
import { pulledFrame } from '../../src/risk/lift-growth.js';
import { bench, board, deg, framesOf, pileOf, planOf } from './pile-for-tests.js';

/** Four boards, two turning right and two left, on one frame of unequal sides: tried in all 24 orders. Sizes and twists are our own. */
const twists = [1.9, 1.3, -1.5, -2.0];
const plan = planOf('plan: 1\nname: Four boards\nface: { width: 860 mm, height: 610 mm }\nbars: { stock: strip-19x38, lay: flat }\nlumber: { chosen: picked, moisture: 6 % }\n');
const [frame] = framesOf([plan]);

function orders<T>(list: readonly T[]): readonly (readonly T[])[] {
  return list.length === 0 ? [[]] : list.flatMap((one, i) => orders([...list.slice(0, i), ...list.slice(i + 1)]).map((rest) => [one, ...rest]));
}

/** The pulled frame by its influence numbers, and how its lift grows (physics section 13). */
const { influence, growth: { curve, terms_share } } = pulledFrame(frame!.solution)!;

/** Small-lift answer: influence number × twist, added up, one board being one bar. */
const byInfluence = (order: readonly number[], numbers: readonly Influence[] = influence): number =>
  barNames.reduce((sum, bar, i) => sum + numbers.find(({ member, kind }) => member === bar && kind === 'twist')!.corner_lift * 1e-3 * order[i]! * deg, 0);

/** The audit's own closed form for a plan that names these boards. */
function byAudit(order: readonly number[]) {
  const boards = barNames.map((bar, i) => ({ for: bar, ply: 1, twist_rad_per_m: order[i]! * deg, bow_per_m: null, crook_per_m: null }));
  return assessWarp({ ...frame!.model, plan: { ...plan, boards } }, frame!.solution, frame!.settings)!;
}

describe('the same four boards in all 24 orders', () => {
  const all = orders(twists).map((order) => ({ order, small: byInfluence(order), lift: liftFrom(curve, terms_share * byInfluence(order)) }));
  const sizes = all.map(({ lift }) => Math.abs(lift));
  const [best, worst] = [Math.min(...sizes), Math.max(...sizes)];
  const placed = placePlans([plan], pileOf(twists.map((twist, i) => board(`K${i}`, { twist }))), bench);
  const orderPlaced = barNames.map((bar) => twists[Number(placed.frames[0]!.places.find(({ slot }) => slot.piece.about === bar)!.board.mark.slice(1))]!);

  test('lift by the influence numbers as the audit has it, within 1 %', () => {
    expect(all).toHaveLength(24);
    for (const { order, small } of all) expect(Math.abs(byAudit(order).lift.unpulled.mean / terms_share - small)).toBeLessThan(Math.max(0.01 * Math.abs(small), 1e-6));
  });

  test('the best is a small share of the worst, and is what is placed, proven', () => {
    expect(best).toBeLessThan(0.05 * worst);
    expect(Math.abs(liftFrom(curve, terms_share * byInfluence(orderPlaced)))).toBeCloseTo(best, 9);
    expect(placed.proven).toBe(true);
    expect(placed.frames[0]!.lift!.chance).toBeCloseTo(byAudit(orderPlaced).lift_chance, 12);
  });

  test('best and worst as a frame solved whole: without pull, then grown by the cubic of the propeller, within 3 %', () => {
    const whole = orders(twists).map((order) => Math.abs(liftFrom(curve, byInfluence(order, frame!.solution.influence_unpulled))));
    expect(Math.abs(Math.max(...whole) - worst)).toBeLessThan(0.03 * worst);
    const there = Math.abs(liftFrom(curve, byInfluence(orderPlaced, frame!.solution.influence_unpulled)));
    expect(there).toBeCloseTo(Math.min(...whole), 6);
    expect(Math.abs(there - best)).toBeLessThan(0.03 * worst * 0.05);
    // The pull matters here: without its growth the worst lift would be far off.
    expect(worst / Math.max(...orders(twists).map((order) => Math.abs(byInfluence(order, frame!.solution.influence_unpulled))))).toBeGreaterThan(1.1);
  });

  test('the worst and the mean chance by luck are those of the 24', () => {
    const luck = placed.frames[0]!.luck!;
    expect(luck.worst_mm).toBeCloseTo(worst, 9);
    expect(luck.error).toBe(0);
    expect(luck.mean_chance).toBeCloseTo(all.reduce((sum, { order }) => sum + byAudit(order).lift_chance, 0) / 24, 9);
  });
});
