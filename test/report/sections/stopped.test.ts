import { expect, test } from 'vitest';
import { composeReport } from '../../../src/report/compose.js';
import { writeMarkdown } from '../../../src/report/markdown.js';
import { auditOf, smallest, weak } from '../audits.js';

const text = async (plan: string): Promise<{ readonly said: string; readonly pictures: readonly string[] }> => {
  const { tree, pictures } = composeReport(await auditOf(plan));
  return { said: writeMarkdown(tree), pictures: pictures.map(({ name }) => name) };
};

test('a plan that must stop prints no saw step, no board picture and no order of work, and says so', async () => {
  const { said, pictures } = await text(weak);
  expect(said).toContain('Not to the saw yet.');
  expect(said).toContain('Nothing to build yet.');
  for (const words of ['Set the stop once', 'Cut the mitres', 'Saw the leftover', 'Stretch the cloth from the middle']) expect(said).not.toContain(words);
  for (const name of ['boards.svg', 'staples.svg', 'folded-corner.svg']) expect(pictures).not.toContain(name);
});

test('any other prints them, and its leftover is sawn off once', async () => {
  const { said, pictures } = await text(smallest);
  expect(said).not.toContain('Not to the saw yet');
  expect(said).toContain('Cut the mitres');
  expect(said.split('Saw the leftover').length - 1).toBeLessThanOrEqual(1);
  for (const name of ['boards.svg', 'staples.svg', 'folded-corner.svg']) expect(pictures).toContain(name);
  expect(said).toMatch(/At the shop: take down about \d+ boards?/);
});
