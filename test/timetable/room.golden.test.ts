import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { packageFolder } from '../../src/cli/files.js';
import { writeMarkdown } from '../../src/report/markdown.js';
import { readShop } from '../../src/shop/read-shop.js';
import { composeTimetable } from '../../src/timetable/page.js';
import { timetableOf } from '../../src/timetable/timetable.js';
import { bench, planOf } from '../suggest/studio.js';

test('the invented class of 24 plans in an invented room: the page, read line by line when it was made', async () => {
  const folder = join(packageFolder, 'test/class/room/plans');
  const plans = readdirSync(folder).filter((name) => name.endsWith('.yaml')).sort().map((name) => planOf(readFileSync(join(folder, name), 'utf8')));
  const shop = readShop(readFileSync(new URL('room.yaml', import.meta.url), 'utf8'), 'room.yaml');
  if (!shop.ok) throw new Error(JSON.stringify(shop.problems));
  expect(plans.length).toBe(24);
  const made = timetableOf(plans, shop.value, bench.shelf);
  expect(made.schedule).toMatchObject({ sessions: 8, bound: 8, proven: true });
  await expect(writeMarkdown(composeTimetable(made).tree)).toMatchFileSnapshot('room.md');
});
