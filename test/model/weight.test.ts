import { describe, expect, it } from 'vitest';
import { centreOfGravity_mm } from '../../src/mechanics/hanging/centre-of-gravity.js';
import { demoModel, demoShelf } from '../mechanics/fasteners/demo-model.js';

/** Oblong, two plies of unequal sides, a lip, every kind of steel: no term can stand for another. */
const plan = {
  face: { width: '1340 mm', height: '860 mm' },
  bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, stack: 'side-by-side', bond: 'glue+screws', lip: '6 mm' },
  crossbars: [{ runs: 'upright', at: 0.4, stock: 'strip-19x38', lay: 'flat' }],
  corners: { cut: 'mitre', glue: 'pva', nails: { use: 'brad-18ga-25', each: 2 } },
  'ply-screws': { use: 'screw-6x32', every: '150 mm' },
  cloth: { use: 'linen-300', fixing: { to: 'back', every: '40 mm', turn: '45 mm' } },
  ground: { coats: 3 },
  hang: { by: 'none' },
};
const [W, H, around] = [1340, 860, 2 * (1340 + 860)];
const shelf = demoShelf();
const steel_kg = (diameter_mm: number, length_mm: number): number => 1.1 * 7.85e-6 * Math.PI * (diameter_mm / 2) ** 2 * length_mm;

describe('what the finished piece weighs, part by part', () => {
  const model = demoModel(plan);
  const { weight } = model;

  it('wood: four mitred bars along their centre lines, and the crossbar between them', () => {
    const density = shelf.lumber['strip-19x38']!.density_kg_per_m3 / 1e9;
    expect(weight.wood_kg).toBeCloseTo(density * (2 * 38 * 38 * (W - 38 + H - 38) + 19 * 38 * (H - 2 * 38)), 9);
  });
  it('cloth, ground and paint by their areas', () => {
    const wrap = 2 * (38 + 6 + 38 + 45);
    expect(weight.cloth_kg).toBeCloseTo((shelf.cloths['linen-300']!.mass_g_per_m2 / 1e9) * (W + wrap) * (H + wrap), 9);
    expect(weight.ground_kg).toBeCloseTo(((3 * Object.values(shelf.grounds)[0]!.mass_g_per_m2_per_coat) / 1e9) * W * H, 9);
    expect(weight.paint_kg).toBeCloseTo((shelf.proposals['paint-mass']!.value / 1e9) * W * H, 9);
  });
  it('steel: staples of 0.15 g along the edge, nails, ply screws by their core', () => {
    const [nail, screw] = [shelf.nails['brad-18ga-25']!, shelf.screws['screw-6x32']!];
    const steel = (around / 40) * 0.00015 + 4 * 2 * steel_kg(nail.diameter_mm, nail.length_mm) + (around / 150) * steel_kg(screw.root_mm, screw.length_mm);
    expect(weight.hardware_kg).toBeCloseTo(steel, 9);
    const glued = demoModel({ ...plan, bars: { ...plan.bars, bond: 'glue' }, 'ply-screws': 'none' }).weight.hardware_kg;
    expect(weight.hardware_kg - glued).toBeCloseTo((around / 150) * steel_kg(screw.root_mm, screw.length_mm), 9);
    const bare = demoModel({ ...plan, corners: { cut: 'mitre', glue: 'pva', nails: 'none' } }).weight.hardware_kg;
    expect(weight.hardware_kg - bare).toBeCloseTo(8 * steel_kg(nail.diameter_mm, nail.length_mm), 9);
  });
  it('four flat angles weigh 60 g each with their screws', () => {
    const angled = demoModel({ ...plan, corners: { ...plan.corners, brace: { kind: 'steel-angle', leg: '100 mm' } } });
    expect(angled.weight.hardware_kg - weight.hardware_kg).toBeCloseTo(0.24, 9);
  });
  it.each<[string, number]>([
    ['d-rings', 2 * Math.max(...Object.values(shelf.hardware).filter(({ kind }) => kind === 'strap').map(({ mass_g }) => mass_g))],
    ['cleat', Math.max(...Object.values(shelf.hardware).filter(({ kind }) => kind === 'cleat').map(({ mass_g }) => mass_g))],
  ])('%s: the heaviest on the shelf', (by, mass_g) => {
    expect(mass_g).toBeGreaterThan(0);
    expect(demoModel({ ...plan, hang: { by } }).weight.hardware_kg - weight.hardware_kg).toBeCloseTo(mass_g / 1000, 9);
  });
  it('adds up, and hangs by its centre of gravity: wood at half its depth, what is in front at the lip, steel at the back', () => {
    const { wood_kg, cloth_kg, ground_kg, paint_kg, hardware_kg, total_kg } = weight;
    expect(total_kg).toBeCloseTo(wood_kg + cloth_kg + ground_kg + paint_kg + hardware_kg, 12);
    expect(centreOfGravity_mm(model)).toBeCloseTo((wood_kg * 19 + (cloth_kg + ground_kg + paint_kg) * 44) / total_kg, 9);
  });
});
