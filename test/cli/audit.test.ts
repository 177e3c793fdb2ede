import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { command, folder, looksLikeABug, plan, stopPlan } from './command.js';

/** A shelf whose own strip has no lengths for sale: the cost cannot be known. */
const shelfWithoutLengths = 'shelf: 1\nlumber:\n  bare-19x38: { size: 19 x 38 mm, E: 9000 MPa }\n';

describe('one plan', () => {
  it('clear: exit 0 and a report under reports/<file name>/', () => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    const { code, out, err } = here.run('audit', 'sill.yaml');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^● CLEAR {2}Sill {2}→ {2}reports\/sill\/report\.md$/m);
    expect(here.files()).toContain('reports/sill/report.md');
    expect(here.files()).toContain('reports/sill/front.svg');
  });

  it('caution: exit 0, and 2 under --strict', () => {
    const here = folder();
    here.write('wet.yaml', plan('Wet boards').replace('9 %', '19 %'));
    const run = (...more: readonly string[]) => here.run('audit', 'wet.yaml', '--format', 'json', ...more);
    expect(run().code).toBe(0);
    const strict = run('--strict');
    expect((JSON.parse(strict.out) as { readonly verdict: string }).verdict).toBe('caution');
    expect(strict.code).toBe(2);
  });

  it('stop: exit 3', () => {
    const here = folder();
    here.write('thin.yaml', stopPlan);
    const { code, out } = here.run('audit', 'thin.yaml', '--format', 'json');
    expect((JSON.parse(out) as { readonly verdict: string }).verdict).toBe('stop');
    expect(code).toBe(3);
  });

  it('json: one audit/1 document with its keys in order, and nothing written', () => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    const { code, out } = here.run('audit', 'sill.yaml', '--format', 'json');
    expect(code).toBe(0);
    const document = JSON.parse(out) as Record<string, unknown>;
    expect(Object.keys(document)).toEqual(['format', 'plan', 'verdict', 'facts', 'findings', 'supplies', 'assumed', 'left_out', 'ruleset', 'sheets']);
    expect(document['format']).toBe('audit/1');
    expect(Object.keys((document['facts'] as object[])[0] as object)).toEqual(['path', 'about', 'value', 'unit']);
    expect(here.files()).toEqual(['sill.yaml']);
  });

  it('html: one page with its pictures inside', () => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    expect(here.run('audit', 'sill.yaml', '--format', 'html', '--out', 'page').code).toBe(0);
    expect(here.files()).toEqual(['page/report.html', 'sill.yaml']);
    expect(readFileSync(join(here.path, 'page/report.html'), 'utf8')).toMatch(/^<!doctype html>[\s\S]*<svg/i);
  });

  it('a shelf of one’s own is laid over the default one; without lengths for sale the cost is unknown but nothing stops', () => {
    const here = folder();
    here.write('own.yaml', shelfWithoutLengths);
    here.write('sill.yaml', plan('Sill').replace('strip-19x38', 'bare-19x38'));
    const { code, out } = here.run('audit', 'sill.yaml', '--shelf', 'own.yaml', '--format', 'json');
    const { facts, verdict } = JSON.parse(out) as { readonly verdict: string; readonly facts: readonly { readonly path: string; readonly value: unknown }[] };
    expect(facts.find(({ path }) => path === 'cutting.cost')?.value).toBeNull();
    expect(code).toBe({ clear: 0, caution: 0, unknown: 2, stop: 3 }[verdict]);
    expect(verdict).not.toBe('stop');
  });

  it('a bench sheet is held against the promise: its readings join the findings and can make the verdict worse', () => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    here.write('sheet.yaml', 'sheet: 1\ncorner-lift: 40 mm\n');
    const { code, out } = here.run('audit', 'sill.yaml', '--measured', 'sheet.yaml', '--format', 'json');
    const { findings, verdict } = JSON.parse(out) as { readonly verdict: string; readonly findings: readonly { readonly rule: string; readonly verdict: string }[] };
    expect(findings.find(({ rule }) => rule.startsWith('measured/'))?.verdict).toBe('stop');
    expect({ code, verdict }).toEqual({ code: 3, verdict: 'stop' });
    here.write('bad.yaml', 'sheet: 1\ncorner-lifts: 4 mm\n');
    const bad = here.run('audit', 'sill.yaml', '--measured', 'bad.yaml');
    expect(bad).toMatchObject({ code: 1, out: '' });
    expect(bad.err).toContain('bad.yaml:2:1 error');
    expect(here.run('audit', 'sill.yaml', 'sheet.yaml', '--measured', 'sheet.yaml')).toMatchObject({ code: 1, out: '' });
    expect(here.files()).toEqual(['bad.yaml', 'sheet.yaml', 'sill.yaml']);
  });

  it('what is unknown: exit 2', () => {
    const here = folder();
    here.write('rules.yaml', 'ruleset: 1\nname: Asks for the cost\nrules:\n  - id: own/cost\n    each: cutting\n    require: { fact: cutting.cost, at-most: 20 }\n    otherwise: caution\n    say: "The boards cost {actual}; {limit} is the most."\n    do: [ "Take shorter boards." ]\n    source: practice\n');
    here.write('own.yaml', shelfWithoutLengths);
    here.write('sill.yaml', plan('Sill').replace('strip-19x38', 'bare-19x38'));
    const { code, out } = here.run('audit', 'sill.yaml', '--shelf', 'own.yaml', '--rules', 'rules.yaml', '--format', 'json');
    expect((JSON.parse(out) as { readonly verdict: string }).verdict).toBe('unknown');
    expect(code).toBe(2);
  });

  it('a broken ruleset or shelf: exit 1 with its place, nothing written', () => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    here.write('rules.yaml', 'ruleset: 1\nname: Bad\nlimits:\n  inward-bow: { value: 1/400, of: bar.spam_mm, source: proposal }\n');
    here.write('shelf.yaml', 'shelf: 1\nlumber: { a: { size: 19 mm } }\n');
    for (const [option, file, place] of [['--rules', 'rules.yaml', 'rules.yaml:4:'], ['--shelf', 'shelf.yaml', 'shelf.yaml:2:']] as const) {
      const { code, err, out } = here.run('audit', 'sill.yaml', option, file);
      expect({ code, out }).toEqual({ code: 1, out: '' });
      expect(err).toContain(place);
      expect(err).not.toMatch(looksLikeABug);
    }
    expect(here.files()).toEqual(['rules.yaml', 'shelf.yaml', 'sill.yaml']);
  });

  it('is the same byte for byte when made twice, and its seed matters to the sampling alone', () => {
    const here = folder();
    // Long bars of boards nobody chose: the chance that one bows is open until frames are drawn.
    here.write('sill.yaml', plan('Sill', '{ width: 1200 mm, height: 600 mm }').replace('picked', 'unsorted'));
    const run = (...more: readonly string[]): string => here.run('audit', 'sill.yaml', '--format', 'json', ...more).out;
    const first = run('--seed', '1');
    expect(run('--seed', '1')).toBe(first);
    const [one, other] = [first, run('--seed', '2')].map((text) => JSON.parse(text) as { readonly facts: readonly { readonly path: string; readonly value: unknown }[] });
    const moved = one!.facts.filter((fact, i) => fact.value !== other!.facts[i]?.value).map(({ path }) => path);
    expect(moved.length).toBeGreaterThan(0);
    expect(moved.filter((path) => !/chance|p90/.test(path))).toEqual([]);
  });

  it.each([[['--samples', '5']], [['--samples', '1e6']], [['--seed', '-1']], [['--format', 'pdf']], [['--colour', 'red']]])('refuses %j in words', (args) => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    const { code, err } = here.run('audit', 'sill.yaml', ...args);
    expect(code).toBe(1);
    expect(err).toMatch(/^error: /);
    expect(err).not.toMatch(looksLikeABug);
  });

  it('stops quietly when its reader has seen enough', () => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    const { stderr } = spawnSync('sh', ['-c', `"${process.execPath}" "${command}" audit sill.yaml --format json | head -c 10`], { cwd: here.path, encoding: 'utf8' });
    expect(stderr).toBe('');
  });
});

describe('several plans', () => {
  it('get a page each and one about all of them; the exit code is that of the gravest', () => {
    const here = folder();
    here.write('a/sill.yaml', plan('Sill'));
    here.write('a/thin.yaml', stopPlan);
    const { code, out, err } = here.run('audit', 'a/sill.yaml', 'a/thin.yaml');
    expect({ code, err }).toEqual({ code: 3, err: '' });
    expect(out.trim().split('\n').map((line) => line.split('  ')[0])).toEqual(['● CLEAR', '✕ STOP', '2 plans']);
    for (const file of ['reports/sill/report.md', 'reports/thin/report.md', 'reports/class.md', 'reports/class-boards.svg']) expect(here.files()).toContain(file);
  });

  it('exit codes: 1 goes before 3, 3 before 2, 2 before 0', () => {
    const here = folder();
    here.write('clear.yaml', plan('Clear'));
    here.write('wet.yaml', plan('Wet boards').replace('9 %', '19 %'));
    here.write('stop.yaml', stopPlan);
    here.write('broken.yaml', 'plan: 1\n');
    const code = (...args: readonly string[]): number | null => here.run('audit', ...args, '--format', 'json', '--samples', '500').code;
    expect(code('clear.yaml', 'wet.yaml')).toBe(0);
    expect(code('clear.yaml', 'wet.yaml', '--strict')).toBe(2);
    expect(code('stop.yaml', 'wet.yaml', '--strict')).toBe(3);
    expect(code('stop.yaml', 'broken.yaml')).toBe(1);
  });

  it('json: one audits/1 document; each audit is the very document of the plan alone', () => {
    const here = folder();
    here.write('a.yaml', plan('A'));
    here.write('b.yaml', plan('B', '{ width: 24 in, height: 20 in }'));
    here.write('c.yaml', 'plan: 1\nname: C\n');
    const { code, out } = here.run('audit', 'a.yaml', 'b.yaml', 'c.yaml', '--format', 'json');
    expect(code).toBe(1);
    const document = JSON.parse(out) as { readonly format: string; readonly audits: readonly unknown[]; readonly broken: readonly { readonly file: string }[]; readonly roll_up: { readonly plans: number; readonly broken_files: number; readonly rows: readonly { readonly name: string }[] } };
    expect(Object.keys(document)).toEqual(['format', 'audits', 'broken', 'roll_up']);
    expect(document.format).toBe('audits/1');
    expect(document.audits).toEqual(['a.yaml', 'b.yaml'].map((file) => JSON.parse(here.run('audit', file, '--format', 'json').out) as unknown));
    expect(document.broken.every(({ file }) => file === 'c.yaml')).toBe(true);
    expect(document.broken.length).toBeGreaterThan(0);
    expect(document.roll_up).toMatchObject({ plans: 2, broken_files: 1 });
    expect(document.roll_up.rows.map(({ name }) => name)).toEqual(['A', 'B']);
    expect(here.files()).toEqual(['a.yaml', 'b.yaml', 'c.yaml']);
  });

  it('a folder is every plan in it, not those in folders inside it; even one is a class', () => {
    const here = folder();
    here.write('plans/one.yaml', plan('One'));
    here.write('plans/older/two.yaml', plan('Two'));
    here.write('plans/notes.txt', 'not a plan');
    const { code, out } = here.run('audit', 'plans', '--out', 'pages');
    expect(code).toBe(0);
    expect(out).not.toContain('Two');
    expect(here.files()).toContain('pages/class.md');
  });

  it('plans of the same file name in different folders do not overwrite each other; a file named twice counts once', () => {
    const here = folder();
    for (const who of ['ada', 'ben']) here.write(`${who}/plan.yaml`, plan(`By ${who}`));
    const { out } = here.run('audit', 'ada/plan.yaml', 'ben/plan.yaml', './ada/plan.yaml', '--out', 'pages');
    expect(out).toContain('2 plans');
    const page = (name: string): string => readFileSync(join(here.path, 'pages', name, 'report.md'), 'utf8').split('\n')[0] ?? '';
    expect(page('ada-plan')).toContain('By ada');
    expect(page('ben-plan')).toContain('By ben');
  });

  it('html: a class page with its pictures inside', () => {
    const here = folder();
    here.write('a.yaml', plan('A'));
    here.write('b.yaml', plan('B', '{ width: 480 mm, height: 360 mm }'));
    expect(here.run('audit', 'a.yaml', 'b.yaml', '--format', 'html', '--out', 'pages').code).toBe(0);
    expect(here.files().filter((file) => file.startsWith('pages/'))).toEqual(['pages/a/report.html', 'pages/b/report.html', 'pages/class-pack.html', 'pages/class.html']);
    const html = readFileSync(join(here.path, 'pages/class.html'), 'utf8');
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(html.match(/<svg/g)?.length).toBe(2);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('writes nothing about a class of which no plan can be read', () => {
    const here = folder();
    here.write('a.yaml', 'plan: 1\n');
    here.write('b.yaml', 'plan: 2\n');
    expect(here.run('audit', 'a.yaml', 'b.yaml')).toMatchObject({ code: 1, out: '' });
    expect(here.files()).toEqual(['a.yaml', 'b.yaml']);
  });

  it('no colours and no progress where there is no terminal', () => {
    const here = folder();
    here.write('a.yaml', plan('A'));
    here.write('b.yaml', 'plan: 2\n');
    const { err, out } = here.run('audit', 'a.yaml', 'b.yaml');
    expect(`${err}${out}`).not.toContain('\u001b');
    expect(err).not.toContain('of 2 plans');
  });
});
