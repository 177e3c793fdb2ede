import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { auditText, type Bench } from '../audit.js';
import type { Problem } from '../base/problem.js';
import { classCsv } from '../class/class-csv.js';
import { rollUpData, steadyJson } from '../class/class-data.js';
import type { ClassFindings } from '../class/class-findings.js';
import { mayBeCut } from '../class/class-page.js';
import { classRow, type ClassRow, type NotRead } from '../class/class-row.js';
import { concludeClass, whyNotRead } from '../class/conclude.js';
import { planSheet, type PlanSheet } from '../class/plan-sheet.js';
import { compareGravity } from '../findings/summary.js';
import type { Plan } from '../plan/plan.js';
import type { Audit } from '../report/audit-view.js';
import { auditData } from '../report/json.js';
import { userText } from '../report/clean-text.js';
import { appliedOf } from '../rules/say/applied.js';
import type { AuditOptions } from './option-types.js';
import { verdictLine } from './verdict-lines.js';
import { writeClassPage, writeNotRead, writePack, type PageOptions } from './class-pages.js';
import { codeOf, exitCode } from './exit.js';
import { readText } from './read-text.js';
import { otherKind, pageNames, type PlanFile } from './plans.js';
import { progress } from './progress.js';
import { complain, printJson, printTable, tell } from './terminal.js';
import { writeReport } from './write-report.js';

/** What is kept while a class is gone through: never a whole audit. */
interface Kept {
  readonly rows: ClassRow[];
  readonly others: NotRead[];
  readonly pool: { readonly row: number; readonly plan: Plan }[];
  readonly sheets: PlanSheet[];
  /** Everything to complain of at the terminal, files by their names. */
  readonly problems: Problem[];
  /** What the pages say of the files that could not be read. */
  readonly told: Problem[];
  readonly lines: string[];
}

/** One file of the class: its number, what the pages call it, and the folder of its report. */
interface Entry extends PlanFile {
  readonly no: number;
  readonly label: string;
  readonly page: string;
}

/**
 * Audits several plans one after the other: a report for each, and a page about all of them. What the usual changes
 * would do is not worked out here,
 * it would take five times as long: auditing a single plan does. Resolves to the exit code.
 */
export async function runClass(
  files: readonly PlanFile[],
  found: readonly Problem[],
  bench: Bench,
  options: AuditOptions,
): Promise<number> {
  const kept: Kept = { rows: [], others: [], pool: [], sheets: [], problems: [...found], told: [], lines: [] };
  const out = options.out ?? 'reports';
  const hidden = options.names === 'hidden';
  const pages = pageNames(files.map(({ file }) => file));
  const { format } = options;
  if (format === 'json') printJson('{\n  "format": "audits/1",\n  "audits": [');
  const bar = progress(files.length, 'plans');
  for (const [i, file] of files.entries()) {
    const no = i + 1;
    const entry = { ...file, no, label: hidden ? `Plan ${no}` : file.file, page: hidden ? `plan-${no}` : pages[i]! };
    await one(entry, bench, options, out, kept);
    await bar.step();
  }
  bar.end();
  complain(kept.problems);
  const classFound = concludeClass(kept, { ...bench, applied: appliedOf(bench.ruleset, bench.baseline ?? null) });
  if (format === 'csv') printTable(classCsv(classFound));
  else if (format === 'json')
    printJson(
      `\n  ],\n  "broken": ${indented(steadyJson(kept.told))},\n  "roll_up": ${indented(steadyJson(rollUpData(classFound)))}\n}\n`,
    );
  else {
    kept.lines.forEach(tell);
    if (kept.rows.length > 0 || standing(out, 'class').length > 0)
      tell(
        `${countLine(kept)}  →  ${await writeClass(classFound, kept, out, { format, overwrite: options.overwrite })}`,
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

/** One file after the other: its report and its row, or the page and the row that say why there is none. */
async function one(entry: Entry, bench: Bench, options: AuditOptions, out: string, kept: Kept): Promise<void> {
  if (entry.not !== null) return missing(entry, entry.not, [], options, out, kept);
  const read = readText(entry.file);
  const beside = 'problem' in read ? null : otherKind(read.text);
  if (beside !== null) return missing(entry, { kind: 'beside', why: beside }, [], options, out, kept);
  const result =
    'problem' in read
      ? ({ ok: false, problems: [read.problem] } as const)
      : await auditText(read.text, entry.file, bench);
  kept.problems.push(...(result.ok ? result.warnings : result.problems));
  if (!result.ok) {
    const errors = result.problems
      .filter(({ severity }) => severity === 'error')
      .map((problem) => ({ ...problem, file: entry.label }));
    kept.told.push(...errors);
    return missing(entry, { kind: 'not-read', why: whyNotRead(errors) }, errors, options, out, kept);
  }
  const { format } = options;
  const audit = options.names === 'hidden' ? nameless(result.value, entry.label) : result.value;
  const written = format === 'md' || format === 'html';
  if (format === 'json')
    printJson(`${kept.rows.length === 0 ? '' : ','}\n    ${indented(indented(steadyJson(auditData(audit))))}`);
  else if (written) {
    const file = options.names === 'hidden' ? ` (${userText(entry.file, 200)})` : '';
    kept.lines.push(`${verdictLine(audit)}${file}  →  ${await writeReport(audit, join(out, entry.page), options)}`);
  }
  const row = classRow(audit, {
    no: entry.no,
    file: entry.label,
    page: written ? `${entry.page}/report.${format}` : null,
    points: bench.ruleset.points,
  });
  if (mayBeCut(audit.verdict)) kept.pool.push({ row: kept.rows.length, plan: audit.plan });
  if (written) kept.sheets.push(planSheet(audit, row.no, kept.rows.length));
  kept.rows.push(row);
}

/** A file that gave no plan: its row, and a page in the place of every older report of it. */
async function missing(
  { no, label, page }: Entry,
  not: NonNullable<PlanFile['not']>,
  errors: readonly Problem[],
  options: AuditOptions,
  out: string,
  kept: Kept,
): Promise<void> {
  const writes = not.kind === 'not-read' && (options.format === 'md' || options.format === 'html');
  const old = writes ? standing(join(out, page), 'report') : [];
  const other: NotRead = {
    no,
    file: label,
    kind: not.kind,
    why: capital(not.why),
    page: old[0] === undefined ? null : `${page}/report.${old[0]}`,
  };
  kept.others.push(other);
  for (const format of old)
    kept.lines.push(
      `NOT READ  ${userText(label, 200)}  →  ${await writeNotRead(other, errors, join(out, page), { format, overwrite: options.overwrite })}`,
    );
}

/** The formats in which a page stands in a folder already: what is no longer true there must be said there. */
const standing = (folder: string, name: string): readonly ('md' | 'html')[] =>
  (['md', 'html'] as const).filter((format) => existsSync(join(folder, `${name}.${format}`)));

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

const capital = (words: string): string =>
  `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/u.test(words) ? '' : '.'}`;

/** The audit of a plan that goes by its number. */
const nameless = (audit: Audit, label: string): Audit => {
  const plan = { ...audit.plan, name: label, student: null };
  return { ...audit, plan, model: { ...audit.model, plan }, cut: { ...audit.cut, plan_names: [label] } };
};

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
