import type { Bench } from '../audit.js';
import { classCsv } from '../class/class-csv.js';
import type { Problem } from '../base/problem.js';
import { rollUpData, steadyJson } from '../class/class-data.js';
import type { ClassFindings } from '../class/class-findings.js';
import type { ClassRow, NotRead } from '../class/class-row.js';
import { concludeClass } from '../class/conclude.js';
import { cutMany } from '../cutting/boards/cut-many.js';
import { compareGravity } from '../findings/summary.js';
import type { Plan } from '../plan/plan.js';
import { userText } from '../report/clean-text.js';
import { appliedOf } from '../rules/say/applied.js';
import { entriesOf, standing, usualFolder, type ClassSharing, type FileDone } from './class-work.js';
import { benchOf } from './audit-bench.js';
import type { AuditOptions } from './option-types.js';
import { writeClassPage, writePack, type PageOptions } from './class-pages.js';
import { codeOf, exitCode } from './exit.js';
import type { KeptSheet } from './kept-sheet.js';
import { whileHolding } from './out-folder.js';
import type { PlanFile, PlanFiles } from './plans.js';
import { progress } from './progress.js';
import { shareOut, usualJobs } from './share-work.js';
import { expectMuchGarbage } from './short-work.js';
import { complain, printJson, printTable, tell, warn } from './terminal.js';

/** A worker is as slow at first as a command that starts: so many plans pass until it is worth it. */
const worthStarting = 8;

/** What is kept while a class is gone through: never a whole audit. */
interface Kept {
  readonly rows: ClassRow[];
  readonly others: NotRead[];
  readonly pool: { readonly row: number; readonly plan: Plan }[];
  readonly sheets: KeptSheet[];
  /** Everything to complain of at the terminal, files by their names. */
  readonly problems: Problem[];
  /** What the pages say of the files that could not be read. */
  readonly told: Problem[];
  readonly lines: string[];
}

/**
 * Audits several plans: a report for each, written when it is done, and a page about all of them. The folder of the
 * pages is held meanwhile, so that all of them are of this run. What the usual changes would do is not worked out here,
 * it would take five times as long: auditing a single plan does. Resolves to the exit code.
 */
export async function runClass(
  named: readonly string[],
  { entries: files, problems, several }: PlanFiles,
  options: AuditOptions,
): Promise<number> {
  const bench = await benchOf(named, options);
  if (bench === null) return exitCode.error;
  if (several && options.measured !== undefined) {
    warn('--measured goes with one plan: a bench sheet is about one frame.');
    return exitCode.error;
  }
  const run = (): Promise<number> => auditAll(files, problems, bench, options);
  const pages = options.format === 'md' || options.format === 'html';
  return pages && files.some(({ not }) => not === null) ? whileHolding(options.out ?? usualFolder, run) : run();
}

async function auditAll(
  files: readonly PlanFile[],
  found: readonly Problem[],
  bench: Bench,
  options: AuditOptions,
): Promise<number> {
  expectMuchGarbage();
  const kept: Kept = { rows: [], others: [], pool: [], sheets: [], problems: [...found], told: [], lines: [] };
  const sharing: ClassSharing = { work: 'class', entries: entriesOf(files, options), bench, options };
  const { out, format } = options;
  if (format === 'json') printJson('{\n  "format": "audits/1",\n  "audits": [');
  const bar = progress(files.length, 'plans');
  const take = (one: FileDone): void => keep(one, kept);
  await shareOut(sharing, files.length, options.jobs ?? usualJobs(files.length, worthStarting), {
    take,
    step: bar.step,
  });
  bar.end();
  complain(kept.problems);
  const applied = appliedOf(bench.ruleset, bench.baseline ?? null);
  const classFound = concludeClass(kept, { ...bench, applied }, { search: cutMany });
  if (format === 'csv') printTable(classCsv(classFound));
  else if (format === 'json')
    printJson(
      `\n  ],\n  "broken": ${indented(steadyJson(kept.told))},\n  "roll_up": ${indented(steadyJson(rollUpData(classFound)))}\n}\n`,
    );
  else {
    kept.lines.forEach(tell);
    if (kept.rows.length > 0 || standing(out ?? usualFolder, 'class').length > 0)
      tell(
        `${countLine(kept)}  →  ${await writeClass(classFound, kept, out ?? usualFolder, { format, overwrite: options.overwrite })}`,
      );
  }
  const broken =
    kept.others.some(({ kind }) => kind === 'not-read') || found.some(({ severity }) => severity === 'error');
  const worst = kept.rows.reduce<ClassRow['verdict']>(
    (gravest, { verdict }) => (compareGravity(verdict, gravest) > 0 ? verdict : gravest),
    'clear',
  );
  return broken ? exitCode.error : codeOf(worst, options.strict);
}

/** What a file came to, after all that came before it; its audit is printed in its turn. */
function keep({ row, other, plan, sheet, problems, told, lines, json }: FileDone, kept: Kept): void {
  const at = kept.rows.length;
  if (json !== null) printJson(`${at === 0 ? '' : ','}\n    ${indented(indented(json))}`);
  if (row !== null) kept.rows.push(row);
  if (other !== null) kept.others.push(other);
  if (plan !== null) kept.pool.push({ row: at, plan });
  if (sheet !== null) kept.sheets.push({ ...sheet, row: at });
  kept.problems.push(...problems);
  kept.told.push(...told);
  kept.lines.push(...lines);
}

/**
 * The page about all in the wanted format and wherever an older one stands, and the file to print; resolves to their
 * names.
 */
async function writeClass(
  found: ClassFindings,
  { sheets }: Kept,
  out: string,
  { format, overwrite }: PageOptions,
): Promise<string> {
  const formats = [format, ...standing(out, 'class').filter((one) => one !== format)];
  const names: string[] = [];
  for (const one of formats) names.push(await writeClassPage(found, out, { format: one, overwrite }));
  return [...names, await writePack(found, sheets, out, overwrite)].join('  ');
}

/** `31 files: 24 plans, 7 not read (a.yaml, b.txt)` */
function countLine({ rows, others }: Kept): string {
  const plans = `${rows.length} ${rows.length === 1 ? 'plan' : 'plans'}`;
  if (others.length === 0) return plans;
  const named = (kind: NotRead['kind'], words: string): string => {
    const some = others.filter((other) => other.kind === kind).map(({ file }) => userText(file, 60));
    return some.length === 0
      ? ''
      : `, ${some.length} ${words} (${some.slice(0, 12).join(', ')}${some.length > 12 ? ' …' : ''})`;
  };
  return `${rows.length + others.length} files: ${plans}${named('not-read', 'not read')}${named('beside', 'no plan')}`;
}

/** JSON text one level further in; no text inside it holds a line break. */
const indented = (json: string): string => json.replaceAll('\n', '\n  ');
