import pc from 'picocolors';
import type { Problem } from '../base/problem.js';
import type { Verdict } from '../findings/finding.js';
import { showProblems, type Paint } from '../base/show-problem.js';
import { terminalJson, terminalText, withoutSteering } from '../base/terminal-text.js';
import { exitCode } from './exit.js';

/** Whether escapes may be written to stderr: never into a file, to a dumb terminal, or against NO_COLOR. */
const coloured = pc.isColorSupported && process.stderr.isTTY === true && process.env['TERM'] !== 'dumb';

/** Colours for problems. */
const paint: Paint = coloured
  ? { strong: pc.bold, bad: pc.red, mild: pc.yellow, faint: pc.dim }
  : { strong: same, bad: same, mild: same, faint: same };

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
  process.stdout.write(
    `${parts.map((part) => (typeof part === 'string' ? said(part) : onTerminal ? brushes[part[0]](said(part[1])) : said(part[1]))).join('')}\n`,
  );
}

/** Shows problems on stderr. */
export function complain(problems: readonly Problem[]): void {
  if (problems.length > 0) process.stderr.write(`${showProblems(problems, paint)}\n`);
}

/** One line for the person at the terminal. */
export function tell(line: string): void {
  print(`${line}\n`);
}

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
  process.stderr.write(`${terminalText(sentence)}\n`);
}

/**
 * What becomes of output that nobody takes. A reader that has seen enough, such as `head`, is no mistake: the rest is
 * left unsaid and the exit code still tells the verdict. Where the output cannot be kept, a full disk say, that is an
 * error.
 */
export function guardOutput(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') return;
    warn(`The output could not be written: ${error.code === 'ENOSPC' ? 'the disk is full' : error.message}.`);
    process.on('exit', () => (process.exitCode = exitCode.error));
  });
  process.stderr.on('error', () => undefined);
}
