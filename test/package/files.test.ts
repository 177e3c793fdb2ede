import { spawnSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { packageFolder } from '../../src/cli/files.js';

interface Packed {
  readonly files: readonly { readonly path: string }[];
}

const { stdout } = spawnSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], { cwd: packageFolder, encoding: 'utf8' });
const [packed] = JSON.parse(stdout) as readonly [Packed];
const paths = packed.files.map(({ path }) => path).sort();

it('what is published is the command, its library, its rules and the papers', () => {
  const outside = paths.filter((path) => !path.startsWith('dist/lib/') && !path.startsWith('rules/'));
  expect(outside.filter((path) => path !== 'dist/sightdown.html')).toEqual([
    'LICENSE', 'README.md', 'dist/THIRD-PARTY-NOTICES.txt', 'dist/bundle.cjs', 'dist/bundle.code', 'dist/one-audit.cjs', 'dist/one-audit.code', 'dist/package.json', 'dist/prepared.json', 'dist/sightdown.js',
    'package.json',
  ]);
});

it('no tools of the developers, no tests, no examples', () => {
  expect(paths.filter((path) => /^(test|src|reports)\/|tools\/|\.test\.|\.tsbuildinfo$/.test(path))).toEqual([]);
});

it('the command may be run', () => {
  expect(statSync(join(packageFolder, 'dist', 'sightdown.js')).mode & 0o111).toBe(0o111);
});

it('the licence of every dependency that is bundled travels along', () => {
  const notices = readFileSync(join(packageFolder, 'dist', 'THIRD-PARTY-NOTICES.txt'), 'utf8');
  const { dependencies } = JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8')) as { readonly dependencies: Record<string, string> };
  const missing = Object.keys(dependencies).filter((name) => !new RegExp(`^${name.replace(/[/.@-]/g, '\\$&')} \\d`, 'm').test(notices));
  expect(missing).toEqual([]);
});
