import { spawnSync } from 'node:child_process';
import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readYaml } from '../../src/base/yaml-document.js';
import { loadShelf } from '../../src/cli/load.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { folder, looksLikeABug, plan } from './command.js';

const shelf = loadShelf(undefined);
if (!shelf.ok) throw new Error('the default shelf does not load');
const codesOf = (text: string): readonly string[] => {
  const read = readPlanWith(text, 'hostile.yaml', shelf.value);
  return [...new Set((read.ok ? read.warnings : read.problems).map(({ code }) => code))];
};
const head = plan('Hostile');
const times = (text: string, count: number): string => text.repeat(count);

/**
 * Texts that once kept the reader busy for ten seconds to ten minutes. Each is refused for what it is; the test's own
 * limit, a generous multiple of what a linear reader takes, is what fails when a reader grows quadratic again.
 */
describe('every reader is linear in its text', () => {
  it.each<[what: string, text: string, code: string]>([
    ['12,000 aliases', `${head}a: &a [1]\nb: [${times('*a, ', 12_000)}]\n`, 'unknown-key'],
    ['100,000 aliases', `${head}a: &a [1]\nb: [${times('*a, ', 100_000)}]\n`, 'too-many-words'],
    ['9,000 anchors, each with its alias', head + Array.from({ length: 9000 }, (_, i) => `k${i}: &a${i} 1\nj${i}: *a${i}\n`).join(''), 'unknown-key'],
    ['20,000 unknown keys', head + Array.from({ length: 20_000 }, (_, i) => `k${i}: 1\n`).join(''), 'unknown-key'],
    ['20,000 repeated keys', `${head}${times('a: 1\n', 20_000)}`, 'duplicate-key'],
    ['400,000 commas', `${head}b: [${times(',', 400_000)}]`, 'too-many-words'],
    ['400,000 quotes', `${head}b: ${times('"', 400_000)}`, 'too-many-words'],
    ['400,000 closing braces', `${head}${times('}', 400_000)}`, 'too-many-words'],
    ['400,000 line ends in a text', `${head}b: "${times('\n', 400_000)}"`, 'bad-yaml'],
    ['15,000 empty crossbars', `${head}crossbars: [${times('{},', 15_000)}]`, 'too-many'],
  ])('%s', { timeout: 10_000 }, (_, text, code) => {
    expect(codesOf(text)).toContain(code);
  });

  it('a shelf of 20,000 empty entries', { timeout: 10_000 }, () => {
    const here = folder();
    here.write('shelf.yaml', `shelf: 1\nlumber:\n${Array.from({ length: 20_000 }, (_, i) => `  k${i}: {}\n`).join('')}`);
    const read = loadShelf(join(here.path, 'shelf.yaml'));
    expect(read.ok).toBe(false);
  });

  it('an alias stands for the last anchor of its name before it', () => {
    const { source } = readYaml('a: &x 1\nb: *x\nc: &x 2\nd: *x\n', 'a.yaml');
    expect(source?.data).toEqual({ a: 1, b: 1, c: 2, d: 2 });
    expect(source?.place(['d']).line).toBe(4);
  });
});

describe('what is no plain text file is said to be what it is', () => {
  const said = (make: (path: string) => void, more: readonly string[] = []): string => {
    const here = folder();
    make(join(here.path, 'odd.yaml'));
    const { code, err } = here.run('audit', 'odd.yaml', '--out', 'r', ...more);
    expect(code).toBe(1);
    expect(err).not.toMatch(looksLikeABug);
    return err;
  };

  it('a link that leads back to itself', () => {
    expect(said((path) => symlinkSync('odd.yaml', path))).toContain('a link that leads back to itself');
  });
  it('a link to a device that never ends', () => {
    expect(said((path) => symlinkSync('/dev/zero', path))).toContain('found a device');
  });
  it('a named pipe that nobody writes into', () => {
    expect(said((path) => spawnSync('mkfifo', [path]))).toContain('found a named pipe');
  });
  it('a folder', () => {
    const here = folder();
    mkdirSync(join(here.path, 'odd.yaml'));
    const { code, err } = here.run('audit', 'odd.yaml');
    expect(code).toBe(1);
    expect(err).toContain('a folder');
  });
  it('a text in Latin-1', () => {
    const here = folder();
    here.write('latin.yaml', Buffer.from(plan('Atelier \u00e9t\u00e9'), 'latin1'));
    const { code, err } = here.run('audit', 'latin.yaml');
    expect(code).toBe(1);
    expect(err).toContain('signs that are no UTF-8');
  });
  it('nothing at all', () => {
    const { code, err } = folder().run('audit', 'nowhere.yaml');
    expect(code).toBe(1);
    expect(err).toContain('no such file');
  });
});

describe('nothing that a person or a file wrote steers the terminal', () => {
  const steering = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/u;
  const nasty = '\u001b[31mred\u0007\u009b2J\u202eback';

  it.each([
    ['a key', `${head}"${JSON.stringify(nasty).slice(1, -1)}": 1\n`],
    ['a tag', `${head}ground: !<${nasty.replace(/[[\]]/g, '')}> 1\n`],
    ['an alias', `${head}ground: *${nasty.replace(/[[\]]/g, '')}\n`],
    ['a value', `${head}cloth: { use: "${JSON.stringify(nasty).slice(1, -1)}" }\n`],
    ['a name', plan(`"${JSON.stringify(nasty).slice(1, -1)}"`)],
    ['a long line', `${head}ground: { coats: "${'long '.repeat(5000)}" }\n`],
  ])('%s', (_, text) => {
    const here = folder();
    here.write('n.yaml', text);
    for (const format of ['md', 'json']) {
      const { out, err } = here.run('audit', 'n.yaml', '--format', format, '--out', 'r');
      expect(out + err).not.toMatch(steering);
      expect(Math.max(...(out + err).split('\n').map((line) => line.length))).toBeLessThanOrEqual(2000);
    }
  });

  it('a file name', () => {
    const here = folder();
    const { out, err } = here.run('audit', `x${nasty}.yaml`);
    expect(out + err).not.toMatch(steering);
  });
});
