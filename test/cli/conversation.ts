import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { command, type Folder } from './command.js';

/** Whether a terminal can be lent: `script` of util-linux does; other systems have another one of that name, or none. */
export const lendsTerminal = spawnSync('script', ['--version'], { encoding: 'utf8' }).stdout?.includes('util-linux') === true;

const quote = (text: string): string => `'${text.replaceAll("'", `'\\''`)}'`;

/** Runs the command on a terminal and types the keys one after the other, each once the screen shows what it answers; returns all that was shown, and its exit code at the end. */
export function converse(here: Folder, keys: readonly (readonly [shown: string, key: string])[], ...args: readonly string[]): string {
  const wait = (shown: string): string => `for i in $(seq 300); do grep -q ${quote(shown)} screen && break; sleep 0.03; done`;
  // a question that is shown already listens
  const typed = keys.map(([shown, key]) => `${wait(shown)}; sleep 0.03; printf ${quote(key)}`).join('; ');
  // the lent terminal has no size of its own, and text would wrap after every letter
  const run = `stty cols 100 rows 40; ${[process.execPath, command, ...args].map(quote).join(' ')}; echo "exit $?"`;
  spawnSync('sh', ['-c', `: > screen; { ${typed}; ${wait('^exit [0-9]')}; } | TERM=xterm script -qfec ${quote(run)} /dev/null > screen`], { cwd: here.path, encoding: 'utf8', timeout: 60_000 });
  return readFileSync(join(here.path, 'screen'), 'utf8');
}
