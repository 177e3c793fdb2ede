import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'yaml';
import { trueMinus } from '../../src/base/units-format.js';
import type { Recorded } from '../validation/recorded.js';
import { deviationsPicture } from './validation-picture.js';

/** One row of the page: the worst of what one test compares. */
export interface Row extends Recorded {
  readonly values: number;
}

/** Runs the validation tests, which note every comparison with something outside the project, and writes what they found as `reports/validation/`. */
export function writeValidationPage(root: string): void {
  const records = recorded(root);
  const folder = join(root, 'reports', 'validation');
  mkdirSync(folder, { recursive: true });
  const files = [...new Set(records.map(({ file }) => file))].sort();
  writeFileSync(join(folder, 'deviations.svg'), deviationsPicture(files.map((file) => ({ name: file.replace('.test.ts', ''), records: records.filter((r) => r.file === file) }))));
  writeFileSync(join(folder, 'README.md'), page(root, records, files));
  process.stdout.write('made reports/validation\n');
}

function recorded(root: string): readonly Recorded[] {
  const folder = mkdtempSync(join(tmpdir(), 'validation-'));
  const file = join(folder, 'records.jsonl');
  try {
    execFileSync(process.execPath, [join(root, 'node_modules', 'vitest', 'vitest.mjs'), 'run', '--config', 'test/vitest.config.ts', 'test/validation'], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, VALIDATION_RECORD: file } });
    const lines = readFileSync(file, 'utf8').trimEnd().split('\n').map((line) => standing(root, JSON.parse(line) as Recorded));
    const order = (r: Recorded): string => `${r.file} ${r.test}`;
    return lines.map((line, i) => ({ line, i })).sort((p, q) => (order(p.line) < order(q.line) ? -1 : order(p.line) > order(q.line) ? 1 : p.i - q.i)).map(({ line }) => line);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A file whose rows were computed says so at its head. */
const standing = (root: string, record: Recorded): Recorded => (record.standing === 'published' && /computed rows/u.test(opening(root, record.file)) ? { ...record, standing: 'derived' } : record);

/** How much of its tolerance a comparison uses; verdicts use none. */
export const used = ({ deviation, tolerance }: Recorded): number => (tolerance > 0 ? Math.abs(deviation) / tolerance : 0);

function rowsOf(records: readonly Recorded[]): readonly Row[] {
  const byTest = new Map<string, Recorded[]>();
  for (const record of records) byTest.set(record.test, [...(byTest.get(record.test) ?? []), record]);
  return [...byTest.values()].map((list) => ({ ...list.reduce((a, b) => (used(b) > used(a) ? b : a)), values: list.length }));
}

const digits = (value: number): string => (value === 0 ? '0' : trueMinus(Number(value.toPrecision(4)).toString()));
const shown = (value: number | string): string => (typeof value === 'number' ? digits(value) : value);
const share = (value: number): string => (value !== 0 && Math.abs(value) < 1e-6 ? 'under 0.0001 %' : `${trueMinus(String(Number((100 * value).toPrecision(2))))} %`);
const cell = (text: string): string => text.replace(/[|<>*_`\\]/gu, (mark) => `\\${mark}`);

function tableRow(row: Row): string {
  const verdict = typeof row.theirs === 'string' && row.standing === 'practice';
  const amount = (value: number): string => (verdict ? '' : row.absolute ? digits(Math.abs(value) < 1e-9 ? 0 : value) : share(value));
  const what = `${row.test.replace(/^.* > /u, '')}${row.values > 1 ? ` (worst of ${row.values})` : ''}`;
  return `| ${cell(what)} | ${row.standing} | ${cell(shown(row.theirs))} | ${cell(shown(row.ours))} | ${amount(row.deviation)} | ${amount(row.tolerance)} |`;
}

/** The reference a test file opens with, as one paragraph. */
function opening(root: string, file: string): string {
  const text = readFileSync(join(root, 'test', 'validation', file), 'utf8');
  const comment = /\/\*\*([\s\S]*?)\*\//u.exec(text)?.[1] ?? '';
  return comment.split('\n').map((line) => line.replace(/^\s*\*? ?/u, '').trim()).filter((line) => line !== '').join(' ').replace(/[<>|]/gu, (mark) => `\\${mark}`);
}

/** How many numbers of the shipped shelf stand on what. */
function standings(root: string): readonly string[] {
  const read = (file: string): unknown => parse(readFileSync(join(root, 'rules', file), 'utf8'));
  const { list } = read('sources.yaml') as { list: readonly { key: string; status: string }[] };
  const prepared = read('baseline.yaml') as { limits: Readonly<Record<string, { source: string }>> };
  const status = new Map(list.map((entry) => [entry.key, entry.status]));
  const count = new Map<string, number>();
  for (const { source } of Object.values(prepared.limits)) count.set(status.get(source) ?? source, (count.get(status.get(source) ?? source) ?? 0) + 1);
  return [...count].sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, n]) => `${n} ${name}`);
}

function page(root: string, records: readonly Recorded[], files: readonly string[]): string {
  const numbers = records.filter(({ standing }) => standing !== 'practice');
  const over = numbers.filter((record) => used(record) > 1).length;
  const lines = [
    '# What the tool was checked against',
    '',
    'Made by the tests of `test/validation/`, which note every comparison they make (`npm run examples`); CI makes it anew and compares. Nothing here is typed in by hand but the last section.',
    '',
    `${numbers.length} numbers in ${files.length} files; ${over === 0 ? 'every one lies within its tolerance' : `${over} lie outside their tolerance`}. ${records.length - numbers.length} plans have the verdict that practice gives them.`,
    '',
    '![Every deviation as a share of its tolerance, a row for each file](deviations.svg)',
    '',
    'Where a number comes from: **published**: read in a public text. **memory**: recalled by whoever wrote it down; check it against the book. **derived**: a closed form or a sum from stated inputs. **independent program**: another program, written by others or in another way, solved the same case. **practice**: what people who build frames do; no source.',
    '',
  ];
  for (const file of files) {
    const rows = rowsOf(records.filter((record) => record.file === file));
    lines.push(`## ${file.replace('.test.ts', '')}`, '', opening(root, file), '', '| what | standing | theirs | ours | deviation | tolerance |', '| - | - | - | - | - | - |', ...rows.map(tableRow), '');
  }
  return `${[...lines, ...unmeasured(root)].join('\n')}\n`;
}

/** What no check stands behind, said plainly. */
function unmeasured(root: string): readonly string[] {
  return [
    '## What nobody has measured',
    '',
    'The sums above are right for what goes into them. What goes into them is, in part, nobody’s measurement:',
    '',
    '- **No finished frame has been measured against the tool.** The critical pull, the lift past it and the chance of a lifted corner are checked against other programs and closed forms, never against wood, but for one published repair report that says which of two frames twisted.',
    '- **How much corners give** is the largest lever on the reserve. The shelf’s numbers (a glued and nailed mitre 4 bar-widths, a keyed corner 100, 8 and 8 …) are proposals. The soft-joint answer shows how much hangs on them.',
    '- **How crooked boards are** (twist, bow, crook by way of choosing) are proposals beside a few published anchors for studs, not for strips from a shop.',
    '- **How hard people pull cloth** (200 N/m working, 400 peak, 1000 by accident) has no published table; nor has the firm brush (2.5 N on 30 mm).',
    '- **What a glued corner bears** (2 MPa; half-laps 2.5) is a proposal below what laboratories break; the plywood’s shear under a glued gusset, the shoulder and tongue of a keyed corner are proposals too.',
    '- **Creep, drying and the seasons** use factors of timber building, not of thin strips under cloth; the diffusion number may be off threefold.',
    '- **The limits** from which a caution or a stop follows are choices: of those of the baseline, by source, ' + standings(root).join(', ') + '.',
    '',
    'Bench sheets of finished frames would mend most of this: write down what you measure.',
  ];
}
