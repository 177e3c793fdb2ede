import { expect, test } from 'vitest';
import { files, imports } from './sources.js';

/** Groups of files that import each other in a circle, types counted: each group once, sorted. By depth-first numbering (Tarjan). */
function circles(of: readonly string[], next: (file: string) => readonly string[]): readonly (readonly string[])[] {
  const found: string[][] = [];
  const number = new Map<string, number>();
  const low = new Map<string, number>();
  const open: string[] = [];
  const visit = (file: string): void => {
    number.set(file, number.size);
    low.set(file, number.get(file) as number);
    open.push(file);
    for (const other of next(file)) {
      if (!number.has(other)) visit(other);
      if (open.includes(other)) low.set(file, Math.min(low.get(file) as number, low.get(other) as number));
    }
    if (low.get(file) !== number.get(file)) return;
    const group = open.splice(open.indexOf(file));
    if (group.length > 1 || next(file).includes(file)) found.push(group.sort());
  };
  for (const file of of) if (!number.has(file)) visit(file);
  return found;
}

test('no files import each other in a circle, not even for a type: put what both need into a file of its own', () => {
  const next = new Map(files.map((file) => [file, imports.filter((one) => one.file === file && one.to !== null).map(({ to }) => to as string)]));
  expect(circles(files, (file) => next.get(file) ?? []).map((group) => group.join(' ↔ '))).toEqual([]);
});

test('a circle of three, a file that imports itself, and nothing else are found', () => {
  const next: Readonly<Record<string, readonly string[]>> = { a: ['b', 'd'], b: ['c'], c: ['a'], d: ['e'], e: ['e'], f: ['a', 'e'] };
  expect(circles(Object.keys(next), (file) => next[file] ?? [])).toEqual([['e'], ['a', 'b', 'c']]);
});
