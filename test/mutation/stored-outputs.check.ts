import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { composeReport } from '../../src/report/compose.js';
import { writeJson } from '../../src/report/json.js';
import { writeMarkdown } from '../../src/report/markdown.js';
import { auditOf } from '../report/audits.js';

const root = new URL('../..', import.meta.url).pathname;
const isPlan = (text: string): boolean => /^plan: 1\b/mu.test(text);
const plans = ['reports', 'test/plans'].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => readFileSync(join(root, folder, name), 'utf8'))
    .filter(isPlan),
);

/** Every second of them, which is what a run of many faults can afford. */
const tried = plans.filter((_, i) => i % 2 === 0);

/**
 * What CI makes anew and compares: the numbers and the report of every example. The first run, without a fault, keeps
 * them for those that follow.
 */
it('makes the same numbers and reports of the examples as without a fault', async () => {
  const told: string[] = [];
  for (const plan of tried) {
    try {
      const audit = await auditOf(plan);
      const { tree, pictures } = composeReport(audit);
      told.push(writeJson(audit), writeMarkdown(tree), ...pictures.map(({ svg }) => svg));
    } catch (error) {
      told.push(String(error));
    }
  }
  const kept = join(process.env['COMPILED_COPY'] ?? '', 'examples.json');
  if (!existsSync(kept)) writeFileSync(kept, JSON.stringify(told));
  expect(told.length).toBeGreaterThan(20);
  expect(JSON.stringify(told) === readFileSync(kept, 'utf8')).toBe(true);
});
