import { appendFileSync } from 'node:fs';
import { basename } from 'node:path';
import { expect } from 'vitest';

/** How far a value from outside is to be trusted. */
export type Standing = 'published' | 'memory' | 'derived' | 'independent program' | 'practice';

/** One comparison with something outside the project, as a test makes it. Numbers for numbers, verdicts for verdicts; deviation and tolerance as shares of their number, or absolute where `absolute` says so. */
export interface Recorded {
  readonly file: string;
  readonly test: string;
  readonly standing: Standing;
  readonly theirs: number | string;
  readonly ours: number | string;
  readonly deviation: number;
  readonly tolerance: number;
  readonly absolute: boolean;
}

/** Standing by the words of a data file or of a test's name. */
export const standingOf = (words: string): Standing => (/memory/u.test(words) ? 'memory' : /independent/u.test(words) ? 'independent program' : /derived|computed/u.test(words) && !/seen/u.test(words) ? 'derived' : /practice/u.test(words) ? 'practice' : 'published');

/** Notes a comparison for the validation page when a run asks for it (`VALIDATION_RECORD`, a file to add to); does nothing else. */
export function note(what: Omit<Recorded, 'file' | 'test' | 'standing'> & { readonly standing?: Standing }): void {
  const file = process.env['VALIDATION_RECORD'];
  if (file === undefined) return;
  const { currentTestName, testPath } = expect.getState();
  const test = currentTestName ?? '';
  const standing = what.standing ?? standingOf(test);
  appendFileSync(file, `${JSON.stringify({ ...what, standing, file: basename(testPath ?? ''), test } satisfies Recorded)}\n`);
}

/** Notes two numbers that should agree within a share of theirs. */
export function noteShare(ours: number, theirs: number, tolerance: number, standing?: Standing): void {
  note({ ours, theirs, deviation: theirs === 0 ? ours : ours / theirs - 1, tolerance, absolute: theirs === 0, ...(standing === undefined ? {} : { standing }) });
}

/** Expects two numbers to agree to better than a share of theirs, and notes them. */
export function expectShare(ours: number | null, theirs: number, tolerance: number, standing?: Standing): void {
  noteShare(ours ?? NaN, theirs, tolerance, standing);
  expect(Math.abs((ours ?? NaN) / theirs - 1)).toBeLessThan(tolerance);
}

/** Expects two numbers to agree to so many decimals, as printed, and notes them. */
export function expectDecimals(ours: number | null, theirs: number, decimals: number, standing?: Standing): void {
  expectWithin(ours, theirs, 10 ** -decimals / 2, standing);
}

/** Expects two numbers to lie no farther apart than an amount, and notes them. */
export function expectWithin(ours: number | null, theirs: number, amount: number, standing?: Standing): void {
  const deviation = (ours ?? NaN) - theirs;
  note({ ours: ours ?? NaN, theirs, deviation, tolerance: amount, absolute: true, ...(standing === undefined ? {} : { standing }) });
  expect(Math.abs(deviation)).toBeLessThanOrEqual(amount);
}
