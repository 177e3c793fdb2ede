import { describe, expect, test } from 'vitest';
import { ndsDistances, thinnestUnbored_mm } from '../../../src/fit/distances.js';
import { mitreNailPlace_mm } from '../../../src/fit/nail-path.js';
import { planBraceScrews } from '../../../src/mechanics/fasteners/brace-fastening.js';
import { planCrossbarScrews } from '../../../src/mechanics/fasteners/crossbar-screws.js';
import { fasteningUse } from '../../../src/mechanics/fasteners/fastening-use.js';
import { planPlyScrews } from '../../../src/mechanics/fasteners/ply-screws.js';
import { splitRisk, type SplitCase } from '../../../src/mechanics/fasteners/splitting.js';
import type { Model, Solution } from '../../../src/model/model.js';
import type { Lumber, Shelf } from '../../../src/shelf/shelf.js';
import { demoModel, demoShelf, demoSolved } from './demo-model.js';

const face = { width: '1140 mm', height: '690 mm' };

/** The demonstration shelf with one more lumber of a made-up size. */
function shelfOf(thickness_mm: number, width_mm: number): Shelf {
  const shelf = demoShelf();
  const like = shelf.lumber['square-38x38'] as Lumber;
  return { ...shelf, lumber: { ...shelf.lumber, odd: { ...like, key: 'odd', thickness_mm, width_mm, inches: null } } };
}

describe('what a fastening carries', () => {
  test('a screw between two plies: γ A h/(1 + γ) · E s V/EI with two thirds of the slip modulus (EN 1995-1-1 Annex B, two equal parts)', () => {
    const { model, solution } = demoSolved({ face, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, stack: 'side-by-side', bond: 'screws' }, 'ply-screws': { use: 'screw-8x32', every: '150 mm' }, corners: { give: 1 } });
    const [screws] = planPlyScrews(model);
    const [b, h, E] = [38, 19, model.bars.top.stock.E_MPa];
    const K = ((2 / 3) * 420 ** 1.5 * screws!.shank_mm) / 23;
    const V = Math.max(...Object.values(solution.peak.corners).map(({ shear_N }) => Math.abs(shear_N)));
    const load = ({ span_mm: L }: { readonly span_mm: number }): number => {
      const gamma = 1 / (1 + (Math.PI ** 2 * E * b * h * screws!.spacing_mm) / (K * L ** 2));
      const EI = E * ((b * h ** 3) / 6 + (b * h ** 3 * gamma) / (1 + gamma));
      return (((gamma * E * b * h * h) / (1 + gamma)) * screws!.spacing_mm * V) / EI;
    };
    expect(fasteningUse(screws!, model, solution)).toBeCloseTo(Math.max(load(model.bars.top), load(model.bars.left)) / screws!.lateral_N, 9);
    // A ten-thousandth of the shear loads them by a ten-thousandth.
    const corners = Object.fromEntries(Object.entries(solution.peak.corners).map(([name, one]) => [name, { ...one, shear_N: one.shear_N / 1e4 }]));
    const little = { ...solution, peak: { ...solution.peak, corners } } as unknown as Solution;
    expect(fasteningUse(screws!, model, little) / fasteningUse(screws!, model, solution)).toBeCloseTo(1e-4, 9);
  });

  test('the screws of a crossbar end that is pulled: threads in side grain 2850 G² D lb/in (NDS 12.2-2), three quarters of that along the grain', () => {
    const model = demoModel({ face, bars: { stock: 'stud-38x64', lay: 'edge' }, crossbars: [{ runs: 'upright', at: 0.4, stock: 'stud-38x64', lay: 'edge' }], corners: { glue: 'none', nails: { use: 'brad-18ga-25', each: 2 } } });
    const screws = planCrossbarScrews(model)!;
    const pulled = { peak: { crossbars: [{ axial_N: -900 }, { axial_N: 310 }] } } as unknown as Solution;
    expect(screws.count).toBe(4);
    const thread_in = Math.min(screws.thread_mm, screws.penetration_mm) / 25.4;
    const one_N = 0.75 * 2850 * 0.42 ** 2 * (screws.shank_mm / 25.4) * thread_in * 4.4482216152605;
    expect(fasteningUse(screws, model, pulled)).toBeCloseTo(310 / (2 * one_N), 6);
    const pressed = { peak: { crossbars: [{ axial_N: -900 }] } } as unknown as Solution;
    expect(fasteningUse(screws, model, pressed)).toBe(0);
  });
});

describe('where one screw becomes two', () => {
  const crossbar = (depth_mm: number): Model => demoModel({ face, bars: { stock: 'stud-38x64', lay: 'edge' }, crossbars: [{ runs: 'upright', at: 0.4, stock: 'odd', lay: 'edge' }] }, shelfOf(40, depth_mm));
  test('a crossbar end takes two screws from 60 mm of depth on, each a quarter of the depth in', () => {
    const [thin, deep] = [planCrossbarScrews(crossbar(59.9))!, planCrossbarScrews(crossbar(60))!];
    expect([thin.count, thin.edge_mm]).toEqual([2, 20]);
    expect([deep.count, deep.edge_mm, deep.spacing_mm]).toEqual([4, 15, 60]);
  });
  test('plies take two lines of screws from 60 mm of face on, each a quarter of the face in from its edge', () => {
    const plies = (face_mm: number) => planPlyScrews(demoModel({ face, bars: { stock: 'odd', lay: 'edge', plies: 2, stack: 'side-by-side', bond: 'screws' } }, shelfOf(25, face_mm)))[0]!;
    expect(plies(59.8).edge_mm).toBeCloseTo(29.9, 9);
    expect(plies(60).edge_mm).toBe(15);
    expect([plies(59.8).way, plies(60).way]).toMatchObject([{ lines: 1 }, { lines: 2 }]);
  });
});

describe('where a nail goes in a mitre', () => {
  test('ten diameters from the end, half its length where that is more, never beyond two thirds of the mitre', () => {
    expect(mitreNailPlace_mm(64, { diameter_mm: 2, length_mm: 25 })).toBe(20);
    expect(mitreNailPlace_mm(64, { diameter_mm: 2, length_mm: 50 })).toBe(25);
    expect(mitreNailPlace_mm(64, { diameter_mm: 2, length_mm: 90 })).toBe(32);
    expect(mitreNailPlace_mm(24, { diameter_mm: 2, length_mm: 25 })).toBe(16);
  });
  test('least distances in diameters, drilled and not (NDS commentary, from memory)', () => {
    expect(ndsDistances(2, true)).toEqual({ edge_mm: 5, end_mm: 20, along_grain_mm: 20, across_grain_mm: 10, staggered_rows_mm: 5 });
    expect(ndsDistances(2, false)).toEqual({ edge_mm: 5, end_mm: 30, along_grain_mm: 30, across_grain_mm: 20, staggered_rows_mm: 5 });
    expect([ndsDistances(2, true, 'compression').end_mm, ndsDistances(2, false, 'compression').end_mm]).toEqual([10, 20]);
  });
});

describe('what makes wood split, at each threshold', () => {
  const sound: SplitCase = { diameter_mm: 3, thickness_mm: 30, density_kg_per_m3: 420, G: 0.42, moisture_pct: 12, pilot_share: 0.8, end_share: 1, edge_share: 1 };
  const risk = (more: Partial<SplitCase>): string => splitRisk({ ...sound, ...more });
  const thinnest = thinnestUnbored_mm(3, 420);
  test.each<[string, Partial<SplitCase>, string]>([
    ['nothing speaks for it', {}, 'low'],
    ['just under 19 % moisture', { moisture_pct: 18.99 }, 'low'],
    ['19 % moisture', { moisture_pct: 19 }, 'some'],
    ['a hole of 60 % of the widest', { pilot_share: 0.6 }, 'low'],
    ['a hole under 60 % of the widest', { pilot_share: 0.599 }, 'some'],
    ['just short of the end distance', { end_share: 0.999 }, 'some'],
    ['just short of the edge distance', { edge_share: 0.999 }, 'some'],
    ['dry, and dense as 0.5', { G: 0.5, moisture_pct: 9 }, 'low'],
    ['denser than 0.5, and dry as 10 %', { G: 0.51, moisture_pct: 10 }, 'low'],
    ['denser than 0.5 and drier than 10 %', { G: 0.51, moisture_pct: 9.99 }, 'some'],
    ['not drilled, just thick enough', { pilot_share: null, thickness_mm: thinnest }, 'low'],
    ['not drilled and too thin', { pilot_share: null, thickness_mm: thinnest - 0.01 }, 'high'],
    ['two signs', { end_share: 0.9, moisture_pct: 25 }, 'high'],
  ])('%s', (_, more, expected) => expect(risk(more)).toBe(expected));
});

test('a brace’s screws: one in each end of a timber brace, as many as a plate has room for on each bar', () => {
  const count = (brace: object): number => planBraceScrews(demoModel({ face, bars: { stock: 'stud-38x64', lay: 'edge' }, corners: { brace } }))!.count;
  expect(count({ kind: 'timber', leg: '180 mm' })).toBe(8);
  expect(count({ kind: 'steel-angle', leg: '180 mm' })).toBe(16);
  expect(count({ kind: 'ply-gusset', leg: '203 mm' })).toBe(24);
});
