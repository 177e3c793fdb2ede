import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import type { Asks, Kind } from '../../src/page/engine/protocol.js';
import { packageFolder } from '../../src/cli/files.js';
import { startBrowser, type Look, type Noise, type Opened, type TestBrowser } from './browser.js';

/** What the built command says and how it ends. */
export function command(...words: readonly string[]): { readonly status: number | null; readonly stdout: string; readonly stderr: string } {
  return spawnSync(process.execPath, [join(packageFolder, 'dist/sightdown.js'), ...words], { encoding: 'utf8', cwd: packageFolder, maxBuffer: 2 ** 26 });
}

/** Writes the page with the built command; throws when it does not. */
export function writePage(out: string, ...options: readonly string[]): string {
  const { status, stderr } = command('page', '--out', out, ...options);
  if (status !== 0) throw new Error(`no page (exit ${status}): ${stderr}`);
  return out;
}

/** Asks the engine inside an open page, in a worker of its own made as the page makes it. */
export async function askEngine<K extends Kind>(page: Page, kind: K, ask: Asks[K]['ask']): Promise<Asks[K]['answer']> {
  return page.evaluate(async ({ kind: asked, ask: about }) => {
    const keep = globalThis as unknown as { engine?: { worker: Worker; last: number } };
    const post = (what: string, content: unknown): Promise<unknown> => new Promise((done, failed) => {
      const engine = keep.engine as { worker: Worker; last: number };
      const id = ++engine.last;
      const listen = ({ data }: MessageEvent): void => {
        if (data.id !== id) return;
        engine.worker.removeEventListener('message', listen);
        if ('failed' in data) failed(new Error(data.failed));
        else done(data.answer);
      };
      engine.worker.addEventListener('message', listen);
      engine.worker.addEventListener('error', ({ message }) => failed(new Error(message)));
      engine.worker.postMessage({ id, kind: what, ask: content });
    });
    if (keep.engine === undefined) {
      const script = document.getElementById('script')?.textContent ?? '';
      keep.engine = { worker: new Worker(URL.createObjectURL(new Blob([script], { type: 'text/javascript' }))), last: 0 };
      const { shelf, own_shelf, rules, entry, sources } = JSON.parse(document.getElementById('data')?.textContent ?? '');
      await post('bench', { shelf, own_shelf, rules, entry, sources });
    }
    return post(asked, about);
  }, { kind, ask }) as Promise<Asks[K]['answer']>;
}

/** Waits until everything the page shows stands for its latest edit. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const { edit, settled: shown } = document.querySelector<HTMLElement>('[data-edit]')?.dataset ?? {};
    return edit !== undefined && edit === shown;
  });
}

/** Waits until the verdict stands for the latest edit. */
export async function answered(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const { edit, answered: shown } = document.querySelector<HTMLElement>('[data-edit]')?.dataset ?? {};
    return edit !== undefined && edit === shown;
  });
}

/** Opens the page with nothing kept from before, and waits for its first verdict. */
export async function openBench(browser: TestBrowser, file: string, look: Look = {}): Promise<Opened> {
  const opened = await browser.open(file, { viewport: { width: 1280, height: 900 }, ...look });
  await opened.page.evaluate(() => localStorage.clear());
  await opened.page.reload();
  await settled(opened.page);
  return opened;
}

/** The page that works from the disk and a browser for it, both there from before the first test of a file until after its last. */
export interface BenchSetUp {
  /** A folder of the tests' own. */
  readonly out: string;
  /** The page as the command writes it. */
  readonly file: string;
  readonly browser: () => TestBrowser;
  /** Opens the page with nothing kept from before, and waits for its first verdict. */
  readonly open: (look?: Look) => Promise<Opened>;
}

/** Sets up page and browser for the tests of a file; `name` begins the name of their folder. */
export function setUpBench(name: string): BenchSetUp {
  const out = mkdtempSync(join(tmpdir(), `${name}-`));
  const file = join(out, 'page.html');
  let started: TestBrowser | null = null;
  beforeAll(async () => {
    started = await startBrowser();
    writePage(file);
  });
  afterAll(async () => {
    await started?.close();
    rmSync(out, { recursive: true });
  });
  const browser = (): TestBrowser => {
    if (started === null) throw new Error('only inside a test');
    return started;
  };
  return { out, file, browser, open: (look) => openBench(browser(), file, look) };
}

/** What a page may ask for: the engine made from its own script, and nothing else. */
export const quiet = ({ requests, console: said, errors }: Noise): Noise => ({ requests: requests.filter((url) => !/^(?:blob:|data:|about:srcdoc)/u.test(url)), console: said, errors });
export const silence: Noise = { requests: [], console: [], errors: [] };

/** The plan's text as the page shows it. */
export const textOf = (page: Page): Promise<string> => page.locator('.text .pce-textarea').inputValue();

/** Puts a text in place of the plan's, as pasting does. */
export async function writeText(page: Page, text: string): Promise<void> {
  await page.locator('.text .pce-textarea').fill(text);
  await page.locator('.text .pce-textarea').blur();
}
