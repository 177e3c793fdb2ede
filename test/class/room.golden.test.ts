import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { folder, runIn } from '../cli/command.js';
import { beside, makeRoom, unreadable } from './room.js';

const path = mkdtempSync(join(tmpdir(), 'room-'));
afterAll(() => rmSync(path, { recursive: true, force: true }));
makeRoom(path);
const here = { path, run: (...args: readonly string[]) => runIn(path, args) };
const options = ['--rules', 'ruleset.yaml', '--samples', '2000'] as const;
const first = here.run('audit', 'plans', ...options, '--out', 'pages');
const page = (name: string): string => readFileSync(join(here.path, 'pages', name), 'utf8');
const csv = here.run('audit', 'plans', ...options, '--format', 'csv');

/** A page of HTML as its words, a line for each element: what a reader sees, without looks and drawings. */
const wordsOf = (html: string): string =>
  html.replace(/<style>.*?<\/style>|<svg.*?<\/svg>/gsu, '').replace(/<\/?(?:t[dh]|strong|em|a)\b[^>]*>/gu, ' ').replace(/<[^>]+>/gu, '\n')
    .replaceAll('&#x26;', '&').replaceAll('&#x3C;', '<').replace(/[ \t]+/gu, ' ').replace(/ *\n[ \n]*/gu, '\n');

/** An alarm: what the command makes of an invented class of 24, and of seven files beside them that cannot be read. `npm run examples` makes it anew. */
describe('a class of 24, and seven files that cannot be read', () => {
  it('its page', async () => {
    await expect(page('class.md')).toMatchFileSnapshot('room/class.md');
  });

  it('its table', async () => {
    await expect(csv.out).toMatchFileSnapshot('room/class.csv');
  });

  it('its pack, in words', async () => {
    await expect(wordsOf(page('class-pack.html'))).toMatchFileSnapshot('room/class-pack.txt');
  });
});

describe('nobody disappears', () => {
  const rows = page('class.md').split('\n## ')[1]!.split('\n').filter((line) => /^\| \*\*\d+\.\*\* /u.test(line));

  it('every file is a row, read or not, and the last line of the terminal counts and names them', () => {
    expect(first.code).toBe(1);
    expect(rows).toHaveLength(24 + unreadable.length + beside.length);
    for (const [file, says] of unreadable) expect(rows.filter((row) => row.includes(`plans/${file}`)), file).toEqual([expect.stringMatching(new RegExp(`\\*\\*Not read\\*\\* \\|.*${says.source}`, 'u'))]);
    for (const file of beside) expect(rows.filter((row) => row.includes(`plans/${file}`)), file).toEqual([expect.stringContaining('| No plan |')]);
    const last = first.out.trimEnd().split('\n').at(-1)!;
    expect(last).toMatch(/^33 files: 24 plans, 7 not read \(.*\), 2 no plan \(.*\) {2}→ /u);
    for (const [file] of unreadable) expect(last).toContain(file);
  });

  it('the buying list names who is not in it', () => {
    const list = /^One list for the \d+ plans.*$/mu.exec(page('class.md'))![0];
    for (const [file] of unreadable) expect(list).toContain(file);
    expect(list).toContain('“Bus shelter in fog”');
  });

  it('the table has a heading and one row for every file, all of one length, and no cell that a spreadsheet would run', () => {
    const lines = csv.out.trimEnd().split('\r\n');
    expect(csv.code).toBe(1);
    expect(lines).toHaveLength(1 + 33);
    const cells = (line: string): readonly string[] => [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/gu)].map(([, cell]) => cell!).slice(0, -1);
    expect(new Set(lines.map((line) => cells(`${line},`).length)).size).toBe(1);
    for (const cell of lines.flatMap(cells)) expect(cell).not.toMatch(/^"?[=+@-]/u);
    expect(csv.out).toContain('\'=Unfinished; @home');
    expect(lines[0]).toMatch(/,mark,remark$/u);
  });

  it('a plan that no longer reads has its old report, and the old page of the class, say so', () => {
    const small = folder();
    const run = () => small.run('audit', 'plans', '--samples', '500', '--out', 'pages');
    const pageOf = (name: string): string => readFileSync(join(small.path, 'pages', name), 'utf8');
    for (const name of ['birta.yaml', 'tove.yaml']) small.write(`plans/${name}`, readFileSync(join(path, 'plans', name)));
    expect(run().code).toBe(0);
    expect(pageOf('birta/report.md')).toMatch(/\bClear\b/u);
    small.write('plans/birta.yaml', 'plan: 1\nname: Greenhouse\nfase: {}\n');
    const again = run();
    expect(again.code).toBe(1);
    expect(again.out).toContain('NOT READ  plans/birta.yaml');
    expect(again.out.trimEnd().split('\n').at(-1)).toMatch(/^2 files: 1 plan, 1 not read \(plans\/birta\.yaml\)/u);
    expect(pageOf('birta/report.md')).toMatch(/# plans\/birta\.yaml: not read[\s\S]*no longer holds[\s\S]*fase/u);
    expect(pageOf('birta/report.md')).not.toMatch(/\bClear\b/u);
    expect(pageOf('class.md')).toMatch(/\| \*\*\d+\.\*\* \[plans\/birta\.yaml\]\(birta\/report\.md\) \| \*\*Not read\*\* \|/u);
    small.write('plans/tove.yaml', '');
    expect(run().code).toBe(1);
    expect(pageOf('class.md')).toContain('No plan could be read; 2 files could not be read.');
  });

  it('with names hidden no page and no table names anybody or any file; the terminal says who is who', () => {
    const small = folder();
    for (const name of ['birta.yaml', 'hedda.yaml']) small.write(`plans/${name}`, readFileSync(join(path, 'plans', name)));
    small.write('plans/gitte.yaml', 'plan: 1\n');
    const run = (format: string) => small.run('audit', 'plans', '--samples', '500', '--out', 'pages', '--names', 'hidden', '--format', format);
    expect(run('html').out).toMatch(/^● CLEAR {2}Plan 1 \(plans\/birta\.yaml\) {2}→ {2}pages\/plan-1\/report\.html$/mu);
    const pages = small.files().filter((file) => file.startsWith('pages/'));
    expect(pages).toEqual(['pages/class-pack.html', 'pages/class.html', 'pages/plan-1/report.html', 'pages/plan-3/report.html']);
    const texts = [run('csv').out, run('json').out, ...pages.map((file) => readFileSync(join(small.path, file), 'utf8'))];
    for (const text of texts) for (const name of ['birta', 'Birta', 'Osei', 'Greenhouse', 'Hedda', 'radiator', 'gitte']) expect(text).not.toContain(name);
    expect(texts[0]).toMatch(/^2,Plan 2,,,not read,/mu);
  });
});
