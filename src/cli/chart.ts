import { Option, type Command } from 'commander';
import type { ChartOptions } from './option-types.js';
import { jobsOption, overwriteOption, wholeNumber } from './options.js';
import { under } from './help-text.js';

const help = `
Example:
  sightdown chart --rules rules/class-first-year.yaml --out wall

Writes chart.md and chart.svg, and for the wall in big figures wall-chart.svg for A3 and wall-chart-a4-1.svg to -4.svg, which lie edge to edge. Print them at 100 %. It tries thousands of frames, which takes about a minute; where there are more than two cores, all but one share it, and --jobs says otherwise.

Exit codes: 0 written, 1 input error.`;

/** Adds `sightdown chart`. */
export function addChart(program: Command): void {
  program
    .command('chart')
    .description('Make a wall chart: the largest frames a shelf and ruleset allow.')
    .option('--rules <file>', 'ruleset to judge by (default: the baseline)')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .option('--out <folder>', 'where the chart goes', 'reports/chart')
    .addOption(
      new Option('--units <system>', 'to the last 10 mm, or to the last half inch')
        .choices(['metric', 'inch'])
        .default('metric'),
    )
    .option('--seed <n>', 'seed of what is sampled', wholeNumber(0, 2 ** 31 - 1), 1)
    .option(
      '--samples <n>',
      'be as sure of each size as from counting so many imagined frames',
      wholeNumber(100, 1_000_000),
      2000,
    )
    .addOption(jobsOption())
    .addOption(overwriteOption())
    .addHelpText('after', under(help))
    .action(async (options: ChartOptions) => {
      process.exitCode = await (await import('./chart-run.js')).runChart(options);
    });
}
