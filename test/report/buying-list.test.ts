import { describe, expect, it } from 'vitest';
import { buyingListCsv } from '../../src/report/buying-list.js';
import { pooledData } from '../../src/class/class-data.js';
import { poolPlans } from '../../src/class/pooled.js';
import { inventedOf, suppliesOf } from '../../src/cost/supplies.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import { costInWords } from '../../src/report/words/cost.js';
import { buildModel } from '../../src/model/build-model.js';
import { demoShelf, shelfWith, studioPlan } from '../cutting/studio.js';
import { readCsv } from '../cutting/read-csv.js';

/** The rows of boards: those before the sum of the wood. */
const woodOf = (rows: readonly (readonly string[])[]): readonly (readonly string[])[] => rows.slice(1, rows.findIndex(([stock]) => stock === 'wood in all'));

describe('the buying list', () => {
  it('holds everything that is bought, in packs as in the report, and adds up to what everything costs', () => {
    for (const more of [
      { count: 3, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, lip: '6 mm' }, corners: { brace: { kind: 'steel-angle', leg: '90 mm' } } },
      { face: { width: '37 in', height: '23 in' }, corners: { cut: 'keyed' }, hang: { by: 'cleat' } },
      { corners: { cut: 'half-lap', brace: { kind: 'ply-gusset', leg: '140 mm' } }, hang: { by: 'two-hooks' }, ground: { coats: 4 } },
    ]) {
      const supplies = suppliesOf(buildModel(studioPlan(more), demoShelf), demoShelf);
      const rows = readCsv(buyingListCsv(supplies));
      const all = rows.at(-1) as readonly string[];
      expect([all[0], Number(all[7])]).toEqual(['everything together', supplies.total_cost]);
      const items = rows.slice(1, -1).filter(([stock]) => stock !== 'wood in all');
      expect(items.reduce((sum, row) => sum + Number(row[7]), 0)).toBeCloseTo(supplies.total_cost as number, 6);
      for (const row of items) expect(Number(row[5]) * Number(row[6]), row.join()).toBeCloseTo(Number(row[7]), 2);
      const named = items.map((row) => row[1] ?? '');
      for (const { name } of supplies.lines) expect(named.some((one) => one.startsWith(name)), name).toBe(true);
      for (const { cloth } of supplies.cloths) expect(named).toContain(cloth.name);
      expect(rows.every((row) => row.length === 11)).toBe(true);
    }
  });

  it('lists what to buy and the sum, and says what is unknown', () => {
    const supplies = suppliesOf(buildModel(studioPlan(), demoShelf), demoShelf);
    const rows = readCsv(buyingListCsv(supplies));
    expect(woodOf(rows).reduce((sum, row) => sum + Number(row[7]), 0)).toBeCloseTo(supplies.cut.cost as number, 9);
    expect(rows.find(([stock]) => stock === 'wood in all')).toEqual(['wood in all', '', '', '', '', String(supplies.cut.boards), '', String(supplies.cut.cost), 'EUR', 'all invented', '']);
    const bare = shelfWith('strip-19x38', null);
    const unknown = readCsv(buyingListCsv(suppliesOf(buildModel(studioPlan(), bare), bare)));
    expect(woodOf(unknown).at(-1)?.[10]).toContain('gives no lengths');
    expect(unknown.filter(([stock]) => ['wood in all', 'everything together'].includes(stock as string)).map((row) => row[7])).toEqual(['unknown', 'unknown']);
  });

  it('says line by line which prices are yours', () => {
    const mine = readShelf("shelf: 1\nname: Mine\nlumber: { square-38x38: { size: 38 x 38 mm, lengths: [ { length: 2400 mm, price: 5.10 } ] } }\n", 'mine.yaml', demoShelf);
    if (!mine.ok) throw new Error(JSON.stringify(mine.problems));
    const plan = studioPlan({ bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: '1/2', stock: 'strip-19x38', lay: 'flat' }] }, mine.value);
    const supplies = suppliesOf(buildModel(plan, mine.value), mine.value);
    const rows = readCsv(buyingListCsv(supplies));
    expect(rows[0]?.[9]).toBe('price is');
    expect(rows.slice(1, 4).map((row) => [row[0], row[9]])).toEqual([['square-38x38', 'yours'], ['strip-19x38', 'invented'], ['wood in all', 'some invented']]);
    expect(rows.at(-1)?.[9]).toBe('some invented');
    expect(inventedOf(supplies)).toBe('some');
    expect(costInWords({ shelf: mine.value, supplies }, 12.3)).toBe('12.30 EUR (some prices invented)');
    expect(inventedOf({ ...supplies, cloths: [], lines: [], boards: supplies.boards.filter(({ stock }) => stock === 'square-38x38') })).toBe('none');
  });

  it('holds the boards to pick from in the list, in the data of a pool and in its total alike', () => {
    const plan = studioPlan({ face: { width: '900 mm', height: '650 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, lumber: { chosen: 'picked', moisture: '9 %' }, corners: { cut: 'mitre', glue: 'pva', brace: { kind: 'ply-gusset', leg: '120 mm' } } });
    const pooled = poolPlans([plan], demoShelf);
    const data = pooledData(pooled) as { boards: number; boards_cost: number; bound: number; buy: readonly { count: number; price: number }[] };
    // Two boards are cut; 1.3 times as many, up, is one more to pick from.
    expect(pooled.cut.boards).toBe(2);
    expect([data.boards, data.buy.reduce((n, { count }) => n + count, 0)]).toEqual([3, 3]);
    expect(data.boards_cost).toBeCloseTo(data.buy.reduce((sum, { count, price }) => sum + count * price, 0), 9);
    expect(data.bound).toBeCloseTo(data.boards_cost, 9);
    const rows = readCsv(buyingListCsv(pooled.supplies));
    expect(woodOf(rows).reduce((sum, row) => sum + Number(row[5]), 0)).toBe(3);
    expect(rows.find(([stock]) => stock === 'wood in all')?.slice(5, 8)).toEqual(['3', '', String(data.boards_cost)]);
    const besides = [...pooled.rolls.map(({ bought_cost }) => bought_cost ?? Number.NaN), ...pooled.others.map(({ cost }) => cost ?? Number.NaN)].reduce((sum, one) => sum + one, 0);
    expect(pooled.total_cost).toBeCloseTo(data.boards_cost + besides, 6);
  });
});
