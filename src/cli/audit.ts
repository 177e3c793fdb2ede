import { Option, type Command } from 'commander';
import type { AuditOptions } from './option-types.js';
import { formatOption, jobsOption, overwriteOption, wholeNumber } from './options.js';
import { under } from './help-text.js';

const help = `
Examples:
  sightdown audit my-plan.yaml --out my-report
  sightdown audit plans/*.yaml --rules class-first-year
  sightdown audit plans --rules class-first-year --names hidden --format csv > marks.csv

One plan gets its report. Several plans, or a folder of them, get a report each, a page about all of them, class.md, and one file to print
for all, class-pack.html. Every file of a folder is told there: one that cannot be read is listed with its problems and does not spoil the rest.
Where there are more than two cores, all but one share a large class; --jobs says otherwise. What is written is the same.

Exit codes: 0 clear or caution, 1 input error, 2 unknown (or caution with --strict), 3 stop.
For several plans: 1 if any could not be read, else 3 if any is a stop, else 2, else 0.`;

/** Audits the named plans; resolves to the exit code. */
type RunAudit = (named: readonly string[], options: AuditOptions) => Promise<number>;

/** Adds `sightdown audit PLAN…`; what does it is fetched when it runs. */
export function addAudit(program: Command, fetch: () => Promise<RunAudit>): void {
  program
    .command('audit')
    .description('Check plans before you cut; write a report with pictures for each.')
    .argument('<plan...>', 'plan files (YAML), or folders of them')
    .option(
      '--rules <file>',
      'ruleset to judge by: a file, or the name of one that ships with the tool (default: baseline)',
    )
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .option(
      '--out <folder>',
      'where the report goes (default: reports/<plan file name>/ here; for several plans: reports/)',
    )
    .option(
      '--pile <file>',
      'boards in hand: used first, at no cost; only what they lack is bought (sightdown place says which goes where)',
    )
    .option(
      '--shop <file>',
      'your workshop: the order of work is worded for the saws, clamps and tables there are, and what cannot be done well with them is a caution',
    )
    .option(
      '--measured <file>',
      'a filled-in bench sheet: what was read while building is held against what was promised; for one plan',
    )
    .addOption(
      formatOption(
        ['md', 'json', 'html', 'csv'],
        'md writes a report, html a printable page, json prints one document, csv a line for each file of a class',
      ),
    )
    .addOption(
      new Option('--names <how>', 'hidden: students, plans and files of a class go by numbers on every page')
        .choices(['shown', 'hidden'])
        .default('shown'),
    )
    .option('--strict', 'a caution also counts as not passed (exit 2)', false)
    .addOption(jobsOption())
    .addOption(overwriteOption())
    .option('--seed <n>', 'seed of what is sampled', wholeNumber(0, 2 ** 31 - 1), 1)
    .option('--samples <n>', 'be as sure as from counting so many imagined frames', wholeNumber(100, 1_000_000), 20_000)
    .addHelpText('after', under(help))
    .action(async (plans: string[], options: AuditOptions) => {
      const runAudit = await fetch();
      process.exitCode = await runAudit(plans, options);
    });
}
