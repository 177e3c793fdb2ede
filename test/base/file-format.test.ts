import { expect, test } from 'vitest';
import { formatProblem } from '../../src/base/file-format.js';
import { readYaml } from '../../src/base/yaml-document.js';

test.each(['plan', 'shelf', 'pile', 'sheet', 'shop'])('a %s that is a list is told to begin as files of its own kind do', (kind) => {
  const { source } = readYaml('- a\n- b\n', 'mine.yaml');
  const hint = formatProblem(source!, kind)?.hint ?? '';
  expect([...hint.matchAll(/`(\w+): 1`/gu)].map(([, first]) => first)).toEqual([kind]);
});

test('of an empty file, whatever it was to be, nobody is told to write a plan', () => {
  const { problems } = readYaml('', 'mine.yaml');
  expect(problems.map(({ code }) => code)).toEqual(['empty-file']);
  expect(problems[0]!.hint).toMatch(/right file.*such as/u);
});
