import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { packageFolder } from '../../src/cli/files.js';

/** What a build finds, with the minute at which each was written; what is left of `dist/lib` before it compiles. */
function tidied(files: Readonly<Record<string, number>>): readonly string[] {
  const folder = mkdtempSync(join(tmpdir(), 'tidy-lib-'));
  for (const [name, minute] of Object.entries(files)) {
    mkdirSync(join(folder, name, '..'), { recursive: true });
    writeFileSync(join(folder, name), '');
    utimesSync(join(folder, name), 60 * minute, 60 * minute);
  }
  const { status, stderr } = spawnSync(process.execPath, [join(packageFolder, 'test/tools/tidy-lib.mjs')], { cwd: folder, encoding: 'utf8' });
  expect([status, stderr]).toEqual([0, '']);
  const lib = join(folder, 'dist/lib');
  const left = existsSync(lib) ? readdirSync(lib, { recursive: true, withFileTypes: true }).flatMap((entry) => (entry.isFile() ? entry.name : [])).sort() : [];
  rmSync(folder, { recursive: true });
  return left;
}

const sources = { 'src/one.ts': 1, 'src/in/two.ts': 9, 'src/page/view.tsx': 1 };
const built = { 'dist/lib/one.js': 2, 'dist/lib/one.d.ts': 2, 'dist/lib/in/two.js': 2, 'dist/lib/in/two.d.ts': 2, 'dist/lib/package.json': 4 };
const record = { 'dist/lib/tsconfig.tsbuildinfo': 3 };
const all = ['one.d.ts', 'one.js', 'package.json', 'two.d.ts', 'two.js'];

it('what was compiled from a source that is gone or moved does not stay in the library', () => {
  const gone = { 'dist/lib/gone.js': 2, 'dist/lib/gone.d.ts': 2, 'dist/lib/in/one.js': 2, 'dist/lib/page/view.js': 2 };
  expect(tidied({ ...sources, ...built, ...record, ...gone })).toEqual([...all, 'tsconfig.tsbuildinfo'].sort());
});

it('where another build wrote later, or a file is missing, all is compiled anew', () => {
  expect(tidied({ ...sources, ...built, ...record, 'dist/lib/in/two.js': 5 })).toEqual(all);
  const { 'dist/lib/one.d.ts': _, ...short } = built;
  expect(tidied({ ...sources, ...short, ...record })).toEqual(all.slice(1));
  expect(tidied(sources)).toEqual([]);
});
