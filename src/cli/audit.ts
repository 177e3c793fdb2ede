import { InvalidArgumentError, Option, type Command } from 'commander';
import { basename, join } from 'node:path';
import { auditText, withChanges, type Bench } from '../audit.js';
import type { Audit } from '../report/audit-view.js';
import { composeReport, reportTitle } from '../report/compose.js';
import { writeJson } from '../report/json.js';
import { writeMarkdown } from '../report/markdown.js';
import { codeOf, exitCode } from './exit.js';
import { readText, writeFolder } from './files.js';
import { loadRules, loadShelf } from './load.js';
import { complain, tell } from './terminal.js';

/** Options of `audit` as commander gives them. */
export interface AuditOptions {
  readonly rules?: string;
  readonly shelf?: string;
  readonly out?: string;
  readonly format: 'md' | 'json' | 'html';
  readonly strict: boolean;
  readonly seed: number;
  readonly samples: number;
}

/** A whole number from `least` to `most`, or commander's own complaint. */
export function wholeNumber(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!/^\d+$/.test(text) || value < least || value > most) throw new InvalidArgumentError(`It takes a whole number from ${least} to ${most}.`);
    return value;
  };
}

/** Adds `sightdown audit PLAN…`. */
export function addAudit(program: Command): void {
  program
    .command('audit')
    .description('Audit plans before cutting; writes a report with pictures for each.')
    .argument('<plan...>', 'plan files (YAML)')
    .option('--rules <file>', 'ruleset to judge by (default: the baseline)')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .option('--out <folder>', 'where the report goes (default: reports/<plan file name>/ here)')
    .addOption(new Option('--format <format>', 'md writes a report, html a printable page, json prints one document').choices(['md', 'json', 'html']).default('md'))
    .option('--strict', 'a caution also counts as not passed (exit 2)', false)
    .option('--seed <n>', 'seed of the sampling', wholeNumber(0, 2 ** 31 - 1), 1)
    .option('--samples <n>', 'how many frames to sample', wholeNumber(100, 1_000_000), 20_000)
    .addHelpText('after', '\nExample:\n  sightdown audit my-plan.yaml --out my-report\n\nExit codes: 0 clear or caution, 1 input error, 2 unknown (or caution with --strict), 3 stop.')
    .action(async (plans: string[], options: AuditOptions) => {
      process.exitCode = await runAudit(plans, options);
    });
}

async function runAudit(files: readonly string[], options: AuditOptions): Promise<number> {
  const bench = loadBench(options);
  if (bench === null) return exitCode.error;
  const [file] = files as readonly [string, ...string[]];
  const audited = await auditFile(file, bench);
  if (audited === null) return exitCode.error;
  if (options.format === 'json') process.stdout.write(writeJson(audited));
  else await writeReport(audited, options.out ?? join('reports', planName(file)), options.format);
  return codeOf(audited.verdict, options.strict);
}

/** Shelf and ruleset as the options name them; complains and gives null when they cannot be read. */
export function loadBench(options: Pick<AuditOptions, 'rules' | 'shelf' | 'seed' | 'samples'>): Bench | null {
  const shelf = loadShelf(options.shelf);
  const ruleset = loadRules(options.rules);
  const problems = [shelf, ruleset].flatMap((result) => (result.ok ? result.warnings : result.problems));
  complain(problems);
  return shelf.ok && ruleset.ok ? { shelf: shelf.value, ruleset: ruleset.value, seed: options.seed, samples: options.samples } : null;
}

async function auditFile(file: string, bench: Bench): Promise<Audit | null> {
  const read = readText(file);
  if ('problem' in read) {
    complain([read.problem]);
    return null;
  }
  const result = await auditText(read.text, file, bench);
  complain(result.ok ? result.warnings : result.problems);
  return result.ok ? withChanges(result.value, bench) : null;
}

async function writeReport(audit: Audit, folder: string, format: 'md' | 'html'): Promise<void> {
  const { tree, pictures } = composeReport(audit);
  const drawn = pictures.map(({ name, svg }) => ({ name, text: svg }));
  if (format === 'md') writeFolder(folder, [{ name: 'report.md', text: writeMarkdown(tree) }, ...drawn]);
  else {
    const { writeHtml } = await import('../report/html.js');
    writeFolder(folder, [{ name: 'report.html', text: writeHtml(tree, pictures, { title: reportTitle(audit), lang: 'en' }) }]);
  }
  tell(`${audit.verdict.toUpperCase()}  ${audit.plan.name}  →  ${join(folder, format === 'md' ? 'report.md' : 'report.html')}`);
}

/** Name of the default report folder: the plan's file name without its ending. */
export function planName(file: string): string {
  return basename(file).replace(/\.ya?ml$/i, '');
}
