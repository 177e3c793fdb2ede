import type { Command } from 'commander';
import type { PlaceOptions } from './option-types.js';
import { formatOption, overwriteOption, wholeNumber } from './options.js';
import { under } from './help-text.js';

const help = `
Examples:
  sightdown place my-plan.yaml --pile rack.yaml --out bench
  sightdown place my-plan.yaml --pile rack.yaml --write

A pile is a short text file: the boards in hand with what was read of each (sightdown new --pile writes one). The page
says which board becomes which bar, from where to where, which face shows and which end comes first; what that does to
the corner’s lift, against boards taken by luck; what to leave on the rack and what to buy besides.
--write puts the readings of the placed boards into the plan file, in place of any that are there; its comments stay.

Exit codes: 0 placed, 1 input error, 2 the lift of a frame cannot be worked out or a piece finds no board anywhere.`;

/** Adds `sightdown place PLAN… --pile FILE`. */
export function addPlace(program: Command): void {
  program
    .command('place')
    .description('Choose which of the boards in hand goes where, and which way round, so that the frame stays flat.')
    .argument('<plan...>', 'plan files (YAML), or folders of them; all are cut from the one pile')
    .requiredOption('--pile <file>', 'the boards in hand: a file that begins with pile: 1')
    .option('--rules <file>', 'ruleset whose limits say what a lifted corner and a bowed bar are (default: baseline)')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .option(
      '--out <folder>',
      'where the page goes (default: reports/<plan file name>/, for several plans reports/place/)',
    )
    .addOption(
      formatOption(
        ['md', 'json', 'html'],
        'md writes a page with pictures, html a printable one, json prints one document',
      ),
    )
    .option('--write', 'put the placed boards into the plan files', false)
    .option('--seed <n>', 'seed of what is drawn by luck', wholeNumber(0, 2 ** 31 - 1), 1)
    .addOption(overwriteOption())
    .addHelpText('after', under(help))
    .action(async (plans: string[], options: PlaceOptions) => {
      process.exitCode = await (await import('./place-run.js')).runPlace(plans, options);
    });
}
