import { Command, CommanderError } from 'commander';
import { addAudit } from './cli/audit.js';
import { exitCode } from './cli/exit.js';

/** The command: one file per subcommand under `cli/`. Only here and there are files, clock, terminal and exit codes touched. */
const program = new Command('sightdown')
  .description('Checks a planned painting frame before you cut: flat, square, tight, and what to buy, cut, drill, screw and wait.')
  .version('0.1.0')
  .exitOverride()
  .showHelpAfterError('Run with --help to see what is possible.');

addAudit(program);

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? exitCode.fine : exitCode.error;
  else {
    process.stderr.write(`sightdown: this should not have happened: ${error instanceof Error ? error.message : String(error)}\n`);
    process.exitCode = exitCode.error;
  }
}
