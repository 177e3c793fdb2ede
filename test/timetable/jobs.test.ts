import { expect, test } from 'vitest';
import { glueSheet } from '../../src/mechanics/glue/glue-sheet.js';
import { orderOfWork } from '../../src/order-of-work/order-of-work.js';
import { shelfNumber } from '../../src/shelf/shelf-number.js';
import { readShop } from '../../src/shop/read-shop.js';
import type { Shop } from '../../src/shop/shop.js';
import { tasksOf } from '../../src/timetable/jobs.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';

const shopOf = (lines: string): Shop => {
  const read = readShop(`shop: 1\n${lines}\n`, 'shop.yaml');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
};
const model = demoModel({ face: { width: '1230 mm', height: '870 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, stack: 'side-by-side', bond: 'glue' }, corners: { cut: 'mitre', glue: 'pva' }, ground: { coats: 3 } });
const sheet = glueSheet(model)!;

test('every wait of the order of work up to the resting is a wait of the tasks, none longer and none lost', () => {
  const steps = orderOfWork(model);
  const hours = steps.slice(0, steps.findIndex(({ id }) => id === 'dust-cover')).reduce((sum, { wait_h }) => sum + (wait_h ?? 0), 0);
  const waited = tasksOf(model, shopOf('')).reduce((sum, { wait_min }) => sum + wait_min, 0);
  expect(Math.abs(waited - hours * 60)).toBeLessThan(steps.length);
});

test('clamps stay on for as long as the glue asks, in every go, and every go takes no more than there are', () => {
  for (const [lines, corners, bars] of [['', 1, 1], ['clamps: { corner: 4, bar: 60 }', 1, 1], ['clamps: { corner: 2, bar: 12 }', 2, 2], ['clamps: { corner: 1, bar: 3 }', 4, 4]] as const) {
    const shop = shopOf(lines);
    const tasks = tasksOf(model, shop);
    const glued = (id: string) => tasks.filter((task) => task.id.startsWith(id));
    expect([lines, glued('glue-corners').length, glued('plies').length]).toEqual([lines, corners, bars]);
    for (const task of [...glued('glue-corners'), ...glued('plies')]) {
      expect(task.hold_min).toBe(Math.ceil(sheet.clamp_min));
      expect(task.wait_min).toBeGreaterThanOrEqual(task.hold_min);
      expect(task.uses['corner clamp'] ?? 0).toBeLessThanOrEqual(shop.corner_clamps ?? Infinity);
      expect(task.uses['bar clamp'] ?? 0).toBeLessThanOrEqual(shop.bar_clamps ?? Infinity);
    }
  }
});

test('a coat is a go of its own, dry before the next; without a saw in the room nobody waits for one', () => {
  const tasks = tasksOf(model, shopOf('saws: [ { kind: none } ]'));
  const coats = tasks.filter(({ stage }) => stage === 'ground');
  expect(coats.map(({ id, minutes }) => [id, minutes])).toEqual([1, 2, 3].map((n) => [`ground-${n}`, shelfNumber(model.shelf, 'minutes-ground')]));
  expect(coats[0]!.wait_min).toBe(coats[1]!.wait_min);
  expect(coats[2]!.wait_min).toBe(coats[1]!.wait_min + 24 * 60);
  expect(tasks.some(({ uses }) => uses.saw !== undefined)).toBe(false);
  expect(tasksOf(model, shopOf('')).some(({ uses }) => uses.saw === 1)).toBe(true);
});
