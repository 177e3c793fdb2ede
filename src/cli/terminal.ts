import pc from 'picocolors';
import type { Problem } from '../base/problem.js';
import { showProblems, type Paint } from '../base/show-problem.js';

/** Colours for problems, none when the terminal or NO_COLOR says so. */
const paint: Paint = pc.isColorSupported && process.stderr.isTTY === true ? { strong: pc.bold, bad: pc.red, mild: pc.yellow, faint: pc.dim } : { strong: same, bad: same, mild: same, faint: same };

function same(text: string): string {
  return text;
}

/** Shows problems on stderr. */
export function complain(problems: readonly Problem[]): void {
  if (problems.length > 0) process.stderr.write(`${showProblems(problems, paint)}\n`);
}

/** One line for the person at the terminal. */
export function tell(line: string): void {
  process.stdout.write(`${line}\n`);
}
