import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { BarName, CornerName } from '../../src/base/names.js';
import { barNames, cornerNames } from '../../src/base/names.js';
import type { Influence } from '../../src/model/frame-results.js';
import type { FrameShape, PointForce } from '../../src/model/frame-shape.js';
import { solidSection } from '../../src/model/section.js';
import { findStability, solveInfluence, solveLiftCompliance, solveStatics } from '../../src/solve/analyse-frame.js';
import { frameOf, mirrored } from '../frame3d/frame-shapes.js';
import { runs } from '../effort.js';

/** Mirrored in the diagonal that rises from bottom left: x and y change places. */
const otherBar: Readonly<Record<BarName, BarName>> = { bottom: 'left', left: 'bottom', top: 'right', right: 'top' };
const otherCorner: Readonly<Record<CornerName, CornerName>> = { 'top-left': 'bottom-right', 'bottom-right': 'top-left', 'top-right': 'top-right', 'bottom-left': 'bottom-left' };
const bars = <T>(of: (bar: BarName) => T): Record<BarName, T> => Object.fromEntries(barNames.map((bar) => [bar, of(bar)])) as Record<BarName, T>;
const corners = <T>(of: (corner: CornerName) => T): Record<CornerName, T> => Object.fromEntries(cornerNames.map((corner) => [corner, of(corner)])) as Record<CornerName, T>;

const turned = (shape: FrameShape): FrameShape => ({
  span_x_mm: shape.span_y_mm,
  span_y_mm: shape.span_x_mm,
  bars: bars((bar) => shape.bars[otherBar[bar]]),
  eccentricity_mm: bars((bar) => shape.eccentricity_mm[otherBar[bar]]),
  corner_give: corners((corner) => shape.corner_give[otherCorner[corner]]),
  corner_plate_Nmm_per_rad: corners((corner) => shape.corner_plate_Nmm_per_rad[otherCorner[corner]]),
  crossbars: shape.crossbars.map((c) => ({ ...c, runs: c.runs === 'upright' ? 'level' : 'upright' })),
  braces: shape.braces.map((b) => ({ ...b, corner: otherCorner[b.corner] })),
});
const turnedForces = (forces: readonly PointForce[]): PointForce[] => forces.map(({ bar, at, Fx, Fy, Fz }) => ({ bar: otherBar[bar], at, Fx: Fy, Fy: Fx, Fz }));

const size = (min: number, max: number) => fc.integer({ min, max });
const gives = fc.record({ plane: fc.constantFrom(0, 4, 40), out: fc.constantFrom(0, 4, 8), twist: fc.constantFrom(2, 20) });
const frames = fc
  .record({ width: size(500, 1600), height: size(350, 1200), w: fc.constantFrom(19, 38), d: fc.constantFrom(19, 38), left: fc.constantFrom(19, 45), e: size(5, 40), give: gives, own: gives, plate: fc.constantFrom(0, 3e5), at: fc.constantFrom(null, 0.37), leg: fc.constantFrom(null, 120), Fx: size(-30, 30), Fy: size(-30, 30), s: fc.constantFrom(0.22, 0.5, 0.81) })
  .map(({ left, e, own, plate, at, leg, Fx, Fy, s, ...words }) => {
    const shape = frameOf({ ...words, crossbarGive: { plane: 6, out: 3, twist: 9 }, braceGive: { plane: 6, out: 9, twist: 3 }, crossbars: at === null ? [] : [{ runs: 'upright', at, w: 25, d: 19 }, { runs: 'level', at: 0.64, w: 15, d: 30 }], brace: leg === null ? undefined : { leg, w: 30, d: 19 } });
    const uneven: FrameShape = {
      ...shape,
      bars: { ...shape.bars, left: solidSection(left, words.d, 8000, 520) },
      eccentricity_mm: { left: e, right: e, top: e / 3, bottom: e / 3 },
      corner_give: { ...shape.corner_give, 'top-left': own },
      corner_plate_Nmm_per_rad: { ...shape.corner_plate_Nmm_per_rad, 'bottom-right': plate, 'top-right': plate / 2 },
      braces: shape.braces.slice(1),
    };
    return { shape: uneven, forces: balanced(s, Fx, Fy) };
  });

/** Forces that hold each other, so that nothing comes to the supports, whose places are not turned. */
const balanced = (s: number, Fx: number, Fy: number): readonly PointForce[] => [
  { bar: 'left', at: s, Fx, Fy: 0, Fz: 3 }, { bar: 'right', at: s, Fx: -Fx, Fy: 0, Fz: -3 }, { bar: 'left', at: 0.66, Fx: 0, Fy: 0, Fz: -3 }, { bar: 'right', at: 0.66, Fx: 0, Fy: 0, Fz: 3 },
  { bar: 'top', at: 0.4, Fx: 0, Fy, Fz: 0 }, { bar: 'bottom', at: 0.4, Fx: 0, Fy: -Fy, Fz: 0 },
];

/** Close, against the largest of its kind. */
function near(found: readonly number[], expected: readonly number[], name: string): void {
  const scale = Math.max(1e-6, ...expected.map(Math.abs));
  found.forEach((value, i) => expect(Math.abs(value - expected[i]!), `${name} ${i}: ${value} for ${expected[i]}`).toBeLessThanOrEqual(2e-6 * scale));
}

it('a frame with x and y changed round bows, dishes, rolls, bears and leans as before, each bar and corner as the other', () => {
  fc.assert(
    fc.property(frames, fc.record({ x: fc.double({ min: 0.05, max: 0.4, noNaN: true }), y: fc.double({ min: 0.05, max: 0.4, noNaN: true }) }), ({ shape, forces }, pull) => {
      const [one, other] = [solveStatics(shape, pull, forces), solveStatics(turned(shape), { x: pull.y, y: pull.x }, turnedForces(forces))];
      for (const key of ['inward_bow_mm', 'dish_mm', 'roll_mrad', 'axial_N', 'moment_Nmm'] as const) near(barNames.map((bar) => other.bars[otherBar[bar]][key]), barNames.map((bar) => one.bars[bar][key]), key);
      for (const bar of barNames) near(other.bars[otherBar[bar]].bow_line.map((p) => p.inward_mm), one.bars[bar].bow_line.map((p) => p.inward_mm), `${bar} line`);
      for (const key of ['moment_Nmm', 'plate_moment_Nmm', 'out_moment_Nmm', 'torque_Nmm'] as const) near(cornerNames.map((c) => other.corners[otherCorner[c]][key]), cornerNames.map((c) => one.corners[c][key]), key);
      for (const key of ['axial_N', 'bow_mm', 'span_mm'] as const) near(other.crossbars.map((c) => c[key]), one.crossbars.map((c) => c[key]), key);
      near([other.racking_mm], [one.racking_mm], 'racking');
      near([other.dish_mm], [one.dish_mm], 'dish');
    }),
    { numRuns: runs(40, 1 / 4), seed: 12 },
  );
});

it('seen in a mirror it leans the other way, and all else stays with its bar and corner', () => {
  fc.assert(
    fc.property(frames, ({ shape }) => {
      const pull = { x: 0.17, y: 0.29 };
      const [one, other] = [solveStatics(shape, pull), solveStatics(mirrored(shape), pull)];
      const side = (name: string): BarName => (name === 'left' ? 'right' : name === 'right' ? 'left' : (name as BarName));
      // Not the roll, which counts from the plane of three corners, and those are others in a mirror.
      for (const key of ['inward_bow_mm', 'dish_mm', 'axial_N', 'moment_Nmm'] as const) near(barNames.map((bar) => other.bars[side(bar)][key]), barNames.map((bar) => one.bars[bar][key]), key);
      near([other.racking_mm], [-one.racking_mm], 'racking');
    }),
    { numRuns: runs(24, 1 / 4), seed: 13 },
  );
});

it('a frame whose top is pushed aside leans by H h²(h/I + b/I_top)/24E, to the hand of the push: the rising diagonal grows by as much as the falling one shrinks', () => {
  const words = { width: 938, height: 638, w: 38, d: 30 } as const;
  const shape = frameOf(words);
  // So much area that nothing but bending counts.
  const fat = { ...shape, bars: bars((bar) => ({ ...shape.bars[bar], A_mm2: 1e9, I_plane_mm4: shape.bars.top.I_plane_mm4 * (bar === 'top' || bar === 'bottom' ? 2.5 : 1) })) };
  const [b, h, E, H] = [900, 600, shape.bars.top.E_MPa, 24];
  const lean = ((H * h * h) / (24 * E)) * (h / fat.bars.left.I_plane_mm4 + b / fat.bars.top.I_plane_mm4);
  const racking = solveStatics(fat, { x: 0, y: 0 }, [{ bar: 'top', at: 0.5, Fx: H, Fy: 0, Fz: 0 }], { shear: false }).racking_mm;
  expect(racking / ((2 * lean * b) / Math.hypot(b, h))).toBeCloseTo(1, 6);
});

it.each([
  ['a propeller', { width: 940, height: 640, w: 38, d: 19, give: 4 }],
  ['a crossbar that bows in the plane and takes its bars along', { width: 1000, height: 900, w: 19, d: 60, crossbars: [{ runs: 'level', at: 0.62, w: 6, d: 60 }, { runs: 'upright', at: 0.3, w: 25, d: 60 }] }],
  ['one that bows out of it', { width: 1000, height: 900, w: 30, d: 40, crossbars: [{ runs: 'upright', at: 0.62, w: 45, d: 7 }, { runs: 'level', at: 0.3, w: 45, d: 60 }] }],
  ['bars on edge that bow in the plane, with braces', { width: 1100, height: 880, w: 9, d: 60, brace: { leg: 110, w: 9, d: 30 } }],
] as const)('a mode is drawn alike with x and y changed round: %s', (_, words) => {
  const shape = frameOf(words);
  const pull = { x: 0.21, y: 0.3 };
  const [one, other] = [findStability(shape, pull), findStability(turned(shape), { x: pull.y, y: pull.x })];
  const points = (of: typeof one) => new Map(of.mode_shape.map((line) => [line.member, line.points]));
  const found = points(other);
  const pairs = [...points(one)].flatMap(([member, line]) => {
    const same = found.get(member in otherBar ? otherBar[member as BarName] : member.endsWith('brace') ? `${otherCorner[member.replace(' brace', '') as CornerName]} brace` : member)!;
    // A brace runs from its left to its right end either way.
    const along = member.endsWith('brace') && Math.abs(same[0]!.x - line[0]!.y) > 1e-6 ? [...same].reverse() : same;
    return line.map((p, i) => [p, along[i]!] as const);
  });
  for (const [p, q] of pairs) expect([q.x, q.y]).toEqual([expect.closeTo(p.y, 6), expect.closeTo(p.x, 6)]);
  // Which way a mode goes is nobody's choice, but it goes that way everywhere.
  const [largest, its] = pairs.reduce((a, b) => (Math.hypot(b[0].dx, b[0].dy, b[0].dz) > Math.hypot(a[0].dx, a[0].dy, a[0].dz) ? b : a));
  const sign = Math.sign(largest.dx * its.dy + largest.dy * its.dx + largest.dz * its.dz);
  for (const [p, q] of pairs) for (const [a, b] of [[p.dx, q.dy], [p.dy, q.dx], [p.dz, q.dz]] as const) expect(Math.abs(sign * b - a)).toBeLessThan(0.01);
  expect(Math.max(...pairs.map(([p]) => Math.abs(p.dx) + Math.abs(p.dy) + Math.abs(p.dz)))).toBeGreaterThan(0.9);
});

it('a thousandth of a pull makes a thousandth of everything, looked at in as many places', () => {
  const shape = frameOf({ width: 1240, height: 830, w: 38, d: 30, give: 4, crossbarGive: 6, crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 22 }], brace: { leg: 210, w: 30, d: 19 } });
  const [one, little] = [solveStatics(shape, { x: 0.23, y: 0.31 }), solveStatics(shape, { x: 0.23e-3, y: 0.31e-3 })];
  for (const bar of barNames) {
    expect(little.bars[bar].forces).toHaveLength(one.bars[bar].forces.length);
    near(little.bars[bar].forces.map((f) => 1000 * f.plane_Nmm), one.bars[bar].forces.map((f) => f.plane_Nmm), 'plane');
    near(little.bars[bar].forces.map((f) => f.s), one.bars[bar].forces.map((f) => f.s), 's');
  }
});

it('a corner pushed out of the plane gives by what bends and twists four equal bars: L³ (1/(12 E I) + 1/(4 G J)) for each newton', () => {
  // Each bar of a square bears half the push as shear, so a quarter of P L as end moments either way, and as much as torque (Castigliano).
  const shape = frameOf({ width: 638, height: 638, w: 38, d: 30 });
  const { E_MPa: E, G_MPa: G, I_out_mm4: I, J_mm4: J } = shape.bars.top;
  const exact = 600 ** 3 * (1 / (12 * E * I) + 1 / (4 * G * J));
  expect(solveLiftCompliance(shape, { x: 0, y: 0 }, { shear: false })! / exact).toBeCloseTo(1, 9);
  // In shear each bar gives besides: (P/2)² L/(κ G A) of each, twice their energy over P.
  const { A_mm2: A } = shape.bars.top;
  expect(solveLiftCompliance(shape, { x: 0, y: 0 })! / (exact + 600 / ((5 / 6) * G * A))).toBeCloseTo(1, 9);
});

it('without pull no mesh is too coarse: beams between their nodes are exact, stocky ones as well', () => {
  const shape = frameOf({ width: 460, height: 390, w: 38, d: 64, give: { plane: 3, out: 2, twist: 1 }, crossbarGive: 2, crossbars: [{ runs: 'upright', at: 0.375, w: 45, d: 60 }], brace: { leg: 90, w: 30, d: 50 } });
  const [coarse, fine] = [1, 16].map((mesh) => solveInfluence(shape, { x: 0, y: 0 }, { mesh })!) as [readonly Influence[], readonly Influence[]];
  near(coarse.map((i) => i.corner_lift), fine.map((i) => i.corner_lift), 'lift');
  for (const bar of barNames) for (const key of ['bar_bow', 'bar_crook'] as const) near(coarse.flatMap((i) => [...i[key][bar]]), fine.flatMap((i) => [...i[key][bar]]), `${key} of ${bar}`);
  const [few, many] = [undefined, 16].map((mesh) => solveStatics(shape, { x: 0.3, y: 0.2 }, [], mesh === undefined ? {} : { mesh }).bars) as [ReturnType<typeof solveStatics>['bars'], ReturnType<typeof solveStatics>['bars']];
  for (const bar of barNames) {
    near(few[bar].bow_line.map((p) => p.inward_mm), many[bar].bow_line.map((p) => p.inward_mm), `line of ${bar}`);
    for (const key of ['dish_mm', 'roll_mrad', 'inward_bow_mm'] as const) expect(few[bar][key] / many[bar][key]).toBeCloseTo(1, 3);
  }
});
