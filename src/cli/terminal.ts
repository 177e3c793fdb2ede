import pc from 'picocolors';
import type { Problem } from '../base/problem.js';
import { verdicts, type Verdict } from '../findings/finding.js';
import { showProblems, type Paint } from '../base/show-problem.js';
import { terminalJson, terminalText, withoutSteering } from '../base/terminal-text.js';
import { badge } from '../report/words/verdict.js';
import { exitCode } from './exit.js';
import { wrapLine } from './wrap.js';

/** Whether escapes may be written to stderr: never into a file, to a dumb terminal, or against NO_COLOR. */
const coloured = pc.isColorSupported && process.stderr.isTTY === true && process.env['TERM'] !== 'dumb';

/** No terminal is taken to be narrower than this. */
const narrowest = 30;
/** The columns of a terminal; what goes into a file or another program is never broken. */
const columnsOf = (stream: NodeJS.WriteStream): number =>
  stream.isTTY === true && stream.columns > 0 ? Math.max(narrowest, stream.columns) : Infinity;
/** Columns that what is told on stdout may take. */
export const columns = (): number => columnsOf(process.stdout);
const fitTo =
  (stream: NodeJS.WriteStream) =>
  (line: string): string =>
    wrapLine(line, columnsOf(stream)).join('\n');

/** Colours for problems, and how they fit the terminal. */
const paint: Paint = {
  ...(coloured
    ? { strong: pc.bold, bad: pc.red, mild: pc.yellow, faint: pc.dim }
    : { strong: same, bad: same, mild: same, faint: same }),
  fit: fitTo(process.stderr),
  width: columnsOf(process.stderr),
};

function same(text: string): string {
  return text;
}

/** How a part of a line may be coloured. */
export type Tone = 'bad' | 'mild' | 'good' | 'strong';
/** A line of plain and coloured parts. */
export type Painted = readonly (string | readonly [Tone, string])[];

/** The tone of each verdict; its shape and word say the same without colour. */
export const tones: Readonly<Record<Verdict, Tone>> = { clear: 'good', caution: 'mild', unknown: 'mild', stop: 'bad' };

/** Whether escapes may be written to stdout. */
const onTerminal = pc.isColorSupported && process.stdout.isTTY === true && process.env['TERM'] !== 'dumb';
const brushes: Readonly<Record<Tone, (text: string) => string>> = {
  bad: (text) => pc.bold(pc.red(text)),
  mild: (text) => pc.bold(pc.yellow(text)),
  good: (text) => pc.bold(pc.green(text)),
  strong: pc.bold,
};

/**
 * One line of parts on stdout: each part is made harmless first and coloured then, so that only our own colours are
 * left in it.
 */
export function tellPainted(parts: Painted): void {
  const said = (text: string): string => terminalText(text).replaceAll('\n', ' ');
  const line = parts.map((part) =>
    typeof part === 'string' ? said(part) : onTerminal ? brushes[part[0]](said(part[1])) : said(part[1]),
  );
  process.stdout.write(`${fitTo(process.stdout)(line.join(''))}\n`);
}

/** Shows problems on stderr. */
export function complain(problems: readonly Problem[]): void {
  if (problems.length > 0) process.stderr.write(`${showProblems(problems, paint)}\n`);
}

/** One line or several for the person at the terminal, with the badges in them coloured. */
export function tell(text: string): void {
  for (const line of text.split('\n')) tellPainted(withTones(line));
}

const badges = new RegExp(
  `(${verdicts.map((one) => `${badge(one, '')}(?:${one.toUpperCase()}|${badge(one).slice(2)})?`).join('|')})`,
  'u',
);

/** A line with each badge, and its word where that stands behind it, in the tone of its verdict. */
const withTones = (line: string): Painted =>
  line
    .split(badges)
    .map((part, i) => (i % 2 === 0 ? part : [tones[verdicts.find((one) => part.startsWith(badge(one, '')))!], part]));

/** Text on stdout; nothing in it can steer the terminal. */
export function print(text: string): void {
  process.stdout.write(terminalText(text));
}

/** A table for a spreadsheet on stdout: nothing in it can steer the terminal, and its lines are as long as they are. */
export function printTable(csv: string): void {
  process.stdout.write(withoutSteering(csv));
}

/** A document, or a part of one, as JSON on stdout. */
export function printJson(json: string): void {
  process.stdout.write(terminalJson(json));
}

/** A sentence on stderr. */
export function warn(sentence: string): void {
  process.stderr.write(`${terminalText(sentence).split('\n').map(fitTo(process.stderr)).join('\n')}\n`);
}

/**
 * What becomes of output that nobody takes. A reader that has seen enough, such as `head`, is no mistake: the rest is
 * left unsaid and the exit code still tells the verdict. Where the output cannot be kept, a full disk say, that is an
 * error. Once is enough for a process, whichever of its programs asks.
 */
export function guardOutput(): void {
  if (process.stdout.listenerCount('error') > 0) return;
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') return;
    warn(`The output could not be written: ${error.code === 'ENOSPC' ? 'the disk is full' : error.message}.`);
    process.on('exit', () => (process.exitCode = exitCode.error));
  });
  process.stderr.on('error', () => undefined);
}
