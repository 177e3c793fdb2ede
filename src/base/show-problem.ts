import type { Problem } from './problem.js';
import { terminalText } from './terminal-text.js';

/** How parts of a shown problem are coloured; each takes and gives text. */
export interface Paint {
  readonly strong: (text: string) => string;
  readonly bad: (text: string) => string;
  readonly mild: (text: string) => string;
  readonly faint: (text: string) => string;
}

const plain: Paint = { strong: (text) => text, bad: (text) => text, mild: (text) => text, faint: (text) => text };

const widest = 100;

/** Whatever a person or a file put into it: one line that cannot steer a terminal. */
const oneLine = (text: string): string => terminalText(text.replace(/[\r\n]+/g, ' ')).slice(0, 600);

/** The source line around the column, with a caret under it; tabs become spaces so that the caret stands right. */
function caretLines(excerpt: string, column: number, paint: Paint): string[] {
  const line = terminalText(excerpt).replace(/[\t\n]/g, ' ');
  const start = column > widest - 20 ? column - (widest - 40) : 0;
  const shown = `${start > 0 ? '…' : ''}${line.slice(start, start + widest)}${line.length > start + widest ? '…' : ''}`;
  const offset = Math.max(0, Math.min(column - 1 - start, widest)) + (start > 0 ? 1 : 0);
  return [`    ${shown}`, `    ${' '.repeat(offset)}${paint.bad('^')}`];
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
  const lines = [`${paint.strong(place)} ${mark} ${subject}found ${problem.found}; allowed: ${problem.allowed}.`];
  if (problem.excerpt !== undefined && problem.line > 0)
    lines.push(...caretLines(problem.excerpt, problem.column, paint));
  lines.push(`    ${paint.faint(oneLine(problem.hint))}`);
  return lines.join('\n');
}

/** All problems for a terminal, in the order of the file, errors and warnings together. */
export function showProblems(problems: readonly Problem[], paint: Paint = plain): string {
  return [...problems]
    .sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : a.line - b.line || a.column - b.column))
    .map((problem) => showProblem(problem, paint))
    .join('\n');
}
