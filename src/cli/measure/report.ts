import { digits, type Reading } from '../../measure/reading.js';
import type { SpreadOfReadings } from '../../measure/spread.js';
import { BadOption } from '../quantities.js';
import { exitCode } from '../exit.js';
import { print, tell, warn } from '../terminal.js';

/**
 * Runs a measuring command and prints what it says; an option that cannot be used is told in one line. Gives the exit
 * code.
 */
export function reported(measure: () => string): number {
  try {
    tellWithPaste(measure());
    return exitCode.fine;
  } catch (error) {
    if (!(error instanceof BadOption) && !(error instanceof RangeError)) throw error;
    warn(`${error.message}\nRun with --help to see what is possible.`);
    return exitCode.error;
  }
}

const pasteRule = '--------';

/** Sentences fit the terminal; lines to copy stay as they are. */
function tellWithPaste(text: string): void {
  let paste = false;
  for (const line of text.replace(/\n$/u, '').split('\n')) {
    if (line === pasteRule) paste = !paste;
    if (paste || line === pasteRule) print(`${line}\n`);
    else tell(line);
  }
}

const inchUnits: Readonly<Record<string, { readonly unit: string; readonly per: number }>> = {
  'N/m': { unit: 'lbf/in', per: 4.4482216152605 / 0.0254 },
  MPa: { unit: 'psi', per: 0.00689475729316836 },
  'deg/m': { unit: 'deg/ft', per: 1 / 0.3048 },
  '/m': { unit: '/ft', per: 1 / 0.3048 },
  mm: { unit: 'in', per: 25.4 },
};

/** Figures of a number told in inch units beside the metric one: no reading is surer than that. */
const inch_digits = 3;

/** A number with its unit, and in inch units behind it when that is how the user writes. */
export function said(value: number, unit: string, inch: boolean): string {
  const other = inch ? inchUnits[unit] : undefined;
  return `${digits(value)} ${unit}${other === undefined ? '' : ` (${digits(Number((value / other.per).toPrecision(inch_digits)))} ${other.unit})`}`;
}

/** One reading: the formula in words with the numbers put in, the result and its band, and what to keep in mind. */
export function readingText({ words, value, low, high, unit, notes }: Reading, inch: boolean, title = ''): string {
  const band = Number.isFinite(high)
    ? `between ${said(low, unit, inch)} and ${said(high, unit, inch)}`
    : `at least ${said(low, unit, inch)}; the reading is too small to say how much more`;
  return `${title === '' ? '' : `${title}\n`}${words}\nResult: ${said(value, unit, inch)}, ${band}.\n${notes.map((note) => `Note: ${note}\n`).join('')}\n`;
}

/** What several readings say together. */
export function spreadText(
  { count, mean, sd, mean_error, note }: SpreadOfReadings,
  unit: string,
  inch: boolean,
  what: string,
): string {
  return `${what}, ${count} readings: mean ${said(mean, unit, inch)}${sd === null ? '' : `, standard deviation ${said(sd, unit, inch)}`}${mean_error === null ? '' : `, the mean known to ± ${said(mean_error, unit, inch)}`}.\n${note}\n\n`;
}

/** Lines to copy, set off by a rule above and below. */
export function pasteText(where: string, lines: string): string {
  return `${where}\n${pasteRule}\n${lines.trimEnd()}\n${pasteRule}\n`;
}
