import { barNames, type BarName } from '../../base/names.js';
import { measureTwist } from '../../measure/measure-twist.js';
import { digits } from '../../measure/reading.js';
import { spreadFromReadings } from '../../measure/spread.js';
import type { TwistOptions } from '../option-types.js';
import { allOptions, BadOption, dayOption, neededQuantity, optionalValue, readingsOption } from '../quantities.js';
import { planPaste } from './plan-lines.js';
import { readingText, spreadText } from './report.js';
import { shelfOption, shelfPaste, sizeIfGiven } from './shelf-entry.js';

const other = { right: 'left', left: 'right' } as const;

/**
 * `measure twist`: twist of one board or several, the `boards:` lines of a plan, and for several the spread for the
 * shelf. Throws BadOption, RangeError.
 */
export function twist(options: TwistOptions): string {
  const { width, length, rises, error_mm, date, bars, ply } = allOptions({
    width: () => neededQuantity('width', options.width, 'length', '400 mm'),
    length: () => neededQuantity('length', options.length, 'length', '2000 mm'),
    rises: () => readingsOption('rise', options.rise, 'length', '3 mm'),
    error_mm: () => optionalValue('error', options.error, 'length', '0.5 mm'),
    date: () => dayOption(options.date),
    bars: () => (options.rise === undefined ? null : barsOf(options, options.rise.length)),
    ply: () => plyOf(options.ply),
    size: () => sizeIfGiven(options.size),
  });
  const readings = rises.map(({ value }, i) =>
    measureTwist({
      rise_mm: Math.abs(value),
      width_mm: width.value,
      length_mm: length.value,
      hand: value < 0 ? other[options.hand] : options.hand,
      ...(error_mm === undefined ? {} : { error_mm }),
      board: { for: bars?.[i] ?? 'top', ply },
    }),
  );
  const inch = width.inch || length.inch || rises.some((one) => one.inch);
  const many = readings.length > 1;
  const together = spreadFromReadings(
    readings.map(({ value }) => value),
    'deg/m',
  );
  const parts = readings.map((reading, i) =>
    readingText(reading, inch, many ? `Board ${i + 1}${bars === null ? '' : `, for the ${bars[i] ?? ''} bar`}` : ''),
  );
  if (bars !== null || !many) {
    const lines = readings.map(
      ({ value }, i) => `  - { for: ${bars?.[i] ?? 'top'}, ply: ${ply}, twist: ${digits(value)} deg/m }`,
    );
    parts.push(
      planPaste(
        `For the plan${bars === null ? '; put the bar this board is for in place of `top`' : ''}:`,
        `boards:\n${lines.join('\n')}`,
      ),
    );
  }
  if (many) parts.push(spreadText(together, 'deg/m', inch, 'Twist'));
  if (many && together.paste !== null) {
    if (options.stock === undefined)
      parts.push('For the shelf: name the kind of board with --stock to get its entry.\n');
    else
      parts.push(
        shelfPaste(
          shelfOption(options.shelf),
          options.stock,
          options.size,
          { spread: { chosen: options.chosen, twist: together.paste } },
          { date, words: `twist of ${together.count} boards` },
        ),
      );
  }
  return parts.join('');
}

function plyOf(text: string): number {
  if (!/^[1-4]$/.test(text)) throw new BadOption(`--ply: found \`${text.slice(0, 20)}\`; allowed: 1, 2, 3 or 4.`);
  return Number(text);
}

function barsOf({ for: named }: TwistOptions, count: number): readonly BarName[] | null {
  if (named === undefined) return null;
  const wrong = named.find((name) => !(barNames as readonly string[]).includes(name));
  if (wrong !== undefined)
    throw new BadOption(`--for: found \`${wrong.slice(0, 60)}\`; allowed: ${barNames.join(', ')}.`);
  if (named.length !== count)
    throw new BadOption(
      `--for names ${named.length} of ${count} boards; allowed: one bar for each --rise, in the same order.`,
    );
  if (new Set(named).size !== count)
    throw new BadOption(
      '--for names a bar twice; allowed: each bar once. Measure other plies in a second go with --ply.',
    );
  return named as readonly BarName[];
}
