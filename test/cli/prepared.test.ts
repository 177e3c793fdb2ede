import { spawnSync } from 'node:child_process';
import { copyFileSync, cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Script } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { everything } from '../effort.js';
import { folder, root, stopPlan } from './command.js';

/** A copy of the built command that may be tampered with; runs it on a plan that must not be cut. */
function copyOfTheTool(): { readonly at: string; readonly audit: () => { readonly code: number | null; readonly err: string } } {
  const { path: at } = folder();
  mkdirSync(join(at, 'dist'));
  for (const name of ['package.json', 'sightdown.js', 'bundle.cjs', 'bundle.code', 'prepared.json']) copyFileSync(join(root, 'dist', name), join(at, 'dist', name));
  cpSync(join(root, 'rules'), join(at, 'rules'), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(at, 'node_modules'));
  writeFileSync(join(at, 'package.json'), '{ "type": "module" }');
  writeFileSync(join(at, 'thin.yaml'), stopPlan);
  return {
    at,
    audit: () => {
      const { status, stderr } = spawnSync(process.execPath, [join(at, 'dist', 'sightdown.js'), 'audit', 'thin.yaml', '--format', 'json', '--samples', '200'], { cwd: at, encoding: 'utf8' });
      return { code: status, err: stderr };
    },
  };
}

it('the code compiled at build time is what this Node takes: the command starts without compiling', () => {
  const file = join(root, 'dist', 'bundle.cjs');
  expect(new Script(readFileSync(file, 'latin1'), { filename: file, cachedData: readFileSync(join(root, 'dist', 'bundle.code')) }).cachedDataRejected).toBe(false);
});

describe('no prepared state can change a verdict', () => {
  it('as it was built: a stop, without a word', () => {
    expect(copyOfTheTool().audit()).toEqual({ code: 3, err: '' });
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

  it.each([['nothing in it', ''], ['no JSON', '{'], ['another JSON', '[]']])('prepared.json with %s', (_, text) => {
    const { at, audit } = copyOfTheTool();
    writeFileSync(join(at, 'dist', 'prepared.json'), text);
    expect(audit().code).toBe(3);
  });

  it.each(['prepared.json', 'bundle.code'])('%s missing: made anew in memory, with a word', (name) => {
    const { at, audit } = copyOfTheTool();
    rmSync(join(at, 'dist', name));
    const { code, err } = audit();
    expect(code).toBe(3);
    expect(err).toContain(`${name} is not as it was built`);
  });

  it('bundle.code with single bits turned over', () => {
    const { at, audit } = copyOfTheTool();
    const built = readFileSync(join(at, 'dist', 'bundle.code'));
    for (let n = 0; n < 4; n += everything ? 1 : 2) {
      const bent = Buffer.from(built);
      const place = Math.floor((built.length * (n + 0.5)) / 4);
      bent[place] = (bent[place] as number) ^ (1 << n);
      writeFileSync(join(at, 'dist', 'bundle.code'), bent);
      const { code, err } = audit();
      expect({ n, code, told: err.includes('bundle.code is not as it was built') }).toEqual({ n, code: 3, told: true });
    }
  });

  it('bundle.code compiled from another source of the same length', () => {
    const { at, audit } = copyOfTheTool();
    const source = readFileSync(join(at, 'dist', 'bundle.cjs'), 'utf8');
    const kind = '(function () { process.exit(0); })';
    const script = new Script(`${kind}${' '.repeat(source.length - kind.length)}`);
    writeFileSync(join(at, 'dist', 'bundle.code'), script.createCachedData());
    expect(audit().code).toBe(3);
  });
});
