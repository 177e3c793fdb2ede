import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { makeRoom } from '../class/room.js';
import { hostilePlan, hostileRuleset, hostileShelf } from './hostile-plan.js';
import type { MadePage, Pages } from './pages.js';

const root = new URL('../..', import.meta.url).pathname;

/** Makes the pages before the first test and removes them after the last one. */
export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'pages-'));
  project.provide('pages', makePages(folder));
  return () => rmSync(folder, { recursive: true, force: true });
}

/** Runs the built command for every plan; throws when it writes no page. */
function makePages(folder: string): Pages {
  const make = (name: string, plan: string, more: readonly string[] = []): MadePage => {
    const out = join(folder, name);
    const run = spawnSync(process.execPath, [join(root, 'dist/sightdown.js'), 'audit', plan, '--format', 'html', '--out', out, ...more], { encoding: 'utf8' });
    const file = join(out, 'report.html');
    if (!existsSync(file)) throw new Error(`no page for ${name} (exit ${run.status}):\n${run.stdout}${run.stderr}`);
    return { name, file, said: `${run.stdout}${run.stderr}` };
  };
  const plan = join(folder, 'hostile.yaml');
  const shelf = join(folder, 'hostile-shelf.yaml');
  const noisy = join(folder, 'noisy.html');
  writeFileSync(noisy, '<!doctype html><img src="http://127.0.0.1:9/x.png"><script>console.warn("w"); setTimeout(() => { throw new Error("thrown"); })</script>');
  writeFileSync(plan, hostilePlan);
  const ruleset = join(folder, 'hostile-ruleset.yaml');
  writeFileSync(shelf, hostileShelf);
  writeFileSync(ruleset, hostileRuleset);
  const nook = make('reading-nook', join(root, 'reports/reading-nook/plan.yaml'));
  const stairwell = make('stairwell-banner', join(root, 'reports/stairwell-banner/plan.yaml'));
  const everything = make('everything', join(root, 'test/plans/everything.yaml'));
  const hostile = make('hostile', plan, ['--shelf', shelf, '--rules', ruleset]);
  const room = join(folder, 'room');
  makeRoom(room);
  const out = join(folder, 'room-pages');
  const made = spawnSync(process.execPath, [join(root, 'dist/sightdown.js'), 'audit', join(room, 'plans'), '--rules', join(room, 'ruleset.yaml'), '--samples', '2000', '--format', 'html', '--out', out], { encoding: 'utf8' });
  if (!existsSync(join(out, 'class.html'))) throw new Error(`no page for the class (exit ${made.status}):\n${made.stdout}${made.stderr}`);
  const term = spawnSync(process.execPath, [join(root, 'dist/sightdown.js'), 'timetable', join(root, 'test/class/room/plans'), '--shop', join(root, 'test/timetable/room.yaml'), '--format', 'html', '--out', out, '--overwrite'], { encoding: 'utf8' });
  if (!existsSync(join(out, 'timetable.html'))) throw new Error(`no page for the timetable (exit ${term.status}):\n${term.stdout}${term.stderr}`);
  const other = (name: string, page: string, args: readonly string[]): MadePage => {
    const to = join(folder, name);
    const run = spawnSync(process.execPath, [join(root, 'dist/sightdown.js'), ...args, '--format', 'html', '--out', to], { encoding: 'utf8', cwd: root });
    if (!existsSync(join(to, page))) throw new Error(`no page ${name} (exit ${run.status}):\n${run.stdout}${run.stderr}`);
    return { name, file: join(to, page), said: `${run.stdout}${run.stderr}` };
  };
  const [sheet, calm] = [join(folder, 'twisted-sheet.yaml'), join(folder, 'flat-sheet.yaml')];
  writeFileSync(sheet, 'sheet: 1\nplan: Reading-nook panel\nwhen: after-cloth\ndiagonals: [ 1108 mm, 1114 mm ]\ncorner-lift: 14 mm\nlifted: top-right\ntap: 9 Hz\nbow: { top: 3 mm, left: -5 mm }\ninward-bow: { top: 4 mm }\n');
  writeFileSync(calm, 'sheet: 1\nplan: Stairwell banner\nwhen: finished\ndiagonals: [ 71-1/16 in, 71-1/8 in ]\ncorner-lift: 1/16 in\n');
  // A plan that was read once and no longer is: its report gives way to a page that says so.
  const twice = join(folder, 'twice');
  mkdirSync(twice);
  for (const name of ['first', 'second']) writeFileSync(join(twice, `${name}.yaml`), `plan: 1\nname: ${name}\nface: { width: 500 mm, height: 400 mm }\nbars: { stock: strip-19x38, lay: flat }\n`);
  const again = (): MadePage => other('twice-pages', 'second/report.html', ['audit', twice, '--overwrite']);
  again();
  writeFileSync(join(twice, 'second.yaml'), 'plan: 1\nname: second\nface: { width: 500 mm\n');
  const notRead = { ...again(), name: 'not read' };
  if (!readFileSync(notRead.file, 'utf8').includes('could not be read as a plan')) throw new Error('the page of a plan that was not read does not say so');
  const firstYear = other('first year', 'class.html', ['audit', 'reports/class-first-year/plans', '--rules', 'class-first-year']);
  const others: readonly MadePage[] = [
    firstYear,
    { ...firstYear, name: 'first year, pack', file: join(dirname(firstYear.file), 'class-pack.html') },
    { name: 'pack', file: join(out, 'class-pack.html'), said: '' },
    { name: 'timetable', file: join(out, 'timetable.html'), said: '' },
    notRead,
    other('cut', 'cut.html', ['cut', 'reports/reading-nook/plan.yaml', 'test/plans/everything.yaml', 'test/plans/smallest.yaml']),
    other('cut in inches', 'cut.html', ['cut', 'test/plans/inches.yaml', '--even-so']),
    other('place', 'place.html', ['place', 'reports/spare-boards/plan.yaml', '--pile', 'reports/spare-boards/pile.yaml']),
    other('learn', 'learn.html', ['learn', 'reports/studio-year/frames', '--shelf', 'reports/studio-year/shelf.yaml', '--date', '2027-12-20']),
    other('measured', 'report.html', ['audit', 'reports/reading-nook/plan.yaml', '--measured', sheet]),
    other('measured in inches', 'report.html', ['audit', 'reports/stairwell-banner/plan.yaml', '--measured', calm]),
  ];
  return { others, room: { name: 'room', file: join(out, 'class.html'), said: made.stdout }, nook, stairwell, everything, hostile, all: [nook, stairwell, everything, hostile], noisy };
}
