import { Command, CommanderError } from 'commander';
import { addAudit } from './cli/audit.js';
import { addChart } from './cli/chart.js';
import { addCut } from './cli/cut.js';
import { exitCode } from './cli/exit.js';
import { addMeasure } from './cli/measure.js';
import { addNew } from './cli/new.js';
import { addRules } from './cli/rules.js';
import { addSchema } from './cli/schema.js';
import { addSuggest } from './cli/suggest.js';

/** The command: one file per subcommand under `cli/`. Only here and there are files, clock, terminal and exit codes touched. */
const program = new Command('sightdown')
  .description('Checks a planned painting frame before you cut: flat, square, tight, and what to buy, cut, drill, screw and wait.')
  .version('0.1.0')
  .exitOverride()
  .showHelpAfterError('Run with --help to see what is possible.');

addAudit(program);
addCut(program);
addMeasure(program);
addRules(program);
addNew(program);
addSchema(program);
addSuggest(program);
addChart(program);

/** A negative reading such as `-2 mm` must not look like an option, so its hyphen becomes a minus sign, which every quantity may have. */
function withRealMinus(argument: string): string {
  return /^-[\d.]/.test(argument) ? `\u2212${argument.slice(1)}` : argument;
}

// A reader that has seen enough, such as `head`, is no mistake.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(exitCode.fine);
  throw error;
});

/** Runs the command once; what it comes to stands in the exit code. */
async function run(): Promise<void> {
  try {
    await program.parseAsync(process.argv.map(withRealMinus));
  } catch (error) {
    if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? exitCode.fine : exitCode.error;
    else {
      process.stderr.write(`sightdown: this should not have happened: ${error instanceof Error ? error.message : String(error)}\n`);
      process.exitCode = exitCode.error;
    }
  }
}

void run();
