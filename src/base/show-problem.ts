import type { Problem } from './problem.js';
import { terminalText } from './terminal-text.js';

/** How parts of a shown problem are coloured, each takes and gives text; and how a line is made to fit the terminal. */
export interface Paint {
  readonly strong: (text: string) => string;
  readonly bad: (text: string) => string;
  readonly mild: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly fit?: (line: string) => string;
  /** Columns for the line of the file that is shown; 100 where nothing is said. */
  readonly width?: number;
}

const plain: Paint = { strong: (text) => text, bad: (text) => text, mild: (text) => text, faint: (text) => text };

const widest = 100;
const beforeExcerpt = '    ';

/** Whatever a person or a file put into it: one line that cannot steer a terminal. */
const oneLine = (text: string): string => terminalText(text.replace(/[\r\n]+/g, ' ')).slice(0, 600);

/** The source line around the column, with a caret under it; tabs become spaces so that the caret stands right. */
function caretLines(excerpt: string, column: number, paint: Paint): string[] {
  const line = terminalText(excerpt).replace(/[\t\n]/g, ' ');
  // Two for the dots at either end.
  const room = Math.min(widest, (paint.width ?? Infinity) - beforeExcerpt.length - 2);
  const start = column > room * 0.8 ? Math.round(column - room * 0.6) : 0;
  const shown = `${start > 0 ? '…' : ''}${line.slice(start, start + room)}${line.length > start + room ? '…' : ''}`;
  const offset = Math.max(0, Math.min(column - 1 - start, room)) + (start > 0 ? 1 : 0);
  return [`${beforeExcerpt}${shown}`, `${beforeExcerpt}${' '.repeat(offset)}${paint.bad('^')}`];
}

/**
 * One problem for a terminal: place, what was found and allowed, the line with a caret, and what to do next. Ends
 * without a newline.
 */
export function showProblem(given: Problem, paint: Paint = plain): string {
  const problem = {
    ...given,
    file: oneLine(given.file),
    path: oneLine(given.path),
    found: oneLine(given.found),
    allowed: oneLine(given.allowed),
  };
  const place = problem.line > 0 ? `${problem.file}:${problem.line}:${problem.column}` : problem.file;
  const subject = problem.path === '' ? '' : `${problem.path}: `;
  const mark = problem.severity === 'error' ? paint.bad('error') : paint.mild('warning');
  const fit = paint.fit ?? ((line: string) => line);
  const lines = [fit(`${paint.strong(place)} ${mark} ${subject}found ${problem.found}; allowed: ${problem.allowed}.`)];
  if (problem.excerpt !== undefined && problem.line > 0)
    lines.push(...caretLines(problem.excerpt, problem.column, paint));
  lines.push(fit(`    ${paint.faint(oneLine(problem.hint))}`));
  return lines.join('\n');
}

/** All problems for a terminal, in the order of the file, errors and warnings together. */
export function showProblems(problems: readonly Problem[], paint: Paint = plain): string {
  return [...problems]
    .sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : a.line - b.line || a.column - b.column))
    .map((problem) => showProblem(problem, paint))
    .join('\n');
}
