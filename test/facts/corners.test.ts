import { describe, expect, test } from 'vitest';
import { catalogue } from '../../src/facts/catalogue.js';
import { cornerFacts } from './of-subject.js';
import { braceMoment_Nmm } from '../../src/mechanics/corners/brace-capacity.js';
import { bareCornerMoment_Nmm, mitreDemand } from '../../src/mechanics/corners/corner-demand.js';
import { cornerUse } from '../../src/mechanics/corners/corner-use.js';
import { bondUse, buttStress, halfLapStress, mitreStress, rectangleTwistStress_MPa } from '../../src/mechanics/corners/glued-face.js';
import { nailedUse, NOTHING_HOLDS } from '../../src/mechanics/corners/nailed-corner.js';
import { demoModel, demoSolved } from '../mechanics/fasteners/demo-model.js';

const value = (facts: ReturnType<typeof cornerFacts>, path: string, about = 'top-left'): number | string | null => facts.find((f) => f.path === path && f.about === about)!.value;
const none = { moment_Nmm: 0, plate_moment_Nmm: 0, out_moment_Nmm: 0, torque_Nmm: 0, axial_N: 0, shear_N: 0 };

describe('demand on a mitre', () => {
  test('the cloth presses a mitre shut: equal pulls leave pure pressure, unequal ones slide it', () => {
    expect(mitreDemand({ ...none, axial_N: -80, shear_N: 80 })).toMatchObject({ normal_N: -160 / Math.SQRT2, sliding_N: 0 });
    const d = mitreDemand({ ...none, axial_N: -80, shear_N: 50 });
    expect(d.normal_N).toBeCloseTo(-130 / Math.SQRT2, 9);
    expect(d.sliding_N).toBeCloseTo(30 / Math.SQRT2, 9);
    expect(Math.hypot(d.normal_N, d.sliding_N)).toBeCloseTo(Math.hypot(80, 50), 9);
  });
  test('behind a brace the bar ends pull on the corner: then the mitre is drawn open', () => {
    expect(mitreDemand({ ...none, axial_N: 120, shear_N: 120 })).toMatchObject({ normal_N: 240 / Math.SQRT2, sliding_N: 0 });
    expect(buttStress({ ...none, axial_N: 60, shear_N: 90 }, 30, 20).normal_MPa).toBeCloseTo(90 / 600, 12);
  });
  test('out-of-plane moment and torque keep their length when turned into the face', () => {
    const d = mitreDemand({ ...none, out_moment_Nmm: 300, torque_Nmm: -410 });
    expect(Math.hypot(d.out_Nmm, d.twist_Nmm)).toBeCloseTo(Math.hypot(300, 410), 9);
  });
  test('bare corner moment of a square of equal bars is q L²/12', () => {
    const { shape } = demoModel({ face: { width: '838 mm', height: '838 mm' }, bars: { stock: 'square-38x38', lay: 'flat' } });
    expect(bareCornerMoment_Nmm(shape, { x: 0.3, y: 0.3 })).toBeCloseTo((0.3 * 800 ** 2) / 12, 6);
  });
});

describe('stress on a glued face', () => {
  test('mitre: M over the modulus of a face w√2 long and d deep', () => {
    expect(mitreStress({ ...none, moment_Nmm: 5000 }, 38, 19).normal_MPa).toBeCloseTo((6 * 5000) / (19 * 2 * 38 ** 2), 9);
  });
  test('butt: half the modulus of the mitre, so twice the stress', () => {
    const one = { ...none, moment_Nmm: 5000 };
    expect(buttStress(one, 38, 19).normal_MPa / mitreStress(one, 38, 19).normal_MPa).toBeCloseTo(2, 9);
  });
  test('half-lap: a square face turned in its own plane, by integrating r over the square', () => {
    const w = 31;
    const n = 400;
    let polar = 0;
    for (let i = 0; i < n; i += 1) for (let j = 0; j < n; j += 1) polar += (((i + 0.5) / n - 0.5) ** 2 + ((j + 0.5) / n - 0.5) ** 2) * w ** 2 * (w / n) ** 2;
    const expected = (7000 * (w / Math.SQRT2)) / polar;
    expect(Math.abs(halfLapStress({ ...none, moment_Nmm: 7000 }, w).shear_MPa / expected - 1)).toBeLessThan(1e-4);
  });
  test('twist of a rectangle against the Saint-Venant series: within 4 %', () => {
    for (const [p, q] of [[30, 30], [53.7, 19], [60, 12]] as const) {
      const sum = (f: (n: number) => number): number => Array.from({ length: 60 }, (_, i) => f(2 * i + 1)).reduce((a, b) => a + b, 0);
      const J = p * q ** 3 * (1 / 3 - (64 / Math.PI ** 5) * (q / p) * sum((n) => Math.tanh((n * Math.PI * p) / (2 * q)) / n ** 5));
      const tau = (1 / J) * q * (1 - (8 / Math.PI ** 2) * sum((n) => 1 / (n ** 2 * Math.cosh((n * Math.PI * p) / (2 * q)))));
      expect(Math.abs(rectangleTwistStress_MPa(1, p, q) / tau - 1)).toBeLessThan(0.04);
    }
  });
  test('pressing does not use the bond; pulling and sliding combine', () => {
    expect(bondUse({ normal_MPa: -5, shear_MPa: 0.5 }, 2)).toBe(0.25);
    expect(bondUse({ normal_MPa: 0.8, shear_MPa: 0.6 }, 2)).toBeCloseTo(0.5, 12);
  });
});

describe('nails alone', () => {
  const joint = { cut: 'mitre' as const, w_mm: 38, d_mm: 19, each: 2, lateral_N: 30, place_mm: 12 };
  test('a mitre turns about its inner end', () => {
    expect(nailedUse(joint, { ...none, moment_Nmm: 2 * 30 * 26 })).toBeCloseTo(1, 9);
  });
  test('a nail in end grain does not hold a butt joint, nor one nail a half-lap', () => {
    expect(nailedUse({ ...joint, cut: 'butt' }, { ...none, moment_Nmm: 1 })).toBe(NOTHING_HOLDS);
    expect(nailedUse({ ...joint, cut: 'half-lap', each: 1 }, { ...none, moment_Nmm: 100 })).toBe(NOTHING_HOLDS);
  });
});

describe('corners of practice frames', () => {
  const small = { face: { width: '450 mm', height: '350 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' } };
  const metre = { face: { width: '1000 mm', height: '1000 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { cut: 'mitre', glue: 'pva', brace: { kind: 'timber', leg: '250 mm', stock: 'strip-19x38', lay: 'flat' } } };
  const facts = (plan: object) => {
    const { model, solution } = demoSolved(plan);
    return cornerFacts(model, solution);
  };

  test('four corners, all facts of each, all finite', () => {
    const all = facts(small);
    expect(all).toHaveLength(4 * catalogue.filter(({ each }) => each === 'corner').length);
    for (const f of all) if (typeof f.value === 'number') expect(Number.isFinite(f.value)).toBe(true);
  });
  test('a small glued mitre and a braced metre square hold at peak (practice)', () => {
    expect(value(facts(small), 'corner.use_normal')).toBeLessThan(0.5);
    expect(value(facts(metre), 'corner.use_normal')).toBeLessThan(0.5);
  });
  test('the small mitre by hand: moment, face and eccentric torque give the same use within 10 %', () => {
    const { model, solution } = demoSolved(small);
    const c = solution.peak.corners['top-left'];
    const [w, d] = [38, 19];
    const normal = (6 * Math.abs(c.moment_Nmm)) / (d * 2 * w ** 2) + (6 * (Math.abs(c.out_moment_Nmm) + Math.abs(c.torque_Nmm))) / (2 * w * d ** 2) + (c.axial_N - c.shear_N) / (2 * w * d);
    expect(Math.abs((value(cornerFacts(model, solution), 'corner.use_normal') as number) / (normal / 2) - 1)).toBeLessThan(0.1);
    const bare = bareCornerMoment_Nmm(model.shape, model.peak);
    expect(Math.abs(c.moment_Nmm)).toBeGreaterThan(0.2 * bare);
    expect(Math.abs(c.moment_Nmm)).toBeLessThan(bare);
  });
  test('worse build-ups use more: glued and nailed, butt, nailed only, nothing', () => {
    const use = (corners: object): number => value(facts({ ...small, corners }), 'corner.use_normal') as number;
    const mitre = use({ cut: 'mitre', glue: 'pva' });
    const butt = use({ cut: 'butt', glue: 'pva' });
    const nailed = use({ cut: 'mitre', glue: 'none', nails: { use: 'brad-18ga-25', each: 1 } });
    expect(butt).toBeGreaterThan(mitre);
    expect(nailed).toBeGreaterThan(1);
    expect(use({ cut: 'mitre', glue: 'none', nails: 'none' })).toBe(NOTHING_HOLDS);
    expect(value(facts({ ...small, corners: { cut: 'mitre', glue: 'none', nails: 'none' } }), 'corner.governs')).toBe('nothing');
    expect(value(facts({ ...small, corners: { cut: 'mitre', glue: 'none', nails: { use: 'brad-18ga-25', each: 1 } } }), 'corner.governs')).toBe('nails');
  });
  test('every brace carries more than the bare glued mitre at the same size', () => {
    const bare = { ...metre, corners: { cut: 'mitre', glue: 'pva' } };
    const without = value(facts(bare), 'corner.use_normal') as number;
    for (const brace of [{ kind: 'timber', leg: '250 mm', stock: 'strip-19x38' }, { kind: 'ply-gusset', leg: '200 mm' }, { kind: 'steel-angle', leg: '150 mm' }]) {
      expect(value(facts({ ...metre, corners: { cut: 'mitre', glue: 'pva', brace } }), 'corner.use_normal')).toBeLessThanOrEqual(without);
    }
  });
  test('more pull uses more; a longer brace carries more', () => {
    const { model, solution } = demoSolved(metre);
    const c = solution.peak.corners['top-right'];
    const twice = { ...c, moment_Nmm: 2 * c.moment_Nmm, out_moment_Nmm: 2 * c.out_moment_Nmm, torque_Nmm: 2 * c.torque_Nmm, axial_N: 2 * c.axial_N, shear_N: 2 * c.shear_N };
    const pull = { x: 2 * model.peak.x, y: 2 * model.peak.y };
    expect(cornerUse(model, twice, pull, 1).use).toBeGreaterThan(cornerUse(model, c, model.peak, 1).use);
    const longer = demoModel({ ...metre, corners: { ...metre.corners, brace: { ...metre.corners.brace, leg: '320 mm' } } });
    expect(braceMoment_Nmm(longer, 1) / braceMoment_Nmm(model, 1)).toBeCloseTo(320 / 250, 9);
  });
});
