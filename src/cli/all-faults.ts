import { CommanderError, type Command } from 'commander';

/** Thrown where the work would begin: everything on the command line has been read. */
class AllRead extends Error {}

/** The arguments without an option and its value; null where it does not stand in them. */
function without(argv: readonly string[], flag: string): readonly string[] | null {
  const at = argv.findIndex((argument) => argument === flag || argument.startsWith(`${flag}=`));
  return at < 0 ? null : [...argv.slice(0, at), ...argv.slice(at + (argv[at] === flag ? 2 : 1))];
}

/** The option whose value was refused, as it is typed. */
const refusedFlag = (error: CommanderError): string | undefined =>
  error.code === 'commander.invalidArgument'
    ? /option '[^']*?(--[\w-]+)[^']*' argument/u.exec(error.message)?.[1]
    : undefined;

/**
 * Reads the command line again without the value that was refused, as often as another is refused, so that all faults
 * are told in
 * one round; nothing is done meanwhile. Commander tells each fault as it meets it.
 */
export async function tellFurtherFaults(
  program: Command,
  argv: readonly string[],
  first: CommanderError,
): Promise<void> {
  program.hook('preAction', () => {
    throw new AllRead();
  });
  let [error, rest]: [CommanderError, readonly string[]] = [first, argv];
  for (;;) {
    const flag = refusedFlag(error);
    const less = flag === undefined ? null : without(rest, flag);
    if (less === null) return;
    rest = less;
    try {
      await program.parseAsync([...rest]);
      return;
    } catch (next) {
      if (!(next instanceof CommanderError)) return;
      error = next;
    }
  }
}
