import { describe, expect, test } from 'vitest';
import { GRAVITY_N_PER_KG } from '../../../src/base/gravity.js';
import { hangingFacts } from '../../facts/of-subject.js';
import { needsOf } from '../../../src/cost/needs.js';
import { CLEAT_LONG_MM, CLEAT_SCREWS, cleatPlaces } from '../../../src/mechanics/hanging/cleat.js';
import { hangingForces } from '../../../src/mechanics/hanging/hanging-forces.js';
import { hangingState } from '../../../src/mechanics/hanging/hanging-state.js';
import { orderOfWork } from '../../../src/order-of-work/order-of-work.js';
import { demoModel, demoSolved } from '../fasteners/demo-model.js';

const plan = (by: string, more: object = {}) => ({ face: { width: '1130 mm', height: '790 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, hang: { by }, ...more });
const upright = { crossbars: [{ runs: 'upright', at: '1/2', stock: 'strip-19x38', lay: 'edge' }] };

describe('by strap hangers', () => {
  test('two straps on the backs, no wire, half the weight on each', () => {
    const model = demoModel(plan('d-rings'));
    const state = hangingState(model)!;
    expect(model.plan.hang.from).toBe('back');
    expect(state).toMatchObject({ by: 'd-rings', wire: null, forces: null, hook_pieces: 2 });
    expect(state.picked.ring?.kind).toBe('strap');
    expect(state.ring_load!.across_N).toBeCloseTo((model.weight.total_kg * GRAVITY_N_PER_KG) / 2, 9);
    expect(hangingForces(model)).toEqual([]);
    expect(needsOf(model).filter(({ used_for }) => used_for.includes('hanging')).map(({ name, amount }) => [name.slice(0, 5), amount])).toEqual([['Strap', 2], ['Wall ', 2]]);
  });
});

describe('by a cleat', () => {
  test('one pair in the middle where it is free, one to each hand of a crossbar that reaches the back, and told where nothing fits', () => {
    expect(cleatPlaces(demoModel(plan('cleat')))).toMatchObject({ middles_mm: [565], meets: [] });
    const [left, right] = cleatPlaces(demoModel(plan('cleat', upright))).middles_mm as [number, number];
    expect(left + right).toBeCloseTo(1130, 9);
    expect(565 - left - CLEAT_LONG_MM / 2 - 19 / 2).toBeGreaterThanOrEqual(10);
    expect(cleatPlaces(demoModel({ ...plan('cleat', upright), face: { width: '540 mm', height: '430 mm' } })).meets).toEqual([{ kind: 'whole-crossbar', of: 'crossbar-1' }]);
  });

  test('the weight and what tips it forward are shared among its screws; nothing is drawn inward; it lies flat', () => {
    const { model, solution } = demoSolved(plan('cleat', upright));
    const state = hangingState(model)!;
    const W = model.weight.total_kg * GRAVITY_N_PER_KG;
    const pull = state.lean!.pull_out_N;
    expect(state.lean!.angle_deg).toBe(0);
    expect(state.ring_load!.across_N).toBeCloseTo(Math.hypot(W, pull) / (2 * CLEAT_SCREWS), 9);
    expect(hangingForces(model)).toEqual([]);
    const facts = hangingFacts(model, solution);
    for (const { path, value, reason } of facts) expect([path, value, reason]).not.toEqual([path, null, reason]);
    expect(facts.find(({ path }) => path === 'hanging.inward_pull_N')!.value).toBe(0);
    expect(needsOf(model).filter(({ used_for }) => used_for.includes('hanging')).map(({ amount }) => amount)).toEqual([2]);
  });
});

test('the last step says how: wire, hooks, straps, strips', () => {
  const last = (by: string): string => orderOfWork(demoModel(plan(by))).find(({ id }) => id === 'hang')?.text ?? '';
  expect([last('wire').includes('knot the wire'), last('two-hooks').includes('two hooks'), last('d-rings').includes('strap hanger'), last('cleat').includes('bevel'), last('none')]).toEqual([true, true, true, true, '']);
});

test('strips stand on whole marks of the tape, whatever the middle of the face is', () => {
  const marks = (face: object) => cleatPlaces(demoModel({ ...plan('cleat'), face })).middles_mm;
  for (const [mm] of [marks({ width: '33-9/16 in', height: '30 in' }), marks({ width: '41-7/16 in', height: '20 in' })]) expect((mm! / 25.4) * 16 % 1).toBeCloseTo(0, 9);
  expect(marks({ width: '33-9/16 in', height: '30 in' })[0]! / 25.4).toBeCloseTo(16.8125, 9);
  expect(marks({ width: '900.6 mm', height: '700 mm' })).toEqual([450.5]);
});
