import { describe, expect, test } from 'vitest';
import { nominalStock } from '../../src/plan/nominal.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';

const shelf = shippedShelf();
const plan = (stock: string, more = '') => readPlanWith(`plan: 1\nname: N\nface: { width: 600 mm, height: 450 mm }\nbars: { stock: ${stock}, lay: flat }\n${more}`, 'n.yaml', shelf);

describe('stock named as shops name it', () => {
  test.each([['1x2', 'strip-19x38'], ['2X4', 'stud-38x89'], ['1by3', 'board-19x64']])('%s is taken as %s, and says so', (written, key) => {
    const read = plan(written);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.value.bars.stock).toBe(key);
    expect(read.warnings).toMatchObject([{ code: 'nominal-name', path: 'bars.stock', line: 4, found: expect.stringContaining(written), hint: expect.stringContaining(`\`${key}\``) }]);
    expect(read.value.assumed).toContainEqual({ path: 'bars.stock', value: `${key}, which shops call ${written}` });
  });

  test('of crossbars and braces too', () => {
    const read = plan('strip-19x38', 'crossbars: [ { runs: upright, stock: 1x3 } ]\ncorners: { brace: { kind: timber, stock: 1x2 } }\n');
    expect(read.ok && [read.value.crossbars[0]?.stock, read.value.corners.brace?.stock]).toEqual(['board-19x64', 'strip-19x38']);
  });

  test('a size that no shop on this shelf sells is refused, and so is a name of two sizes', () => {
    expect(plan('3x9')).toMatchObject({ ok: false, problems: [{ code: 'unknown-on-shelf' }] });
    const two = readShelf('shelf: 1\nlumber:\n  thin-17x38: { nominal: 1x2, size: 17 x 38 mm }\n', 'own.yaml', shelf);
    expect(two.ok && nominalStock('1x2', two.value)).toBeNull();
    expect(two.ok && readPlanWith('plan: 1\nname: N\nface: { width: 600 mm, height: 450 mm }\nbars: { stock: 1x2, lay: flat }\n', 'n.yaml', two.value)).toMatchObject({ ok: false, problems: [{ code: 'unknown-on-shelf' }] });
  });
});
