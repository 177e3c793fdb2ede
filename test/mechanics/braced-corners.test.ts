import { describe, expect, test } from 'vitest';
import { braceMoment_Nmm } from '../../src/mechanics/corners/brace-capacity.js';
import { bareCornerMoment_Nmm, mitreDemand } from '../../src/mechanics/corners/corner-demand.js';
import { cornerUse } from '../../src/mechanics/corners/corner-use.js';
import { planBraceScrews } from '../../src/mechanics/fasteners/brace-fastening.js';
import { glueLines } from '../../src/mechanics/glue/glue-lines.js';
import { braceScrews } from '../../src/model/brace-layout.js';
import type { CornerStatics } from '../../src/model/frame-results.js';
import type { Model } from '../../src/model/model.js';
import { demoModel } from './fasteners/demo-model.js';

const face = { width: '1140 mm', height: '690 mm' };
const dry = { glue: 'none', nails: { use: 'brad-16ga-32', each: 2 } };
const frame = (corners: object, bars: object = { stock: 'stud-38x64', lay: 'edge' }): Model => demoModel({ face, bars, corners, hang: { by: 'none' } });
const pull = { x: 9, y: 6.4 };

/** Corner moment of the closed bare frame with equal bars: (q_y L_x³ + q_x L_y³)/(12 (L_x + L_y)). */
const bare_Nmm = (Lx: number, Ly: number): number => (pull.y * Lx ** 3 + pull.x * Ly ** 3) / (12 * (Lx + Ly));
const corner = (more: Partial<CornerStatics>): CornerStatics => ({ moment_Nmm: 0, plate_moment_Nmm: 0, out_moment_Nmm: 900, torque_Nmm: 400, axial_N: -110, shear_N: 70, ...more });

describe('what a brace carries alone', () => {
  test('an angle: two screws a leg, half a leg apart, so one screw’s strength times half the leg', () => {
    const model = frame({ brace: { kind: 'steel-angle', leg: '160 mm' } });
    expect(braceMoment_Nmm(model, 1.6)).toBeCloseTo((1.6 * planBraceScrews(model)!.lateral_N * 160) / 2, 6);
  });
  test('a timber brace: its force times the leg over √2; glued by w√2 × the shallower depth, dry by a screw across the slope', () => {
    const brace = { kind: 'timber', leg: '180 mm', stock: 'strip-19x38', lay: 'edge' };
    const glued = frame({ brace });
    expect(braceMoment_Nmm(glued, 1)).toBeCloseTo((glued.shelf.joints.bond_MPa.butt * 19 * Math.SQRT2 * 38 * 180) / Math.SQRT2, 6);
    const screwed = frame({ ...dry, brace });
    expect(braceMoment_Nmm(screwed, 1)).toBeCloseTo((Math.SQRT2 * planBraceScrews(screwed)!.lateral_N * 180) / Math.SQRT2, 6);
  });
  test('a glued gusset: b h √(b² + h²)/6 at 1 MPa, h from the middle of the mitre to the end of the leg', () => {
    const model = frame({ brace: { kind: 'ply-gusset', leg: '203 mm' } });
    expect(braceMoment_Nmm(model, 1)).toBeCloseTo((38 * 184 * Math.hypot(38, 184)) / 6, 6);
  });
  test('a dry gusset: three screws about their middle, so one screw’s strength times the run of the row', () => {
    const model = frame({ ...dry, brace: { kind: 'ply-gusset', leg: '203 mm' } });
    const row = braceScrews(model.plan, model.shelf, model.bars.top.section)!;
    const margin = (203 - 38) / 6;
    expect(row).toMatchObject({ per_bar: 3, end_mm: 38 + margin });
    expect(2 * row.spacing_mm).toBeCloseTo(203 - 38 - 2 * margin, 9);
    expect(braceMoment_Nmm(model, 1)).toBeCloseTo(planBraceScrews(model)!.lateral_N * 2 * row.spacing_mm, 6);
  });
});

test('a gusset is glued where it lies on the bars: its triangle less the opening that shows between them, half to each bar', () => {
  for (const [leg, stock, lay, w] of [[203, 'stud-38x64', 'edge', 38], [150, 'board-19x64', 'flat', 64], [90, 'board-19x64', 'flat', 64]] as const) {
    const side = leg + w / 2;
    const open = Math.max(0, side - 2 * w);
    const glued = glueLines(frame({ brace: { kind: 'ply-gusset', leg: `${leg} mm` } }, { stock, lay })).find(({ what }) => what === 'gussets')!;
    expect(glued.count * glued.area_mm2).toBeCloseTo(4 * (side ** 2 - open ** 2) / 2, 6);
  }
});

describe('who carries a braced corner', () => {
  test('the bare frame’s moment, by hand', () => {
    expect(bareCornerMoment_Nmm(frame({}).shape, pull)).toBeCloseTo(bare_Nmm(1102, 652), 6);
  });
  test('the cloth presses a corner shut; one that is pulled open is pulled across its face', () => {
    const shut = mitreDemand(corner({ axial_N: -110, shear_N: 70 }));
    expect(shut.normal_N).toBeCloseTo(-180 / Math.SQRT2, 9);
    expect(mitreDemand(corner({ axial_N: 110, shear_N: 70 })).normal_N).toBeCloseTo(180 / Math.SQRT2, 9);
    expect(shut.sliding_N).toBeCloseTo(40 / Math.SQRT2, 9);
  });

  test('behind a timber brace a joint that bears its own part is not enough: what the bare frame has more goes to the brace', () => {
    const model = frame({ brace: { kind: 'timber', leg: '90 mm', stock: 'strip-19x38', lay: 'edge' } });
    const at = corner({ moment_Nmm: 2000 });
    const capacity = braceMoment_Nmm(model, 1);
    const joint = cornerUse(frame({}), at, pull, 1).use;
    const brace = (bare_Nmm(1102, 652) - 2000) / capacity;
    expect(brace).toBeGreaterThan(joint * 1.05);
    expect(cornerUse(model, at, pull, 1)).toEqual({ use: expect.closeTo(brace, 9), governs: 'brace' });
  });

  /** The best of sharing out a plate's part in so many steps, with the joint alone taken from the frame without a plate. */
  function shared(plated: Model, at: CornerStatics, steps: number): number {
    const without = frame(plated.plan.corners.glue === null ? dry : {});
    const joint = (moment_Nmm: number): number => cornerUse(without, { ...at, moment_Nmm }, pull, 1).use;
    const { E_MPa: E, I_plane_mm4: I, w_mm: w } = plated.bars.top.section;
    const own = (E * I) / (2 * plated.shape.corner_give['top-left'].plane * w);
    const bars = (2 * E * I) / (1102 + 652);
    const taken = (at.moment_Nmm * plated.shape.corner_plate_Nmm_per_rad['top-left']) / (own + bars);
    const capacity = braceMoment_Nmm(plated, 1);
    const ways = Array.from({ length: steps + 1 }, (_, k) => Math.max(joint(at.moment_Nmm + (k / steps) * taken), ((1 - k / steps) * at.plate_moment_Nmm) / capacity));
return Math.min(...ways, Math.max(bare_Nmm(1102, 652) / capacity, joint(0)));
  }
  const at = (model: Model, moment_Nmm: number): CornerStatics => corner({ moment_Nmm, plate_moment_Nmm: 3 * braceMoment_Nmm(model, 1) });

  test('screws give way before they break: a dry gusset leaves the joint what it cannot carry, bit by bit', () => {
    const model = frame({ ...dry, brace: { kind: 'ply-gusset', leg: '203 mm' } });
    const found = cornerUse(model, at(model, 800), pull, 1).use;
    expect(found).toBeCloseTo(shared(model, at(model, 800), 16), 9);
    expect(found).toBeLessThan(0.95 * shared(model, at(model, 800), 1));
  });
  test('a glue line does not: a glued gusset holds all of its part or none', () => {
    const model = frame({ brace: { kind: 'ply-gusset', leg: '203 mm' } });
    const found = cornerUse(model, at(model, 4000), pull, 1).use;
    expect(found).toBeCloseTo(shared(model, at(model, 4000), 1), 9);
    expect(found).toBeGreaterThan(shared(model, at(model, 4000), 16) * 1.1);
  });
});
