import type { Command } from 'commander';
import type { TimetableOptions } from './option-types.js';
import { formatOption, overwriteOption } from './options.js';
import { under } from './help-text.js';

const help = `
Examples:
  sightdown timetable plans --shop room.yaml --out term
  sightdown timetable my-plan.yaml --shop evenings.yaml --format json

A shop file begins with shop: 1 and says when people work, how many they are, and what clamps, saws and flat places there are.
The page says what is done in which session by whom, what rests meanwhile, who waits for a clamp, when all is finished, and what it
costs. Fewer sessions than it needs are proven not to suffice, or it says how many might.

Exit codes: 0 all gets done, 1 input error, 2 the sessions do not suffice or a cost is unknown.`;

/** Adds `sightdown timetable PLAN… --shop FILE`. */
export function addTimetable(program: Command): void {
  program
    .command('timetable')
    .description(
      'Plan who does what in which session, with the clamps and saws there are, and when all frames are finished.',
    )
    .argument('<plan...>', 'plan files (YAML), or folders of them')
    .requiredOption('--shop <file>', 'the workshop: a file that begins with shop: 1')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .option('--out <folder>', 'where the page goes (default: reports/timetable/)')
    .addOption(
      formatOption(
        ['md', 'json', 'html'],
        'md writes a page with pictures, html a printable one, json prints one document',
      ),
    )
    .addOption(overwriteOption())
    .addHelpText('after', under(help))
    .action(async (plans: string[], options: TimetableOptions) => {
      process.exitCode = await (await import('./timetable-run.js')).runTimetable(plans, options);
    });
}
