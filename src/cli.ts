import { runCommand } from './cli/run-command.js';
import { guardOutput } from './cli/terminal.js';

/**
 * The command: one file per subcommand under `cli/`. Only here and there are files, clock, terminal and exit codes
 * touched.
 */
guardOutput();
void runCommand(process.argv.slice(2));
