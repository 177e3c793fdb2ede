import { runCommand, type Commands } from './run-command.js';
import { guardOutput } from './terminal.js';

/** Runs what was typed, once for the process. */
export function start(commands: Commands): void {
  guardOutput();
  // Once all is said and written, the process ends at once: taking the engine apart first would take a while.
  process.once('beforeExit', () => process.exit());
  void runCommand(process.argv.slice(2), commands);
}
