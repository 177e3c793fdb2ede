import { join } from 'node:path';
import type { Problem } from '../base/problem.js';
import { pooledData, steadyJson } from '../class/class-data.js';
import { composeCutPage } from '../class/cut-page.js';
import { poolPlansWith, type Pooled } from '../class/pooled.js';
import { money } from '../class/pooled-blocks.js';
import { buyingListCsv, cutListCsv } from '../cutting/csv.js';
import { cutPlanExactly } from '../cutting/cut-plan.js';
import type { Plan } from '../plan/plan.js';
import { readPlanWith } from '../plan/read-plan.js';
import { writeMarkdown } from '../report/markdown.js';
import type { Shelf } from '../shelf/shelf.js';
import type { CutOptions } from './cut.js';
import { exitCode } from './exit.js';
import { readText, writeFolder } from './files.js';
import { loadShelf } from './load.js';
import { planFiles } from './plans.js';
import { complain, tell } from './terminal.js';

/** How long the search may take for each stock, and the integer program after it, ms. */
const search_ms = 1000;
const fallback_ms = 5000;

/** Pools the plans that were named and writes or prints what was asked for; resolves to the exit code. */
export async function runCut(named: readonly string[], options: CutOptions): Promise<number> {
  const shelf = loadShelf(options.shelf);
  complain(shelf.ok ? shelf.warnings : shelf.problems);
  if (!shelf.ok) return exitCode.error;
  const plans = readPlans(named, shelf.value);
  if (plans === null) return exitCode.error;
  const pooled = await poolPlansWith(plans, shelf.value, (some, from) => cutPlanExactly(some, from, { timeLimit_ms: search_ms, now: () => performance.now() }, fallback_ms));
  if (options.format === 'csv') csv(pooled, options);
  else if (options.format === 'json') json(pooled, options);
  else tell(`${summary(pooled)}  →  ${await writePage(pooled, shelf.value, options.out ?? join('reports', 'cut'), options.format)}`);
  return pooled.cut.too_long.length > 0 ? exitCode.stop : pooled.cut.uncut.length > 0 || pooled.short.length > 0 ? exitCode.unknown : exitCode.fine;
}

/** All plans, or null after complaining about every one that cannot be read. */
export function readPlans(named: readonly string[], shelf: Shelf): readonly Plan[] | null {
  const { files, problems } = planFiles(named);
  const all: Problem[] = [...problems];
  const plans = files.flatMap((file): Plan[] => {
    const read = readText(file);
    const result = 'problem' in read ? ({ ok: false, problems: [read.problem] } as const) : readPlanWith(read.text, file, shelf);
    all.push(...(result.ok ? result.warnings : result.problems));
    return result.ok ? [result.value] : [];
  });
  complain(all);
  return all.some(({ severity }) => severity === 'error') || plans.length === 0 ? null : plans;
}

function summary({ plans, cut, total_cost }: Pooled): string {
  const frames = plans.reduce((sum, plan) => sum + plan.count, 0);
  const boards = cut.cost === null ? 'not every board is known' : `${cut.boards ?? 0} boards for ${money(cut.cost, cut.currency)}${cut.proven ? ', the least cost, proven' : ''}`;
  return `${frames} ${frames === 1 ? 'frame' : 'frames'}: ${boards}; everything together ${money(total_cost, cut.currency)}`;
}

function csv({ cut }: Pooled, { out, list }: CutOptions): void {
  const lists = [...(list === 'buy' ? [] : [{ name: 'cut-list.csv', text: cutListCsv(cut) }]), ...(list === 'cut' ? [] : [{ name: 'buying-list.csv', text: buyingListCsv(cut) }])];
  if (out === undefined) process.stdout.write(lists.map(({ text }) => text).join('\r\n'));
  else {
    writeFolder(out, lists);
    tell(lists.map(({ name }) => join(out, name)).join('  '));
  }
}

function json(pooled: Pooled, { out }: CutOptions): void {
  const text = `${steadyJson({ format: 'cut/1', ...pooledData(pooled) })}\n`;
  if (out === undefined) process.stdout.write(text);
  else {
    writeFolder(out, [{ name: 'cut.json', text }]);
    tell(join(out, 'cut.json'));
  }
}

async function writePage(pooled: Pooled, shelf: Shelf, out: string, format: 'md' | 'html'): Promise<string> {
  const { tree, pictures } = composeCutPage(pooled, shelf.name);
  if (format === 'md') {
    writeFolder(out, [{ name: 'cut.md', text: writeMarkdown(tree) }, ...pictures.map(({ name, svg }) => ({ name, text: svg }))]);
    return join(out, 'cut.md');
  }
  const { writeHtml } = await import('../report/html.js');
  writeFolder(out, [{ name: 'cut.html', text: writeHtml(tree, pictures, { title: 'What to buy and how to cut it', lang: 'en' }) }]);
  return join(out, 'cut.html');
}
