import { cancel, confirm, intro, note, text } from '@clack/prompts';
import { readQuantity, readRange } from '../../base/units.js';
import type { HighEnd } from '../../measure/hand-of-sticks.js';
import type { Shelf } from '../../shelf/shelf.js';
import type { NewOptions } from '../option-types.js';
import { kindsOf } from './ask.js';
import type { NewBoard, NewPile, Sticks } from './pile-text.js';
import { answered, askFile, askQuantity, choose, Left } from './questions.js';
import { fileNameOf } from './yaml-words.js';

const boardLength = {
  dimension: 'length',
  placeholder: '2400 mm or 8 ft',
  least: 20,
  most: 20_000,
  words: 'from 20 mm to 20 m',
} as const;
const depth = {
  dimension: 'length',
  placeholder: '3 mm or 1/8 in; empty when you did not read it',
  least: 0,
  most: 500,
  words: 'from 0 to 500 mm',
  optional: true,
} as const;

const chalk = `Write a letter on one wide face of each board (the hollow one, if you see it) and a stroke at one end.
Letter towards you and stroke on your left: the edge on top is the marked edge.
Twist: lay one straight stick across each end of the board, sticks of equal length, and sight over the near one to the far one.`;

/** What carries over from board to board, so that it need not be typed again. */
interface Last {
  readonly stock: string;
  readonly length: string | undefined;
  readonly width: string | undefined;
}

/** Asks for the boards one by one, as they lie at the bench. Null when the user leaves: nothing is written then. */
export async function askPile(
  options: NewOptions,
  shelf: Shelf,
): Promise<{ readonly pile: NewPile; readonly file: string } | null> {
  intro('Boards in hand. Ctrl+C leaves without writing anything.');
  try {
    const name =
      options.name ??
      answered(
        await text({
          message: 'Where do the boards lie?',
          placeholder: 'Shed, back wall',
          validate: (given) => ((given ?? '').trim() === '' ? 'Give the place a name.' : undefined),
        }),
      ).trim();
    note(chalk, 'First chalk them');
    const boards: NewBoard[] = [];
    let last: Last = {
      stock: options.stock ?? Object.keys(shelf.lumber)[0] ?? '',
      length: undefined,
      width: options.sticks,
    };
    do {
      const board = await askBoard(boards, options, shelf, last);
      boards.push(board);
      last = { stock: board.stock, length: board.length, width: board.sticks?.width ?? last.width };
    } while (answered(await confirm({ message: 'One more board?' })));
    const file = options.out ?? (await askFile(fileNameOf(name, 'pile'), 'my-pile.yaml'));
    return { pile: { name, boards }, file };
  } catch (error) {
    if (!(error instanceof Left)) throw error;
    cancel('Nothing was written.');
    return null;
  }
}

async function askBoard(before: readonly NewBoard[], options: NewOptions, shelf: Shelf, last: Last): Promise<NewBoard> {
  const taken = new Set(before.map(({ mark }) => mark));
  const validate = (given: string | undefined): string | undefined => {
    const mark = (given ?? '').trim();
    if (mark === '') return undefined;
    if (taken.has(mark)) return `${mark} is on another board already. Chalk another letter.`;
    return /^[\w.-]{1,60}$/.test(mark) ? undefined : 'Letters, figures, dots and dashes, best one letter.';
  };
  const mark = (
    answered(
      await text({ message: 'Which letter is on it?', placeholder: 'A; empty for boards that nobody reads', validate }),
    ) ?? ''
  ).trim();
  const stock = options.stock ?? (await choose('What kind of board?', kindsOf(shelf, 'metric'), last.stock));
  const length = await askQuantity({
    message: 'How long is it?',
    ...boardLength,
    ...(last.length === undefined ? {} : { initial: last.length }),
  });
  if (mark === '') {
    const count = answered(
      await text({
        message: 'How many like this?',
        initialValue: '1',
        validate: (given) =>
          /^[1-9]\d{0,2}$/.test((given ?? '').trim()) && Number(given) <= 500
            ? undefined
            : 'A whole number from 1 to 500.',
      }),
    );
    return { mark: null, stock, length, count: Number(count) };
  }
  const sticks = await askSticks(length, last.width);
  const bow = await askQuantity({
    message: 'Bow: how deep is the hollow of a wide face, under a string from end to end?',
    ...depth,
  });
  const hollow = isMore(bow)
    ? await choose(
        'Which wide face is the hollow one?',
        [
          { value: 'marked-face' as const, label: 'the one with the letter' },
          { value: 'other-face' as const, label: 'the other one' },
        ],
        'marked-face',
      )
    : undefined;
  const crook = await askQuantity({
    message: 'Crook: how deep is the hollow of a narrow edge, under a string from end to end?',
    ...depth,
  });
  const hollowEdge = isMore(crook)
    ? await choose(
        'Letter towards you, stroke on your left: which edge is the hollow one?',
        [
          { value: 'marked-edge' as const, label: 'the upper one' },
          { value: 'other-edge' as const, label: 'the lower one' },
        ],
        'marked-edge',
      )
    : undefined;
  const knots = await askKnots();
  return {
    mark,
    stock,
    length,
    knots,
    ...(sticks === null ? {} : { sticks }),
    ...(bow === '' ? {} : { bow }),
    ...(hollow === undefined ? {} : { hollow }),
    ...(crook === '' ? {} : { crook }),
    ...(hollowEdge === undefined ? {} : { hollowEdge }),
  };
}

/** Whether a length is more than nothing. */
function isMore(depth: string): boolean {
  const reading = readQuantity(depth, 'length');
  return reading.ok && reading.value > 0;
}

/** Twist as it is seen; which hand that is, is worked out. */
async function askSticks(length: string, usual: string | undefined): Promise<Sticks | null> {
  const rise = await askQuantity({
    message: 'Twist: by how much do the two sticks disagree at one end, as you sight over the near one?',
    ...depth,
  });
  if (rise === '') return null;
  const high = isMore(rise)
    ? await choose<HighEnd>(
        highQuestion,
        [
          { value: 'left', label: 'on my left' },
          { value: 'right', label: 'on my right' },
        ],
        'left',
      )
    : 'level';
  const width = await askQuantity({
    message: 'How long are the sticks?',
    dimension: 'length',
    placeholder: '400 mm or 16 in',
    least: 10,
    most: 5000,
    words: 'from 10 mm to 5 m',
    ...(usual === undefined ? {} : { initial: usual }),
  });
  const over = await askQuantity({
    message: 'How far is it from one stick to the other?',
    dimension: 'length',
    placeholder: '2000 mm or 6 ft',
    least: 100,
    most: 20_000,
    words: 'from 100 mm to 20 m',
    initial: length,
  });
  return { rise, width, over, high };
}

const highQuestion =
  'You stand at one end of the board and look along it. On which side does the FAR stick stand higher than the near one? (From the other end the answer is the same.)';

async function askKnots(): Promise<readonly string[]> {
  const split = (given: string): readonly string[] =>
    given
      .split(/[,;]/u)
      .map((part) => part.trim())
      .filter((part) => part !== '');
  const validate = (given: string | undefined): string | undefined =>
    split(given ?? '').every((part) => readRange(part, 'length') !== null)
      ? undefined
      : 'From where to where, measured from the stroke, such as 310..340 mm.';
  return split(
    answered(
      await text({
        message: 'Knots to cut round, measured from the stroke?',
        placeholder: '310..340 mm, 1200..1220 mm; empty when there are none',
        validate,
      }),
    ) ?? '',
  );
}
