import { join } from 'node:path';
import { audit, type Bench } from '../audit.js';
import type { Problem } from '../base/problem.js';
import { pooledData, steadyJson } from '../class/class-data.js';
import { composeCutPage } from '../class/cut-page.js';
import { cutMany } from '../cutting/boards/cut-many.js';
import { poolPlansWith, type Pooled } from '../class/pooled.js';
import { money } from '../report/words/cost.js';
import { buyingListCsv } from '../report/buying-list.js';
import { cutListCsv } from '../cutting/csv.js';
import type { SawAtHand } from '../base/saw.js';
import { cutPlanExactly, workClock, type SearchTime } from '../cutting/cut-plan.js';
import type { Patience } from '../cutting/boards/pack-fallback.js';
import type { Plan } from '../plan/plan.js';
import { readPlanWith } from '../plan/read-plan.js';
import { sheetFor } from '../report/html-print.js';
import { writeMarkdown } from '../report/markdown.js';
import { loadHighs } from '../highs.js';
import type { Shelf } from '../shelf/shelf.js';
import { badge } from '../report/words/verdict.js';
import { userText } from '../report/clean-text.js';
import { loadBench } from './bench.js';
import type { CutOptions } from './option-types.js';
import { exitCode } from './exit.js';
import { readText } from './read-text.js';
import { writeFolder } from './write-files.js';
import { toolsOfFile } from './shop-file.js';
import { shelfWithPileFile } from './pile-file.js';
import { otherKind, planFiles } from './plans.js';
import { complain, print, printJson, tell, warn } from './terminal.js';

/**
 * Readings of the counting clock that the search may take for each stock, about a millisecond each, and nodes of the
 * integer program after it.
 */
const search_readings = 1000;
const fallback_nodes = 500;

/** Pools the plans that were named and writes or prints what was asked for; resolves to the exit code. */
export async function runCut(named: readonly string[], options: CutOptions): Promise<number> {
  const bench = loadBench({ ...options, seed: 1, samples: samples_for_stops });
  if (bench === null) return exitCode.error;
  const shelf = shelfWithPileFile(options.pile, bench.shelf, named);
  if (shelf === null) return exitCode.error;
  const tools = options.shop === undefined ? {} : toolsOfFile(options.shop);
  if (tools === null) return exitCode.error;
  const { plans, bad } = readPlans(named, shelf);
  if (bad > 0 || plans.length === 0) return exitCode.error;
  if (await anyStopped(plans, bench, options.evenSo)) return exitCode.stop;
  const pooled = await poolPlansWith(
    plans,
    shelf,
    (some, from, how) => cutPlanExactly(some, from, ...patienceOf(options.seconds), loadHighs, how),
    { search: cutMany },
  );
  if (options.format === 'csv') csv(pooled, options);
  else if (options.format === 'json') json(pooled, options);
  else tell(`${summary(pooled)}  →  ${await writePage(pooled, shelf, tools.saw, options)}`);
  return pooled.cut.too_long.length > 0
    ? exitCode.stop
    : pooled.cut.uncut.length > 0 || pooled.short.length > 0
      ? exitCode.unknown
      : exitCode.fine;
}

/** Sure enough to tell whether a plan must stop. */
const samples_for_stops = 2000;

/** Names every plan that the rules stop; true when there is one and it shall not be cut even so. */
async function anyStopped(plans: readonly Plan[], bench: Bench, even_so: boolean): Promise<boolean> {
  const stopped: string[] = [];
  for (const plan of plans) {
    const { verdict, findings } = await audit(plan, bench);
    if (verdict === 'stop')
      stopped.push(
        `${userText(plan.name)}: ${[...new Set(findings.filter((f) => f.verdict === 'stop').map(({ title }) => title))].join('; ')}`,
      );
  }
  for (const line of stopped)
    warn(
      `${badge('stop', 'STOP')}  ${line}. ${even_so ? 'It is cut even so, as you asked.' : 'It must not be cut as it stands.'}`,
    );
  if (stopped.length > 0 && !even_so)
    warn('Nothing was made. Run `sightdown audit` to see what to change, or give --even-so to cut it all the same.');
  return stopped.length > 0 && !even_so;
}

/** Counted work, so that the same plans always give the same answer; by the clock only where seconds are asked for. */
function patienceOf(seconds: number | undefined): [SearchTime, Patience] {
  if (seconds === undefined) return [{ timeLimit_ms: search_readings, now: workClock() }, { nodes: fallback_nodes }];
  return [{ timeLimit_ms: seconds * 1000, now: () => performance.now() }, { ms: seconds * 1000 }];
}

/**
 * All plans that can be read, and how many files cannot; complains about each of those. Files that are no plans by
 * their name or first key are left alone.
 */
export function readPlans(
  named: readonly string[],
  shelf: Shelf,
): { readonly plans: readonly Plan[]; readonly bad: number } {
  const { files, problems } = planFiles(named);
  const all: Problem[] = problems.map((problem) =>
    problem.code === 'wrong-ending' ? { ...problem, severity: 'warning' } : problem,
  );
  let bad = all.filter(({ severity }) => severity === 'error').length;
  const plans = files.flatMap((file): Plan[] => {
    const read = readText(file);
    if (!('problem' in read) && !named.includes(file) && otherKind(read.text) !== null) return [];
    const result =
      'problem' in read ? ({ ok: false, problems: [read.problem] } as const) : readPlanWith(read.text, file, shelf);
    all.push(...(result.ok ? result.warnings : result.problems));
    if (!result.ok) bad += 1;
    return result.ok ? [result.value] : [];
  });
  complain(all);
  return { plans, bad };
}

function summary({ plans, cut, supplies, total_cost }: Pooled): string {
  const frames = plans.reduce((sum, plan) => sum + plan.count, 0);
  const { full_boards_cost, boards_to_buy } = supplies;
  const boards =
    full_boards_cost === null
      ? 'not every board is known'
      : `${boards_to_buy} ${boards_to_buy === 1 ? 'board' : 'boards'} for ${money(full_boards_cost, cut.currency)}${cut.proven ? ', the least cost, proven' : gapWords(supplies)}`;
  return `${frames} ${frames === 1 ? 'frame' : 'frames'}: ${boards}; everything together ${money(total_cost, cut.currency)}`;
}

/** How far above the least cost the boards may be, where that was not proven: rounded up. */
const gapWords = ({ full_boards_cost: cost, boards_bound }: Pooled['supplies']): string =>
  cost === null || cost <= 0
    ? ''
    : `, at most ${Math.ceil((1000 * (cost - boards_bound)) / cost) / 10} % above the least possible`;

function csv({ cut, supplies }: Pooled, { out, list, overwrite }: CutOptions): void {
  const lists = [
    ...(list === 'buy' ? [] : [{ name: 'cut-list.csv', text: cutListCsv(cut) }]),
    ...(list === 'cut' ? [] : [{ name: 'buying-list.csv', text: buyingListCsv(supplies) }]),
  ];
  if (out === undefined) print(lists.map(({ text }) => text).join('\r\n'));
  else {
    writeFolder(out, lists, { overwrite });
    tell(lists.map(({ name }) => join(out, name)).join('  '));
  }
}

function json(pooled: Pooled, { out, overwrite }: CutOptions): void {
  const text = `${steadyJson({ format: 'cut/1', ...pooledData(pooled) })}\n`;
  if (out === undefined) printJson(text);
  else {
    writeFolder(out, [{ name: 'cut.json', text }], { overwrite });
    tell(join(out, 'cut.json'));
  }
}

async function writePage(
  pooled: Pooled,
  shelf: Shelf,
  saw: SawAtHand | undefined,
  { out = join('reports', 'cut'), format, overwrite }: CutOptions,
): Promise<string> {
  const { tree, pictures } = composeCutPage(pooled, shelf.name, saw);
  if (format === 'md') {
    writeFolder(
      out,
      [{ name: 'cut.md', text: writeMarkdown(tree) }, ...pictures.map(({ name, svg }) => ({ name, text: svg }))],
      { overwrite },
    );
    return join(out, 'cut.md');
  }
  const { writeHtml } = await import('../report/html.js');
  writeFolder(
    out,
    [
      {
        name: 'cut.html',
        text: writeHtml(tree, pictures, {
          title: 'What to buy and how to cut it',
          lang: 'en',
          sheet: sheetFor(pooled.cut.units),
        }),
      },
    ],
    { overwrite },
  );
  return join(out, 'cut.html');
}
