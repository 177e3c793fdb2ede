/// <reference lib="dom" />
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { mostPage_bytes, sentAs_bytes } from './page-size.js';

/** A row of the table. */
export interface Row {
  readonly what: string;
  readonly measured: string;
  readonly budget: string;
}

/** The page in a browser, beside the same audit in Node: `inNode_ms` is what 95 of 100 warm audits of the same plan stay within. Without a Chromium only the size is told. */
export async function pageRows(command: string, plan: string, inNode_ms: number): Promise<readonly Row[]> {
  const out = mkdtempSync(join(tmpdir(), 'sightdown-page-'));
  const [file, planFile] = [join(out, 'page.html'), join(out, 'plan.yaml')];
  writeFileSync(planFile, plan);
  const run = (args: readonly string[]): number => {
    const start = performance.now();
    if (spawnSync(process.execPath, [command, ...args], { stdio: 'ignore' }).status !== 0) throw new Error(`${args.join(' ')} failed`);
    return performance.now() - start;
  };
  run(['page', '--plan', planFile, '--out', file]);
  const size: Row = { what: 'The page, one file with engine, shelf and rules', measured: `${Math.round(sentAs_bytes(file) / 1000)} kB gzipped`, budget: `≤ ${mostPage_bytes / 1000} kB` };
  const executablePath = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
  if (!existsSync(executablePath)) return [size];
  const { chromium } = await import('playwright-core');
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
  const firsts: number[] = [];
  let edits: readonly number[] = [];
  for (let i = 0; i < 5; i++) {
    const page = await browser.newPage();
    const start = performance.now();
    await page.goto(pathToFileURL(file).href);
    await page.waitForFunction(() => document.querySelector<HTMLElement>('[data-answered]')?.dataset['answered'] !== '-1', null, { polling: 5 });
    firsts.push(performance.now() - start);
    if (i === 4) edits = await editTimes(page);
    await page.close();
  }
  await browser.close();
  const cold_ms = middle(Array.from({ length: 5 }, () => run(['audit', planFile, '--out', join(out, 'report')])), 0.5);
  rmSync(out, { recursive: true });
  const first_ms = middle(firsts, 0.5);
  const p95_ms = middle(edits, 0.95);
  return [
    size,
    { what: 'Opening the page to its first verdict', measured: `${(first_ms / cold_ms).toFixed(1)} × the command (${first_ms.toFixed(0)} ms over ${cold_ms.toFixed(0)} ms)`, budget: 'told' },
    { what: 'Verdict in the page after an edit, 95 of 100', measured: `${(p95_ms / inNode_ms).toFixed(1)} × the same audit in Node (${p95_ms.toFixed(0)} ms over ${inNode_ms.toFixed(0)} ms)`, budget: '≤ 150 ms' },
  ];
}

/** Milliseconds from a typed width to the verdict that stands for it, for a hundred widths, once warm. */
async function editTimes(page: Page): Promise<readonly number[]> {
  return page.evaluate(async () => {
    const bench = document.querySelector('[data-edit]') as HTMLElement;
    const input = document.querySelector('[data-path="face.width"] input') as HTMLInputElement;
    const times: number[] = [];
    for (let i = 0; i < 120; i++) {
      const before = bench.dataset['answered'];
      const start = performance.now();
      input.value = `${800 + i} mm`;
      input.dispatchEvent(new InputEvent('input', { bubbles: true }));
      await new Promise<void>((done) => {
        const watch = new MutationObserver(() => {
          if (bench.dataset['answered'] === before || bench.dataset['answered'] !== bench.dataset['edit']) return;
          watch.disconnect();
          done();
        });
        watch.observe(bench, { attributes: true });
      });
      if (i >= 20) times.push(performance.now() - start);
      await new Promise((done) => setTimeout(done, 30));
    }
    return times;
  });
}

const middle = (values: readonly number[], share: number): number => [...values].sort((p, q) => p - q)[Math.min(values.length - 1, Math.floor(values.length * share))] as number;
