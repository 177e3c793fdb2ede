import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { HighEnd } from '../../measure/hand-of-sticks.js';
import { readPile } from '../../pile/read-pile.js';
import type { Shelf } from '../../shelf/shelf.js';
import { exitCode } from '../exit.js';
import { loadShelf } from '../load.js';
import type { NewOptions } from '../option-types.js';
import { BadOption } from '../quantities.js';
import { complain, tell, warn } from '../terminal.js';
import { writeNewFile } from '../write-files.js';
import { pileText, type NewBoard, type NewPile } from './pile-text.js';
import { fileNameOf } from './yaml-words.js';

/** What stands for a reading that was not taken. */
const unread = 'unread';
const required = ['name', 'stock', 'length'] as const;

/** Writes a new pile from flags, or from answers at the bench; resolves to the exit code. */
export async function runNewPile(options: NewOptions): Promise<number> {
  const shelf = loadShelf(options.shelf);
  complain(shelf.ok ? shelf.warnings : shelf.problems);
  if (!shelf.ok) return exitCode.error;
  if (options.length === undefined && process.stdin.isTTY === true && process.stdout.isTTY === true) {
    const wanted = await (await import('./ask-pile.js')).askPile(options, shelf.value);
    return wanted === null ? exitCode.interrupted : write(wanted.pile, wanted.file, shelf.value);
  }
  const missing = required.filter((flag) => options[flag] === undefined);
  if (missing.length > 0) {
    warn(
      `${missing.map((flag) => `--${flag}`).join(', ')} ${missing.length === 1 ? 'is' : 'are'} missing. Give them as flags, or leave out --length on a terminal to be asked; sightdown new --help has an example.`,
    );
    return exitCode.error;
  }
  try {
    const name = (options.name ?? '').trim();
    return write({ name, boards: boardsFromFlags(options) }, options.out ?? fileNameOf(name, 'pile'), shelf.value);
  } catch (error) {
    if (!(error instanceof BadOption)) throw error;
    warn(error.message);
    return exitCode.error;
  }
}

/** One board for each mark, then those that nobody reads. Throws BadOption. */
function boardsFromFlags(options: NewOptions): readonly NewBoard[] {
  const { mark: marks = [], length: lengths = [], stock = '', unread: others } = options;
  if (marks.length === 0 && others === undefined)
    throw new BadOption('There is no board: give --mark for boards you read, --unread for those you did not.');
  const length = (i: number): string => (lengths.length === 1 ? lengths[0] : lengths[i]) as string;
  if (lengths.length !== 1 && (lengths.length !== marks.length || others !== undefined))
    throw new BadOption(
      `--length has ${lengths.length} values; allowed: one for all boards${others === undefined ? ', or one for each --mark' : ', where there are unread ones'}.`,
    );
  const { rise, high, bow, crook } = {
    rise: each('rise', options.rise, marks),
    high: each('high', options.high, marks),
    bow: each('bow', options.bow, marks),
    crook: each('crook', options.crook, marks),
  };
  const taken = (value: string | undefined): value is string => value !== undefined && value !== unread;
  return [
    ...marks.map((mark, i): NewBoard => {
      const [height, depth, edge] = [rise?.[i], bow?.[i], crook?.[i]];
      return {
        mark,
        stock,
        length: length(i),
        ...(taken(height)
          ? {
              sticks: {
                rise: height,
                width: options.sticks ?? missingSticks(),
                over: options.over,
                high: highOf(height, high?.[i]),
              },
            }
          : {}),
        ...(taken(depth) ? { bow: depth } : {}),
        ...(taken(edge) ? { crook: edge } : {}),
      };
    }),
    ...(others === undefined ? [] : [{ mark: null, stock, length: length(0), count: others }]),
  ];
}

function missingSticks(): never {
  throw new BadOption('--rise needs --sticks, how long the two sticks are, such as "400 mm".');
}

/** Which end of the far stick stands high; must be said of every rise but none. Throws BadOption. */
function highOf(rise: string, high: string | undefined): HighEnd {
  if (/^\s*0+(?:\.0+)?(?:\s|$)/u.test(rise)) return 'level';
  if (high === 'left' || high === 'right') return high;
  throw new BadOption(
    `--rise ${rise.slice(0, 20)} needs --high: left or right, the side on which the far stick stands higher as you sight over the near one.`,
  );
}

/** Values of a flag, one for each mark; undefined where the flag was not given. Throws BadOption. */
function each(
  flag: string,
  values: readonly string[] | undefined,
  marks: readonly string[],
): readonly string[] | undefined {
  if (values !== undefined && values.length !== marks.length)
    throw new BadOption(
      `--${flag} has ${values.length} values for ${marks.length} boards; allowed: one for each --mark, in the same order, \`${unread}\` where you did not read it.`,
    );
  return values;
}

/** Checks the text as any pile is checked, then writes it where nothing stands yet. */
function write(pile: NewPile, file: string, shelf: Shelf): number {
  const text = pileText(pile, existsSync(join(dirname(file), 'pile.schema.json')) ? 'pile.schema.json' : null);
  const checked = readPile(text, file, shelf);
  complain(checked.ok ? checked.warnings : checked.problems);
  if (!checked.ok) {
    warn('Nothing was written.');
    return exitCode.error;
  }
  writeNewFile(file, text);
  tell(
    `${file} is written. Next: sightdown place my-plan.yaml --pile ${/^[\w./-]+$/.test(file) ? file : JSON.stringify(file)}`,
  );
  return exitCode.fine;
}
