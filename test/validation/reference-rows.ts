import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { noteShare } from './recorded.js';

/** One row of a file of check values: what it says, where it is from, and whether it was seen, recalled or derived. */
export interface ReferenceRow {
  readonly value: never;
  readonly unit: string;
  readonly source: string;
  readonly status: 'seen' | 'memory' | 'derived';
  readonly note?: string;
}

/** Groups of check values from `test/data`. */
export function referenceGroups(file: string): Readonly<Record<string, Readonly<Record<string, ReferenceRow>>>> {
  return parse(readFileSync(new URL(`../data/${file}`, import.meta.url), 'utf8'));
}

/** A row's value, as whatever type the test says it is; throws when the row is gone. */
export function valueOf<T>(group: Readonly<Record<string, ReferenceRow>> | undefined, key: string): T {
  const row = group?.[key];
  if (row === undefined) throw new Error(`no check value ${key}`);
  return row.value as T;
}

/** Mark for a test's name: recalled values say so. */
export const mark = (row: ReferenceRow | undefined): string => (row?.status === 'memory' ? ' (memory)' : row?.status === 'derived' ? ' (derived)' : '');

/** One worked case from `test/data/hanging.yaml`. */
export interface WorkedCase {
  readonly id: string;
  readonly inputs: Readonly<Record<string, never>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly tolerance: { readonly rel?: number; readonly abs?: number };
  readonly status: string;
}

export function workedCases(): readonly WorkedCase[] {
  return (parse(readFileSync(new URL('../data/hanging.yaml', import.meta.url), 'utf8')) as { cases: WorkedCase[] }).cases;
}

/** A case by its id, with its inputs as numbers. */
export function workedCase(id: string): { readonly inputs: Readonly<Record<string, number>>; readonly expected: Readonly<Record<string, number>>; readonly rel: number } {
  const found = workedCases().find((c) => c.id === id);
  if (found === undefined) throw new Error(`no worked case ${id}`);
  return { inputs: found.inputs as Readonly<Record<string, number>>, expected: found.expected, rel: found.tolerance.rel ?? 0 };
}

/** Whether two numbers agree within a share of the expected one. */
export function near(actual: number, expected: number, rel: number): boolean {
  noteShare(actual, expected, rel);
  return Math.abs(actual - expected) <= rel * Math.abs(expected);
}
