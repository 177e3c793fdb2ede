import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { parse } from 'yaml';
import { note, standingOf } from './recorded.js';

/** One row of check values from `test/data`. */
export interface CheckRow {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly tolerance: { readonly rel?: number; readonly abs?: number };
  readonly source: string;
  readonly status: string;
}

/** Rows of a file whose id starts as given; throws when there is none, so that a renamed row cannot drop out unseen. */
export function checkRows(file: string, start: string): readonly CheckRow[] {
  const { cases } = parse(readFileSync(new URL(`../data/${file}`, import.meta.url), 'utf8')) as { cases: CheckRow[] };
  const rows = cases.filter((row) => row.id.startsWith(start));
  if (rows.length === 0) throw new Error(`no check row ${start} in ${file}`);
  return rows;
}

/** A name for a test of a row: its id and how far its value is to be trusted. */
export const named = (row: CheckRow): string => `${row.id} (${row.status})`;

/** An input or an expected value of a row; throws when it is not there. */
export function given(row: CheckRow, name: string): number {
  const value = row.inputs[name] ?? row.expected[name];
  if (value === undefined) throw new Error(`${row.id} has no ${name}`);
  return value;
}

/** Expects a computed value to meet the row's own within the row's tolerance. */
export function expectRow(row: CheckRow, name: string, actual: number): void {
  const wanted = row.expected[name];
  if (wanted === undefined) throw new Error(`${row.id} has no ${name}`);
  const absolute = row.tolerance.abs !== undefined || wanted === 0;
  const allowed = row.tolerance.abs ?? (row.tolerance.rel ?? 0) * Math.abs(wanted);
  note({ theirs: wanted, ours: actual, deviation: absolute ? actual - wanted : actual / wanted - 1, tolerance: absolute ? allowed : (row.tolerance.rel ?? 0), absolute, standing: standingOf(row.status) });
  expect(Math.abs(actual - wanted), `${row.id} ${name}: ${actual} instead of ${wanted}`).toBeLessThanOrEqual(allowed);
}
