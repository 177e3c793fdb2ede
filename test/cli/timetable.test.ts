import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder, looksLikeABug } from './command.js';

const plan = 'plan: 1\nname: Quay\nstudent: Ola\ncount: 2\nface: { width: 630 mm, height: 470 mm }\nbars: { stock: strip-19x38, lay: flat }\ncorners: { cut: mitre, glue: pva }\nground: { coats: 1 }\n';
const shop = 'shop: 1\nname: Loft\nsessions: { on: [ tuesday ], from: 2027-01-12, length: 90 min, people: 2 }\nclamps: { corner: 4 }\nsaws: [ { kind: mitre-box, most: 65 mm } ]\ntools: [ { name: mitre box and saw, price: 14 } ]\ncompare-with: { price: 32, for: { width: 500 mm, height: 400 mm } }\n';

interface Json {
  readonly format: string;
  readonly sessions: readonly { readonly date: string; readonly tasks: readonly { readonly plan: string; readonly task: string; readonly minutes: number; readonly uses: Readonly<Record<string, number>> }[] }[];
  readonly finish: string | null;
  readonly bound: string | null;
  readonly proven: boolean;
}

const files: Readonly<Record<string, string>> = { 'quay.yaml': plan, 'loft.yaml': shop, 'two.yaml': 'shop: 1\nsessions: [ { date: 2027-01-12, length: 2 h } ]\n', 'bare.yaml': 'shop: 1\nclamps: { corner: 4 }\n', 'bad.yaml': 'shop: 1\nsessions: { on: [ tusday ], from: 2027-13-12, length: 90 min }\n' };

function filled(): ReturnType<typeof folder> {
  const here = folder();
  for (const [name, text] of Object.entries(files)) here.write(name, text);
  return here;
}

describe('sightdown timetable', () => {
  it('prints one document: the sessions on their days, every task once, no clamp that is not there', () => {
    const here = filled();
    const { code, out } = here.run('timetable', 'quay.yaml', '--shop', 'loft.yaml', '--format', 'json');
    expect(code).toBe(0);
    const data = JSON.parse(out) as Json;
    expect(Object.keys(data)).toEqual(['format', 'sessions', 'finish', 'bound', 'proven']);
    expect(data).toMatchObject({ format: 'timetable/1', proven: true });
    expect(data.finish).toBe(data.sessions.at(-1)!.date);
    expect(data.bound).toBe(data.finish);
    data.sessions.forEach(({ date }, i) => expect((Date.parse(date) - Date.parse('2027-01-12')) / 86_400_000).toBe(7 * i));
    const tasks = data.sessions.flatMap((one) => one.tasks);
    for (const task of tasks) expect(Object.keys(task)).toEqual(['plan', 'task', 'minutes', 'uses']);
    const of = (name: string) => tasks.filter((task) => task.plan === name).map(({ task }) => task);
    expect(of('Quay, frame 1')).toEqual(of('Quay, frame 2'));
    expect(new Set(of('Quay, frame 1')).size).toBe(of('Quay, frame 1').length);
    expect(tasks.find(({ task }) => task === 'glue-corners')?.uses).toEqual({ 'person': 1, 'flat place': 1, 'corner clamp': 4 });
    expect(existsSync(join(here.path, 'reports'))).toBe(false);
  });

  it('writes a page with a picture, and says the day in one line', () => {
    const here = filled();
    const { code, out } = here.run('timetable', 'quay.yaml', '--shop', 'loft.yaml', '--out', 'term');
    expect(code).toBe(0);
    expect(out).toMatch(/^All 2 frames are finished on Tuesday, \d+ \w+ 2027, in \w+ sessions\. {2}→ {2}term\/timetable\.md$/mu);
    const page = readFileSync(join(here.path, 'term/timetable.md'), 'utf8');
    expect(page).toMatch(/Making pays (only )?from/u);
    expect(page).toContain('](timetable.svg)');
    expect(existsSync(join(here.path, 'term/timetable.svg'))).toBe(true);
    const html = here.run('timetable', 'quay.yaml', '--shop', 'loft.yaml', '--out', 'term', '--format', 'html');
    expect(html.code).toBe(0);
    expect(readFileSync(join(here.path, 'term/timetable.html'), 'utf8')).toContain('<svg');
  });

  it('ends with 2 where the sessions do not suffice, and says that it is proven', () => {
    const here = filled();
    const { code, out } = here.run('timetable', 'quay.yaml', '--shop', 'two.yaml', '--out', 'short');
    expect([code, out]).toEqual([2, expect.stringContaining('do not get done in the one session there are') as string]);
    expect(readFileSync(join(here.path, 'short/timetable.md'), 'utf8')).toMatch(/That was proven/u);
    const data = JSON.parse(here.run('timetable', 'quay.yaml', '--shop', 'two.yaml', '--format', 'json').out) as Json;
    expect(data).toMatchObject({ sessions: [], finish: null, bound: null, proven: true });
  });

  it('ends with 1 and tells every mistake where the workshop cannot be read or says no sessions', () => {
    const here = filled();
    const bad = here.run('timetable', 'quay.yaml', '--shop', 'bad.yaml');
    expect([bad.code, bad.err]).toEqual([1, expect.stringMatching(/tusday[\s\S]*tuesday[\s\S]*2027-13-12/u) as string]);
    const bare = here.run('timetable', 'quay.yaml', '--shop', 'bare.yaml');
    expect([bare.code, bare.err]).toEqual([1, expect.stringContaining('says no sessions') as string]);
    for (const { err } of [bad, bare]) expect(err).not.toMatch(looksLikeABug);
  });
});
