import { Command, CommanderError } from 'commander';
import { tellFurtherFaults } from './cli/all-faults.js';
import { addAudit } from './cli/audit.js';
import { addChart } from './cli/chart.js';
import { addCut } from './cli/cut.js';
import { exitCode } from './cli/exit.js';
import { helpLayout, helpWidth, under } from './cli/help-text.js';
import { addLearn } from './cli/learn.js';
import { addMeasure } from './cli/measure.js';
import { addPlace } from './cli/place.js';
import { addNew } from './cli/new.js';
import { addPage } from './cli/page.js';
import { addRules } from './cli/rules.js';
import { addSchema } from './cli/schema.js';
import { addSuggest } from './cli/suggest.js';
import { addTimetable } from './cli/timetable.js';
import { guardOutput, print, warn } from './cli/terminal.js';
import { CannotWrite } from './cli/write-files.js';

/**
 * The command: one file per subcommand under `cli/`. Only here and there are files, clock, terminal and exit codes
 * touched.
 */
const program = new Command('sightdown')
  .description(
    'Checks a planned painting frame before you cut: flat, square, tight, and what to buy, cut, drill, screw and wait.',
  )
  .version('0.1.0')
  .exitOverride()
  .configureOutput({ writeOut: print, writeErr: (text) => warn(text.trimEnd()), getOutHelpWidth: helpWidth })
  .configureHelp(helpLayout)
  .addHelpText('after', under('\nRun `sightdown audit --help` for the options and examples of a command.'));

/** In the order of the work, as help lists them. */
const commands: Readonly<Record<string, (program: Command) => void>> = {
  new: addNew,
  audit: addAudit,
  suggest: addSuggest,
  cut: addCut,
  place: addPlace,
  measure: addMeasure,
  learn: addLearn,
  timetable: addTimetable,
  rules: addRules,
  chart: addChart,
  page: addPage,
  schema: addSchema,
};
// A command that is named needs no other beside it; setting all up takes as long as reading a plan.
const asked = Object.entries(commands).filter(([name]) => name === process.argv[2]);
for (const [, add] of asked.length > 0 ? asked : Object.entries(commands)) add(program);

/**
 * A negative reading such as `-2 mm`, or a file called `-2.yaml`, must not look like an option: a reading's hyphen
 * becomes a minus sign, which every quantity may have, and a file is named from its folder.
 */
function withoutFalseOptions(argument: string): string {
  if (!/^-[\d.]/.test(argument)) return argument;
  return /\.(ya?ml|md|html)$/i.test(argument) ? `./${argument}` : `\u2212${argument.slice(1)}`;
}

/** Runs the command once; what it comes to stands in the exit code. */
async function run(): Promise<void> {
  guardOutput();
  const argv = process.argv.map(withoutFalseOptions);
  try {
    await program.parseAsync(argv);
  } catch (error) {
    if (error instanceof CommanderError) {
      process.exitCode = error.exitCode === 0 ? exitCode.fine : exitCode.error;
      if (error.exitCode === 0 || error.code.startsWith('commander.help')) return;
      await tellFurtherFaults(program, argv, error);
      warn('Run with --help to see what is possible.');
    } else {
      warn(error instanceof CannotWrite ? error.message : bug(error));
      process.exitCode = exitCode.error;
    }
  }
}

const bug = (error: unknown): string =>
  `sightdown: this should not have happened: ${error instanceof Error ? error.message : String(error)}`;

void run();
