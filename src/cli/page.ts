import type { Command } from 'commander';
import type { PageOptions } from './option-types.js';
import { overwriteOption } from './options.js';
import { under } from './help-text.js';

const help = `
Example:
  sightdown page --out sightdown.html

Open the file by double click, on a laptop or a phone. It works without a network and sends nothing anywhere.

Exit codes: 0 written, 1 input error.`;

/** Adds `sightdown page`. */
export function addPage(program: Command): void {
  program
    .command('page')
    .description('Write one HTML file in which plans are drawn, changed and checked without a terminal.')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .option(
      '--rules <file>',
      'ruleset that judges at first: a file, or the name of one that ships with the tool (default: baseline)',
    )
    .option('--plan <file>', 'plan that is open at first')
    .option('--out <file>', 'where the page goes', 'sightdown.html')
    .addOption(overwriteOption())
    .addHelpText('after', under(help))
    .action(async (options: PageOptions) => {
      process.exitCode = await (await import('./page-run.js')).runPage(options);
    });
}
