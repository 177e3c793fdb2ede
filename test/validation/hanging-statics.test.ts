/**
 * Statics of a hanging picture, computed rows of test/data/hanging.yaml: wire tension and inward pull by angle and by sag, lean on the wall.
 * SI units; tolerances as given with each row (1e-5 to 1e-3, from its printed digits). Two hooks are checked by balance of forces.
 */
import { describe, expect, test } from 'vitest';
import { lean } from '../../src/mechanics/hanging/lean.js';
import { wireForces } from '../../src/mechanics/hanging/wire-forces.js';
import { wireGeometry } from '../../src/mechanics/hanging/wire-geometry.js';
import { expectDecimals } from './recorded.js';
import { near, workedCase } from './reference-rows.js';

describe('wire', () => {
  for (const angle of [10, 15, 30, 45, 60]) {
    test(`tension and inward pull at ${angle} degrees`, () => {
      const c = workedCase(`wire-tension-${angle}deg`);
      const got = wireForces(1, c.inputs['theta_deg']!, 1);
      expect(near(got.tension_N, c.expected['T_over_W']!, c.rel)).toBe(true);
      expect(near(got.inward_N, c.expected['H_over_W']!, c.rel)).toBe(true);
    });
  }
  test('angle and tension from the sag', () => {
    const c = workedCase('wire-sag-angle');
    const angle = wireGeometry(1000 * c.inputs['span_m']!, 1000 * c.inputs['sag_m']!, 1)!.angle_deg;
    expect(near(angle, c.expected['theta_deg']!, c.rel)).toBe(true);
    expect(near(wireForces(1, angle, 1).tension_N, c.expected['T_over_W']!, c.rel)).toBe(true);
  });
  test('one hook: the two halves of the wire have its length', () => {
    const g = wireGeometry(840, 46, 1)!;
    expectDecimals(g.rise_mm, 46, 9, 'derived');
    expectDecimals(g.wire_mm, 2 * Math.hypot(420, 46), 9, 'derived');
  });
  test('two hooks: two slants and the level middle have its length, and forces balance at ring and hook', () => {
    const g = wireGeometry(840, 46, 2)!;
    const run = (840 - g.hooks_apart_mm) / 2;
    expectDecimals(2 * Math.hypot(run, g.rise_mm) + g.hooks_apart_mm, 2 * Math.hypot(420, 46), 9, 'derived');
    const f = wireForces(73, g.angle_deg, 2);
    const theta = (g.angle_deg * Math.PI) / 180;
    expectDecimals(2 * f.tension_N * Math.sin(theta), 73, 9, 'derived');
    expectDecimals(f.tension_N * Math.cos(theta), f.inward_N, 9, 'derived');
    const hook = Math.hypot(f.tension_N * Math.sin(theta), f.tension_N * (1 - Math.cos(theta)));
    expectDecimals(f.hook_N, hook, 9, 'derived');
  });
  test('the same slack stands steeper on two hooks, so it pulls less', () => {
    expect(wireGeometry(840, 46, 2)!.angle_deg).toBeGreaterThan(wireGeometry(840, 46, 1)!.angle_deg);
  });
  test('without slack or room there is no shape', () => {
    expect(wireGeometry(840, 0, 1)).toBeNull();
    expect(wireGeometry(0, 20, 1)).toBeNull();
  });
});

test('lean from the wall, top stand-off and hook pull-out', () => {
  const { inputs: i, expected, rel } = workedCase('lean-out');
  const got = lean({
    height_mm: 1000 * i['H_m']!,
    rings_below_top_mm: 1000 * i['c_below_top_m']!,
    rise_mm: 1000 * i['apex_above_rings_m']!,
    standoff_mm: 1000 * i['hook_standoff_m']!,
    out_mm: 0,
    cg_mm: 1000 * i['cg_front_of_back_plane_m']!,
    weight_N: i['W_N']!,
  })!;
  expect(near(got.angle_deg, expected['alpha_deg']!, rel)).toBe(true);
  expect(near(got.top_standoff_mm, expected['top_standoff_mm']!, rel)).toBe(true);
  expect(near(got.pull_out_N, expected['pull_out_N']!, rel)).toBe(true);
});
