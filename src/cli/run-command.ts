import { Command, CommanderError } from 'commander';
import { tellFurtherFaults } from './all-faults.js';
import { exitCode } from './exit.js';
import { helpLayout, helpWidth, under } from './help-text.js';
import { print, warn } from './terminal.js';
import { CannotWrite } from './cannot-write.js';

/** What can follow the name of the tool, each with what adds it to the program. */
export type Commands = Readonly<Record<string, (program: Command) => void>>;

/** The command with the subcommand that is named; setting all up takes as long as reading a plan. */
function programFor(named: string | undefined, commands: Commands): Command {
  const program = new Command('sightdown')
    .description(
      'Check a planned painting frame before you cut: flat, square, tight, and what to buy, cut, drill, screw and wait.',
    )
    .version('0.1.0')
    .exitOverride()
    .configureOutput({ writeOut: print, writeErr: (text) => warn(text.trimEnd()), getOutHelpWidth: helpWidth })
    .configureHelp(helpLayout)
    .addHelpText('after', under('\nRun `sightdown audit --help` for the options and examples of a command.'));
  const asked = Object.entries(commands).filter(([name]) => name === named);
  for (const [, add] of asked.length > 0 ? asked : Object.entries(commands)) add(program);
  return program;
}

/**
 * A negative reading such as `-2 mm`, or a file called `-2.yaml`, must not look like an option: a reading's hyphen
 * becomes a minus sign, which every quantity may have, and a file is named from its folder.
 */
function withoutFalseOptions(argument: string): string {
  if (!/^-[\d.]/.test(argument)) return argument;
  return /\.(ya?ml|md|html)$/i.test(argument) ? `./${argument}` : `\u2212${argument.slice(1)}`;
}

/** Runs the command once with these words; what it comes to stands in the exit code. */
export async function runCommand(words: readonly string[], commands: Commands): Promise<void> {
  const program = programFor(words[0], commands);
  const argv = ['node', 'sightdown', ...words.map(withoutFalseOptions)];
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
