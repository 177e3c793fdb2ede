import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Row } from './bench-page.js';

/** Two sizes of a class: what a plan more takes is told by their difference, whatever starting takes. */
const sizes = [60, 300] as const;

/** Four ways to build, in sizes of which hardly two are alike, as the plans of a class are. */
const builds = [
  'bars: { stock: strip-19x38, lay: edge, plies: 2, bond: glue+screws, pairing: opposed }\ncrossbars: [ { runs: upright, at: 1/2, stock: strip-19x38, lay: flat, setback: 18 mm } ]',
  'bars: { stock: stud-38x64, lay: edge }\ncorners: { cut: mitre, glue: pva, brace: { kind: timber, leg: 160 mm, stock: strip-19x38, lay: flat } }',
  'bars: { stock: board-19x64, lay: edge }\nhang: { by: two-hooks }',
  'bars: { stock: square-38x38, lay: flat }\ncorners: { cut: half-lap, glue: pva }',
];

/** Plan `i` of the class. */
export const classPlan = (i: number): string =>
  `plan: 1\nname: Bench ${i}\nface: { width: ${450 + 5 * ((i * 37) % 171)} mm, height: ${400 + 5 * ((i * 53) % 97)} mm }\n${builds[i % builds.length]}\nlumber: { chosen: picked, moisture: 9.5 % }\n`;

/** A class with a page for each plan, by one core: processor time of a plan more, in audits of a plan when all is warm, and the memory that a plan more takes at the peak. */
export function classRow(command: string, warmAudit_ms: number): Row {
  const [few, many] = sizes.map((plans) => runOf(command, plans)) as [Run, Run];
  const more = sizes[1] - sizes[0];
  const each_ms = (many.ms - few.ms) / more;
  const each_kB = (many.most_kB - few.most_kB) / more;
  const ratio = each_ms / warmAudit_ms;
  return {
    what: `A class with its pages on one core, each plan more (${sizes.join(' and ')} plans compared)`,
    measured: `${ratio.toFixed(1)} × a warm audit (${each_ms.toFixed(0)} ms over ${warmAudit_ms.toFixed(1)} ms), ${each_kB.toFixed(0)} kB; ${(many.most_kB / 1024).toFixed(0)} MB at most`,
    budget: '≤ 8 ×, ≤ 250 kB',
  };
}

interface Run {
  /** Of the processor. */
  readonly ms: number;
  readonly most_kB: number;
}

function runOf(command: string, plans: number): Run {
  const folder = mkdtempSync(join(tmpdir(), 'sightdown-class-'));
  const [hook, told, files] = [join(folder, 'hook.cjs'), join(folder, 'told'), join(folder, 'plans')];
  mkdirSync(files);
  for (let i = 0; i < plans; i++) writeFileSync(join(files, `p${i}.yaml`), classPlan(i));
  writeFileSync(hook, `process.on('exit', () => require('node:fs').writeFileSync(${JSON.stringify(told)}, JSON.stringify(process.resourceUsage())));`);
  const { status } = spawnSync(process.execPath, ['-r', hook, command, 'audit', files, '--jobs', '1', '--out', join(folder, 'out')], { stdio: 'ignore' });
  if (status !== 0 && status !== 2 && status !== 3) throw new Error(`the class ended with ${status}`);
  const { userCPUTime, systemCPUTime, maxRSS } = JSON.parse(readFileSync(told, 'utf8')) as NodeJS.ResourceUsage;
  rmSync(folder, { recursive: true });
  return { ms: (userCPUTime + systemCPUTime) / 1000, most_kB: maxRSS };
}
