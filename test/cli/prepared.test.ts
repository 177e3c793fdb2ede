import { spawnSync } from 'node:child_process';
import { copyFileSync, cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Script } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { everything, sampleOf } from '../effort.js';
import { folder, root, stopPlan, withoutProgress } from './command.js';

/** The programs of the command, and what each is asked here: a plan that must not be cut, alone and as a class of one. */
const programs = [['one-audit', 'thin.yaml'], ['bundle', 'class']] as const;

/** A copy of the built command that may be tampered with; runs it on a plan that must not be cut. */
function copyOfTheTool(asked = 'thin.yaml'): { readonly at: string; readonly audit: () => { readonly code: number | null; readonly err: string } } {
  const { path: at } = folder();
  mkdirSync(join(at, 'dist'));
  const parts = programs.flatMap(([name]) => [`${name}.cjs`, `${name}.code`]);
  for (const name of ['package.json', 'sightdown.js', 'prepared.json', ...parts]) copyFileSync(join(root, 'dist', name), join(at, 'dist', name));
  cpSync(join(root, 'rules'), join(at, 'rules'), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(at, 'node_modules'));
  writeFileSync(join(at, 'package.json'), '{ "type": "module" }');
  mkdirSync(join(at, 'class'));
  for (const name of ['thin.yaml', 'class/thin.yaml']) writeFileSync(join(at, name), stopPlan);
  return {
    at,
    audit: () => {
      const { status, stderr } = spawnSync(process.execPath, [join(at, 'dist', 'sightdown.js'), 'audit', asked, '--format', 'json', '--samples', '200'], { cwd: at, encoding: 'utf8' });
      return { code: status, err: withoutProgress(stderr) };
    },
  };
}

it.each(programs)('the code of %s, compiled at build time, is what this Node takes: the command starts without compiling', (name) => {
  const file = join(root, 'dist', `${name}.cjs`);
  // in a process of its own: code is taken only by a Node with the same settings, and the tests have their own
  const asked = `new (require('node:vm').Script)(require('node:fs').readFileSync(${JSON.stringify(file)}, 'latin1'), { filename: ${JSON.stringify(file)}, cachedData: require('node:fs').readFileSync(${JSON.stringify(join(root, 'dist', `${name}.code`))}) }).cachedDataRejected`;
  expect(spawnSync(process.execPath, ['-p', asked], { encoding: 'utf8' }).stdout).toBe('false\n');
});

describe('no prepared state can change a verdict', () => {
  it.each(programs)('%s as it was built: a stop, without a word', (_, asked) => {
    expect(copyOfTheTool(asked).audit()).toEqual({ code: 3, err: '' });
  });

  it('prepared.json with kinder limits, all else alike', () => {
    const { at, audit } = copyOfTheTool();
    const file = join(at, 'dist', 'prepared.json');
    const kinder = readFileSync(file, 'utf8').replaceAll('"otherwise":"stop"', '"otherwise":"caution"').replace(/"E_MPa":\d+/g, '"E_MPa":900000');
    expect(kinder).not.toBe(readFileSync(file, 'utf8'));
    writeFileSync(file, kinder);
    const { code, err } = audit();
    expect(code).toBe(3);
    expect(err).toContain('prepared.json is not as it was built');
  });

  it.each([
    ['shelf.yaml', 'strip-19x38', 'strip-19x39', 'strip-19x38'],
    ['baseline.yaml', 'ruleset: ', 'rules-of-mine: ', 'rules-of-mine'],
  ])('%s edited beside it: what it says now counts', (name, before, after, told) => {
    const { at, audit } = copyOfTheTool();
    const file = join(at, 'rules', name);
    const text = readFileSync(file, 'utf8');
    expect(text).toContain(before);
    writeFileSync(file, text.replaceAll(before, after));
    const { code, err } = audit();
    expect(code).toBe(1);
    expect(err).toContain(told);
  });

  it.each(sampleOf([['nothing in it', ''], ['no JSON', '{'], ['another JSON', '[]']] as const, 3))('prepared.json with %s', (_, text) => {
    const { at, audit } = copyOfTheTool();
    writeFileSync(join(at, 'dist', 'prepared.json'), text);
    expect(audit().code).toBe(3);
  });

  it.each(sampleOf([{ name: 'prepared.json', asked: 'thin.yaml' }, ...programs.map(([name, asked]) => ({ name: `${name}.code`, asked }))], 2))('$name missing: made anew in memory, with a word', ({ name, asked }) => {
    const { at, audit } = copyOfTheTool(asked);
    rmSync(join(at, 'dist', name));
    const { code, err } = audit();
    expect(code).toBe(3);
    expect(err).toContain(`${name} is not as it was built`);
  });

  it.each(programs)('%s.code with single bits turned over', (name, asked) => {
    const { at, audit } = copyOfTheTool(asked);
    const file = join(at, 'dist', `${name}.code`);
    const built = readFileSync(file);
    for (let n = 0; n < 4; n += everything ? 1 : 2) {
      const bent = Buffer.from(built);
      const place = Math.floor((built.length * (n + 0.5)) / 4);
      bent[place] = (bent[place] as number) ^ (1 << n);
      writeFileSync(file, bent);
      const { code, err } = audit();
      expect({ n, code, told: err.includes(`${name}.code is not as it was built`) }).toEqual({ n, code: 3, told: true });
    }
  });

  it.each(sampleOf(programs, 2))('%s.code compiled from another source of the same length', (name, asked) => {
    const { at, audit } = copyOfTheTool(asked);
    const source = readFileSync(join(at, 'dist', `${name}.cjs`), 'utf8');
    const kind = '(function () { process.exit(0); })';
    const script = new Script(`${kind}${' '.repeat(source.length - kind.length)}`);
    writeFileSync(join(at, 'dist', `${name}.code`), script.createCachedData());
    expect(audit().code).toBe(3);
  });
});

describe('preparing shipped files that are not sound', () => {
  it.each([
    ['class-advanced.yaml', 'at-most:', 'at-mist:', 'Did you mean `at-most`?'],
    ['shelf.yaml', 'density:', 'denzity:', 'Did you mean `density`?'],
  ])('%s: says what is wrong, as the command does, without a trace, and fails', (name, right, wrong, said) => {
    const { path: at } = folder();
    mkdirSync(join(at, 'dist'));
    writeFileSync(join(at, 'dist', 'package.json'), '{ "type": "module" }');
    cpSync(join(root, 'dist', 'tools'), join(at, 'dist', 'tools'), { recursive: true });
    cpSync(join(root, 'rules'), join(at, 'rules'), { recursive: true });
    writeFileSync(join(at, 'rules', name), readFileSync(join(at, 'rules', name), 'utf8').replace(right, wrong));
    const { status, stderr } = spawnSync(process.execPath, [join(at, 'dist', 'tools', 'prepare.js'), 'out'], { cwd: at, encoding: 'utf8' });
    expect(status).toBe(1);
    expect(stderr).toMatch(new RegExp(`^rules/${name}:\\d+:\\d+ error `));
    expect(stderr).toContain(said);
    expect(stderr).not.toMatch(/^ +at /m);
  });
});
