import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

/** Plain script, which has no types. */
const { reachOf } = await import(new URL('./reach.mjs', import.meta.url).href);

const root = mkdtempSync(join(tmpdir(), 'reach-'));
afterAll(() => rmSync(root, { recursive: true }));

const place = (name: string, nth: number) => ({ name, key: `${name} constant: \`${nth}\` → \`${nth + 1}\`` });
const risk = [place('src/risk/lift.ts', 1), place('src/risk/lift.ts', 2)];
const solve = [place('src/solve/mesh.ts', 1), place('src/solve/mesh.ts', 2)];
const file = (name: string): string => join(root, name);

/** Two test files, one of which reaches the first place of each source file, the other the second. */
function twoTests() {
  const counted: string[][] = [];
  return {
    counted,
    files: async () => [file('a.test.ts'), file('b.test.ts')],
    counting: async (files: readonly string[], faults: readonly { key: string }[], folder: string) => {
      counted.push(files.map((one) => one.slice(root.length + 1)));
      for (const one of files) {
        const wanted = one === file('a.test.ts') ? '`1`' : '`2`';
        const bytes = Uint8Array.from(faults, ({ key }) => (key.includes(`: ${wanted}`) ? 1 : 0));
        writeFileSync(join(folder, `${one.replace(/[^\w]/gu, '_')}.reached`), bytes);
      }
      return { failed: [], seconds: new Map(files.map((one) => [one, 1])) };
    },
  };
}

test('a reach kept for one folder holds for a second only when that was counted too, also after a test changed', async () => {
  const kept = file('reach.json');
  const tests = twoTests();
  const reach = async (faults: typeof risk) => {
    const found = await reachOf({ root, tests, faults, kept });
    return faults.map((one) => found.of(one).map(({ name }: { name: string }) => name));
  };
  const each = [['a.test.ts'], ['b.test.ts']];
  writeFileSync(file('a.test.ts'), 'one');
  writeFileSync(file('b.test.ts'), 'one');
  expect(await reach(risk)).toEqual(each);
  expect(await reach(solve)).toEqual(each);
  expect(await reach(risk)).toEqual(each);
  expect(tests.counted).toEqual([
    ['a.test.ts', 'b.test.ts'],
    ['a.test.ts', 'b.test.ts'],
  ]);

  writeFileSync(file('b.test.ts'), 'changed');
  expect(await reach(risk)).toEqual(each);
  expect(await reach(solve)).toEqual(each);
  expect(tests.counted.slice(2)).toEqual([['b.test.ts'], ['b.test.ts']]);
});
