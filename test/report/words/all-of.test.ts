import { expect, test } from 'vitest';
import { composeReport } from '../../../src/report/compose.js';
import { writeMarkdown } from '../../../src/report/markdown.js';
import { allOf } from '../../../src/report/words/plural.js';
import { auditOf, smallest } from '../audits.js';

test('two frames are both, more are all of them', async () => {
  expect([2, 3, 12].map(allOf)).toEqual(['both', 'all 3', 'all 12']);
  const two = writeMarkdown(composeReport(await auditOf(`${smallest}count: 2\n`)).tree);
  expect(two).not.toMatch(/\ball 2\b/u);
  expect(two).toMatch(/Everything together for both frames: /u);
});
