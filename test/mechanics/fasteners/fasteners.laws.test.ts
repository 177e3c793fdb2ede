import fc from 'fast-check';
import { expect, test } from 'vitest';
import { atAngleToGrain } from '../../../src/mechanics/fasteners/angle-to-grain.js';
import { combinedUse } from '../../../src/mechanics/fasteners/combined-load.js';
import { nailLateral_N, screwLateral_N } from '../../../src/mechanics/fasteners/design-load.js';
import { dowelBearing_MPa } from '../../../src/mechanics/fasteners/dowel-bearing.js';
import { gammaStiffness } from '../../../src/model/gamma-method.js';
import { clearanceDrill, nailHole_mm, nearestDrill, screwHole_mm } from '../../../src/mechanics/fasteners/lead-hole.js';
import { LEAST_EXIT_MM, pickScrew } from '../../../src/fit/pick-screw.js';
import { plyScrewFit } from '../../../src/plan/ply-screw.js';
import { rowPlaces_mm } from '../../../src/mechanics/fasteners/row-places.js';
import { screwWithdrawal_N_per_mm } from '../../../src/mechanics/fasteners/withdrawal.js';
import { singleShear_N } from '../../../src/mechanics/fasteners/yield-modes.js';
import { demoShelf } from './demo-model.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const gravity = between(0.3, 0.75);

test('longer penetration never weakens a nail or a screw, sideways or along', () => {
  fc.assert(
    fc.property(gravity, between(1, 5), between(5, 40), between(3, 60), between(0, 40), (G, D, side, p, more) => {
      const nail = (main_mm: number): number => nailLateral_N({ diameter_mm: D, yield_MPa: 690 }, { G_side: G, G_main: G, side_mm: side, main_mm });
      const screw = (main_mm: number): number => screwLateral_N({ root_mm: D, yield_MPa: 620 }, { G_side: G, G_main: G * 0.9, side_mm: side, main_mm });
      expect(nail(p + more)).toBeGreaterThanOrEqual(nail(p) * (1 - 1e-12));
      expect(screw(p + more)).toBeGreaterThanOrEqual(screw(p) * (1 - 1e-12));
      expect(screwWithdrawal_N_per_mm(G, D) * (p + more)).toBeGreaterThanOrEqual(screwWithdrawal_N_per_mm(G, D) * p);
    }),
  );
});

test('denser wood never holds less, and a thicker side piece never weakens', () => {
  fc.assert(
    fc.property(between(0.3, 0.6), between(0, 0.15), between(1, 6), between(5, 40), between(5, 60), between(0, 30), (G, dG, D, side, main, more) => {
      const Z = (g: number, s: number): number => singleShear_N({ diameter_mm: D, side_mm: s, main_mm: main, side_bearing_MPa: dowelBearing_MPa(g, D), main_bearing_MPa: dowelBearing_MPa(g, D), bending_yield_MPa: 600 }).N;
      expect(Z(G + dG, side)).toBeGreaterThanOrEqual(Z(G, side) * (1 - 1e-12));
      expect(Z(G, side + more)).toBeGreaterThanOrEqual(Z(G, side) * (1 - 1e-12));
    }),
  );
});

test('the drill picked is never above the rule, and no smaller one would have been nearer', () => {
  const drills = demoShelf().drills;
  fc.assert(
    fc.property(between(0.5, 7), gravity, fc.constantFrom('metric' as const, 'inch' as const, null), (D, G, units) => {
      for (const rule of [nailHole_mm(D, G), screwHole_mm({ shank_mm: D, root_mm: 0.8 * D }, G, 'thread'), screwHole_mm({ shank_mm: D, root_mm: 0.8 * D }, G, 'thread', 'withdrawal')]) {
        const drill = nearestDrill(drills, rule, units);
        if (drill === null) {
          expect(drills.every((d) => d.diameter_mm > rule)).toBe(true);
          continue;
        }
        expect(drill.diameter_mm).toBeLessThanOrEqual(rule);
        if (units === null) expect(drills.some((d) => d.diameter_mm <= rule && d.diameter_mm > drill.diameter_mm)).toBe(false);
      }
      const wide = clearanceDrill(drills, D, units);
      if (wide !== null) expect(wide.diameter_mm).toBeGreaterThanOrEqual(D);
    }),
  );
});

test('a hole for the thread is never wider than the root, whatever the wood', () => {
  fc.assert(fc.property(between(2, 6), gravity, (D, G) => {
    expect(screwHole_mm({ shank_mm: D, root_mm: 0.8 * D }, G, 'thread')).toBeLessThanOrEqual(0.8 * D);
  }));
});

test('strength at an angle to the grain lies between the strengths along and across it, and falls with the angle', () => {
  fc.assert(
    fc.property(between(10, 100), between(0.03, 0.99), between(0, 90), between(0, 90), (P, ratio, a, b) => {
      const [lo, hi] = a < b ? [a, b] : [b, a];
      const near = atAngleToGrain(P, P * ratio, lo);
      const far = atAngleToGrain(P, P * ratio, hi);
      expect(near).toBeGreaterThanOrEqual(far * (1 - 1e-12));
      expect(far).toBeGreaterThanOrEqual(P * ratio * (1 - 1e-12));
      expect(near).toBeLessThanOrEqual(P * (1 + 1e-12));
    }),
  );
});

test('more load on a fastening never uses less of it', () => {
  fc.assert(
    fc.property(between(0, 500), between(0, 500), between(10, 500), between(10, 500), between(1, 3), (pull, shear, W, Z, more) => {
      expect(combinedUse(pull * more, shear * more, W, Z)).toBeGreaterThanOrEqual(combinedUse(pull, shear, W, Z) * (1 - 1e-12));
    }),
  );
  expect(combinedUse(30, 0, 60, 90)).toBeCloseTo(0.5, 12);
  expect(combinedUse(0, 30, 60, 90)).toBeCloseTo(1 / 3, 12);
});

test('jointed boards are stiffer than loose ones, softer than glued ones, and stiffer the closer the screws', () => {
  fc.assert(
    fc.property(between(8, 40), between(8, 40), between(20, 400), between(50, 20000), between(300, 2500), (h1, h2, s, K, L) => {
      const parts = [{ E_MPa: 9000, breadth_mm: 38, height_mm: h1 }, { E_MPa: 11000, breadth_mm: 38, height_mm: h2 }];
      const EI = (k: number, spacing_mm: number): number => gammaStiffness(parts, [{ spacing_mm, K_N_per_mm: k }], L).EI_Nmm2;
      expect(EI(K, s)).toBeGreaterThanOrEqual(EI(0, s) * (1 - 1e-12));
      expect(EI(K, s)).toBeLessThanOrEqual(EI(1e15, s) * (1 + 1e-9));
      expect(EI(K, s / 2)).toBeGreaterThanOrEqual(EI(K, s) * (1 - 1e-12));
    }),
  );
});

test('a screw picked from the shelf reaches the second piece and never comes within 3 mm of the far side', () => {
  const shelf = demoShelf();
  fc.assert(
    fc.property(between(2, 60), between(5, 90), between(5, 45), (through_mm, holding_mm, edge_mm) => {
      const screw = pickScrew(shelf, { through_mm, holding_mm, edge_mm });
      if (screw === null) return;
      expect(screw.length_mm).toBeGreaterThan(through_mm);
      expect(through_mm + holding_mm - screw.length_mm).toBeGreaterThanOrEqual(LEAST_EXIT_MM);
    }),
  );
});

test('of the screws that stay inside, a slender one is picked before a thick one, then one that holds, then the shortest, else the nearest to holding', () => {
  const from = demoShelf();
  const seen = { holds: 0, nearest: 0, thick: 0 };
  const screw = fc.record({ length_mm: fc.integer({ min: 3, max: 14 }), shank_mm: fc.integer({ min: 2, max: 7 }) }).map(({ length_mm, shank_mm }) => ({ length_mm: 5 * length_mm, shank_mm }));
  fc.assert(
    fc.property(fc.array(screw, { maxLength: 6 }), fc.constantFrom(8, 19), fc.constantFrom(10, 19, 38), fc.constantFrom(6, 9, 19), (sizes, through_mm, holding_mm, edge_mm) => {
      const screws = sizes.map((size, i) => ({ ...from.screws['screw-6x32']!, ...size, key: `s${i}` }));
      const shelf = { ...from, screws: Object.fromEntries(screws.map((one) => [one.key, one])) };
      const inside = screws.filter((s) => s.length_mm > through_mm && through_mm + holding_mm - s.length_mm >= LEAST_EXIT_MM);
      const slender = inside.filter((s) => 2.5 * s.shank_mm <= edge_mm);
      const list = slender.length > 0 ? slender : inside;
      const bite = (s: (typeof screws)[number]): number => (s.length_mm - through_mm) / (6 * s.shank_mm);
      const least = <T>(all: readonly T[], of: (one: T) => number): readonly T[] => all.filter((one) => of(one) === Math.min(...all.map(of)));
      const holding = list.filter((s) => bite(s) >= 1);
      const best = holding.length > 0 ? holding : least(list, (s) => -bite(s));
      const [expected] = least(least(best, (s) => s.length_mm), (s) => s.shank_mm);
      expect(pickScrew(shelf, { through_mm, holding_mm, edge_mm })?.key).toBe(expected?.key);
      if (expected !== undefined) seen[slender.length === 0 ? 'thick' : holding.length > 0 ? 'holds' : 'nearest'] += 1;
    }),
    { numRuns: 600, seed: 8 },
  );
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(20);
});

test('rows of screws keep their ends and never stand wider than asked', () => {
  fc.assert(
    fc.property(between(150, 3000), between(20, 120), between(50, 400), (length, start, every) => {
      const places = rowPlaces_mm(length, start, every, 35);
      if (length - 2 * start < 35) {
        expect(places).toHaveLength(1);
        return;
      }
      expect(places[0]).toBe(Math.round(start));
      expect(places.at(-1)).toBe(Math.round(length - start));
      for (let i = 1; i < places.length; i += 1) expect(places[i]! - places[i - 1]!).toBeLessThanOrEqual(every + 1);
    }),
  );
});

test('a longer ply screw never leaves more wood beyond its tip', () => {
  fc.assert(
    fc.property(between(10, 90), between(0, 40), between(10, 40), fc.integer({ min: 2, max: 4 }), (length, more, ply, plies) => {
      const short = plyScrewFit(length, ply, plies);
      const long = plyScrewFit(length + more, ply, plies);
      expect(long.exit_mm).toBeLessThanOrEqual(short.exit_mm);
      expect(long.passes).toBeGreaterThanOrEqual(short.passes);
      expect(short.penetration_mm).toBeLessThanOrEqual(ply + 1e-9);
    }),
  );
});
