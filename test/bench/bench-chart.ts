import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Row } from './bench-page.js';

/** The wall chart of the default shelf: seconds by the clock, and the most memory that its process held. */
export function chartRow(command: string): Row {
  const folder = mkdtempSync(join(tmpdir(), 'sightdown-chart-'));
  const [hook, told] = [join(folder, 'hook.cjs'), join(folder, 'told')];
  writeFileSync(hook, `process.on('exit', () => require('node:fs').writeFileSync(${JSON.stringify(told)}, String(process.resourceUsage().maxRSS)));`);
  const start = performance.now();
  const { status } = spawnSync(process.execPath, ['-r', hook, command, 'chart', '--out', join(folder, 'wall')], { stdio: 'ignore' });
  if (status !== 0) throw new Error(`chart ended with ${status}`);
  const seconds = (performance.now() - start) / 1000;
  const most_MB = Number(readFileSync(told, 'utf8')) / 1024;
  rmSync(folder, { recursive: true });
  return { what: 'Wall chart of the default shelf', measured: `${seconds.toFixed(0)} s, ${most_MB.toFixed(0)} MB`, budget: '≤ 60 s, ≤ 300 MB' };
}
