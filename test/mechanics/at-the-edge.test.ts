/** Each formula of the joints by itself on uneven numbers, and each threshold from both sides. */
import { describe, expect, it } from 'vitest';
import { GRAVITY_N_PER_KG } from '../../src/base/gravity.js';
import { gussets, pickKeys, pickLip } from '../../src/mechanics/bench/pick-supply.js';
import { gaussLegendre } from '../../src/mechanics/cloth/gauss-legendre.js';
import { nearestDuck, numberedDuck_g_per_m2, numberedDuck_oz } from '../../src/mechanics/cloth/cloth-weight.js';
import { clothSheet, padOn } from '../../src/mechanics/cloth/cloth-sheet.js';
import { pushSpan, tapSpan } from '../../src/mechanics/cloth/frame-spans.js';
import { keyLimit } from '../../src/mechanics/cloth/key-limit.js';
import { pullAddedByPush_N_per_m, pushSag_mm } from '../../src/mechanics/cloth/push-test.js';
import { seasonalSwing } from '../../src/mechanics/cloth/seasonal-pull.js';
import { stapleOrder } from '../../src/mechanics/cloth/staples.js';
import { buttStress, halfLapStress, mitreStress, rectangleTwistStress_MPa } from '../../src/mechanics/corners/glued-face.js';
import { tongueUse } from '../../src/mechanics/corners/keyed-corner.js';
import { dowelBearing_MPa } from '../../src/mechanics/fasteners/dowel-bearing.js';
import { nailHoles, screwHoles } from '../../src/mechanics/fasteners/hole-plan.js';
import { clearanceDrill, nailHole_mm, nearestDrill, screwHole_mm } from '../../src/mechanics/fasteners/lead-hole.js';
import { yieldModes_N } from '../../src/mechanics/fasteners/yield-modes.js';
import { clampPressure_MPa, clampsFor } from '../../src/mechanics/glue/clamping.js';
import { glueLines, plyGlueLines } from '../../src/mechanics/glue/glue-lines.js';
import { glueOf, glueSheet } from '../../src/mechanics/glue/glue-sheet.js';
import { hangingForces, ringPlace } from '../../src/mechanics/hanging/hanging-forces.js';
import { ringHole } from '../../src/mechanics/hanging/ring.js';
import { waitForBoards } from '../../src/mechanics/moisture/board-drying.js';
import { barDried_share, daysToDry } from '../../src/mechanics/moisture/drying.js';
import { equilibriumMoisture_pct } from '../../src/mechanics/moisture/equilibrium.js';
import { plyScrewBoxes } from '../../src/mechanics/occupancy/ply-screw-boxes.js';
import { cornerParts } from '../../src/mechanics/occupancy/corner-parts.js';
import { staplesAside } from '../../src/mechanics/occupancy/staples-aside.js';
import { staplesBySteel } from '../../src/mechanics/occupancy/staple-line.js';
import { crossbarsMet } from '../../src/mechanics/occupancy/wire-path.js';
import type { CornerStatics } from '../../src/model/frame-results.js';
import type { Model } from '../../src/model/model.js';
import type { Drill, Hardware, Screw, Shelf } from '../../src/shelf/shelf.js';
import { demoModel, demoShelf, demoSolved } from './fasteners/demo-model.js';

const shelf = demoShelf();
const face = { width: '1140 mm', height: '690 mm' };
const square = { stock: 'square-38x38', lay: 'flat' };
const bare: CornerStatics = { axial_N: 0, shear_N: 0, moment_Nmm: 0, plate_moment_Nmm: 0, out_moment_Nmm: 0, torque_Nmm: 0 };
const [w, d] = [40, 22];

describe('stress on the face of a joint, one action at a time', () => {
  const twist = (T: number, a: number, b: number): number => (T * (3 * Math.max(a, b) + 1.8 * Math.min(a, b))) / (a * b) ** 2;
  it('a mitre: w√2 long; thrust and sliding at 45°, moments by its section moduli, their difference as twist', () => {
    const L = w * Math.SQRT2;
    expect(mitreStress({ ...bare, axial_N: 70, shear_N: 30 }, w, d)).toEqual({ normal_MPa: expect.closeTo(100 / Math.SQRT2 / (L * d), 12), shear_MPa: expect.closeTo(40 / Math.SQRT2 / (L * d), 12) });
    expect(mitreStress({ ...bare, moment_Nmm: -900 }, w, d)).toEqual({ normal_MPa: expect.closeTo((6 * 900) / (d * L ** 2), 12), shear_MPa: 0 });
    expect(mitreStress({ ...bare, out_moment_Nmm: 500, torque_Nmm: -200 }, w, d)).toEqual({ normal_MPa: expect.closeTo((6 * (700 / Math.SQRT2)) / (L * d ** 2), 12), shear_MPa: expect.closeTo(twist(300 / Math.SQRT2, L, d), 12) });
  });
  it('a butt joint: end grain w × d; the smaller force presses, the larger pulls and slides; the larger moment bends, the smaller twists', () => {
    expect(buttStress({ ...bare, axial_N: -70, shear_N: 30 }, w, d)).toEqual({ normal_MPa: expect.closeTo(-30 / (w * d), 12), shear_MPa: expect.closeTo(70 / (w * d), 12) });
    expect(buttStress({ ...bare, axial_N: -20, shear_N: 30 }, w, d)).toEqual({ normal_MPa: expect.closeTo(-20 / (w * d), 12), shear_MPa: expect.closeTo(30 / (w * d), 12) });
    expect(buttStress({ ...bare, axial_N: 50, shear_N: -30 }, w, d)).toEqual({ normal_MPa: expect.closeTo(50 / (w * d), 12), shear_MPa: expect.closeTo(50 / (w * d), 12) });
    expect(buttStress({ ...bare, moment_Nmm: -900 }, w, d)).toEqual({ normal_MPa: expect.closeTo((6 * 900) / (d * w ** 2), 12), shear_MPa: 0 });
    for (const [O, T] of [[500, -200], [-200, 500]]) expect(buttStress({ ...bare, out_moment_Nmm: O!, torque_Nmm: T! }, w, d)).toEqual({ normal_MPa: expect.closeTo((6 * 500) / (w * d ** 2), 12), shear_MPa: expect.closeTo(twist(200, w, d), 12) });
  });
  it('a half-lap: w × w; moments out of the plane peel it, the moment in it twists it, both forces slide it', () => {
    expect(halfLapStress({ ...bare, out_moment_Nmm: -500, torque_Nmm: 200 }, w)).toEqual({ normal_MPa: expect.closeTo((6 * 700) / w ** 3, 12), shear_MPa: 0 });
    expect(halfLapStress({ ...bare, axial_N: -30, shear_N: 40 }, w)).toEqual({ normal_MPa: 0, shear_MPa: expect.closeTo(50 / w ** 2, 12) });
    expect(halfLapStress({ ...bare, moment_Nmm: -900 }, w).shear_MPa).toBeCloseTo((900 * 3 * Math.SQRT2) / w ** 3, 12);
  });
  it('the twist of a rectangle is alike whichever side is named first', () => {
    expect([rectangleTwistStress_MPa(1000, 40, 10), rectangleTwistStress_MPa(1000, 10, 40)]).toEqual([expect.closeTo((1000 * 138) / 160_000, 12), expect.closeTo((1000 * 138) / 160_000, 12)]);
  });
  it('a tongue a third of the depth thick: what the thrust at the front shoulder does not carry bends it, over 14 · 0.8/1.3 MPa; the shoulder bears 3 MPa', () => {
    const [long, tongue] = [w * Math.SQRT2, d / 3];
    const bends = (Nmm: number): number => (6 * Nmm) / (long * tongue ** 2) / ((14 * 0.8) / 1.3);
    const presses = (N: number, Nmm: number): number => (N / (long * tongue) + (3 * Nmm) / (tongue * long ** 2)) / 3;
    expect(tongueUse({ ...bare, out_moment_Nmm: 900, torque_Nmm: 500 }, w, d)).toBeCloseTo(bends(1400 / Math.SQRT2), 9);
    const thrust = 100 / Math.SQRT2;
    expect(tongueUse({ ...bare, axial_N: -60, shear_N: 40, out_moment_Nmm: 900, torque_Nmm: 500 }, w, d)).toBeCloseTo(bends(1400 / Math.SQRT2 - (thrust * d) / 3), 9);
    expect(tongueUse({ ...bare, axial_N: 60, shear_N: 40, out_moment_Nmm: 900, torque_Nmm: 500 }, w, d)).toBeCloseTo(bends(1400 / Math.SQRT2), 9);
    expect(tongueUse({ ...bare, axial_N: -60, shear_N: 40, out_moment_Nmm: 1 }, w, d)).toBeCloseTo(presses(thrust, 0), 9);
    expect(tongueUse({ ...bare, moment_Nmm: -4000 }, w, d)).toBeCloseTo(presses(0, 4000), 9);
    expect(tongueUse({ ...bare, axial_N: -60, shear_N: 40, moment_Nmm: 4000 }, w, d)).toBeCloseTo(presses(thrust, 4000), 9);
  });
});

describe('fastenings', () => {
  it('a dowel with no wood on one side holds nothing by any mode; load along the grain is what is meant unless said', () => {
    const joint = { diameter_mm: 8, side_mm: 19, main_mm: 40, side_bearing_MPa: 30, main_bearing_MPa: 25, bending_yield_MPa: 500 };
    const nothing = { Im: 0, Is: 0, II: 0, IIIm: 0, IIIs: 0, IV: 0 };
    expect([yieldModes_N({ ...joint, side_mm: 0 }), yieldModes_N({ ...joint, main_mm: -3 })]).toEqual([nothing, nothing]);
    expect(yieldModes_N(joint)).toEqual(yieldModes_N({ ...joint, angle_deg: 0 }));
    expect(yieldModes_N({ ...joint, angle_deg: 90 }).IV).toBeCloseTo(yieldModes_N(joint).IV / 1.25, 9);
  });
  it('lead holes up to a specific gravity of 0.6 and beyond', () => {
    const screw = { shank_mm: 4, root_mm: 3 };
    expect([0.6, 0.601].flatMap((G) => [screwHole_mm(screw, G, 'shank'), screwHole_mm(screw, G, 'thread'), screwHole_mm(screw, G, 'shank', 'withdrawal'), screwHole_mm(screw, G, 'thread', 'withdrawal'), nailHole_mm(2, G)])).toEqual([
      3.5, 2.625, 3.5, expect.closeTo(2.1, 12), 1.5, 4, 3, 4, expect.closeTo(2.7, 12), 1.8,
    ]);
  });
  const drills = [{ label: '2 mm', diameter_mm: 2 }, { label: '3 mm', diameter_mm: 3 }, { label: '2.5 mm', diameter_mm: 2.5 }, { label: '7/64 in', diameter_mm: 2.778 }, { label: '1/8 in', diameter_mm: 3.175 }] as Drill[];
  it('the drill that suits a hole is of the plan’s units where one fits, else of the others', () => {
    const near = (mm: number, units: 'metric' | 'inch' | null) => nearestDrill(drills, mm, units)?.label;
    expect([near(2.9, 'metric'), near(2.9, 'inch'), near(2.9, null), near(3, 'metric'), near(2.6, 'inch'), near(1.9, 'metric')]).toEqual(['2.5 mm', '7/64 in', '7/64 in', '3 mm', '2.5 mm', undefined]);
    const clear = (mm: number, units: 'metric' | 'inch' | null) => clearanceDrill(drills, mm, units)?.label;
    expect([clear(2.6, 'metric'), clear(2.6, 'inch'), clear(2.6, null), clear(3, 'metric'), clear(3.1, 'metric'), clear(3.2, 'inch')]).toEqual(['3 mm', '7/64 in', '7/64 in', '3 mm', '1/8 in', undefined]);
  });
  it('a planned pilot is told by the drill of that size, where there is one; a clamping screw slips through, a carrying one does not', () => {
    const { plan } = demoModel({ face, bars: square });
    const screw = { shank_mm: 3.1, root_mm: 2.5 } as Screw;
    const on = { ...shelf, drills } as Shelf;
    const holes = (role: 'clamp' | 'load' | 'steel', planned: number | null) => screwHoles(screw, 0.42, role, plan, on, planned);
    expect(holes('clamp', null)).toMatchObject({ pilot_rule_mm: expect.closeTo((7 / 8) * 2.5, 12), pilot_mm: 2, pilot_label: '2 mm', pilot_planned: false, clearance: { label: '1/8 in' } });
    expect([holes('steel', null).clearance?.label, holes('load', null).clearance?.label]).toEqual(['1/8 in', '2.5 mm']);
    expect([holes('clamp', 2.51), holes('clamp', 2.53), holes('clamp', 2.3456)].map(({ pilot_mm, pilot_label, pilot_planned }) => [pilot_mm, pilot_label, pilot_planned])).toEqual([[2.51, '2.5 mm', true], [2.53, null, true], [2.3456, null, true]]);
    expect(nailHoles(3, 0.42, plan, on)).toEqual({ pilot_rule_mm: 2.25, pilot_mm: 2, pilot_label: '2 mm', pilot_planned: false, clearance: null });
    expect(nailHoles(2, 0.42, plan, on)).toMatchObject({ pilot_rule_mm: 1.5, pilot_mm: null, pilot_label: null });
  });
  it('a ring’s hole: 70 % of three quarters of its thread, nine tenths as deep, 1 mm short of coming out', () => {
    const ring = { thread_diameter_mm: 4.5, thread_length_mm: 25 } as Hardware;
    expect(ringHole(ring, 0.42, 38, drills, 'metric')).toEqual({ drill: expect.objectContaining({ label: '2 mm' }), depth_mm: Math.round(22.5) });
    expect(ringHole(ring, 0.42, 20, drills, 'metric').depth_mm).toBe(19);
    expect(ringHole({ ...ring, thread_diameter_mm: 3 }, 0.42, 38, drills, 'metric').drill).toBeNull();
    expect(ringHole({ ...ring, thread_diameter_mm: 4.5 }, 0.61, 38, drills, 'metric').drill?.label).toBe('3 mm');
  });
});

describe('glue', () => {
  it('clamps one more for each ten inches begun between the outermost, which stand 1-3/4 in from the ends', () => {
    const at = (gaps: number): number => 2 * 1.75 * 25.4 + gaps * 254;
    expect([at(0), at(0) + 0.1, at(1), at(1) + 0.1, at(4) - 0.1, at(4) + 0.1].map(clampsFor)).toEqual([1, 2, 2, 3, 5, 6]);
  });
  it('pressure by class, the edges themselves in the lower one: 100–150, 150–200, 200–300 psi', () => {
    const psi = (G: number): number[] => Object.values(clampPressure_MPa(G)).map((MPa) => Math.round((MPa * 25.4 ** 2) / 4.4482216152605));
    expect([0.5, 0.501, 0.6, 0.601].map(psi)).toEqual([[100, 150], [150, 200], [150, 200], [200, 300]]);
  });
  const pair = { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue' };
  it('large from 1000 mm on, damp over 12 %, warm enough at the glue’s own least', () => {
    const sheet = (more: object) => glueSheet(demoModel({ face, bars: square, ...more }))!;
    expect([sheet({ face: { width: '999 mm', height: '500 mm' } }).handle_h, sheet({ face: { width: '500 mm', height: '1000 mm' } }).handle_h]).toEqual([3, 12]);
    expect(sheet({ face: { width: '1000 mm', height: '500 mm' }, corners: { glue: 'epoxy' } }).handle_h).toBe(12);
    expect([sheet({ lumber: { moisture: '12 %' } }), sheet({ lumber: { moisture: '12.1 %' } })].map(({ damp, clamp_min }) => [damp, clamp_min])).toEqual([[false, 60], [true, 90]]);
    expect([sheet({ room: { temperature: '10 C' } }).warm_enough, sheet({ room: { temperature: '9.9 C' } }).warm_enough]).toEqual([true, false]);
    const glued = sheet({ bars: pair });
    expect(glued).toMatchObject({ clamps_on: 'plies', clamps_count: clampsFor(1140), open_min: 5, cure_h: 24, least_temperature_C: 10 });
    expect(glued.force.low_N).toBeCloseTo((glued.pressure_MPa.low * 1140 * 38) / glued.clamps_count, 6);
  });
  it('of the corners where they are glued, else the shelf’s first for the plies alone, else none', () => {
    const dry = { glue: 'none', nails: { use: 'brad-18ga-25', each: 2 } };
    const key = (bars: object, corners: object): string | undefined => glueOf(demoModel({ face, bars, corners }))?.key;
    expect([key(pair, { glue: 'hide' }), key(pair, dry), key({ ...pair, bond: 'screws' }, dry), key(square, dry)]).toEqual(['hide', 'pva', undefined, undefined]);
    expect(glueOf({ ...demoModel({ face, bars: pair, corners: dry }), shelf: { ...shelf, glues: {} } })).toBeNull();
  });
  it('faces of every joint: plies, corners by their cut, ends of crossbars and braces no deeper than the bars, a lip all round', () => {
    const model = demoModel({
      face, bars: { ...pair, lip: '5 mm' }, corners: { cut: 'butt', brace: { kind: 'timber', leg: '200 mm', stock: 'stud-38x64', lay: 'edge' } },
      crossbars: [{ runs: 'upright', at: 0.4, stock: 'strip-19x38', lay: 'flat', plies: 2 }, { runs: 'level', at: 0.6, stock: 'stud-38x64', lay: 'edge' }],
    });
    expect(plyGlueLines(model).map(({ piece, length_mm, breadth_mm, lines }) => [piece, length_mm, breadth_mm, lines])).toEqual([
      ['top', 1140, 38, 1], ['bottom', 1140, 38, 1], ['left', 690, 38, 1], ['right', 690, 38, 1], ['crossbar-1', 690 - 76, 19, 1],
    ]);
    const lines = glueLines(model).filter(({ what }) => what !== 'plies');
    expect(lines.slice(0, 3).map(({ what, count, area_mm2, end_grain }) => [what, count, area_mm2, end_grain])).toEqual([['corners', 4, 38 * 38, true], ['crossbar-ends', 2, 76 * 19, true], ['crossbar-ends', 2, 38 * 38, true]]);
    expect(lines.slice(3)).toEqual([
      ...Array.from({ length: 4 }, () => ({ what: 'brace-ends', count: 2, area_mm2: expect.closeTo(38 * Math.SQRT2 * 38, 9), end_grain: true })),
      { what: 'lip', count: 2, area_mm2: 5 * (1140 + 690), end_grain: false },
    ]);
    const corner = (cut: string) => glueLines(demoModel({ face, bars: { stock: 'board-19x64', lay: 'flat' }, corners: { cut } })).map(({ count, area_mm2, end_grain }) => [count, Math.round(area_mm2 * 1000) / 1000, end_grain]);
    expect([corner('mitre'), corner('butt'), corner('half-lap')]).toEqual([[[4, Math.round(64 * Math.SQRT2 * 19 * 1000) / 1000, true]], [[4, 64 * 19, true]], [[4, 64 * 64, false]]]);
    const back = plyGlueLines(demoModel({ face, bars: { stock: 'board-19x64', lay: 'flat', plies: 3, stack: 'front-to-back', bond: 'glue' } }));
    expect(back[0]).toEqual({ piece: 'top', length_mm: 1140, breadth_mm: 64, lines: 2 });
  });
});

describe('cloth', () => {
  it('a numbered duck within 4 % of its weight, No. 1 to 12; the numbers themselves go from 1 to 18', () => {
    expect([1, 18].map(numberedDuck_oz)).toEqual([18, 1]);
    for (const none of [0.99, 18.01, NaN]) expect(() => numberedDuck_oz(none)).toThrow(RangeError);
    for (const number of [9, 12]) {
      const mass = numberedDuck_g_per_m2(number);
      // The share is of the cloth that is weighed.
      expect([mass / 0.961, mass / 0.959, mass / 1.039, mass / 1.041].map(nearestDuck)).toEqual([number, null, number, null]);
    }
    expect([1, 13].map((number) => nearestDuck(numberedDuck_g_per_m2(number)))).toEqual([1, null]);
    expect(nearestDuck(numberedDuck_g_per_m2(1) * 1.2)).toBeNull();
  });
  it('a ground is told from one coat on, with its paste for all coats', () => {
    const ground = (coats: number, on: Shelf = shelf) => {
      const { model, solution } = demoSolved({ face, bars: square, ground: { coats } }, on);
      return clothSheet(model, solution).ground;
    };
    expect([ground(0), ground(1, { ...shelf, grounds: {} })]).toEqual([null, null]);
    expect(ground(1)).toMatchObject({ coats: 1, volume_ml: expect.closeTo((150 * 1140 * 690) / 1e6, 9), dry_h_each: 4 });
    expect(ground(3)!.volume_ml).toBeCloseTo((3 * 150 * 1140 * 690) / 1e6, 9);
  });
  it('swings from the middles of the bars, and a push leans on their inner edges; over a lip the whole face does', () => {
    const flat = demoModel({ face, bars: { stock: 'board-19x64', lay: 'flat' } });
    expect([tapSpan(flat), pushSpan(flat)]).toEqual([{ width_mm: 1140 - 64, height_mm: 690 - 64 }, { width_mm: 1140 - 128, height_mm: 690 - 128 }]);
    const lip = demoModel({ face, bars: { stock: 'board-19x64', lay: 'flat', lip: '1 mm' } });
    expect([tapSpan(lip), pushSpan(lip)]).toEqual([{ width_mm: 1140, height_mm: 690 }, { width_mm: 1140, height_mm: 690 }]);
  });
  it('the pad of the push test is 50 mm, 2 in in an inch plan, and no larger than the opening', () => {
    const pad = (width: string, height: string): number => padOn(demoModel({ face: { width, height }, bars: { stock: 'board-19x64', lay: 'flat' } }));
    expect([pad('600 mm', '500 mm'), pad('24 in', '20 in'), pad('600 mm', '170 mm'), pad('165 mm', '600 mm')]).toEqual([50, 50.8, 42, 37]);
  });
  it('keys stop at the spare pull of the way that has less, over the shorter side; bare cloth that is at its peak has none', () => {
    const bareCloth = (peak: object, working: object = { x: '150 N/m', y: '250 N/m' }) => keyLimit(demoModel({ face, bars: square, ground: { coats: 0 }, cloth: { pull: { working, peak } } }));
    expect(bareCloth({ x: '400 N/m', y: '300 N/m' })).toEqual({ travel_mm: expect.closeTo(((50 / 50_000) * 690) / 2, 12), because: 'pull' });
    expect(bareCloth({ x: '180 N/m', y: '900 N/m' })).toEqual({ travel_mm: expect.closeTo(((30 / 50_000) * 690) / 2, 12), because: 'pull' });
    const grounded = demoModel({ face, bars: square, ground: { coats: 1 } });
    expect([keyLimit(grounded).because, keyLimit({ ...grounded, shelf: { ...shelf, grounds: {} } }).because]).toEqual(['ground', 'pull']);
  });
  it('what a push adds by stretching: its work, force × sag, is twice the pull times the area’s stretch, shared by two ways; sag goes by the weight', () => {
    const span = { width_mm: 900, height_mm: 600 };
    expect(pullAddedByPush_N_per_m(span, 200, 5, 8, 60_000)).toBeCloseTo((60_000 * 5 * 0.008) / (4 * 200 * 0.54), 12);
    expect(pushSag_mm(span, { x_N_per_m: 200, y_N_per_m: 200 }, 1000 / GRAVITY_N_PER_KG, 50) * 500).toBeCloseTo(pushSag_mm(span, { x_N_per_m: 200, y_N_per_m: 200 }, (500 * 1000) / GRAVITY_N_PER_KG, 50), 6);
  });
  it('every staple once where all four sides differ, each side from its middle outward', () => {
    const perSide = { top: 9, bottom: 4, left: 3, right: 7 };
    const order = stapleOrder(perSide);
    for (const [side, count] of Object.entries(perSide)) {
      const own = order.filter((staple) => staple.side === side).map(({ at }) => at);
      expect([...own].sort((p, q) => p - q)).toEqual(Array.from({ length: count }, (_, i) => (i + 0.5) / count));
      own.forEach((at, i) => i > 0 && expect(Math.abs(at - 0.5)).toBeGreaterThanOrEqual(Math.abs(own[i - 1]! - 0.5) - 1e-12));
    }
    expect(order.slice(0, 6).map(({ side, round }) => [side, round])).toEqual([['top', 1], ['bottom', 1], ['bottom', 1], ['left', 1], ['right', 1], expect.anything()]);
  });
  it('Gauss’s points integrate every power up to 2n − 1 and no further', () => {
    for (const count of [1, 2, 5, 16]) {
      const { nodes, weights } = gaussLegendre(count);
      const integral = (power: number): number => nodes.reduce((sum, x, i) => sum + weights[i]! * x ** power, 0);
      for (let power = 0; power < 2 * count; power++) expect(integral(power)).toBeCloseTo(1 / (power + 1), 13);
      if (count < 6) expect(Math.abs(integral(2 * count) - 1 / (2 * count + 1))).toBeGreaterThan(1e-9);
    }
  });
});

it('between dry and damp air the pull swings by 1 % at 98 %, times the fourth power of the humidity; the second and the eighth power bound it', () => {
  const swing = (n: number): number => 60_000 * 0.01 * ((0.8 / 0.98) ** n - (0.4 / 0.98) ** n);
  expect(seasonalSwing(60_000, 0.4, 0.8)).toEqual({ value_N_per_m: expect.closeTo(swing(4), 9), low_N_per_m: expect.closeTo(swing(8), 9), high_N_per_m: expect.closeTo(swing(2), 9) });
});

it('a sheet within 1 mm of the wanted thickness is taken for it', () => {
  const thick = (thickness_mm: number): number => {
    const supplies = { sheet: { ...shelf.supplies['plywood-9-small']!, key: 'sheet', thickness_mm, inches: null } } as unknown as Shelf['supplies'];
    return gussets(demoModel({ face, bars: square, corners: { brace: { kind: 'ply-gusset', leg: '150 mm' } } }, { ...shelf, supplies }))!.sheets.length;
  };
  expect([7.9, 8, 10, 10.1].map(thick)).toEqual([0, 1, 1, 0]);
});

it('wood bears along the grain unless an angle is said', () => {
  expect(dowelBearing_MPa(0.42, 8)).toBe(dowelBearing_MPa(0.42, 8, 0));
  expect(dowelBearing_MPa(0.42, 8)).toBeGreaterThan(dowelBearing_MPa(0.42, 8, 1));
});

describe('moisture', () => {
  it('air from bone dry to wet through, and nothing beyond', () => {
    expect(equilibriumMoisture_pct(0, 20)).toBe(0);
    expect(equilibriumMoisture_pct(1, 20)).toBeGreaterThan(25);
    for (const none of [-0.001, 1.001, NaN]) expect(() => equilibriumMoisture_pct(none, 20)).toThrow(RangeError);
  });
  it('nine tenths unless said; as many days as that share takes, to a thousandth, and none for no way or all of it', () => {
    for (const share of [0.5, 0.9, 0.99]) {
      const days = daysToDry(19, 38, 1e-10, share);
      expect([barDried_share(19, 38, 1e-10, days) >= share, barDried_share(19, 38, 1e-10, days - 2e-3) < share]).toEqual([true, true]);
    }
    expect(daysToDry(19, 38, 1e-10)).toBe(daysToDry(19, 38, 1e-10, 0.9));
    expect(daysToDry(38, 19, 1e-10)).toBeCloseTo(daysToDry(19, 38, 1e-10), 2);
    for (const none of [0, 1, NaN]) expect(() => daysToDry(19, 38, 1e-10, none)).toThrow(RangeError);
  });
  it('the slowest board decides, with a third and three times of its days; the shelf’s own diffusion counts', () => {
    const plan = { face, bars: { stock: 'strip-19x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: 0.4, stock: 'square-38x38' }] };
    const wait = waitForBoards(demoModel(plan));
    expect(wait).toMatchObject({ thickness_mm: 38, width_mm: 38 });
    expect([wait.low_days * 3, wait.high_days / 3]).toEqual([expect.closeTo(wait.days, 9), expect.closeTo(wait.days, 9)]);
    const model = demoModel(plan);
    const faster = (value: number): number => waitForBoards({ ...model, shelf: { ...shelf, proposals: { ...shelf.proposals, diffusion: { ...shelf.proposals['diffusion']!, value } } } }).days;
    expect(faster(2e-10) / faster(1e-10)).toBeCloseTo(0.5, 3);
    const { diffusion: _, ...rest } = shelf.proposals;
    expect(waitForBoards({ ...model, shelf: { ...shelf, proposals: rest } }).days).toBeCloseTo(faster(1e-10), 9);
  });
});

describe('hanging by a wire', () => {
  it('rings stand where the drop says, on the bars’ own middles, and never at the very ends', () => {
    const plan = { face: { width_mm: 1140, height_mm: 690 } } as Model['plan'];
    for (const drop of [100, 180, 400]) expect(ringPlace(plan, drop, 38) * (690 - 38) + 38 / 2).toBeCloseTo(690 - drop, 9);
    expect([ringPlace(plan, 19, 38), ringPlace(plan, 690, 38)]).toEqual([0.98, 0.02]);
  });
  it('its forces hold each other: two rings up and in, the weight by length on all four bars at their quarter points', () => {
    const model = demoModel({ face, bars: square, hang: { by: 'wire', from: 'inside', drop: '180 mm', hooks: 1, slack: '80 mm' } });
    const forces = hangingForces(model);
    const W = model.weight.total_kg * GRAVITY_N_PER_KG;
    expect(forces).toHaveLength(10);
    expect(forces.reduce((sum, { Fx }) => sum + Fx, 0)).toBeCloseTo(0, 9);
    expect(forces.reduce((sum, { Fy }) => sum + Fy, 0)).toBeCloseTo(0, 9);
    const [left, right] = forces;
    // The wire rises 80 mm over half the span between the inner faces.
    expect(left).toEqual({ bar: 'left', at: expect.closeTo((690 - 180 - 19) / 652, 9), Fx: expect.closeTo((W / 2) * (532 / 80), 6), Fy: expect.closeTo(W / 2, 9), Fz: 0 });
    expect(right).toEqual({ ...left, bar: 'right', Fx: -left!.Fx });
    for (const [bar, length] of [['top', 1140], ['bottom', 1140], ['left', 690], ['right', 690]] as const)
      expect(forces.slice(2).filter((f) => f.bar === bar)).toEqual([0.25, 0.75].map((at) => ({ bar, at, Fx: 0, Fy: expect.closeTo((-W * length) / (2 * (1140 + 690)) / 2, 9), Fz: 0 })));
    expect([hangingForces(demoModel({ face, bars: square, hang: { by: 'two-hooks' } })), hangingForces({ ...model, plan: { ...model.plan, hang: { ...model.plan.hang, slack_mm: 0 } } })]).toEqual([[], []]);
  });
});

it('a wire from inside comes nearer to the wall on its way to the hook: a level crossbar is met near the rings and cleared near the hook', () => {
  // The crossbar lies from 31 to 69 mm in front of the backs; the wire goes from 60 mm at the rings, 300 mm down, to 8 mm at the hook, 200 mm down.
  const met = (down_mm: number): number => {
    const model = demoModel({ face: { width: '1240 mm', height: '860 mm' }, bars: { stock: 'stud-38x89', lay: 'edge' }, crossbars: [{ runs: 'level', at: `${860 - down_mm} mm`, stock: 'square-38x38', setback: '20 mm' }], hang: { by: 'none' } });
    return crossbarsMet(model, { ring_x_mm: 38, ring_drop_mm: 300, hook_x_mm: 400, hook_drop_mm: 200, ring_deep_mm: 60 }).length;
  };
  // It is 31 mm deep, with 2 mm of room, some 54 to 59 mm above the rings; above the hook it is as far in as at the hook.
  expect([295, 260, 220, 205, 190].map(met)).toEqual([1, 1, 0, 0, 0]);
  expect(met(310)).toBe(1);
});

describe('what corners put on the bars, as boxes from the left or bottom end', () => {
  const on = (model: Model, kind: string) => cornerParts(model).filter((one) => one.kind === kind).map(({ bar, of, along_mm, across_mm, deep_mm, keep_mm }) => ({ bar, of, along_mm, across_mm, deep_mm, keep_mm }));
  /** From the outside corner, for each bar of each corner in the order they are told. */
  const places = (from: number, to: number): readonly (readonly [string, string, number, number])[] =>
    (['top-left', 'top-right', 'bottom-left', 'bottom-right'] as const).flatMap((corner) => {
      const [level, upright] = corner.split('-') as [string, string];
      const span = (far: boolean, length: number): [number, number] => (far ? [length - to, length - from] : [from, to]);
      return [[corner, level, ...span(upright === 'right', 1140)], [corner, upright, ...span(level === 'top', 690)]] as const;
    });
  const near = (mm: number) => expect.closeTo(mm, 9);

  it('the feet of timber braces and their screws', () => {
    const model = demoModel({ face, bars: square, corners: { brace: { kind: 'timber', leg: '200 mm', stock: 'strip-19x38', lay: 'flat' } } });
    const half = 38 / Math.SQRT2;
    expect(on(model, 'brace')).toEqual(places(200 - half, 200 + half).map(([corner, bar, from, to]) => ({ bar, of: corner, along_mm: [near(from), near(to)], across_mm: [-38, 0], deep_mm: [0, 19], keep_mm: 2 })));
    const { shank_mm: D } = shelf.screws['screw-6x38']!;
    const at = 200 + half - 16;
    expect(on(model, 'brace-screw')).toEqual(places(at - D / 2, at + D / 2).map(([corner, bar, from, to]) => ({
      bar, of: corner, along_mm: [near(from), near(to)], across_mm: [-16, near(38.1 - 16)], deep_mm: [near(9.5 - D / 2), near(9.5 + D / 2)], keep_mm: 2 * D,
    })));
  });
  it('gussets over the whole bar, angles along its middle, both on its back, with their screws', () => {
    const gusset = demoModel({ face, bars: square, corners: { brace: { kind: 'ply-gusset', leg: '150 mm' } } });
    expect(on(gusset, 'gusset')).toEqual(places(0, 169).map(([corner, bar, from, to]) => ({ bar, of: corner, along_mm: [near(from), near(to)], across_mm: [0, 38], deep_mm: [-9, 0], keep_mm: 2 })));
    expect(on(gusset, 'gusset-screw')).toHaveLength(8 * 3);
    const angle = demoModel({ face, bars: square, corners: { brace: { kind: 'steel-angle', leg: '100 mm' } } });
    const leg = angle.plate!.leg_mm;
    expect(on(angle, 'angle')).toEqual(places(0, leg).map(([corner, bar, from, to]) => ({ bar, of: corner, along_mm: [near(from), near(to)], across_mm: [near(19 - 0.45 * 19), near(19 + 0.45 * 19)], deep_mm: [-2, 0], keep_mm: 2 })));
    const screws = on(angle, 'angle-screw');
    expect(screws).toHaveLength(16);
    const { shank_mm: D, length_mm } = shelf.screws['screw-6x25']!;
    const at = Math.round(100 / 3 + 19);
    expect(screws[0]).toEqual({ bar: 'top', of: 'top-left', along_mm: [near(at - D / 2), near(at + D / 2)], across_mm: [near(19 - D / 2), near(19 + D / 2)], deep_mm: [-2, near(length_mm - 2)], keep_mm: 2 * D });
  });
  it('nails through the outer edge of a mitre, and from the back through a lap', () => {
    const nails = { use: 'brad-18ga-25', each: 1 };
    const { diameter_mm: D, length_mm } = shelf.nails['brad-18ga-25']!;
    const mitred = on(demoModel({ face, bars: { stock: 'stud-38x64', lay: 'edge' }, corners: { cut: 'mitre', nails } }), 'corner-nail');
    expect(mitred).toEqual(places(13 - D / 2, 13 + D / 2).map(([corner, bar, from, to]) => ({ bar, of: corner, along_mm: [near(from), near(to)], across_mm: [38 - length_mm, 38], deep_mm: [near(32 - D / 2), near(32 + D / 2)], keep_mm: 2 * D })));
    const lapped = on(demoModel({ face, bars: square, corners: { cut: 'half-lap', nails } }), 'corner-nail');
    expect(lapped).toEqual(places(19 - D / 2, 19 + D / 2).map(([corner, bar, from, to]) => ({ bar, of: corner, along_mm: [near(from), near(to)], across_mm: [near(19 - D / 2), near(19 + D / 2)], deep_mm: [0, length_mm], keep_mm: 2 * D })));
  });
  it('ply screws take turns between two lines, the first near the back or the inner edge', () => {
    const screw = { shank_mm: 4, length_mm: 30, edge_mm: 15 };
    const side = demoModel({ face, bars: { stock: 'board-19x64', lay: 'edge', plies: 2, bond: 'screws' } });
    const boxes = (model: Model) => plyScrewBoxes(model, 'left', screw, [100, 200, 300]).map(({ along_mm, across_mm, deep_mm }) => [along_mm, across_mm, deep_mm]);
    expect(boxes(side)).toEqual([[[98, 102], [0, 30], [13, 17]], [[198, 202], [0, 30], [47, 51]], [[298, 302], [0, 30], [13, 17]]]);
    const back = demoModel({ face, bars: { stock: 'board-19x64', lay: 'flat', plies: 2, stack: 'front-to-back', bond: 'screws' } });
    expect(boxes(back)).toEqual([[[98, 102], [13, 17], [0, 30]], [[198, 202], [47, 51], [0, 30]], [[298, 302], [13, 17], [0, 30]]]);
  });
  it('a staple over the very end of the steel counts as on it', () => {
    // Staples 50 mm apart on 600 and 400 mm stand at 25, 75, 125 …; steel of 125 mm ends on the third.
    const steel = (leg_mm: number) => {
      const supplies = { ...Object.fromEntries(Object.entries(shelf.supplies).filter(([, one]) => one.kind !== 'angle')), only: { ...Object.values(shelf.supplies).find((one) => one.kind === 'angle')!, key: 'only', leg_mm, inches: null } };
      return staplesBySteel(demoModel({ face: { width: '600 mm', height: '400 mm' }, bars: { stock: 'strip-19x38', lay: 'edge' }, corners: { brace: { kind: 'steel-angle', leg: '80 mm' } }, cloth: { fixing: { to: 'back', every: '50 mm' } } }, { ...shelf, supplies } as unknown as Shelf))!.on_steel;
    };
    expect([steel(124.9), steel(125), steel(174.9), steel(175)]).toEqual([16, 24, 24, 32]);
  });
  it('a strip of 8 mm beside the steel takes them all, a narrower one none of those on the steel', () => {
    // The steel of an angle lies in the middle of a bar and takes 45 % of its width: 55 % is bare, half of it outside.
    const strip = (wide_mm: number) => {
      const lumber = { ...shelf.lumber, own: { ...shelf.lumber['square-38x38']!, key: 'own', thickness_mm: wide_mm, width_mm: wide_mm } };
      return staplesBySteel(demoModel({ face: { width: '600 mm', height: '400 mm' }, bars: { stock: 'own', lay: 'flat' }, corners: { brace: { kind: 'steel-angle', leg: '80 mm' } }, cloth: { fixing: { to: 'back', every: '50 mm' } } }, { ...shelf, lumber } as Shelf))!;
    };
    const [wide, narrow] = [strip(8 / 0.275), strip(7.99 / 0.275)];
    expect([wide.strip_mm, narrow.strip_mm]).toEqual([expect.closeTo(8, 9), expect.closeTo(7.99, 9)]);
    expect([wide.on_steel, narrow.on_steel > 0]).toEqual([0, true]);
  });
});

it('a lip of 1 mm is a strip to buy and to glue; none is neither', () => {
  const at = (lip: string) => demoModel({ face, bars: { ...square, lip } });
  expect([pickLip(at('1 mm'))?.kind, pickLip(at('0 mm'))]).toEqual(['lip', null]);
  expect(['1 mm', '0 mm'].map((lip) => glueLines(at(lip)).filter(({ what }) => what === 'lip').map(({ area_mm2 }) => area_mm2))).toEqual([[1140 + 690], []]);
});

it('no staple is moved, and none by any distance, where no head lies in the line', () => {
  expect(staplesAside(demoModel({ face, bars: square, corners: { nails: 'none' } }))).toMatchObject({ moved: 0, most_mm: 0, left: 0, heads: [] });
});

it('keys are the shelf’s first, or none', () => {
  const model = demoModel({ face, bars: square, corners: { cut: 'keyed' } });
  expect([pickKeys(model)?.key, pickKeys({ ...model, shelf: { ...shelf, supplies: {} } })]).toEqual(['corner-key', null]);
});
