import { build } from 'esbuild';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { packageFolder } from '../../src/cli/files.js';
import { files, texts } from './sources.js';

/** Where a run begins: the command, what a library may import, the page, and what the build prepares for the command. */
const doors = ['src/cli.ts', 'src/cli/one-audit.ts', 'src/index.ts', 'src/highs.ts', 'src/page/main.tsx', 'test/tools/prepare.ts'];

/** Names declared at the top of a file, as far as a bundle from some doors keeps them; what nothing reaches is shaken out. */
async function keptBy(entryPoints: readonly string[]): Promise<ReadonlyMap<string, ReadonlySet<string>>> {
  const { outputFiles } = await build({
    absWorkingDir: packageFolder, entryPoints: [...entryPoints], bundle: true, write: false, outdir: join(packageFolder, 'dist/reached'), format: 'esm', splitting: true, platform: 'node',
    packages: 'external', jsx: 'automatic', jsxImportSource: 'preact', logLevel: 'error', loader: { '.css': 'empty' },
  });
  const kept = new Map<string, Set<string>>();
  for (const { text } of outputFiles) {
    let file = '';
    for (const line of text.split('\n')) {
      file = /^\/\/ src\/(\S+)$/.exec(line)?.[1] ?? (/^\/\/ \S+$/.test(line) ? '' : file);
      const names = kept.get(file) ?? new Set();
      kept.set(file, names);
      const declared = /^(?:async )?(?:function\*?|var|let|const|class) (\w+(?:, \w+)*)/.exec(line)?.[1];
      // a name that two files share carries a number in the bundle
      for (const name of declared?.split(', ') ?? []) names.add(name.replace(/\d+$/, ''));
    }
  }
  return kept;
}

const exported = files.flatMap((file) =>
  [...(texts.get(file) as string).matchAll(/^export (?:async )?(function\*?|const|class|interface|type) (\w+)/gm)].map(([, kind, name]) => ({ file, kind: kind as string, name: name as string })),
);

/** How often each word stands in a text. */
function wordsOf(text: string): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const [word] of text.matchAll(/\w+/g)) counts.set(word, (counts.get(word) ?? 0) + 1);
  return counts;
}

describe('what no command, page or library user can reach is not there', () => {
  let kept: ReadonlyMap<string, ReadonlySet<string>>;
  beforeAll(async () => {
    kept = await keptBy(doors);
  });

  test('functions, classes and constants: one that only tests use goes, with its tests', () => {
    const values = exported.filter(({ kind }) => kind !== 'interface' && kind !== 'type');
    expect(values.length).toBeGreaterThan(900);
    expect(values.filter(({ file, name }) => kept.get(file)?.has(name.replace(/\d+$/, '')) !== true).map(({ file, name }) => `${file} ${name}`)).toEqual([]);
  });

  test('types, and constants that are made by a call: named in another file, or once more in their own', () => {
    const atBuild = wordsOf(readFileSync(join(packageFolder, 'test/tools/prepare.ts'), 'utf8'));
    const named = new Map(files.map((file) => [file, wordsOf(texts.get(file) as string)]));
    const unused = exported.filter(({ file, name }) => (named.get(file)?.get(name) ?? 0) < 2 && !atBuild.has(name) && !files.some((other) => other !== file && named.get(other)?.has(name)));
    expect(unused.map(({ file, name }) => `${file} ${name}`)).toEqual([]);
  });
});
