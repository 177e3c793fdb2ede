import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

/** Plain scripts, which have no types. */
const { equalFaults } = (await import(new URL('./equal-faults.mjs', import.meta.url).href)) as { equalFaults: readonly { key: string; at: string; why: string }[] };
const { faultsIn } = await import(new URL('./faults.mjs', import.meta.url).href);

const root = new URL('../..', import.meta.url).pathname;

test('every fault named equal is still the one that was judged: in the same line', () => {
  const folders = new Set(equalFaults.map(({ key }) => key.split('/')[1]));
  const lines = new Map<string, string>();
  for (const folder of folders)
    for (const { key, name, line } of faultsIn(root, folder) as readonly { key: string; name: string; line: number }[])
      lines.set(key, readFileSync(join(root, name), 'utf8').split('\n')[line - 1]!.trim());
  expect(equalFaults.filter(({ key, at }) => lines.get(key) !== at).map(({ key, at }) => [key, at, lines.get(key)])).toEqual([]);
  expect(new Set(equalFaults.map(({ key }) => key)).size).toBe(equalFaults.length);
});
