/** The numbers of the warp story, worked out beside it. */
import { describe, expect, it } from 'vitest';
import type { FactSettings } from '../../src/model/model.js';
import { equilibriumMoisture_pct } from '../../src/mechanics/moisture/equilibrium.js';
import { assessWarp, boardState } from '../../src/risk/assess.js';
import { fewShapes } from '../../src/risk/few-shapes.js';
import { unpulledFor } from '../../src/risk/lift-curve.js';
import { chanceBeyond } from '../../src/risk/normal.js';
import { warpStory } from '../../src/risk/story.js';
import { demoSolved } from '../mechanics/fasteners/demo-model.js';

const settings = (corner_lift_limit_mm: number): FactSettings => ({ corner_lift_limit_mm, bar_bow_limit_mm: { top: 2, bottom: 2, left: 2, right: 2 }, seed: 1, samples: 1000 });
const plan = { face: { width: '1040 mm', height: '690 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, lumber: { chosen: 'plain', moisture: '15 %' }, room: { humidity: '30..56 %', temperature: '18 C' }, hang: { by: 'none' } };
const { model, solution } = demoSolved(plan);
const told = (limit_mm: number) => warpStory(model, solution, settings(limit_mm)).story!;

describe('its numbers', () => {
  it('chance beyond the limit for average boards and for those of two thirds the stiffness, which less pull turns', () => {
    const { chance, chance_soft, unpulled, growth, limit_mm } = told(2);
    const beyond = (share: number): number => chanceBeyond(unpulled.mean, unpulled.sd, unpulledFor({ ...growth, pull_share: share }, 2));
    expect(limit_mm).toBe(2);
    expect([chance, chance_soft]).toEqual([expect.closeTo(beyond(growth.pull_share), 12), expect.closeTo(beyond(growth.pull_share / 0.67), 12)]);
    expect(chance_soft).toBeGreaterThan(chance);
  });
  it('boards dry to the middle of the room’s air, and wetter air than theirs dries nothing', () => {
    expect(boardState(model).drying_pct).toBeCloseTo(15 - equilibriumMoisture_pct(0.43, 18), 9);
    expect(boardState({ ...model, plan: { ...model.plan, lumber: { ...model.plan.lumber, moisture_pct: 4 } } }).drying_pct).toBe(0);
  });
  it('are worked out once for a solution and its settings, and anew for others', () => {
    const [a, b] = [settings(2), settings(3)];
    const first = assessWarp(model, solution, a)!;
    expect(assessWarp(model, solution, a)).toBe(first);
    const other = assessWarp(model, solution, b)!;
    expect(other.lift_chance).toBeLessThan(first.lift_chance);
    const drier = { ...model, plan: { ...model.plan, lumber: { ...model.plan.lumber, moisture_pct: 4 } } };
    expect(assessWarp(drier, solution, b)!.lift.sd).toBeLessThan(other.lift.sd);
  });
});

it('shapes of lines are found alike however small or large the lines are', () => {
  const lines = [1, 2, 0, -1, 0, 0.5, 2, 1, 3, 1, 1, 0.2];
  const one = fewShapes(Float64Array.from(lines), 4);
  expect(one.rank).toBe(3);
  for (const by of [1e-7, 1e7]) {
    const other = fewShapes(Float64Array.from(lines, (value) => value * by), 4);
    expect(other.rank).toBe(3);
    other.shapes.forEach((value, i) => expect(value).toBeCloseTo(one.shapes[i]!, 9));
    other.coefficients.forEach((value, i) => expect(value / by).toBeCloseTo(one.coefficients[i]!, 9));
  }
});

it('of lines as long as each other the first gives the first shape, whichever of them rounding made the longer', () => {
  const [one, mirrored] = [[1, 2, 0.3], [0.3, 2, 1]];
  const length = Math.hypot(...one);
  for (const by of [1 - 1e-13, 1, 1 + 1e-13]) {
    const { shapes } = fewShapes(Float64Array.from([...one, ...mirrored.map((value) => value * by)]), 3);
    one.forEach((value, i) => expect(shapes[i]).toBeCloseTo(value / length, 12));
  }
  const { shapes } = fewShapes(Float64Array.from([...one, ...mirrored.map((value) => value * (1 + 1e-8))]), 3);
  mirrored.forEach((value, i) => expect(shapes[i]).toBeCloseTo(value / length, 12));
});
