import type { Command } from 'commander';
import { Option } from 'commander';
import type { CutOptions } from './option-types.js';
import { formatOption, overwriteOption, wholeNumber } from './options.js';
import { under } from './help-text.js';

const help = `
Examples:
  sightdown cut left-panel.yaml right-panel.yaml --out cutting
  sightdown cut my-plan.yaml --format csv --list buy > buying-list.csv

All plans are cut from one pool of boards, each as often as its count says. If any of them cannot be read, or the rules stop one, nothing is made; --even-so cuts stopped plans too.

Exit codes: 0 done, 1 input error, 2 the boards of a stock are not known, 3 a plan must stop, or a piece is longer than any board.`;

/** Adds `sightdown cut PLAN…`. */
export function addCut(program: Command): void {
  program
    .command('cut')
    .description(
      'Pool several plans: list what to buy, how to cut it and in which order, and where the cloths lie on the roll.',
    )
    .argument('<plan...>', 'plan files (YAML), or folders of them')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .option('--rules <file>', 'ruleset that says which plans must not be cut (default: baseline)')
    .option('--even-so', 'cut plans as well that the rules stop', false)
    .option(
      '--pile <file>',
      'boards in hand: used first, at no cost, their knots cut round; only what they lack is bought',
    )
    .option('--shop <file>', 'your workshop: the steps at the saw are worded for the saw there is')
    .option(
      '--out <folder>',
      'where the page goes (default: reports/cut/; csv and json are printed unless this is given)',
    )
    .addOption(
      formatOption(
        ['md', 'html', 'csv', 'json'],
        'md and html write a page with pictures, csv and json print the lists',
      ),
    )
    .addOption(new Option('--list <list>', 'which list csv prints').choices(['both', 'cut', 'buy']).default('both'))
    .option(
      '--seconds <n>',
      'search each stock for so long instead, and the integer program again; then two runs may differ',
      wholeNumber(1, 3600),
    )
    .addOption(overwriteOption())
    .addHelpText('after', under(help))
    .action(async (plans: string[], options: CutOptions) => {
      process.exitCode = await (await import('./cut-run.js')).runCut(plans, options);
    });
}
