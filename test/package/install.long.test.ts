import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { packageFolder } from '../../src/cli/files.js';
import { plan, stopPlan } from '../cli/command.js';

/** Packs the project, installs it as a stranger would, and audits from an empty folder. Needs the registry for its dependencies. */
it('a global install of the packed tool gives the same verdicts', () => {
  const at = mkdtempSync(join(tmpdir(), 'sightdown-install-'));
  const run = (command: string, ...args: readonly string[]) => spawnSync(command, args, { cwd: at, encoding: 'utf8' });
  try {
    spawnSync('npm', ['pack', '--ignore-scripts', '--pack-destination', at], { cwd: packageFolder, encoding: 'utf8' });
    const tarball = readdirSync(at).find((name) => name.endsWith('.tgz')) as string;
    const installed = run('npm', 'install', '-g', '--prefix', join(at, 'there'), join(at, tarball));
    expect(installed.status, installed.stderr).toBe(0);
    writeFileSync(join(at, 'thin.yaml'), stopPlan);
    const audited = run(join(at, 'there', 'bin', 'sightdown'), 'audit', 'thin.yaml', '--out', 'r');
    expect({ code: audited.status, err: audited.stderr }).toEqual({ code: 3, err: '' });
    writeFileSync(join(at, 'small.yaml'), plan('Small'));
    expect(run(join(at, 'there', 'bin', 'sightdown'), 'cut', 'small.yaml', '--out', 'c').status).toBe(0);
  } finally {
    rmSync(at, { recursive: true, force: true });
  }
});
