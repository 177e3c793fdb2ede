import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { setUpPages } from './pages.js';

const { pages } = setUpPages();
const root = new URL('../..', import.meta.url).pathname;

/** Where the links of a page lead to that is not there: parts of itself, other pages, pictures. */
function dead(file: string, targets: readonly string[], ids: ReadonlySet<string>): readonly string[] {
  return targets.filter((target) => (target.startsWith('#') ? !ids.has(decodeURIComponent(target.slice(1))) : !existsSync(join(dirname(file), decodeURIComponent(target)))));
}

const all = (text: string, pattern: RegExp): readonly string[] => [...text.matchAll(pattern)].map(([, found]) => found ?? '');
const deadIn = (file: string, html: string): readonly string[] => dead(file, all(html, /href="([^"]*)"/gu), new Set(all(html, /\bid="([^"]*)"/gu)));

describe('every link leads somewhere', () => {
  test('on pages of every kind', () => {
    let followed = 0;
    for (const { name, file } of [...pages().all, pages().room, ...pages().others]) {
      const html = readFileSync(file, 'utf8');
      followed += all(html, /href="([^"]*)"/gu).length;
      expect(deadIn(file, html), name).toEqual([]);
    }
    expect(followed).toBeGreaterThan(150);
    const { file } = pages().room;
    expect(deadIn(file, '<a href="#nowhere"></a><a href="nobody/report.html"></a><a href="class-pack.html"></a>')).toEqual(['#nowhere', 'nobody/report.html']);
  });

  test('from the class page in Markdown to every plan and picture, and from each report to its pictures', () => {
    const out = mkdtempSync(join(tmpdir(), 'links-'));
    try {
      spawnSync(process.execPath, [join(root, 'dist/sightdown.js'), 'audit', 'reports/class-first-year/plans', '--rules', 'class-first-year', '--samples', '2000', '--out', out], { cwd: root });
      const files = ['class.md', ...readdirSync(out).map((name) => join(name, 'report.md'))].map((name) => join(out, name)).filter((file) => existsSync(file));
      expect(files).toHaveLength(11);
      for (const file of files) {
        const targets = all(readFileSync(file, 'utf8'), /\]\(([^)]+)\)/gu);
        expect(targets.length, file).toBeGreaterThan(5);
        expect(dead(file, targets.filter((target) => !target.startsWith('#')), new Set()), file).toEqual([]);
      }
    } finally {
      rmSync(out, { recursive: true });
    }
  });
});
