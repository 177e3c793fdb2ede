import { expect, test } from 'vitest';
import { clothRolls, rollPieces } from '../../src/cutting/roll/plans.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';

const bars = { stock: 'strip-19x38', lay: 'flat' };
const margins_mm = 2 * (19 + 38 + 50) + 20;

test('the longer side of the cloth lies along the threads; a square may lie either way', () => {
  const [tall] = rollPieces(demoModel({ name: 'Harbour wall', face: { width: '400 mm', height: '620 mm' }, bars }));
  expect(tall).toEqual({ name: 'Harbour wall', along_mm: 620 + margins_mm, across_mm: 400 + margins_mm, turnable: false });
  expect(rollPieces(demoModel({ face: { width: '500 mm', height: '500 mm' }, bars }))[0]?.turnable).toBe(true);
});

test('several plans of one cloth share a roll, another cloth or width takes its own; each frame of a plan counts', () => {
  const rolls = clothRolls([
    demoModel({ name: 'Three studies', count: 3, face: { width: '450 mm', height: '350 mm' }, bars }),
    demoModel({ name: 'Low water', face: { width: '900 mm', height: '620 mm' }, bars }),
    demoModel({ name: 'Linen one', face: { width: '500 mm', height: '400 mm' }, bars, cloth: { use: 'linen-300' } }),
    demoModel({ name: 'From the wide roll', face: { width: '500 mm', height: '400 mm' }, bars, cloth: { roll: '1800 mm' } }),
  ], shippedShelf());
  expect(rolls.map((r) => [r.cloth.key, r.layout.roll_mm, r.layout.placed.length])).toEqual([['cotton-duck-340', 1500, 4], ['linen-300', 2100, 1], ['cotton-duck-340', 1800, 1]]);
  const [shared] = rolls;
  // 684 long pieces of 584 across: two beside each other (1168), the third beside the large one of 854 (1438 in all)
  expect(shared?.layout.length_mm).toBe(684 + 1134);
  expect(shared?.layout.proven).toBe(true);
});
