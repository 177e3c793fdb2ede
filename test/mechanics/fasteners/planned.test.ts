import { describe, expect, it } from 'vitest';
import { cornerNailUse } from '../../../src/mechanics/corners/corner-nail-use.js';
import { planBraceScrews } from '../../../src/mechanics/fasteners/brace-fastening.js';
import { planCornerNails } from '../../../src/mechanics/fasteners/corner-nails.js';
import { planCrossbarScrews } from '../../../src/mechanics/fasteners/crossbar-screws.js';
import { fasteningUse } from '../../../src/mechanics/fasteners/fastening-use.js';
import { planPlyScrews } from '../../../src/mechanics/fasteners/ply-screws.js';
import { freePlaces_mm, rowPlaces_mm } from '../../../src/mechanics/fasteners/row-places.js';
import { combinedUse } from '../../../src/mechanics/fasteners/combined-load.js';
import { demoModel, demoShelf, demoSolved } from './demo-model.js';

/** An oblong of two plies on edge, 38 × 38, dry at the corners: every fastening carries. Crossbars unequal, neither in the middle. */
const dry = {
  face: { width: '1340 mm', height: '860 mm' },
  bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'screws' },
  crossbars: [
    { runs: 'upright', at: 0.4, stock: 'strip-19x38', lay: 'flat' },
    { runs: 'level', at: 0.7, stock: 'board-19x64', lay: 'edge' },
  ],
  corners: { glue: 'none', nails: { use: 'brad-18ga-25', each: 2 }, brace: { kind: 'timber', leg: '200 mm', stock: 'strip-19x38', lay: 'flat' } },
};
/** One solid bar on edge, lapped and glued; a deep crossbar with two screws at each end; angles. */
const glued = {
  face: { width: '1340 mm', height: '860 mm' },
  bars: { stock: 'stud-38x89', lay: 'edge' },
  crossbars: [{ runs: 'upright', at: 0.7, stock: 'stud-38x89', lay: 'edge' }],
  corners: { cut: 'half-lap', glue: 'pva', brace: { kind: 'steel-angle', leg: '100 mm' } },
};
/** Two plies one behind the other, 64 wide: two lines of screws; gussets. */
const behind = {
  face: { width: '1340 mm', height: '860 mm' },
  bars: { stock: 'board-19x64', lay: 'flat', plies: 2, stack: 'front-to-back', bond: 'screws' },
  corners: { cut: 'butt', glue: 'none', brace: { kind: 'ply-gusset', leg: '150 mm' } },
};
const { screws } = demoShelf();

describe('where fastenings sit, by the sizes of what they join', () => {
  it('screws through two plies of 19 mm: a No. 6 × 1-1/4 in stops 6.25 mm short of the far face; rows end 10 diameters inside the mitre', () => {
    const [ply, ...others] = planPlyScrews(demoModel(dry));
    expect(others).toEqual([]);
    const { length_mm, shank_mm } = screws['screw-6x32']!;
    expect(ply).toMatchObject({
      name: 'ply-screws', key: 'screw-6x32', role: 'load', through_mm: 19, penetration_mm: length_mm - 19, reach_mm: length_mm - 19, exit_mm: 38 - length_mm,
      edge_mm: 38 / 2, end_mm: 40, thinnest_mm: 19, along_grain: false, count: 2 * (7 + 5), way: { into: 'plies', lines: 1, from: 'inner-face', sets: 1 },
    });
    expect(10 * shank_mm).toBeGreaterThan(35);
    // 40 mm of end distance beyond the 40 mm of the mitre; the rest in six and four even parts of at most 200 mm.
    const [top, , left] = ply!.rows;
    expect(top!.places_mm).toEqual([0, 1, 2, 3, 4, 5, 6].map((n) => Math.round(80 + ((1340 - 160) * n) / 6)));
    // Upright bars: the level crossbar's end stands at 602 mm, so the screw at 605 has gone 24 mm aside.
    expect(left!.places_mm).toEqual([80, 255, 430, 581, 780]);
    expect(ply!.spacing_mm).toBe(581 - 430);
  });

  it('a crossbar of two plies has them over its own length between the bars, 40 mm from its ends', () => {
    const bar = { stock: 'strip-19x38', lay: 'edge', plies: 2 };
    const model = demoModel({ face: { width: '1140 mm', height: '690 mm' }, bars: { ...bar, bond: 'glue+screws' }, crossbars: [{ runs: 'upright', at: 0.5, ...bar }] });
    const own_mm = 690 - 2 * 38;
    const [ply] = planPlyScrews(model);
    expect(ply!.rows.find(({ piece }) => piece === 'crossbar-1')!.places_mm).toEqual([0, 1, 2, 3].map((n) => Math.round(40 + ((own_mm - 80) * n) / 3)));
  });

  it('on faces of 64 mm they stand in two lines, a quarter of the face from either edge, and go in from the back', () => {
    const [ply] = planPlyScrews(demoModel(behind));
    expect(ply).toMatchObject({ edge_mm: 16, count: 24, way: { into: 'plies', lines: 2, from: 'back', sets: 1 } });
  });

  it('a screw that the plan names and that stops in the first ply holds nothing: its tip falls short by what is missing', () => {
    const [short] = planPlyScrews(demoModel({ ...dry, crossbars: [], bars: { stock: 'square-38x38', lay: 'flat', plies: 2, bond: 'screws' }, 'ply-screws': { use: 'screw-6x32', every: '200 mm' } }));
    expect(short).toMatchObject({ through_mm: 0, penetration_mm: 0, lateral_N: 0, way: { sets: 1 } });
    expect([short!.reach_mm, short!.exit_mm]).toEqual([expect.closeTo(31.75 - 38, 9), expect.closeTo(76 - 31.75, 9)]);
  });

  it('screws into slender crossbars slant: 19 mm of crossbar, then the bar; a deep one takes two, straight through the bar', () => {
    const slanting = planCrossbarScrews(demoModel(dry))!;
    expect(slanting).toMatchObject({
      key: 'screw-6x38', role: 'load', through_mm: 19, penetration_mm: 38.1 - 19, along_grain: false, edge_mm: 9.5, thinnest_mm: 19, count: 4, spacing_mm: 860 - 38,
      rows: [{ piece: 'crossbar-1', places_mm: [536] }, { piece: 'crossbar-2', places_mm: [258] }], way: { into: 'crossbar-ends', each: 1, straight: false },
    });
    expect(slanting.exit_mm).toBeCloseTo(19 + 38 - 38.1, 9);
    expect(slanting.end_mm).toBeCloseTo(0.3 * 860, 9);
    const straight = planCrossbarScrews(demoModel(glued))!;
    expect(straight).toMatchObject({ key: 'screw-8x64', role: 'clamp', through_mm: 38, penetration_mm: 63.5 - 38, along_grain: true, edge_mm: 19, spacing_mm: 89, thinnest_mm: 38, count: 4, way: { each: 2, straight: true } });
    expect(straight.exit_mm).toBeCloseTo(860 - 38 - 38 - 25.5, 9);
    expect(straight.rows).toEqual([{ piece: 'crossbar-1', places_mm: [402] }]);
    expect(straight.end_mm).toBeCloseTo(0.3 * 1340, 9);
  });

  it('a brad of 25 mm goes half into either bar of a mitre, a quarter of the depth from the edge where there are two', () => {
    expect(planCornerNails(demoModel(dry))).toMatchObject({
      key: 'brad-18ga-25', kind: 'nail', role: 'load', through_mm: 12.5, penetration_mm: 12.5, edge_mm: 9.5, end_mm: 12.5, spacing_mm: 38, along_grain: true, count: 8,
      rows: [{ piece: 'each-corner', places_mm: [13] }], way: { into: 'corners', each: 2, from: 'outer-edge', glued: false },
    });
  });

  it('screws of braces, angles and gussets: through 16 mm of mitred end, 2 mm of steel, 9 mm of sheet', () => {
    const [timber, angle, gusset] = [dry, glued, behind].map((plan) => planBraceScrews(demoModel(plan))!) as [Screws, Screws, Screws];
    type Screws = NonNullable<ReturnType<typeof planBraceScrews>>;
    expect(timber).toMatchObject({ key: 'screw-6x38', role: 'load', through_mm: 16, edge_mm: 9.5, thinnest_mm: 16, count: 8, rows: [{ piece: 'each-brace-end', places_mm: [16] }], way: { into: 'brace-ends', toe_mm: 16 } });
    expect([timber.penetration_mm, timber.reach_mm, timber.exit_mm]).toEqual([expect.closeTo(38.1 - 16, 9), expect.closeTo(38.1 - 16, 9), expect.closeTo(16 + 38 - 38.1, 9)]);
    // The shelf's angle of 100 mm: holes at a third and five sixths of the leg, from the inner edge of a bar 38 wide.
    expect(angle).toMatchObject({ key: 'screw-6x25', role: 'load', through_mm: 2, edge_mm: 19, spacing_mm: 50, thinnest_mm: 89, count: 16, way: { into: 'angles' } });
    expect([angle.end_mm, angle.exit_mm]).toEqual([expect.closeTo(100 / 3 + 19, 9), expect.closeTo(2 + 89 - 25.4, 9)]);
    // Between the mitre at 64 and the slanted edge at 150, a sixth of the run in from either.
    expect(gusset).toMatchObject({ key: 'screw-6x32', through_mm: 9, edge_mm: 32, thinnest_mm: 9, count: 16, way: { into: 'gussets', leg_mm: 182 } });
    expect([gusset.end_mm, gusset.spacing_mm]).toEqual([expect.closeTo(64 + 86 / 6, 9), expect.closeTo((86 * 2) / 3, 9)]);
  });

  it('no braces, no crossbars, keyed corners: no screws for them', () => {
    const plain = demoModel({ ...dry, crossbars: [], corners: { cut: 'keyed' } });
    expect([planBraceScrews(plain), planCrossbarScrews(plain), planCornerNails(plain)]).toEqual([null, null, null]);
    expect(planCrossbarScrews(demoModel({ ...dry, corners: { cut: 'keyed' } }))).toBeNull();
    expect(planPlyScrews(demoModel({ ...dry, bars: { ...dry.bars, bond: 'glue' }, corners: { glue: 'pva' } }))).toEqual([]);
  });
});

describe('what fastenings carry at the peak pull', () => {
  const { model, solution } = demoSolved(dry);

  it('crossbar screws: three quarters of their withdrawal, as they sit in end grain or slant (2850 G² D lb/in)', () => {
    const f = planCrossbarScrews(model)!;
    const withdrawal_N_per_mm = (2850 * 0.42 ** 2 * (f.shank_mm / 25.4) * 4.4482216) / 25.4;
    const tension = Math.max(0, ...solution.peak.crossbars.map(({ axial_N }) => axial_N));
    expect(tension > 0 || solution.peak.crossbars.every(({ axial_N }) => axial_N <= 0)).toBe(true);
    expect(fasteningUse(f, model, solution)).toBeCloseTo(tension / (0.75 * withdrawal_N_per_mm * Math.min(f.thread_mm, f.penetration_mm)), 5);
  });

  it('ply screws: the shear that slides two equal plies on each other, 3/2 V/h for a solid pair, less what they give', () => {
    const [f] = planPlyScrews(model);
    const use = (bar: typeof model.bars.top): number => {
      const V = Math.max(...Object.values(solution.peak.corners).map(({ shear_N }) => Math.abs(shear_N)));
      const K = ((2 / 3) * 420 ** 1.5 * f!.shank_mm) / 23;
      const [b, h, E] = [38, 19, bar.stock.E_MPa];
      const gamma = 1 / (1 + (Math.PI ** 2 * E * b * h * f!.spacing_mm) / (K * bar.span_mm ** 2));
      // Two equal parts, the first slipping: its centroid lies h/(1 + γ) from the neutral axis, the other's γ h/(1 + γ).
      const EI = E * ((b * h ** 3) / 6 + (gamma * b * h * h ** 2) / (1 + gamma));
      return (gamma * E * b * h * (h / (1 + gamma)) * f!.spacing_mm * V) / EI / f!.lateral_N;
    };
    expect(fasteningUse(f!, model, solution)).toBeCloseTo(Math.max(use(model.bars.top), use(model.bars.left)), 6);
  });

  it('nails and plates are asked for the corner that bears most', () => {
    const gusset = demoSolved(behind);
    const f = planBraceScrews(gusset.model)!;
    const use = (moments: readonly number[]): number => {
      const corners = Object.fromEntries(Object.entries(gusset.solution.peak.corners).map(([name, corner], i) => [name, { ...corner, plate_moment_Nmm: moments[i]! }]));
      return fasteningUse(f, gusset.model, { ...gusset.solution, peak: { ...gusset.solution.peak, corners } } as typeof gusset.solution);
    };
    // Two screws: each bears the moment over their distance.
    expect(use([900, 2400, 300, 1100])).toBeCloseTo(2400 / (f.lateral_N * f.spacing_mm), 9);
    const nails = planCornerNails(model)!;
    const own = Object.values(solution.peak.corners).map((corner) => cornerNailUse(model, corner, 1));
    expect(fasteningUse(nails, model, solution)).toBe(Math.max(...own));
    expect(Math.max(...own)).toBeGreaterThan(Math.min(...own));
  });

  it('what only clamps carries nothing; what nothing holds is 99 times overloaded', () => {
    const clamp = planCrossbarScrews(demoModel(glued))!;
    expect(fasteningUse(clamp, model, solution)).toBe(0);
    const [f] = planPlyScrews(model);
    expect(fasteningUse({ ...f!, lateral_N: 0 }, model, solution)).toBe(99);
    expect(fasteningUse({ ...f!, lateral_N: 1e-6 }, model, solution)).toBe(99);
    expect(fasteningUse({ ...f!, name: 'crossbar-ply-screws' }, model, solution)).toBe(0);
  });

  it('a pull askew: the Hankinson sum of its parts over its length (NDS 12.4)', () => {
    expect(combinedUse(30, 0, 120, 80)).toBe(0.25);
    expect(combinedUse(0, -20, 120, 80)).toBe(0.25);
    expect(combinedUse(-30, 40, 120, 80)).toBeCloseTo((30 ** 2 / 120 + 40 ** 2 / 80) / 50, 12);
    expect([combinedUse(0, 0, 0, 0), combinedUse(0, 5, 0, 10), combinedUse(1, 5, 0, 10), combinedUse(1, 5, 10, 0)]).toEqual([0, 0.5, Infinity, Infinity]);
  });
});

describe('rows', () => {
  it('divide what is left between the ends into even parts, none longer than asked', () => {
    expect(rowPlaces_mm(1000, 100, 200)).toEqual([100, 300, 500, 700, 900]);
    expect(rowPlaces_mm(1000, 100, 199)).toEqual([100, 260, 420, 580, 740, 900]);
    expect(rowPlaces_mm(1000, 100, 900)).toEqual([100, 900]);
    expect(rowPlaces_mm(300, 100, 200, 100)).toEqual([100, 200]);
    expect(rowPlaces_mm(301, 100, 200, 102)).toEqual([151]);
    expect(rowPlaces_mm(201, 100, 50)).toEqual([100, 101]);
    expect([rowPlaces_mm(200, 100, 50), rowPlaces_mm(150, 100, 50)]).toEqual([[100], [75]]);
  });
  it('a place that is taken moves to the nearest free one, inward where both ways are as far, and keeps clear of neighbours and ends', () => {
    const taken = (from: number, to: number) => (mm: number): boolean => mm > from && mm < to;
    expect(freePlaces_mm([100, 500, 900], taken(80, 110), 1000, 30, 1)).toEqual([110, 500, 900]);
    expect(freePlaces_mm([100, 500, 900], taken(90, 110), 1000, 30, 1)).toEqual([110, 500, 900]);
    expect(freePlaces_mm([100, 500, 900], taken(890, 910), 1000, 30, 1)).toEqual([100, 500, 890]);
    expect(freePlaces_mm([100, 500, 900], taken(885, 905), 1000, 30, 1)).toEqual([100, 500, 905]);
    expect(freePlaces_mm([100, 200, 300], taken(150, 240), 1000, 60, 1)).toEqual([100, 240, 300].map((mm) => (mm === 240 ? 240 : mm)));
    expect(freePlaces_mm([100, 200, 300], taken(150, 240), 1000, 61, 1)).toEqual([100, 200, 300]);
    expect(freePlaces_mm([40], taken(20, 200), 1000, 30, 1)).toEqual([200]);
    expect(freePlaces_mm([40], taken(30, 200), 1000, 30, 1)).toEqual([30]);
    expect(freePlaces_mm([40], taken(29, 200), 1000, 30, 1)).toEqual([200]);
    expect(freePlaces_mm([500], taken(490, 512), 1000, 30, 5)).toEqual([490]);
    expect(freePlaces_mm([500], () => true, 1000, 30, 5)).toEqual([500]);
  });
});

it('where every bar takes one ply screw, the next one along the grain is a whole bar away', () => {
  const [screws] = planPlyScrews(demoModel({ face: { width: '180 mm', height: '170 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2 }, hang: { by: 'none' } }));
  expect(screws!.rows.map(({ places_mm }) => places_mm.length)).toEqual([1, 1, 1, 1]);
  expect(screws!.spacing_mm).toBe(180 - 38);
});
