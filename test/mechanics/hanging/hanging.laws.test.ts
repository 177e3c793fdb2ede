import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lean } from '../../../src/mechanics/hanging/lean.js';
import { pickRated, pickRing } from '../../../src/mechanics/hanging/pick-hardware.js';
import { ringUse } from '../../../src/mechanics/hanging/ring.js';
import { wireForces } from '../../../src/mechanics/hanging/wire-forces.js';
import { wireGeometry } from '../../../src/mechanics/hanging/wire-geometry.js';
import { peopleToLift } from '../../../src/mechanics/lifting.js';
import { hangingForces } from '../../../src/mechanics/hanging/hanging-forces.js';
import { demoModel, demoShelf } from '../fasteners/demo-model.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const hooks = fc.constantFrom(1, 2);

test('more slack never raises the tension or the inward pull', () => {
  fc.assert(
    fc.property(between(200, 3000), between(1, 300), between(0, 300), between(5, 600), hooks, (span, slack, more, W, n) => {
      const less = wireForces(W, wireGeometry(span, slack, n)!.angle_deg, n);
      const deeper = wireForces(W, wireGeometry(span, slack + more, n)!.angle_deg, n);
      expect(deeper.tension_N).toBeLessThanOrEqual(less.tension_N * (1 + 1e-12));
      expect(deeper.inward_N).toBeLessThanOrEqual(less.inward_N * (1 + 1e-12));
    }),
  );
});

test('each ring carries half the weight, whatever the hooks', () => {
  fc.assert(
    fc.property(between(200, 3000), between(1, 300), between(5, 600), hooks, (span, slack, W, n) => {
      const { tension_N, lift_N, inward_N } = wireForces(W, wireGeometry(span, slack, n)!.angle_deg, n);
      expect(Math.hypot(lift_N, inward_N)).toBeCloseTo(tension_N, 6);
      expect(lift_N).toBe(W / 2);
    }),
  );
});

test('a heavier piece never clears what a lighter one failed: hooks, wire, rings', () => {
  const shelf = demoShelf();
  fc.assert(
    fc.property(between(1, 800), between(1, 3), between(0.1, 2.5), between(10, 60), between(1.2, 6), (load, heavier, ratio, wood, limit) => {
      for (const kind of ['hook', 'wire'] as const) {
        const factor = (N: number): number => pickRated(shelf, kind, N, 2)!.rating_N / N;
        if (factor(load) < Math.min(limit, 4)) expect(factor(load * heavier)).toBeLessThan(Math.min(limit, 4));
      }
      const use = (N: number): number => {
        const at = { along_N: N * ratio, across_N: N };
        return ringUse(pickRing(shelf, at, 0.42, wood)!, at, 0.42, wood);
      };
      if (use(load) > 1) expect(use(load * heavier)).toBeGreaterThan(1);
    }),
  );
});

test('a ring longer in the thread never carries more of its strength', () => {
  const ring = demoShelf().hardware['ring-screw-medium']!;
  fc.assert(
    fc.property(between(1, 200), between(1, 200), between(6, 40), between(0, 30), (along_N, across_N, thread, more) => {
      const use = (thread_length_mm: number): number => ringUse({ ...ring, thread_length_mm }, { along_N, across_N }, 0.42, 90);
      expect(use(thread + more)).toBeLessThanOrEqual(use(thread) * (1 + 1e-12));
    }),
  );
});

test('a hook that stands farther off the wall never leans the picture less', () => {
  fc.assert(
    fc.property(between(300, 2500), between(0, 0.5), between(0, 30), between(0, 20), between(5, 500), (H, drop, standoff, more, W) => {
      const at = (mm: number) => lean({ height_mm: H, rings_below_top_mm: drop * H, rise_mm: 40, standoff_mm: mm, out_mm: 0, cg_mm: 15, weight_N: W })!;
      expect(at(standoff + more).angle_deg).toBeGreaterThanOrEqual(at(standoff).angle_deg);
      expect(at(standoff).pull_out_N).toBeGreaterThanOrEqual(0);
      const out = lean({ height_mm: H, rings_below_top_mm: drop * H, rise_mm: 40, standoff_mm: standoff, out_mm: more, cg_mm: 15, weight_N: W })!;
      expect(out.angle_deg).toBeLessThanOrEqual(at(standoff).angle_deg);
      expect(out.pull_out_N).toBeGreaterThanOrEqual(at(standoff).pull_out_N * (1 - 1e-12));
    }),
  );
});

test('a heavier or larger piece never takes fewer people', () => {
  fc.assert(
    fc.property(between(0.5, 80), between(0, 40), between(200, 3000), between(200, 3000), between(0, 800), (kg, more, w, h, larger) => {
      expect(peopleToLift(kg + more, w, h)).toBeGreaterThanOrEqual(peopleToLift(kg, w, h));
      expect(peopleToLift(kg, w + larger, h)).toBeGreaterThanOrEqual(peopleToLift(kg, w, h));
    }),
  );
});

test('the forces of a hanging frame balance', () => {
  fc.assert(
    fc.property(fc.integer({ min: 400, max: 1600 }), fc.integer({ min: 400, max: 1600 }), fc.integer({ min: 10, max: 120 }), hooks, fc.constantFrom('inside', 'back'), (w, h, slack, n, from) => {
      const model = demoModel({ face: { width: `${w} mm`, height: `${h} mm` }, bars: { stock: 'square-38x38', lay: 'flat' }, cloth: { roll: '2100 mm' }, hang: { by: 'wire', drop: '110 mm', slack: `${slack} mm`, hooks: n, from } });
      const forces = hangingForces(model);
      expect(forces.reduce((sum, f) => sum + f.Fx, 0)).toBeCloseTo(0, 9);
      expect(forces.reduce((sum, f) => sum + f.Fy, 0)).toBeCloseTo(0, 9);
      expect(forces.find((f) => f.bar === 'left')!.Fx).toBeGreaterThan(0);
    }),
    { numRuns: 25 },
  );
});
