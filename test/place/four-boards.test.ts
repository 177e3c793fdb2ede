import { Matrix, solve } from 'ml-matrix';
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

/**
 * The same frame without pull, put together a second way: a grillage of four bars of one element each (exact for bars loaded at their ends), out of the plane alone, joints as springs at
 * every bar end as much as so many widths of the bar give, solved dense by ml-matrix; three corners held, the fourth free. Twist enters as the torque G J τ that would hold it straight.
 */
function byGrillage(order: readonly number[]): number {
  const { span_x_mm: a, span_y_mm: b, bars, corner_give } = frame!.model.shape;
  // Corners 0 … 3: bottom left, bottom right, top right, top left; each bar has nodes of its own, held to the corner by springs. Unknowns of a node: w, turning about x, turning about y.
  const at = { top: [3, 2], bottom: [0, 1], left: [0, 3], right: [1, 2] } as const;
  const corners = ['bottom-left', 'bottom-right', 'top-right', 'top-left'] as const;
  const n = 12 + 4 * 6;
  const K = Matrix.zeros(n, n);
  const load = Matrix.zeros(n, 1);
  const put = (dofs: readonly number[], k: readonly (readonly number[])[]): void => dofs.forEach((i, r) => dofs.forEach((j, c) => K.set(i, j, K.get(i, j) + k[r]![c]!)));
  barNames.forEach((bar, m) => {
    const { E_MPa: E, G_MPa: G, I_out_mm4: I, J_mm4: J, w_mm } = bars[bar];
    const level = bar === 'top' || bar === 'bottom';
    const L = level ? a : b;
    const first = 12 + 6 * m;
    // Along a level bar w' = −turning about y, and it twists about x; along an upright one w' = turning about x, and it twists about y.
    const [slope, twist, sign] = level ? [2, 1, -1] : [1, 2, 1];
    const k = (E * I) / L ** 3;
    const bending = [[12, 6 * L, -12, 6 * L], [6 * L, 4 * L * L, -6 * L, 2 * L * L], [-12, -6 * L, 12, -6 * L], [6 * L, 2 * L * L, -6 * L, 4 * L * L]];
    const signs = [1, sign, 1, sign];
    put([first, first + slope, first + 3, first + 3 + slope], bending.map((row, r) => row.map((value, c) => value * k * signs[r]! * signs[c]!)));
    const t = (G * J) / L;
    put([first + twist, first + 3 + twist], [[t, -t], [-t, t]]);
    const torque = G * J * order[m]! * deg * 1e-3;
    load.set(first + twist, 0, load.get(first + twist, 0) - torque);
    load.set(first + 3 + twist, 0, load.get(first + 3 + twist, 0) + torque);
    at[bar].forEach((corner, end) => {
      const give = corner_give[corners[corner]!];
      const stiff = [1e9, 0, 0];
      stiff[slope] = (E * I) / (give.out * w_mm);
      stiff[twist] = (G * J) / (give.twist * w_mm);
      stiff.forEach((s, d) => put([first + 3 * end + d, 3 * corner + d], [[s, -s], [-s, s]]));
    });
  });
  const held = [0, 3, 9];
  const free = Array.from({ length: n }, (_, i) => i).filter((i) => !held.includes(i));
  const u = solve(K.subMatrixRow(free).subMatrixColumn(free), load.subMatrixRow(free));
  return u.get(free.indexOf(6), 0);
}

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

  test('all 24 lifts at no pull, best and worst among them, as a second program has them, within half a per cent of the worst', () => {
    const twice = orders(twists).map((order) => [byGrillage(order), byInfluence(order, frame!.solution.influence_unpulled)] as const);
    const most = Math.max(...twice.map(([one]) => Math.abs(one)));
    const sign = Math.sign(twice[1]![0] * twice[1]![1]);
    for (const [one, other] of twice) expect(Math.abs(one - sign * other)).toBeLessThan(0.005 * most);
    const sizesOf = (k: 0 | 1): readonly number[] => twice.map((pair) => Math.abs(pair[k]));
    // The worst order of the one is the worst of the other, and the order that is placed the best of both; mirrored orders lift alike.
    expect(sizesOf(0)[sizesOf(1).indexOf(Math.max(...sizesOf(1)))]! / most).toBeCloseTo(1, 3);
    expect(Math.abs(byGrillage(orderPlaced))).toBeLessThan(Math.min(...sizesOf(0)) + 0.001 * most);
    expect(Math.abs(Math.max(...sizesOf(0)) / Math.max(...sizesOf(1)) - 1)).toBeLessThan(0.03);
  });

  test('the worst and the mean chance by luck are those of the 24', () => {
    const luck = placed.frames[0]!.luck!;
    expect(luck.worst_mm).toBeCloseTo(worst, 9);
    expect(luck.error).toBe(0);
    expect(luck.mean_chance).toBeCloseTo(all.reduce((sum, { order }) => sum + byAudit(order).lift_chance, 0) / 24, 9);
  });
});
