import { describe, expect, it } from 'vitest';
import { braceMoment_Nmm, gluedPatchMoment_Nmm } from '../../../src/mechanics/corners/brace-capacity.js';
import { bareCornerMoment_Nmm, mitreDemand } from '../../../src/mechanics/corners/corner-demand.js';
import { cornerNailUse } from '../../../src/mechanics/corners/corner-nail-use.js';
import { nailedUse } from '../../../src/mechanics/corners/nailed-corner.js';
import { planBraceScrews } from '../../../src/mechanics/fasteners/brace-fastening.js';
import { planCornerNails } from '../../../src/mechanics/fasteners/corner-nails.js';
import type { CornerStatics } from '../../../src/model/frame-results.js';
import { frameOf } from '../../frame3d/frame-shapes.js';
import { demoModel } from '../fasteners/demo-model.js';

const corner = { axial_N: -90, shear_N: 60, moment_Nmm: -5200, out_moment_Nmm: 700, torque_Nmm: -300 } as CornerStatics;

describe('a bar’s end forces on its mitre', () => {
  it('press or pull by the sign of the axial force, and slide by their difference', () => {
    expect(mitreDemand(corner)).toEqual({ normal_N: -150 / Math.SQRT2, sliding_N: 30 / Math.SQRT2, in_plane_Nmm: 5200, out_Nmm: 1000 / Math.SQRT2, twist_Nmm: 400 / Math.SQRT2 });
    expect(mitreDemand({ ...corner, axial_N: 20 }).normal_N).toBe(80 / Math.SQRT2);
    expect(mitreDemand({ ...corner, axial_N: 20 }).sliding_N).toBe(40 / Math.SQRT2);
    expect(mitreDemand({ ...corner, axial_N: 0 }).normal_N).toBe(60 / Math.SQRT2);
  });
  it('bare frames of unequal bars: the fixed-end moments of both spans, shared by stiffness', () => {
    const shape = frameOf({ width: 1340, height: 860, w: 40, d: 20 });
    const unequal = { ...shape, bars: { ...shape.bars, left: { ...shape.bars.left, I_plane_mm4: 3 * shape.bars.left.I_plane_mm4 } } };
    const [Lx, Ly, I] = [1300, 820, shape.bars.top.I_plane_mm4];
    expect(bareCornerMoment_Nmm(unequal, { x: 0.3, y: 0.2 })).toBeCloseTo(((0.2 * Lx ** 3) / I + (0.3 * Ly ** 3) / (2 * I)) / (12 * (Lx / I + Ly / (2 * I))), 6);
  });
});

describe('nails alone', () => {
  const joint = { cut: 'mitre', w_mm: 38, d_mm: 20, each: 3, lateral_N: 50, place_mm: 12 } as const;
  it('mitre: opening n Z (w − place), out of the plane n Z d/(2√2), sliding n Z', () => {
    expect(nailedUse(joint, corner)).toBeCloseTo(5200 / (3 * 50 * 26) + 1000 / Math.SQRT2 / ((3 * 50 * 20) / (2 * Math.SQRT2)) + 30 / Math.SQRT2 / 150, 12);
    expect(nailedUse({ ...joint, lateral_N: 0.1 }, corner)).toBe(99);
    expect(nailedUse({ ...joint, lateral_N: 0 }, corner)).toBe(99);
    expect(nailedUse(joint, { axial_N: 0, shear_N: 0, moment_Nmm: 0, out_moment_Nmm: 0, torque_Nmm: 0 } as CornerStatics)).toBe(0);
  });
  it('half-lap: two and more turn about their middle, n Z w/4; one alone holds no moment', () => {
    expect(nailedUse({ ...joint, cut: 'half-lap' }, corner)).toBeCloseTo(5200 / ((3 * 50 * 38) / 4) + Math.hypot(90, 60) / 150, 12);
    expect(nailedUse({ ...joint, cut: 'half-lap', each: 1 }, corner)).toBe(99);
    expect(nailedUse({ ...joint, cut: 'half-lap', each: 1 }, { ...corner, moment_Nmm: 0 })).toBeCloseTo(Math.hypot(90, 60) / 50, 12);
    expect(nailedUse({ ...joint, cut: 'half-lap', each: 2 }, corner)).toBeLessThan(99);
  });
  it('butt: nothing', () => expect(nailedUse({ ...joint, cut: 'butt' }, corner)).toBe(99));

  it('of a plan: what its nails carry, more for a knock than for good; none, nothing holds', () => {
    const plan = (use: string) => demoModel({ face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { glue: 'none', nails: { use, each: 2 } } });
    const model = plan('brad-16ga-32');
    const nails = planCornerNails(model)!;
    const place_mm = nails.end_mm;
    expect(cornerNailUse(model, corner, 1.6)).toBeCloseTo(nailedUse({ cut: 'mitre', w_mm: 38, d_mm: 38, each: 2, lateral_N: 1.6 * nails.lateral_N, place_mm }, corner), 9);
    expect(cornerNailUse(demoModel({ face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { glue: 'pva', nails: 'none' } }), corner, 1)).toBe(99);
  });
});

describe('what braces and plates could carry alone', () => {
  const face = { width: '1100 mm', height: '700 mm' };
  const braced = (glue: string, brace: object, bars: object = { stock: 'square-38x38', lay: 'flat' }) => demoModel({ face, bars, corners: { cut: 'mitre', glue, nails: { use: 'brad-18ga-25', each: 2 }, brace } });

  it('a glued patch turns about its middle: its polar modulus b h √(b² + h²)/6 times the bond', () => {
    expect(gluedPatchMoment_Nmm(30, 40, 2)).toBe(((30 * 40 * 50) / 6) * 2);
  });
  it('a timber brace: the force in it at leg/√2 from the corner; glue on its mitred end, or one screw across it, whichever is stronger', () => {
    const timber = { kind: 'timber', leg: '200 mm', stock: 'board-19x64', lay: 'flat' };
    const model = braced('pva', timber);
    const bond = model.shelf.joints.bond_MPa.butt;
    expect(braceMoment_Nmm(model, 1)).toBeCloseTo((bond * 64 * Math.SQRT2 * 19 * 200) / Math.SQRT2, 6);
    const dry = braced('none', timber);
    expect(braceMoment_Nmm(dry, 1.25)).toBeCloseTo(1.25 * planBraceScrews(dry)!.lateral_N * 200, 6);
    const deep = braced('pva', { ...timber, lay: 'edge' });
    expect(braceMoment_Nmm(deep, 1)).toBeCloseTo(bond * 19 * 38 * 200, 6);
  });
  it('a gusset: glue from the mitre to the end of its leg under the rolling shear of its veneers, or its screws about their middle', () => {
    const glued = braced('pva', { kind: 'ply-gusset', leg: '150 mm' });
    expect(braceMoment_Nmm(glued, 1)).toBeCloseTo(gluedPatchMoment_Nmm(38, 150 - 19, 1), 6);
    const dry = braced('none', { kind: 'ply-gusset', leg: '150 mm' });
    const screws = planBraceScrews(dry)!;
    const [places, Z] = [screws.rows[0]!.places_mm, screws.lateral_N];
    const middle = places.reduce((sum, mm) => sum + mm, 0) / places.length;
    const squares = places.reduce((sum, mm) => sum + (mm - middle) ** 2, 0);
    expect(places.length).toBe(3);
    expect(braceMoment_Nmm(dry, 1) / ((Z * squares) / (places[2]! - middle))).toBeCloseTo(1, 1);
    expect(braceMoment_Nmm(dry, 1)).toBeCloseTo(2 * Z * screws.spacing_mm, 6);
    expect(braceMoment_Nmm(dry, 1.6)).toBeCloseTo(1.6 * 2 * Z * screws.spacing_mm, 6);
  });
  it('an angle: its two screws half a spacing from their middle, glue or not; no brace, nothing', () => {
    const angle = braced('pva', { kind: 'steel-angle', leg: '100 mm' });
    const screws = planBraceScrews(angle)!;
    expect(braceMoment_Nmm(angle, 1)).toBeCloseTo(screws.lateral_N * screws.spacing_mm, 6);
    expect(braceMoment_Nmm(demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' } }), 1)).toBe(0);
  });
});
