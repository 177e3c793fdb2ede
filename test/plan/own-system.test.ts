import { describe, expect, it } from 'vitest';
import { buildModel } from '../../src/model/build-model.js';
import { piecesOf } from '../../src/cutting/pieces/pieces.js';
import type { Plan } from '../../src/plan/plan.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { shelfIn } from '../../src/shelf/in-system.js';
import { shippedShelf } from './shelf-for-tests.js';

const shelf = shippedShelf();
const inch = 25.4;

function planOf(face: string, more = ''): Plan {
  const read = readPlanWith(`plan: 1\nname: Own system\nface: ${face}\nbars: { stock: strip-19x38, lay: flat }\n${more}`, 'plan.yaml', shelf);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

describe('a plan in inches', () => {
  it('falls back to lengths that one says in inches, a plan in millimetres to its own', () => {
    const more = 'crossbars: [ { runs: upright } ]\ncorners: { brace: { kind: timber } }\n';
    const plan = planOf('{ width: 37-3/8 in, height: 27 in }', more);
    expect(plan.cloth.fixing.every_mm).toBeCloseTo(2 * inch, 9);
    expect(plan.cloth.fixing.turn_mm).toBeCloseTo(2 * inch, 9);
    expect(plan.hang.drop_mm).toBeCloseTo(7 * inch, 9);
    expect(plan.corners.brace?.leg_mm).toBeCloseTo(6.5 * inch, 9); // a quarter of 27 in is 6-3/4, down to half inches
    expect(plan.hang.slack_mm).toBeCloseTo(4.25 * inch, 9); // a ninth of 37-3/8 in is 4.15, up to quarter inches
    expect(plan.assumed.find(({ path }) => path === 'cloth.fixing.every')?.value).toBe('2 in');
    const metric = planOf('{ width: 949.325 mm, height: 685.8 mm }', more);
    expect([metric.cloth.fixing.every_mm, metric.hang.drop_mm, metric.corners.brace?.leg_mm, metric.hang.slack_mm]).toEqual([50, 180, 170, 110]);
  });

  it('is built, bought and cut from the sizes of an inch shop', () => {
    const model = buildModel(planOf('{ width: 37-3/8 in, height: 27 in }'), shelf);
    expect(model.bars.top.section.w_mm).toBeCloseTo(1.5 * inch, 9);
    expect(model.bars.top.section.d_mm).toBeCloseTo(0.75 * inch, 9);
    expect(model.shelf.lumber['strip-19x38']?.lengths?.map(({ length_mm }) => Math.round((length_mm / inch) * 1000) / 1000)).toEqual([72, 96]);
    expect(model.shelf.cloths['cotton-duck-340']?.roll_mm).toBeCloseTo(60 * inch, 9);
    expect(buildModel(planOf('{ width: 900 mm, height: 650 mm }'), shelf).bars.top.section.w_mm).toBe(38);
  });

  it('the shelf in inches is made once, and is in inches already when asked again', () => {
    expect(shelfIn(shelf, 'inch')).toBe(shelfIn(shelf, 'inch'));
    expect(shelfIn(shelfIn(shelf, 'inch'), 'inch')).toBe(shelfIn(shelf, 'inch'));
    expect(shelfIn(shelf, 'metric')).toBe(shelf);
  });

  it.each(['mitre', 'butt', 'half-lap'])('%s: opening and bars make up the face, and a crossbar is as long as the opening', (cut) => {
    for (const [stock, w_in] of [['strip-19x38', 1.5], ['stud-38x64', 2.5], ['planed-21x45', null]] as const) {
      const plan = planOf('{ width: 60 in, height: 41-5/16 in }', `crossbars: [ { runs: upright, at: 1/2 }, { runs: level, at: 1/3 } ]\ncorners: { cut: ${cut} }\n`.replace('{ cut', '{ nails: none, cut'));
      const list = piecesOf({ ...plan, bars: { ...plan.bars, stock }, crossbars: plan.crossbars.map((one) => ({ ...one, stock })) }, shelf);
      const marks = (mm: number): number => mm / (inch / 16);
      for (const { cut_mm } of list.pieces) expect(marks(cut_mm)).toBeCloseTo(Math.round(marks(cut_mm)), 6);
      const crossbar = (runs: string): number => list.pieces.find((piece) => piece.part === 'crossbar' && piece.runs === runs)!.cut_mm;
      expect(crossbar('level')).toBeCloseTo(list.opening.width_mm, 6);
      expect(crossbar('upright')).toBeCloseTo(list.opening.height_mm, 6);
      expect(list.opening.width_mm + 2 * list.bar_mm).toBeCloseTo(60 * inch, 6);
      const top = list.pieces.find(({ about }) => about === 'top')!;
      if (cut === 'butt') expect(top.cut_mm + 2 * list.bar_mm).toBeCloseTo(60 * inch, 6);
      if (cut === 'mitre') expect(list.opening.width_mm).toBeGreaterThanOrEqual(top.short_mm - 1e-6);
      if (w_in !== null) expect(list.bar_mm / inch).toBeCloseTo(w_in, 9);
    }
  });
});
