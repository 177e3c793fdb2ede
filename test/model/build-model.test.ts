import { describe, expect, test } from 'vitest';
import { serviceClass } from '../../src/model/service-class.js';
import type { MemberBuild } from '../../src/model/model.js';
import type { Shelf } from '../../src/shelf/shelf.js';
import { demoModel, demoShelf } from '../mechanics/fasteners/demo-model.js';

/** Oblong, so that no side can stand for another. */
const face = { width: '1140 mm', height: '690 mm' };
const pair = { stock: 'strip-19x38', lay: 'edge', plies: 2, stack: 'side-by-side', bond: 'screws', lip: '6 mm' };

/**
 * Two equal boards b × h joined by fastenings that slip: EI = E (b h³/6 + b h · h² γ/(1 + γ)), γ = 1/(1 + π² E b h s/(K L²)).
 * Source: en1995-1-1 Annex B, worked out by hand for two equal parts.
 */
function slippingPair_mm4({ stock, span_mm }: MemberBuild, b: number, h: number, slip_share: number): number {
  const K = (slip_share * 420 ** 1.5 * 0.164 * 25.4) / 23;
  const gamma = 1 / (1 + (Math.PI ** 2 * stock.E_MPa * b * h * 150) / (K * span_mm ** 2));
  return (b * h ** 3) / 6 + (b * h * h ** 2 * gamma) / (1 + gamma);
}

describe('screwed plies', () => {
  const model = demoModel({ face, bars: pair, 'ply-screws': { use: 'screw-8x32', every: '150 mm' } });
  test('count with the whole slip modulus for shape, with two thirds of it for stability (EN 1995-1-1)', () => {
    for (const name of ['top', 'left'] as const) {
      const bar = model.bars[name];
      expect(bar.section.I_plane_mm4).toBeCloseTo(slippingPair_mm4(bar, 38, 19, 1), 4);
      expect(bar.section_stability.I_plane_mm4).toBeCloseTo(slippingPair_mm4(bar, 38, 19, 2 / 3), 4);
      expect(model.shape.bars[name]).toBe(bar.section);
      expect(model.shape_stability.bars[name]).toBe(bar.section_stability);
      expect(model.shape_soft.bars[name]).toBe(bar.section_stability);
    }
  });
  test('the pull acts at the front edge, on top of the lip', () => {
    for (const name of ['top', 'bottom', 'left', 'right'] as const) expect(model.shape.eccentricity_mm[name]).toBe(38 / 2 + 6);
  });
});

describe('joints', () => {
  const give = (corners: object) => demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: 0.4 }], corners }).shape.crossbars[0]?.give;
  test('the ends of a crossbar give as the shelf says: little where the corners are glued, much where they are dry', () => {
    const { crossbar_glued, crossbar_dry } = demoShelf().joints.give;
    expect(crossbar_glued).toEqual({ plane: 6, out: 6, twist: 6 });
    expect(crossbar_dry).toEqual({ plane: 20, out: 20, twist: 20 });
    expect(give({ glue: 'pva' })).toEqual(crossbar_glued);
    expect(give({ glue: 'none', nails: { use: 'brad-18ga-25', each: 2 } })).toEqual(crossbar_dry);
  });
});

describe('the frame with joints softer than hoped', () => {
  const soften = (corners: object) => demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: 0.4 }], corners });
  test('each joint gives twice its own, at least eight widths, every way; plates hold half as stiffly', () => {
    const own = soften({ cut: 'mitre', give: { plane: 3, out: 5, twist: 60 }, nails: { use: 'brad-18ga-25', each: 2 }, brace: { kind: 'ply-gusset', leg: '150 mm' } });
    expect(own.shape_soft.corner_give['top-left']).toEqual({ plane: 8, out: 10, twist: 120 });
    expect(own.shape_soft.crossbars[0]!.give).toEqual({ plane: 12, out: 12, twist: 12 });
    expect(own.shape_soft.corner_plate_Nmm_per_rad['bottom-right']).toBeCloseTo(own.shape.corner_plate_Nmm_per_rad['bottom-right'] / 2, 6);
    const braced = soften({ brace: { kind: 'timber', leg: '200 mm', stock: 'strip-19x38', lay: 'flat', give: 3 } });
    expect([braced.shape.braces[0]!.give, braced.shape_soft.braces[0]!.give]).toEqual([{ plane: 3, out: 3, twist: 3 }, { plane: 8, out: 8, twist: 8 }]);
  });
});

describe('the room', () => {
  test('service class 1 to 65 %, 2 to 85 %, the edges themselves in the lower class (EN 1995-1-1 2.3.1.3)', () => {
    expect([0.65, 0.6501, 0.85, 0.8501].map(serviceClass)).toEqual([1, 2, 2, 3]);
  });
  test('creep goes by the dampest air of the room, not by its middle', () => {
    const k_def = (humidity: string): number => demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, room: { humidity } }).k_def;
    expect([k_def('30..65 %'), k_def('30..66 %'), k_def('30..85 %'), k_def('30..86 %')]).toEqual([0.6, 0.8, 0.8, 2]);
  });
});

describe('weight', () => {
  test('the cloth goes over the lip as well: face + 2 (depth + lip + wrap + turn) each way', () => {
    const bars = { stock: 'board-19x64', lay: 'flat', lip: '6 mm' };
    const cloth = (to: string): number => demoModel({ face, bars, cloth: { use: 'cotton-duck-340', fixing: { to, turn: '45 mm' } } }).weight.cloth_kg;
    const around = { edge: 2 * (19 + 6 + 45), back: 2 * (19 + 6 + 64 + 45) };
    expect(cloth('edge')).toBeCloseTo((0.34 * (1140 + around.edge) * (690 + around.edge)) / 1e6, 9);
    expect(cloth('back')).toBeCloseTo((0.34 * (1140 + around.back) * (690 + around.back)) / 1e6, 9);
  });
  test('hardware counts two rings, four corners’ nails and the wire across', () => {
    const { rings, wire_per_m } = heaviest(demoShelf());
    const weight = (by: string): number => demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, hang: { by } }).weight.hardware_kg;
    expect(weight('two-hooks') - weight('none')).toBeCloseTo((2 * rings) / 1000, 9);
    expect(weight('wire') - weight('none')).toBeCloseTo((2 * rings + 1.14 * wire_per_m) / 1000, 9);
  });
});

function heaviest({ hardware }: Shelf): { readonly rings: number; readonly wire_per_m: number } {
  const most = (kind: string): number => Math.max(...Object.values(hardware).filter((one) => one.kind === kind).map(({ mass_g }) => mass_g));
  return { rings: most('ring'), wire_per_m: most('wire') };
}

/** Glue under a gusset yields by the shear of its sheet, 500 MPa over its thickness; the glued face is w by leg − w/2, turning about its middle; two bars in series. */
test('a glued gusset is as stiff as its own sheet is thin: 9 mm where the plan names none', () => {
  const plate = (more: object): number => {
    const { shape } = demoModel({ face, bars: { stock: 'strip-19x38', lay: 'flat' }, corners: { cut: 'mitre', glue: 'pva', brace: { kind: 'ply-gusset', leg: '150 mm', ...more } } });
    return shape.corner_plate_Nmm_per_rad['top-left'];
  };
  const [a, b] = [38, 150 - 38 / 2];
  const glued = (sheet_mm: number): number => ((500 / sheet_mm) * a * b * (a * a + b * b)) / 12 / 2;
  expect(plate({})).toBeCloseTo(glued(9), 3);
  expect(plate({ stock: 'planed-21x45' })).toBeCloseTo(glued(21), 3);
});

test('a crossbar is as long as the way it runs: between the inner faces, up the height or along the width', () => {
  const across = (runs: 'upright' | 'level') => demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [{ runs, at: 0.4, stock: 'strip-19x38', lay: 'flat' }] }).crossbars[0]!;
  expect([across('upright').span_mm, across('level').span_mm]).toEqual([690 - 38, 1140 - 38]);
  expect(across('upright').mass_kg).toBeCloseTo(19 * 38 * (690 - 2 * 38) * 420e-9, 12);
  expect(across('level').mass_kg).toBeCloseTo(19 * 38 * (1140 - 2 * 38) * 420e-9, 12);
});

test('the accidental pull is the shelf’s, in N/mm, the same both ways', () => {
  const { accidental, shelf } = demoModel({ face: { width: '1140 mm', height: '690 mm' }, bars: { stock: 'square-38x38', lay: 'flat' } });
  const { value } = shelf.proposals['accidental-pull']!;
  expect(value).toBeGreaterThan(100);
  expect(accidental).toEqual({ x: value / 1000, y: value / 1000 });
});
