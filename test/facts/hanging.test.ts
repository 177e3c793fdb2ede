import { describe, expect, test } from 'vitest';
import { hangingFacts } from './of-subject.js';
import { hangingState } from '../../src/mechanics/hanging/hanging-state.js';
import { weightParts } from '../../src/model/weight.js';
import { peopleToLift, fitsDoor } from '../../src/mechanics/lifting.js';
import { demoModel, demoShelf, demoSolved } from '../mechanics/fasteners/demo-model.js';

const plan = (hang: object) => ({ face: { width: '1100 mm', height: '800 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, hang });
const facts = (hang: object) => {
  const { model, solution } = demoSolved(plan(hang));
  return { model, solution, all: hangingFacts(model, solution), of: (path: string) => hangingFacts(model, solution).find((f) => f.path === `hanging.${path}`)?.value as number };
};

describe('by wire', () => {
  const inside = { by: 'wire', drop: '200 mm', from: 'inside', hooks: 1, slack: '70 mm' };
  test('tension, inward pull and weight agree with statics on the fact’s own angle', () => {
    const { of, model } = facts(inside);
    const W = model.weight.total_kg * 9.80665;
    const theta = (of('wire_angle_deg') * Math.PI) / 180;
    expect(of('wire_tension_N')).toBeCloseTo(W / (2 * Math.sin(theta)), 6);
    expect(of('inward_pull_N')).toBeCloseTo(W / (2 * Math.tan(theta)), 6);
    const half = (1100 - 2 * 38) / 2;
    expect(Math.tan(theta)).toBeCloseTo(70 / half, 9);
  });
  test('rings in the backs stand farther apart than rings inside', () => {
    const back = hangingState(demoModel(plan({ ...inside, from: 'back' })))!;
    const in_ = hangingState(demoModel(plan(inside)))!;
    expect(back.wire!.ring_span_mm - in_.wire!.ring_span_mm).toBe(38);
    expect(back.lean!.angle_deg).toBeGreaterThan(in_.lean!.angle_deg);
  });
  test('a ring inside is pulled out of the wood, a ring in the back is pulled sideways', () => {
    const in_ = hangingState(demoModel(plan(inside)))!;
    const back = hangingState(demoModel(plan({ ...inside, from: 'back' })))!;
    expect(in_.ring_load!.along_N).toBeCloseTo(in_.forces!.inward_N, 9);
    expect(back.ring_load!.across_N).toBeCloseTo(back.forces!.tension_N, 9);
  });
  test('the wire draws the side bars in farther than the cloth alone', () => {
    const { solution, of } = facts(inside);
    expect(of('inward_bow_mm')).toBeGreaterThan(solution.working.bars.left.inward_bow_mm);
  });
  test('without a wire on the shelf the reason is the shelf, without slack it is the slack', () => {
    const shelf = demoShelf();
    const wireless = { ...shelf, hardware: Object.fromEntries(Object.entries(shelf.hardware).filter(([, one]) => one.kind !== 'wire')) };
    const reason = (hang: object, on = shelf): string | undefined => {
      const { model, solution } = demoSolved(plan(hang), on);
      return hangingFacts(model, solution).find(({ path }) => path === 'hanging.wire_factor')!.reason;
    };
    expect(reason(inside, wireless)).toBe('The shelf has no wire.');
    expect(reason({ ...inside, slack: '0 mm' })).toMatch(/no slack/u);
    expect(reason(inside)).toBeUndefined();
  });
  test('a wire without slack is unknown, with the reason', () => {
    const { all } = facts({ ...inside, slack: '0 mm' });
    for (const path of ['hanging.wire_tension_N', 'hanging.inward_bow_mm', 'hanging.hook_factor', 'hanging.ring_use']) {
      const fact = all.find((f) => f.path === path)!;
      expect(fact.value).toBeNull();
      expect(fact.reason!.length).toBeGreaterThan(20);
    }
  });
  test('much slack lets hook and wire show above the frame', () => {
    expect(facts({ ...inside, drop: '90 mm', slack: '120 mm' }).of('hook_below_top_mm')).toBeLessThan(0);
  });
});

test('what it hangs by is named as what it is, in facts and reasons', () => {
  const by = (hang: object) => facts(hang).all.find(({ path }) => path === 'hanging.held_by')?.value;
  expect([by({ by: 'wire', drop: '100 mm', from: 'back', hooks: 2, slack: '60 mm' }), by({ by: 'two-hooks' }), by({ by: 'd-rings' }), by({ by: 'cleat' })]).toEqual(['ring', 'ring', 'strap', 'strip']);
});

test('two hooks: no wire, no inward pull, half the weight on each', () => {
  const { all, of, model } = facts({ by: 'two-hooks', drop: '100 mm', from: 'back' });
  expect(all.find((f) => f.path === 'hanging.wire_tension_N')).toBeUndefined();
  expect(of('inward_pull_N')).toBe(0);
  expect(Math.abs(of('hook_load_N') / ((model.weight.total_kg * 9.80665) / 2) - 1)).toBeLessThan(0.01);
});

test('a piece that does not hang has no facts about hanging', () => {
  expect(facts({ by: 'none' }).all).toEqual([]);
});

describe('weight', () => {
  test('its parts add up, by hand', () => {
    const model = demoModel({ face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, cloth: { use: 'cotton-duck-340', fixing: { to: 'back', every: '50 mm', turn: '50 mm' } }, ground: { coats: 3 } });
    const { weight } = model;
    expect(weight.wood_kg).toBeCloseTo(420 * 0.038 ** 2 * 2 * (0.862 + 0.562), 6);
    expect(weight.cloth_kg).toBeCloseTo(0.34 * 1.152 * 0.852, 6);
    expect(weight.ground_kg).toBeCloseTo(3 * 0.11 * 0.54, 9);
    expect(weight.paint_kg).toBeCloseTo(0.5 * 0.54, 9);
    expect(weight.hardware_kg).toBeGreaterThan(0.02);
    expect(weight.total_kg).toBeCloseTo(weight.wood_kg + weight.cloth_kg + weight.ground_kg + weight.paint_kg + weight.hardware_kg, 12);
  });
  test('fixed to the edge it takes less cloth', () => {
    const of = (to: string): number => demoModel({ face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, cloth: { fixing: { to } } }).weight.cloth_kg;
    expect(of('edge')).toBeLessThan(of('back'));
  });
  test('more wood weighs exactly that much more', () => {
    const { plan: p } = demoModel(plan({ by: 'wire' }));
    expect(weightParts(p, demoShelf(), 7).total_kg - weightParts(p, demoShelf(), 3).total_kg).toBeCloseTo(4, 12);
  });
});

describe('people and doors', () => {
  test('one person to 11.7 kg, two to twice that; two for what one cannot reach around', () => {
    expect(peopleToLift(11.6, 900, 700)).toBe(1);
    expect(peopleToLift(11.8, 900, 700)).toBe(2);
    expect(peopleToLift(23.5, 900, 700)).toBe(3);
    expect(peopleToLift(5, 2400, 700)).toBe(2);
  });
  test('a frame goes upright through a door when one side passes under its head', () => {
    const door = { width_mm: 760, height_mm: 1980 };
    expect(fitsDoor(2400, 1900, 38, door)).toBe('yes');
    expect(fitsDoor(2400, 2100, 38, door)).toBe('no');
    expect(fitsDoor(2400, 2100, 38, null)).toBe('not-asked');
  });
});

describe('facts of rings and hooks, from the state they are read off', () => {
  test.each([['wire', 'inside', 38], ['two-hooks', 'back', 38], ['d-rings', 'back', 38]])('%s, %s', (by, from) => {
    const { model, of } = facts({ by, from, drop: '190 mm', ...(by === 'wire' ? { slack: '90 mm', hooks: 1 } : {}) });
    const state = hangingState(model)!;
    const { held_by, picked } = state;
    expect(of('ring_exit_mm')).toBeCloseTo(38 - held_by!.thread_length_mm, 9);
    expect(of('ring_use')).toBe(state.ring_use);
    expect(of('hook_load_N')).toBe(state.hook_N);
    expect(of('hook_factor')).toBeCloseTo(picked.hook!.rating_N / state.hook_N!, 9);
    expect(of('lean_deg')).toBe(state.lean!.angle_deg);
    expect(of('top_standoff_mm')).toBe(state.lean!.top_standoff_mm);
    expect(of('hook_below_top_mm')).toBeCloseTo(190 - (state.wire?.rise_mm ?? 0), 9);
    expect(of('in_the_way_count')).toBe(0);
    if (by === 'wire') expect(of('wire_factor')).toBeCloseTo(picked.wire!.rating_N / state.forces!.tension_N, 9);
  });
});
