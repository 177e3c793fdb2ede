import { describe, expect, it } from 'vitest';
import { suppliesOf, type Supplies } from '../../src/cost/supplies.js';
import { buildModel } from '../../src/model/build-model.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import type { Shelf } from '../../src/shelf/shelf.js';
import { pricesOf } from '../../src/report/words/supply.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';

const shelf = shippedShelf();

function billOf(face: string, more: string, from: Shelf = shelf): Supplies {
  const read = readPlanWith(`plan: 1\nname: Bill\nface: ${face}\n${more}`, 'bill.yaml', from);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return suppliesOf(buildModel(read.value, from), from);
}

const over = (text: string): Shelf => {
  const read = readShelf(`shelf: 1\n${text}`, 'own.yaml', shelf);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
};

const bars = 'bars: { stock: strip-19x38, lay: flat }\n';
const line = (bill: Supplies, kind: string) => bill.lines.find((one) => one.kind === kind);
const lineSum = ({ boards, cloths, lines }: Supplies): number =>
  [...boards.map(({ cost }) => cost), ...cloths.map(({ bought_cost }) => bought_cost ?? Number.NaN), ...lines.map(({ cost }) => cost ?? Number.NaN)].reduce((sum, cost) => sum + Math.round(cost * 100), 0) / 100;

describe('the bill of supplies', () => {
  it('charges the cloth of six frames once: two abreast on the roll, three rows', () => {
    // 460 + 2 (19 + 38 + 50) + 20 = 694 across, 580 + 234 = 814 along: two abreast on 1500 mm, three rows of 814 mm, bought in half metres
    const bill = billOf('{ width: 580 mm, height: 460 mm }', `${bars}count: 6\n`);
    expect(bill.cloths[0]?.layout.length_mm).toBeCloseTo(3 * 814, 6);
    expect(bill.cloths[0]?.layout.proven).toBe(true);
    expect(bill.cloths[0]?.bought_mm).toBeCloseTo(2500, 9);
    expect(bill.cloths[0]?.bought_cost).toBeCloseTo(2.5 * 9.5, 9);
    expect(bill.frames).toBe(6);
  });

  it('tells staples, glue and ground for one frame and for all, and its lines add up to the printed total', () => {
    const one = billOf('{ width: 580 mm, height: 460 mm }', bars);
    const six = billOf('{ width: 580 mm, height: 460 mm }', `${bars}count: 6\n`);
    for (const kind of ['staple', 'glue', 'ground', 'nail', 'ring', 'hook', 'wire']) {
      expect(line(six, kind)?.for_one, kind).toBeCloseTo(line(one, kind)!.for_all, 9);
      expect(line(six, kind)?.for_all, kind).toBeCloseTo(6 * line(one, kind)!.for_all, 9);
    }
    // 12 and 10 staples along the sides at 50 mm
    expect(line(one, 'staple')).toMatchObject({ for_all: 44, measures: [{ of: 'leg', mm: 10 }], bought: 1000 });
    expect(one.total_cost).toBe(lineSum(one));
    expect(six.total_cost).toBe(lineSum(six));
    expect(six.used_cost!).toBeLessThan(six.total_cost!);
  });

  it('lists steel angles, gussets cut from sheets, and the strip of a lip', () => {
    const angle = billOf('{ width: 700 mm, height: 530 mm }', `${bars}corners: { brace: { kind: steel-angle, leg: 90 mm } }\n`);
    // no screw of the shelf stays inside bars 19 mm deep, so its leg of 90 mm decides: the 100 mm angle
    expect(line(angle, 'angle')).toMatchObject({ entry: 'supplies.angle-100', for_all: 4, bought: 4, cost: 5.4 });
    const plywood = billOf('{ width: 700 mm, height: 530 mm }', `${bars}corners: { brace: { kind: ply-gusset, leg: 150 mm } }\ncount: 3\n`);
    // legs 150 + 19 = 169; 12 triangles are 6 squares of 173.2; a 300 x 600 sheet gives 1 x 3 of them
    expect(line(plywood, 'plywood')).toMatchObject({ measures: [{ of: 'thickness', mm: 9 }, { of: 'leg', mm: 169 }], for_one: 4, for_all: 12, cut_from_mm: [300, 600], bought: 2, cost: 12.4 });
    const lip = billOf('{ width: 700 mm, height: 530 mm }', 'bars: { stock: strip-19x38, lay: flat, lip: 4 mm }\n');
    expect(line(lip, 'lip')).toMatchObject({ for_all: 2460, bought: 2, cost: 5.6 });
  });

  it('a gusset larger than every sheet has no cost, and says so', () => {
    const bill = billOf('{ width: 2600 mm, height: 2500 mm }', 'bars: { stock: stud-38x89, lay: flat }\ncloth: { roll: 3000 mm }\ncorners: { brace: { kind: ply-gusset, leg: 900 mm } }\n');
    expect(line(bill, 'plywood')).toMatchObject({ cost: null, bought: null });
    expect(bill.total_cost).toBeNull();
    expect(bill.reason).toContain('plywood sheet');
    expect(bill.rest_cost).toBeGreaterThan(0);
  });

  it('picked boards cost more to pick from: 1.3 times as many, rounded up', () => {
    const face = '{ width: 1180 mm, height: 970 mm }';
    const plain = billOf(face, `${bars}count: 4\n`);
    const picked = billOf(face, `${bars}count: 4\nlumber: { chosen: picked }\n`);
    const needed = plain.boards.reduce((n, { count }) => n + count, 0);
    const spare = picked.boards.filter(({ role }) => role === 'spare');
    expect(spare.reduce((n, { count }) => n + count, 0)).toBe(Math.ceil(1.3 * needed) - needed);
    expect(picked.boards_cost! - plain.boards_cost!).toBeCloseTo(spare.reduce((sum, { cost }) => sum + cost, 0), 9);
    expect(plain.boards.some(({ role }) => role === 'spare')).toBe(false);
  });

  it('with too few boards says what is short and what the rest costs', () => {
    const few = over('lumber:\n  strip-19x38: { size: 19 x 38 mm, lengths: [ { length: 2400 mm, price: 3, available: 2 } ] }\n');
    const bill = billOf('{ width: 900 mm, height: 700 mm }', `${bars}count: 3\n`, few);
    // a frame takes two boards
    expect(bill.short).toMatchObject([{ needed: bill.boards[0]?.count, available: 2 }]);
    expect(bill.total_cost).toBeNull();
    expect(bill.reason).toContain('lacks');
    expect(bill.rest_cost).toBeCloseTo(bill.full_cost! - 3 * (bill.boards[0]!.count - 2), 9);
  });

  it('a cloth wider than its roll has no cost, and the rest has', () => {
    const bill = billOf('{ width: 1750 mm, height: 1700 mm }', 'bars: { stock: stud-38x64, lay: edge }\n');
    expect(bill.cloths[0]?.bought_cost).toBeNull();
    expect(bill.total_cost).toBeNull();
    expect(bill.reason).toContain('too narrow');
  });

  it('marks line by line whose prices are invented', () => {
    const half = over('prices: { currency: EUR, demo: false }\nnails:\n  brad-18ga-25: { name: Own brad, diameter: 1.2 mm, length: 25 mm, price: 0.02 }\nlumber:\n  strip-19x38: { size: 19 x 38 mm, lengths: [ { length: 2400 mm, price: 3.10 } ] }\n');
    const bill = billOf('{ width: 580 mm, height: 460 mm }', bars, half);
    expect(bill.boards.map(({ invented }) => invented)).toEqual([false]);
    expect(line(bill, 'nail')).toMatchObject({ name: 'Own brad', invented: false, cost: 0.08 });
    expect(line(bill, 'glue')?.invented).toBe(true);
    expect(bill.cloths[0]?.invented).toBe(true);
    expect(pricesOf(bill).money(3.1, false)).toBe('3.10 EUR');
    expect(pricesOf(bill).money(4, true)).toBe('4.00 EUR *');
    expect(pricesOf(bill).remark).toMatch(/^\* An invented price/u);
    expect(pricesOf(billOf('{ width: 580 mm, height: 460 mm }', bars)).remark).toMatch(/^All prices are invented/u);
  });
});
