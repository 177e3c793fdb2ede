import { commands } from '../../src/cli/commands.js';
import { runCommand } from '../../src/cli/run-command.js';

/** What is asked of the process: the words of a command line, and the folder it is typed in. */
export interface Asked {
  readonly folder: string;
  readonly words: readonly string[];
}

/** What the command said, and its exit code. */
export interface Answered {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/**
 * The command in a process that stays: one run after the other, each in its folder, without a terminal. Starting anew for each took half of the tests' time.
 * Whether it starts, ends, is broken off and takes prepared files as it should is asked of the built command itself.
 */
process.on('message', async ({ folder, words }: Asked) => {
  const said = { out: '', err: '' };
  const into = (name: keyof typeof said) => (text: string | Uint8Array): boolean => {
    said[name] += String(text);
    return true;
  };
  process.stdout.write = into('out');
  process.stderr.write = into('err');
  process.chdir(folder);
  process.exitCode = undefined;
  await runCommand(words, commands);
  process.send!({ code: Number(process.exitCode ?? 0), ...said } satisfies Answered);
  process.chdir('/');
});
process.on('disconnect', () => process.exit(0));
