import { isMainThread } from 'node:worker_threads';
import { commands } from './cli/commands.js';
import { start } from './cli/start.js';

/**
 * The command: one file per subcommand under `cli/`. Only here and there are files, clock, terminal and exit codes
 * touched. Where work is shared out, each worker begins here as well.
 */
if (isMainThread) start(commands);
else void import('./cli/worker.js').then(({ workAsTold }) => workAsTold());
