import type { Command } from 'commander';
import type { LearnOptions } from './option-types.js';
import { formatOption, overwriteOption } from './options.js';
import { under } from './help-text.js';

const help = `
The folder holds plans (plan: 1) and the bench sheets of the frames built by them (sheet: 1, with plan: and the plan’s name), whatever the files are called; and piles (pile: 1), for sheets that name their boards by the marks chalked on them.

Examples:
  sightdown learn our-frames --shelf our-shelf.yaml --out learned
  sightdown learn our-frames --shelf our-shelf.yaml --write --date 2027-03-04`;

/** Adds `sightdown learn FOLDER`. */
export function addLearn(program: Command): void {
  program
    .command('learn')
    .description('Compare finished frames with what was promised; say which numbers on your shelf should change.')
    .argument('<folder>', 'the folder with plans and bench sheets')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .option(
      '--pile <file>',
      'the boards in hand, for sheets that name them by their marks; a pile in the folder is found by itself',
    )
    .option('--write', 'put what was learned into that shelf; the old numbers stay beside it', false)
    .option('--date <day>', 'the day, such as 2027-03-04; goes into the shelf (default with --write: today)')
    .option('--out <folder>', 'where the page goes (default: reports)')
    .addOption(formatOption(['md', 'json', 'html'], 'page as Markdown or HTML, or one JSON document on the terminal'))
    .addOption(overwriteOption())
    .addHelpText('after', under(help))
    .action(async (folder: string, options: LearnOptions) => {
      process.exitCode = await (await import('./learn-run.js')).runLearn(folder, options);
    });
}
