import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fileText } from '../plan/shelf-for-tests.js';
import { yearFiles } from '../tools/studio-year.js';
import { folder, type Folder } from './command.js';

const year = yearFiles();
/** One plan and four of its frames. */
const few = year.filter(({ file }) => /^harbour(-[1-4]-\w+)?\.yaml$/u.test(file));
const own = '# our shelf\nshelf: 1\nname: Ours # by hand\njoints:\n  give:\n    butt-glued: 9 # measured in May\n';

/** A folder with the year's files and a shelf of one's own. */
function studio(): Folder & { read(name: string): string } {
  const here = folder();
  for (const { file, text } of few) here.write(`frames/${file}`, text);
  here.write('shelf.yaml', own);
  return { ...here, read: (name) => readFileSync(join(here.path, name), 'utf8') };
}

describe('learn', () => {
  it('prints one document with every promise and every number', () => {
    const here = studio();
    const { code, out } = here.run('learn', 'frames', '--shelf', 'shelf.yaml', '--format', 'json');
    const data = JSON.parse(out) as { promises: { measured: number; rank: number; low: number; high: number }[]; kept: { within_nine_in_ten: [number, number] }; entries: { what: string; posterior: { mean: number; sd: number; low: number; high: number } }[] };
    expect(code).toBe(0);
    expect(data).toMatchObject({ format: 'learn/1', frames: 4 });
    expect(data.kept.within_nine_in_ten).toEqual([data.promises.filter(({ measured, low, high }) => measured >= low && measured <= high).length, data.promises.length]);
    expect(data.promises.every(({ rank }) => rank >= 0 && rank <= 1)).toBe(true);
    expect(data.entries.map(({ what }) => what)).toEqual(expect.arrayContaining(['twist', 'bow', 'give', 'pull']));
    for (const { posterior: { mean, sd, low, high } } of data.entries) expect(low < mean && mean < high && sd > 0).toBe(true);
    expect(here.files().filter((file) => !file.startsWith('frames'))).toEqual(['shelf.yaml']);
  });

  it('writes a page, and into the shelf beside what stood there; learning again changes nothing more; an audit stands on it', () => {
    const here = studio();
    const args = ['learn', 'frames', '--shelf', 'shelf.yaml', '--write', '--date', '2027-12-20', '--out', 'page'];
    expect(here.run(...args)).toMatchObject({ code: 0, err: '' });
    expect(here.files()).toEqual(expect.arrayContaining(['page/learn.md', 'page/learn-ranks.svg']));
    const shelf = here.read('shelf.yaml');
    expect(shelf).toContain('name: Ours # by hand');
    expect(shelf).toContain('butt-glued: 9 # measured in May');
    expect(shelf).toMatch(/mitre-glued-nailed: [\d.]+ # before: 4; learned 2027-12-20 from 4 frames(, \d+ test corners)?/u);
    expect(shelf).toMatch(/twist: \{ mean: [\d.]+ deg\/m, sd: [\d.]+ deg\/m \} # before: mean 0\.5 deg\/m, sd 0\.7 deg\/m; learned 2027-12-20 from 4 frames, \d+ boards/u);
    expect(here.run(...args).code).toBe(0);
    expect(here.read('shelf.yaml')).toBe(shelf);
    here.write('plan.yaml', 'plan: 1\nname: Next one\nface: { width: 700 mm, height: 500 mm }\nbars: { stock: strip-19x38, lay: flat }\n');
    here.run('audit', 'plan.yaml', '--shelf', 'shelf.yaml', '--out', 'next');
    expect(here.read('next/report.md')).toMatch(/2[0-9]{2} N\/m, the shelf’s number for this cloth/u);
  });

  it.each([
    ['a folder that is not there', ['nowhere'], 'found no folder of that name'],
    ['a folder without plans', ['.'], 'found no file that ends in .yaml'],
    ['--write without a shelf', ['frames', '--write'], '--write needs --shelf'],
    ['a day that is none', ['frames', '--date', '2027-02-30'], '--date: found'],
  ])('%s: exit 1', (_, args, said) => {
    const here = folder();
    here.write('frames/a.yaml', 'plan: 1\n');
    const { code, err } = here.run('learn', ...args);
    expect(code).toBe(1);
    expect(err).toContain(said);
  });

  it('the example is what its script makes', () => {
    for (const { file, text } of year) expect(fileText(`reports/studio-year/frames/${file}`), file).toBe(text);
  });
});
