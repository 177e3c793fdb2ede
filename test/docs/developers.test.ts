import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { packageFolder } from '../../src/cli/files.js';
import { blocksOf, page } from './readme.js';

const guide = page('DEVELOPERS.md');
const src = join(packageFolder, 'src');

test('the guide lists the folders of src, each once, with a line', () => {
  const listed = [...guide.matchAll(/^\| `src\/([\w-]+)\/` \| (.{20,}) \|$/gm)].map(([, folder]) => folder as string);
  const found = readdirSync(src, { withFileTypes: true }).filter((entry) => entry.isDirectory() && readdirSync(join(src, entry.name)).length > 0).map(({ name }) => name);
  expect([...listed].sort()).toEqual(found.sort());
});

test('every path the guide names is there', () => {
  const paths = [...guide.matchAll(/`((?:src|test|rules|reports|\.ci)\/[^`*<>$ ]*)`/g)].map(([, path]) => path as string);
  expect(paths.length).toBeGreaterThan(25);
  expect(paths.filter((path) => !existsSync(join(packageFolder, path)))).toEqual([]);
});

test('the program that uses the library runs', () => {
  const [program] = blocksOf(guide).filter(({ language }) => language === 'js');
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', program!.text], { cwd: packageFolder, encoding: 'utf8' });
  expect(stderr).toBe('');
  expect(status).toBe(0);
  expect(stdout).toMatch(/^(?:clear|caution|unknown|stop)\n\n# Reading-nook panel/);
});

test('every script the guide and README.md name is there', () => {
  const { scripts, dependencies, devDependencies } = JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8')) as Readonly<Record<string, Readonly<Record<string, string>>>>;
  const named = [...`${guide}${page('README.md')}`.matchAll(/npm run ([\w:]+)/g)].map(([, name]) => name as string);
  expect(named.length).toBeGreaterThan(5);
  expect(named.filter((name) => !(name in scripts!))).toEqual([]);
  // Every library that ships or checks is accounted for; type packages and the families of one tree are named as such.
  const libraries = Object.keys({ ...dependencies, ...devDependencies }).filter((name) => !name.startsWith('@types/') && !/^(mdast|hast)-util/.test(name));
  expect(libraries.filter((name) => !guide.includes(name))).toEqual([]);
});
