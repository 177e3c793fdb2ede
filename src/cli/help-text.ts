import type { Help } from 'commander';
import { wrapLine } from './wrap.js';

/** Help is no wider than this, and narrower on a narrow terminal. */
const widest = 80;
const narrowest = 40;

/** Columns that help may take here. */
export const helpWidth = (): number =>
  Math.max(narrowest, Math.min(widest, process.stdout.columns ?? (Number(process.env['COLUMNS']) || widest)));

/** How help is laid out: descriptions wrap beside their names on a narrow terminal as well. */
export const helpLayout: Partial<Help> = { minWidthToWrap: 24, sortSubcommands: false };

/** Lines that belong to one paragraph as one; what is indented, and what follows a heading, stays by itself. */
function paragraphs(text: string): readonly string[] {
  const lines: string[] = [];
  for (const line of text.split('\n')) {
    const last = lines.at(-1) ?? '';
    if (last !== '' && line !== '' && ![last, line].some((one) => one.startsWith(' ')) && !last.endsWith(':'))
      lines.push(`${lines.pop()} ${line}`);
    else lines.push(line);
  }
  return lines;
}

/** Text for under a command's help, wrapped to the terminal when it is shown. */
export const under =
  (text: string): (() => string) =>
  () =>
    paragraphs(text)
      .flatMap((line) => wrapLine(line, helpWidth()))
      .join('\n');
