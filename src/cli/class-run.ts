import { join } from 'node:path';
import { auditText, type Bench } from '../audit.js';
import type { Problem } from '../base/problem.js';
import { rollUpData, steadyJson } from '../class/class-data.js';
import { composeClassPage, mayBeCut, type ClassFindings } from '../class/class-page.js';
import { classRow, type ClassRow } from '../class/class-row.js';
import { poolPlans } from '../class/pooled.js';
import { rollUp } from '../class/roll-up.js';
import { compareGravity } from '../findings/summary.js';
import type { Plan } from '../plan/plan.js';
import { auditData } from '../report/json.js';
import { writeMarkdown } from '../report/markdown.js';
import { appliedOf } from '../rules/applied.js';
import type { AuditOptions } from './audit.js';
import { verdictLine, writeReport } from './audit-run.js';
import { codeOf, exitCode } from './exit.js';
import { readText } from './read-text.js';
import { writeFolder } from './write-files.js';
import { pageNames } from './plans.js';
import { progress } from './progress.js';
import { complain, printJson, tell } from './terminal.js';

/** What is kept while a class is gone through: never a whole audit. */
interface Kept {
  readonly rows: ClassRow[];
  readonly pool: { readonly row: number; readonly plan: Plan }[];
  readonly problems: Problem[];
  readonly lines: string[];
  broken: number;
}

/**
 * Audits several plans one after the other: a report for each, and a page about all of them. What the usual changes would do is not worked out here,
 * it would take five times as long: auditing a single plan does. Resolves to the exit code.
 */
export async function runClass(files: readonly string[], found: readonly Problem[], bench: Bench, options: AuditOptions): Promise<number> {
  const kept: Kept = { rows: [], pool: [], problems: [...found], lines: [], broken: found.length };
  const out = options.out ?? 'reports';
  const pages = pageNames(files);
  const json = options.format === 'json';
  if (json) printJson('{\n  "format": "audits/1",\n  "audits": [');
  const bar = progress(files.length, 'plans');
  for (const [i, file] of files.entries()) {
    await one(file, pages[i] as string, bench, options, out, kept);
    await bar.step();
  }
  bar.end();
  complain(kept.problems);
  const errors = kept.problems.filter(({ severity }) => severity === 'error');
  const classFound = conclude(kept, errors, bench);
  if (json) printJson(`\n  ],\n  "broken": ${indented(steadyJson(errors))},\n  "roll_up": ${indented(steadyJson(rollUpData(classFound)))}\n}\n`);
  else {
    kept.lines.forEach(tell);
    if (kept.rows.length > 0) tell(`${kept.rows.length} plans  →  ${await writeClassPage(classFound, out, options)}`);
  }
  const worst = kept.rows.reduce<ClassRow['verdict']>((gravest, { verdict }) => (compareGravity(verdict, gravest) > 0 ? verdict : gravest), 'clear');
  return kept.broken > 0 ? exitCode.error : codeOf(worst, options.strict);
}

async function one(file: string, page: string, bench: Bench, options: AuditOptions, out: string, kept: Kept): Promise<void> {
  const read = readText(file);
  const result = 'problem' in read ? ({ ok: false, problems: [read.problem] } as const) : await auditText(read.text, file, bench);
  kept.problems.push(...(result.ok ? result.warnings : result.problems));
  if (!result.ok) {
    kept.broken += 1;
    return;
  }
  const audit = result.value;
  const { format } = options;
  if (format === 'json') printJson(`${kept.rows.length === 0 ? '' : ','}\n    ${indented(indented(steadyJson(auditData(audit))))}`);
  else kept.lines.push(`${verdictLine(audit)}  →  ${await writeReport(audit, join(out, page), options)}`);
  if (mayBeCut(audit.verdict)) kept.pool.push({ row: kept.rows.length, plan: audit.plan });
  kept.rows.push(classRow(audit, file, format === 'json' ? null : `${page}/report.${format}`));
}

function conclude({ rows, pool, broken }: Kept, errors: readonly Problem[], { shelf, ruleset, baseline, seed, samples }: Bench): ClassFindings {
  const plans = pool.map(({ plan }) => plan);
  return {
    rows,
    roll_up: rollUp(rows, broken),
    broken: errors,
    pooled: plans.length === 0 ? null : poolPlans(plans, shelf),
    pooled_rows: pool.map(({ row }) => row),
    applied: appliedOf(ruleset, baseline ?? null),
    shelf_name: shelf.name,
    measured: shelf.measured,
    currency: shelf.currency,
    seed,
    samples,
  };
}

async function writeClassPage(found: ClassFindings, out: string, { format, overwrite }: AuditOptions): Promise<string> {
  const { tree, pictures } = composeClassPage(found);
  if (format === 'md') {
    writeFolder(out, [{ name: 'class.md', text: writeMarkdown(tree) }, ...pictures.map(({ name, svg }) => ({ name, text: svg }))], { overwrite });
    return join(out, 'class.md');
  }
  const { writeHtml } = await import('../report/html.js');
  writeFolder(out, [{ name: 'class.html', text: writeHtml(tree, pictures, { title: 'The class at a glance', lang: 'en' }) }], { overwrite });
  return join(out, 'class.html');
}

/** JSON text one level further in; no text inside it holds a line break. */
const indented = (json: string): string => json.replaceAll('\n', '\n  ');
