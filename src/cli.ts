import { isMainThread } from 'node:worker_threads';
import { runCommand } from './cli/run-command.js';
import { guardOutput } from './cli/terminal.js';

/**
 * The command: one file per subcommand under `cli/`. Only here and there are files, clock, terminal and exit codes
 * touched. Where work is shared out, each worker begins here as well.
 */
if (isMainThread) {
  guardOutput();
  // Once all is said and written, the process ends at once: taking the engine apart first would take a while.
  process.once('beforeExit', () => process.exit());
  void runCommand(process.argv.slice(2));
} else void import('./cli/worker.js').then(({ workAsTold }) => workAsTold());
