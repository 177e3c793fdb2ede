import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll } from 'vitest';
import { startBrowser, type TestBrowser } from './browser.js';
import { hostilePlan, hostileRuleset, hostileShelf } from './hostile-plan.js';

const root = new URL('../..', import.meta.url).pathname;

/** One page as the built command writes it. */
export interface MadePage {
  readonly name: string;
  readonly file: string;
  /** What the command printed, and how it ended. */
  readonly said: string;
  readonly exit: number | null;
}

/** The pages under test: both examples, every field of a plan at once, and a plan whose words try to break out. */
export interface Pages {
  readonly nook: MadePage;
  readonly stairwell: MadePage;
  readonly everything: MadePage;
  readonly hostile: MadePage;
  readonly all: readonly MadePage[];
  /** A page that does everything it should not, to try the listeners on. */
  readonly noisy: string;
  readonly remove: () => void;
}

/** Runs the built command for every plan; throws when it writes no page. */
export function makePages(): Pages {
  const folder = mkdtempSync(join(tmpdir(), 'pages-'));
  const make = (name: string, plan: string, more: readonly string[] = []): MadePage => {
    const out = join(folder, name);
    const run = spawnSync(process.execPath, [join(root, 'dist/sightdown.js'), 'audit', plan, '--format', 'html', '--out', out, ...more], { encoding: 'utf8' });
    const file = join(out, 'report.html');
    if (!existsSync(file)) throw new Error(`no page for ${name} (exit ${run.status}):\n${run.stdout}${run.stderr}`);
    return { name, file, said: `${run.stdout}${run.stderr}`, exit: run.status };
  };
  const plan = join(folder, 'hostile.yaml');
  const shelf = join(folder, 'hostile-shelf.yaml');
  const noisy = join(folder, 'noisy.html');
  writeFileSync(noisy, '<!doctype html><img src="http://127.0.0.1:9/x.png"><script>console.warn("w"); setTimeout(() => { throw new Error("thrown"); })</script>');
  writeFileSync(plan, hostilePlan);
  const ruleset = join(folder, 'hostile-ruleset.yaml');
  writeFileSync(shelf, hostileShelf);
  writeFileSync(ruleset, hostileRuleset);
  const nook = make('reading-nook', join(root, 'reports/reading-nook/plan.yaml'));
  const stairwell = make('stairwell-banner', join(root, 'reports/stairwell-banner/plan.yaml'));
  const everything = make('everything', join(root, 'test/plans/everything.yaml'));
  const hostile = make('hostile', plan, ['--shelf', shelf, '--rules', ruleset]);
  return { nook, stairwell, everything, hostile, all: [nook, stairwell, everything, hostile], noisy, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** Makes the pages and starts a browser before the tests of a file, and clears both away after them. */
export function setUpPages(): { readonly pages: () => Pages; readonly browser: () => TestBrowser } {
  let pages: Pages | null = null;
  let browser: TestBrowser | null = null;
  beforeAll(async () => {
    pages = makePages();
    browser = await startBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    pages?.remove();
  });
  const made = <T>(thing: T | null): T => {
    if (thing === null) throw new Error('only inside a test');
    return thing;
  };
  return { pages: () => made(pages), browser: () => made(browser) };
}
