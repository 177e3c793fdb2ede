import { expect, test } from 'vitest';
import { sightingBlocks } from '../../../src/report/sections/sighting.js';
import { telling } from '../../../src/report/telling.js';
import { document } from '../../../src/report/tree.js';
import { writeMarkdown } from '../../../src/report/markdown.js';
import { auditOf } from '../audits.js';

const sighting = { pieces: 5, by_luck: 0.3, rows: [{ sighted: 5, chance: 0.2, error: 0 }, { sighted: 8, chance: 0.05, error: 0 }, { sighted: 10, chance: 0.05, error: 0 }] };

async function said(count: number): Promise<string> {
  const audited = await auditOf(`plan: 1\nname: Slack water\ncount: ${count}\nface: { width: 857 mm, height: 613 mm }\nbars: { stock: square-38x38, lay: flat }\n`);
  return writeMarkdown(document([...sightingBlocks(telling({ ...audited, sighting })).blocks]));
}

test('boards to sight are told for every frame of the plan: a heap as large for each is enough', async () => {
  expect(await said(1)).toContain('Sight 8, take 5: from');
  const three = await said(3);
  expect(three).toContain('Sight 24, take 15 for all 3 frames: from');
  expect(three).toMatch(/\|\s*8 \|\s*24 \|/u);
});
