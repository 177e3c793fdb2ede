import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { membraneNote_Hz, pullFromNote_N_per_m } from '../../../src/mechanics/cloth/membrane-note.js';
import { pullFromPush_N_per_m, pushSag_mm } from '../../../src/mechanics/cloth/push-test.js';
import type { ClothSpan } from '../../../src/fit/span.js';
import { pullFromTap, tapBand } from '../../../src/mechanics/cloth/tap-note.js';
import { measureSag } from '../../../src/measure/measure-sag.js';
import { twistRate_deg_per_m } from '../../../src/measure/measure-twist.js';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const span: fc.Arbitrary<ClothSpan> = fc.record({ width_mm: between(200, 3000), height_mm: between(200, 3000) });
const pull = between(20, 1200);
const ratio = between(0.3, 3);
const same = (actual: number, wanted: number, rel = 1e-9): void => expect(Math.abs(actual / wanted - 1)).toBeLessThan(rel);

describe('reading and expecting are each other’s inverse', () => {
  test('note ↔ pull, any ratio of the two pulls', () => {
    fc.assert(fc.property(span, pull, ratio, between(0.1, 3), (s, T, y_over_x, mass) => {
      same(pullFromNote_N_per_m(s, membraneNote_Hz(s, { x_N_per_m: T, y_N_per_m: T * y_over_x }, mass), mass, y_over_x), T);
    }), { seed: 31 });
  });

  test('the low note of the band means the pull with walled air, the high note with free air', () => {
    fc.assert(fc.property(span, pull, ratio, between(0.1, 3), (s, T, y_over_x, mass) => {
      const band = tapBand(s, { x_N_per_m: T, y_N_per_m: T * y_over_x }, mass);
      expect(band.low_Hz).toBeLessThan(band.high_Hz);
      same(pullFromTap(s, band.low_Hz, mass, 0, y_over_x).high_N_per_m, T);
      same(pullFromTap(s, band.high_Hz, mass, 0, y_over_x).low_N_per_m, T);
    }), { seed: 32 });
  });

  test('sag ↔ pull of a push', () => {
    fc.assert(fc.property(span, pull, ratio, between(50, 3000), between(10, 150), (s, T, y_over_x, weight, pad) => {
      const sag = pushSag_mm(s, { x_N_per_m: T, y_N_per_m: T * y_over_x }, weight, pad);
      same(pullFromPush_N_per_m(s, sag, weight, pad, y_over_x), T);
    }), { seed: 33 });
  });

  test('sag ↔ stiffness of a board', () => {
    fc.assert(fc.property(between(400, 2400), between(15, 100), between(15, 60), between(100, 5000), between(4000, 16000), (span_mm, width_mm, height_mm, weight_g, E) => {
      const board = { stock: 'x', span_mm, width_mm, height_mm, weight_g };
      // bending P l³/(48 E I) and shear P l/(4 κ G A), κ 5/6, E/G 16
      const sag_mm = ((weight_g / 1000) * 9.80665 * (span_mm ** 3 / (4 * width_mm * height_mm ** 3) + (16 * span_mm) / ((4 * 5 * width_mm * height_mm) / 6))) / E;
      same(measureSag({ ...board, sag_mm }).value, E);
    }), { seed: 34 });
  });

  test('rise ↔ twist', () => {
    fc.assert(fc.property(between(0.01, 60), between(20, 600), between(200, 4000), (rise, width, length) => {
      const turned_rad = (twistRate_deg_per_m(rise, width, length) * (length / 1000) * Math.PI) / 180;
      same(width * Math.tan(turned_rad), rise);
    }), { seed: 35 });
  });
});

describe('how the cloth answers', () => {
  test('turning cloth, pull and all by a quarter changes neither note nor sag', () => {
    fc.assert(fc.property(span, pull, ratio, (s, T, k) => {
      const turned = { width_mm: s.height_mm, height_mm: s.width_mm };
      const [here, there] = [{ x_N_per_m: T, y_N_per_m: T * k }, { x_N_per_m: T * k, y_N_per_m: T }];
      same(membraneNote_Hz(s, here, 0.6), membraneNote_Hz(turned, there, 0.6), 1e-12);
      same(pushSag_mm(s, here, 500, 50), pushSag_mm(turned, there, 500, 50), 1e-8);
    }), { seed: 36 });
  });

  test('more pull sounds higher and sinks less; a larger cloth sounds lower and sinks more; a wider pad sinks less', () => {
    fc.assert(fc.property(span, pull, between(1.02, 2), (s, T, more) => {
      const even = (t: number) => ({ x_N_per_m: t, y_N_per_m: t });
      const larger = { width_mm: s.width_mm * more, height_mm: s.height_mm };
      expect(tapBand(s, even(T * more), 0.4).low_Hz).toBeGreaterThan(tapBand(s, even(T), 0.4).low_Hz);
      expect(tapBand(larger, even(T), 0.4).high_Hz).toBeLessThan(tapBand(s, even(T), 0.4).high_Hz);
      expect(pushSag_mm(s, even(T * more), 500, 50)).toBeLessThan(pushSag_mm(s, even(T), 500, 50));
      expect(pushSag_mm(larger, even(T), 500, 50)).toBeGreaterThan(pushSag_mm(s, even(T), 500, 50) * (1 - 1e-9));
      expect(pushSag_mm(s, even(T), 500, 50 * more)).toBeLessThan(pushSag_mm(s, even(T), 500, 50));
    }), { seed: 37 });
  });
});
