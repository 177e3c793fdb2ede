import { describe, expect, test } from 'vitest';
import { clampPressure_MPa, clampsFor } from '../../src/mechanics/glue/clamping.js';
import { glueAmount_ml } from '../../src/mechanics/glue/glue-amount.js';
import { glueFacts } from '../facts/of-subject.js';
import { glueSheet } from '../../src/mechanics/glue/glue-sheet.js';
import { orderOfWork } from '../../src/order-of-work/order-of-work.js';
import { cautionsById } from '../../src/findings/cautions.js';
import { demoModel } from './fasteners/demo-model.js';

const pair = { face: { width: '1000 mm', height: '800 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue+screws', pairing: 'opposed' }, corners: { cut: 'mitre', glue: 'pva', nails: { use: 'brad-18ga-25', each: 1 }, brace: { kind: 'timber', leg: '200 mm', stock: 'strip-19x38' } }, hang: { by: 'wire' } };

describe('glue', () => {
  test('amount is area times spread over density, end grain twice', () => {
    const glue = { spread_g_per_m2: 220, density_g_per_ml: 1.1 };
    expect(glueAmount_ml([{ what: 'plies', count: 2, area_mm2: 50_000, end_grain: false }], glue)).toBeCloseTo(20, 9);
    expect(glueAmount_ml([{ what: 'corners', count: 1, area_mm2: 50_000, end_grain: true }], glue)).toBeCloseTo(20, 9);
  });
  test('of a whole plan, by hand: plies, mitres, brace ends', () => {
    const model = demoModel(pair);
    const mm2 = 2 * (1000 + 800) * 38 + 2 * 4 * 38 * Math.SQRT2 * 38 + 2 * 8 * 38 * Math.SQRT2 * 19;
    expect(glueFacts(model)[0]!.value).toBeCloseTo(((mm2 / 1e6) * 200) / 1.1, 6);
  });
  test('clamps 8 to 12 in apart, 1-1/2 to 2 in from the ends (gluing guide)', () => {
    for (const length of [420, 700, 1000, 1777, 2400]) {
      const n = clampsFor(length);
      const pitch = (length - 2 * 44.45) / (n - 1);
      expect(pitch).toBeLessThanOrEqual(12 * 25.4);
      expect((length - 2 * 44.45) / Math.max(1, n - 2)).toBeGreaterThan(10 * 25.4 - 1e-6);
    }
    expect(clampsFor(60)).toBe(1);
  });
  test('pressure by density: 0.69 to 1.03 MPa in softwood, 1.38 to 2.07 in dense wood (gluing guide)', () => {
    expect(clampPressure_MPa(0.42).low).toBeCloseTo(0.689, 3);
    expect(clampPressure_MPa(0.42).high).toBeCloseTo(1.034, 3);
    expect(clampPressure_MPa(0.7).high).toBeCloseTo(2.068, 3);
  });
  test('large frames wait overnight, small ones three hours (practice); a cold room is told', () => {
    expect(glueSheet(demoModel(pair))!.handle_h).toBe(12);
    expect(glueSheet(demoModel({ ...pair, face: { width: '600 mm', height: '500 mm' }, corners: { glue: 'pva' } }))!.handle_h).toBe(3);
    expect(glueSheet(demoModel({ ...pair, room: { temperature: '6 C' } }))!.warm_enough).toBe(false);
    expect(glueSheet(demoModel(pair))!.warm_enough).toBe(true);
  });
  test('nothing glued: no glue, no clamps', () => {
    expect(glueFacts(demoModel({ face: { width: '600 mm', height: '500 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, corners: { glue: 'none' } })).map((f) => f.value)).toEqual([0, 0]);
  });
});

describe('order of work', () => {
  const ids = (plan: object): readonly string[] => orderOfWork(demoModel(plan)).map((step) => step.id);
  test('the whole of it, in order', () => {
    expect(ids({ ...pair, crossbars: [{ runs: 'upright', at: '1/2', stock: 'strip-19x38', lay: 'edge' }] })).toEqual([
      'sort', 'rough-cut', 'plies', 'edge', 'trial', 'cut', 'dry-fit', 'glue-corners', 'nail-corners', 'set-corners', 'crossbars', 'braces', 'cure', 'square', 'threads', 'stretch', 'second-round', 'corners', 'trim', 'ground', 'rest',
      'dust-cover', 'hang', 'when-slack',
    ]);
  });
  test('only from parts the plan has', () => {
    expect(ids({ face: { width: '600 mm', height: '500 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, corners: { glue: 'pva', nails: 'none' }, ground: { coats: 0 }, hang: { by: 'none' } })).toEqual([
      'sort', 'edge', 'trial', 'cut', 'dry-fit', 'glue-corners', 'set-corners', 'square', 'threads', 'stretch', 'second-round', 'corners', 'trim', 'rest', 'dust-cover', 'when-slack',
    ]);
  });
  test('every caution is one the report can print, and no wait is negative', () => {
    for (const step of orderOfWork(demoModel(pair))) {
      for (const id of step.cautions) expect(cautionsById.has(id), id).toBe(true);
      if (step.wait_h !== null) expect(step.wait_h).toBeGreaterThanOrEqual(0);
    }
  });
  test('an hour in clamps before nailing, eleven more for a large frame (practice)', () => {
    const steps = orderOfWork(demoModel(pair));
    expect(steps.find((step) => step.id === 'glue-corners')!.wait_h).toBe(1);
    expect(steps.find((step) => step.id === 'set-corners')!.wait_h).toBe(11);
  });
  test('an inch plan is told in inches', () => {
    const words = orderOfWork(demoModel({ ...pair, face: { width: '31-1/2 in', height: '23-5/8 in' } })).map((step) => step.text).join(' ');
    expect(words).toContain('39-3/8 in');
    expect(words).not.toMatch(/\d mm/);
  });
});
