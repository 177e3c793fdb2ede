/**
 * Closed forms of a rectangle of four bars under a uniform inward pull q, Euler–Bernoulli, units mm, N, MPa:
 * corner moment M = (q/12)(a³/I_a + b³/I_b)/(a/I_a + b/I_b), mid-bow 5 q L⁴/(384 E I) − M L²/(8 E I), axial q L_other/2;
 * one spring of stiffness k per corner: M = (q/24E)(a³/I_a + b³/I_b)/(a/2EI_a + b/2EI_b + 1/k);
 * pull off the axis by e: dish t L_other a²/(16 E I_out), roll t a²/(8 G J) + t a L_other/(4 E I_out), t = q e;
 * one corner lifted by a force P: see `twistStiffness`. The printed numbers were made with an independent beam program.
 * Bars are practically rigid along their length, as the formulas assume.
 */
import { describe, expect, it } from 'vitest';
import { evenGive } from '../../src/base/joint-give.js';
import { solveStatics } from '../../src/solve/analyse-frame.js';
import { eulerBernoulli, prepare, solvePrepared } from '../../src/frame3d/index.js';
import { meshFrame } from '../../src/solve/frame-mesh.js';
import type { FrameShape, Section } from '../../src/model/frame-shape.js';
import { everyBar, everyCorner } from '../frame3d/frame-shapes.js';
import { noteShare } from './recorded.js';

const plain = { shear: false, eccentric: false } as const;

function rectangle(a: number, b: number, section: Section, give = 0, e = 0): FrameShape {
  return {
    span_x_mm: a,
    span_y_mm: b,
    bars: everyBar(section),
    eccentricity_mm: everyBar(e),
    corner_give: everyCorner(evenGive(give)),
    corner_plate_Nmm_per_rad: everyCorner(0),
    crossbars: [],
    braces: [],
  };
}

const E = 10000;
const I = 4.15061e5;
const stiffAlong: Section = { w_mm: 64, d_mm: 19, A_mm2: 1e8, I_plane_mm4: I, I_out_mm4: 36581.3, J_mm4: 118948, E_MPa: E, G_MPa: 600 };
const q = 0.2;

const within = (found: number, expected: number, share: number): void => {
  noteShare(found, expected, share, 'derived');
  expect(Math.abs(found - expected), `${found} for ${expected}`).toBeLessThanOrEqual(share * Math.abs(expected));
};

describe('closed frame in its plane', () => {
  it.each([
    [1000, 1000, 16.6667, 0.125483, 0.125483, 100],
    [1200, 800, 18.6667, 0.491494, -0.102796, 80],
  ])('%d × %d', (a, b, M_Nm, bow_a, bow_b, axial) => {
    const statics = solveStatics(rectangle(a, b, stiffAlong), { x: q, y: q }, [], plain);
    const M = ((q / 12) * (a ** 3 + b ** 3)) / (a + b);
    const bow = (L: number): number => (5 * q * L ** 4) / (384 * E * I) - (M * L * L) / (8 * E * I);
    within(M / 1000, M_Nm, 1e-4);
    within(bow(a), bow_a, 1e-4);
    within(bow(b), bow_b, 1e-4);
    for (const corner of Object.values(statics.corners)) within(corner.moment_Nmm, M, 1e-6);
    within(statics.bars.top.inward_bow_mm, bow_a, 1e-4);
    within(statics.bars.bottom.inward_bow_mm, bow_a, 1e-4);
    within(statics.bars.left.inward_bow_mm, bow_b, a === b ? 1e-4 : 0.02);
    const middle = statics.bars.left.bow_line.find((p) => p.s === 0.5)!;
    within(middle.inward_mm, bow_b, 1e-4);
    within(statics.bars.top.axial_N, -axial, 1e-6);
    within(statics.bars.right.axial_N, (-q * a) / 2, 1e-6);
  });

  it('a bar that bows outward reports its largest departure, not that at the middle', () => {
    const bar = solveStatics(rectangle(1200, 800, stiffAlong), { x: q, y: q }, [], plain).bars.left;
    const largest = Math.max(...bar.bow_line.map((p) => Math.abs(p.inward_mm)));
    expect(Math.abs(bar.inward_bow_mm)).toBeGreaterThanOrEqual(largest);
  });

  it.each([
    [500, 1.79188, 0.573453],
    [2000, 5.41951, 0.464203],
    [8000, 10.9734, 0.296943],
  ])('corners of %d N·m/rad', (k_Nm, M_Nm, bow_mm) => {
    const a = 1000;
    const give = (E * I) / (2 * k_Nm * 1000) / stiffAlong.w_mm;
    const statics = solveStatics(rectangle(a, a, stiffAlong, give), { x: q, y: q }, [], plain);
    const M = ((q / (24 * E)) * ((2 * a ** 3) / I)) / (a / (E * I) + 1 / (k_Nm * 1000));
    within(M / 1000, M_Nm, 1e-4);
    within(statics.corners['top-right'].moment_Nmm, M, 1e-6);
    within(statics.bars.left.inward_bow_mm, bow_mm, 1e-4);
    const spans = solveStatics(rectangle(a, a, stiffAlong), { x: q, y: q }, [], plain).corners['top-right'].moment_Nmm;
    within(M / spans, 1 / (1 + (E * I) / (k_Nm * 1000 * a)), 1e-6);
  });

  it('one crossbar across the middle of the long bars', () => {
    const [a, b] = [1200, 800];
    const shape: FrameShape = {
      ...rectangle(a, b, stiffAlong),
      crossbars: [{ name: 'crossbar-1', runs: 'upright', at: 0.5, section: stiffAlong, give: evenGive(0) }],
    };
    const statics = solveStatics(shape, { x: q, y: q }, [], plain);
    const h = a / 2;
    const M = (q * (h ** 3 + 2 * b ** 3)) / (12 * (h + 2 * b));
    within(statics.corners['bottom-left'].moment_Nmm, M, 1e-6);
    within(M / 1000, 9.39394, 1e-5);
    within(-statics.crossbars[0]!.axial_N, 2 * ((5 * q * h) / 8 - (3 * M) / (2 * h)), 1e-6);
    within(-statics.crossbars[0]!.axial_N, 103.03, 1e-4);
    const bow_b = (5 * q * b ** 4) / (384 * E * I) - (M * b * b) / (8 * E * I);
    within(bow_b, 0.0759289, 1e-4);
    within(statics.bars.left.bow_line.find((p) => p.s === 0.5)!.inward_mm, bow_b, 1e-6);
    within(statics.bars.top.bow_line.find((p) => p.s === 0.25)!.inward_mm, 0.0070636, 1e-3);
  });
});

describe('pull in front of the centre line', () => {
  const [e, G, Io, J] = [19, 600, 1.73761e5, 2.93122e5];
  const section: Section = { w_mm: 38, d_mm: 38, A_mm2: 1444, I_plane_mm4: Io, I_out_mm4: Io, J_mm4: J, E_MPa: E, G_MPa: G };
  it.each([
    [1000, 1000, 0.136682, 0.136682, 0.00324753, 0.00324753],
    [1200, 800, 0.157457, 0.104972, 0.00441402, 0.00225337],
  ])('%d × %d dishes backwards and rolls inwards', (a, b, dish_a, dish_b, roll_a, roll_b) => {
    const { bars, dish_mm } = solveStatics(rectangle(a, b, section, 0, e), { x: q, y: q }, [], { shear: false });
    const t = q * e;
    within((t * b * a * a) / (16 * E * Io), dish_a, 1e-4);
    within((t * a * a) / (8 * G * J) + (t * a * b) / (4 * E * Io), roll_a, 1e-4);
    for (const bar of [bars.top, bars.bottom]) {
      within(bar.dish_mm, -dish_a, 1e-4);
      within(bar.roll_mrad, 1000 * roll_a, 1e-4);
    }
    for (const bar of [bars.left, bars.right]) {
      within(bar.dish_mm, -dish_b, 1e-4);
      within(bar.roll_mrad, 1000 * roll_b, 1e-4);
    }
    within(dish_mm, -Math.max(dish_a, dish_b), 1e-4);
  });
});

/** Lift of one corner per newton with the other three held: P = (12EI/a²)(2w₀/a − s_a) + (12EI/b²)(2w₀/b − s_b), w₀ = δ/4. */
function twistStiffness(a: number, b: number, EI: number, GJ: number): number {
  const w0 = 0.25;
  const slope = (p: number, r: number): number => (12 * EI * w0) / (p * p) / ((6 * EI) / p + (2 * GJ) / r);
  return ((12 * EI) / a ** 2) * ((2 * w0) / a - slope(a, b)) + ((12 * EI) / b ** 2) * ((2 * w0) / b - slope(b, a));
}

describe('one corner lifted, the other three held', () => {
  it.each([
    [1000, 1000, 3.73072],
    [1200, 800, 3.43612],
  ])('%d × %d', (a, b, lift_mm_per_N) => {
    const shape = rectangle(a, b, { ...stiffAlong, I_out_mm4: 36581.3, J_mm4: 118948 });
    const mesh = meshFrame(shape, [], { bar: 4, crossbar: 2, brace: 2 }, eulerBernoulli);
    const preparation = prepare(mesh.structure, eulerBernoulli);
    if (!preparation.stable) throw new Error('unstable');
    const corner = mesh.corners['top-right'];
    const { u } = solvePrepared(preparation.prepared, { nodes: [{ node: corner, force: [0, 0, 1], moment: [0, 0, 0] }], members: [] });
    within(u[6 * corner + 2]!, 1 / twistStiffness(a, b, E * 36581.3, 600 * 118948), 1e-6);
    within(u[6 * corner + 2]!, lift_mm_per_N, 1e-4);
  });
});
