/// <reference lib="dom" />
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { packageFolder } from '../../src/cli/files.js';
import { startBrowser, type TestBrowser } from './browser.js';
import { askEngine, command, openBench, writePage } from './workbench.js';

const out = mkdtempSync(join(tmpdir(), 'boards-'));
const plan = 'reports/spare-boards/plan.yaml';
const pile = 'reports/spare-boards/pile.yaml';
const read = (file: string): string => readFileSync(join(packageFolder, file), 'utf8');
let browser: TestBrowser;
let file = '';
beforeAll(async () => {
  browser = await startBrowser();
  file = writePage(join(out, 'page.html'));
});
afterAll(async () => {
  await browser.close();
  rmSync(out, { recursive: true });
});

describe('the boards in hand', () => {
  test('are placed as the command places them, byte for byte', async () => {
    const { page } = await openBench(browser, file);
    const seen = await askEngine(page, 'place', { plan: { text: read(plan), file: plan }, pile: { text: read(pile), file: pile } });
    command('place', plan, '--pile', pile, '--format', 'html', '--out', out);
    expect(seen?.html).toBe(readFileSync(join(out, 'place.html'), 'utf8'));
    const { frames } = JSON.parse(command('place', plan, '--pile', pile, '--format', 'json').stdout) as { frames: { places: { board: string; tag: string }[] }[] };
    expect(seen?.pieces.map(({ board, tag }) => ({ board, tag }))).toEqual(frames[0]?.places.map(({ board, tag }) => ({ board, tag })));
    await page.close();
  });
});
