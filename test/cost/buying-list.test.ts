import { describe, expect, it } from 'vitest';
import { buyingListCsv } from '../../src/cost/buying-list.js';
import { pooledData } from '../../src/class/class-data.js';
import { poolPlans } from '../../src/class/pooled.js';
import { inventedOf, suppliesOf } from '../../src/cost/supplies.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import { costInWords } from '../../src/report/words/cost.js';
import { buildModel } from '../../src/model/build-model.js';
import { demoShelf, shelfWith, studioPlan } from '../cutting/studio.js';
import { readCsv } from '../cutting/read-csv.js';

describe('the buying list', () => {
  it('lists what to buy and the sum, and says what is unknown', () => {
    const supplies = suppliesOf(buildModel(studioPlan(), demoShelf), demoShelf);
    const rows = readCsv(buyingListCsv(supplies));
    expect(rows.slice(1, -1).reduce((sum, row) => sum + Number(row[7]), 0)).toBeCloseTo(supplies.cut.cost as number, 9);
    expect(rows.at(-1)).toEqual(['wood in all', '', '', '', '', String(supplies.cut.boards), '', String(supplies.cut.cost), 'EUR', 'all invented', '']);
    const bare = shelfWith('strip-19x38', null);
    const unknown = readCsv(buyingListCsv(suppliesOf(buildModel(studioPlan(), bare), bare)));
    expect(unknown.at(-2)?.[10]).toContain('gives no lengths');
    expect(unknown.at(-1)?.[7]).toBe('unknown');
  });

  it('says line by line which prices are yours', () => {
    const mine = readShelf("shelf: 1\nname: Mine\nlumber: { square-38x38: { size: 38 x 38 mm, lengths: [ { length: 2400 mm, price: 5.10 } ] } }\n", 'mine.yaml', demoShelf);
    if (!mine.ok) throw new Error(JSON.stringify(mine.problems));
    const plan = studioPlan({ bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: '1/2', stock: 'strip-19x38', lay: 'flat' }] }, mine.value);
    const supplies = suppliesOf(buildModel(plan, mine.value), mine.value);
    const rows = readCsv(buyingListCsv(supplies));
    expect(rows[0]?.[9]).toBe('price is');
    expect(rows.slice(1).map((row) => [row[0], row[9]])).toEqual([['square-38x38', 'yours'], ['strip-19x38', 'invented'], ['wood in all', 'some invented']]);
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
    expect(rows.slice(1, -1).reduce((sum, row) => sum + Number(row[5]), 0)).toBe(3);
    expect(rows.at(-1)?.slice(5, 8)).toEqual(['3', '', String(data.boards_cost)]);
    const besides = [...pooled.rolls.map(({ bought_cost }) => bought_cost ?? Number.NaN), ...pooled.others.map(({ cost }) => cost ?? Number.NaN)].reduce((sum, one) => sum + one, 0);
    expect(pooled.total_cost).toBeCloseTo(data.boards_cost + besides, 6);
  });
});
