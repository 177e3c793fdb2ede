import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { packageFolder } from '../../src/cli/files.js';
import { showProblems } from '../../src/index.js';
import { type Noise } from './browser.js';
import { askEngine, command, setUpBench } from './workbench.js';

/** Every plan of the examples and of the tests. */
const plans = ['reports', 'test/plans'].flatMap((folder) => readdirSync(join(packageFolder, folder), { recursive: true, encoding: 'utf8' }).map((file) => join(folder, file)))
  .filter((file) => file.endsWith('.yaml') && /^plan: 1/mu.test(readFileSync(join(packageFolder, file), 'utf8'))).sort();

/** Plans whose printable sheet is compared as well: it is made of the same tree. */
const printed = ['reports/reading-nook/plan.yaml', 'test/plans/everything.yaml', 'test/plans/inches.yaml'];

const { out, browser, file: pageFile } = setUpBench('same-bytes');
let page: Page;
let noise: Noise;
beforeAll(async () => {
  ({ page, noise } = await browser().open(pageFile));
});

const read = (file: string): string => readFileSync(join(packageFolder, file), 'utf8');

describe('the page in the browser says what the command says, byte for byte', () => {
  test('of the plans there are', () => expect(plans.length).toBeGreaterThan(25));

  test.each(plans)('%s', async (file) => {
    const plan = { text: read(file), file };
    const json = command('audit', file, '--format', 'json');
    if (json.status === 1) {
      const { glance, problems } = await askEngine(page, 'audit', plan);
      expect(glance).toBeNull();
      expect(`${showProblems(problems)}\n`).toBe(json.stderr);
      return;
    }
    expect(await askEngine(page, 'report', { ...plan, format: 'json' })).toBe(json.stdout);
    expect((await askEngine(page, 'audit', plan)).glance?.verdict).toBe((JSON.parse(json.stdout) as { verdict: string }).verdict);
    for (const format of printed.includes(file) ? ['md', 'html'] as const : ['md'] as const) {
      const folder = join(out, `${plans.indexOf(file)}-${format}`);
      command('audit', file, '--format', format, '--out', folder);
      expect(await askEngine(page, 'report', { ...plan, format })).toBe(readFileSync(join(folder, `report.${format}`), 'utf8'));
    }
  });

  test('and nothing was fetched or complained of meanwhile', () => expect(noise).toEqual({ requests: noise.requests.filter((url) => url.startsWith('blob:')), console: [], errors: [] }));
});
