/**
 * Common practice of people who build painting frames (no published source), and one published repair report (a restorer's web page, in French:
 * a 1.6 × 1.2 m frame of 50 mm bars with one crossbar twisted; of 65 mm bars with two it stayed flat): verdicts that any sound tool must reach.
 * Baseline ruleset and default shelf. The project's own plans are always run; the fuller list beside the project is run where it is present.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse, stringify } from 'yaml';
import { describe, expect, test } from 'vitest';
import { auditText } from '../../src/audit.js';
import { packageFolder } from '../../src/cli/files.js';
import { loadRules, loadShelf } from '../../src/cli/load.js';
import type { Audit } from '../../src/report/audit-view.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import type { Shelf } from '../../src/shelf/shelf.js';
import { note } from './recorded.js';

interface Expected {
  readonly expect: 'stop' | 'no-stop' | 'not-clear';
  readonly because?: string;
}

const base = must(loadShelf(undefined));
const ruleset = must(loadRules(undefined));
const folder = join(packageFolder, 'test', 'plans', 'practice');
const keyed = must(readShelf(readFileSync(join(folder, 'keyed-bars.shelf.yaml'), 'utf8'), 'keyed-bars.shelf.yaml', base));
const slim = must(readShelf(readFileSync(join(folder, 'slim-bars.shelf.yaml'), 'utf8'), 'slim-bars.shelf.yaml', base));

const own: Readonly<Record<string, Expected>> = {
  'small-thin-strip': { expect: 'no-stop' },
  'metre-square-single-strip': { expect: 'stop', because: 'frame.twist_reserve' },
  'metre-square-glued-pair-braced': { expect: 'no-stop' },
  'metre-square-solid-38-braced': { expect: 'no-stop' },
  'large-pair-unbraced': { expect: 'stop', because: 'frame.twist_reserve' },
  'large-38x89-on-edge': { expect: 'no-stop' },
  'large-38x89-flat': { expect: 'no-stop' },
  'very-large-single-38x89': { expect: 'stop', because: 'frame.twist_reserve' },
  'very-large-doubled-38x89': { expect: 'no-stop' },
  'published-failure': { expect: 'stop', because: 'frame.twist_reserve' },
  'published-cure': { expect: 'no-stop' },
  'wet-boards': { expect: 'not-clear', because: 'lumber.moisture_gap_pct' },
  'screw-through-the-face': { expect: 'stop', because: 'fastening.exit_mm' },
  'pilot-wider-than-root': { expect: 'stop', because: 'fastening.pilot_mm' },
  'cloth-narrower-than-needed': { expect: 'stop', because: 'cloth.roll_short_mm' },
  'oblong-single-strip-no-crossbar': { expect: 'no-stop' },
  'oblong-on-edge-with-crossbar-picked': { expect: 'no-stop' },
  'large-square-stock-cross-plain': { expect: 'no-stop' },
  'large-stud-on-edge-cross-plain': { expect: 'no-stop' },
  'half-lap-names-no-nail': { expect: 'no-stop' },
  'keyed-small': { expect: 'no-stop' },
  'keyed-oblong-with-crossbar': { expect: 'no-stop' },
  'keyed-too-large': { expect: 'stop', because: 'frame.twist_reserve' },
  'bows-in-an-inch': { expect: 'stop', because: 'bar.inward_bow_long_term_mm' },
};

/** Facts that must rank between two of the plans: `less` below `more`, each by its largest value. */
const order: readonly { readonly fact: string; readonly less: string; readonly more: string }[] = [
  { fact: 'warp.corner_lift_sd_mm', less: 'metre-square-glued-pair-braced', more: 'metre-square-solid-38-braced' },
  { fact: 'bar.natural_bow_p90_mm', less: 'large-38x89-on-edge', more: 'large-38x89-flat' },
  { fact: 'frame.twist_reserve', less: 'metre-square-single-strip', more: 'metre-square-glued-pair-braced' },
];

describe('the project’s own plans', async () => {
  const audits = new Map<string, Audit>();
  for (const id of Object.keys(own)) audits.set(id, await judge(readFileSync(join(folder, `${id}.yaml`), 'utf8'), id, id.startsWith('published') ? slim : id.startsWith('keyed') ? keyed : base));
  test.each(Object.entries(own))('%s', (id, expected) => {
    const audit = audits.get(id) as Audit;
    note({ theirs: expected.expect, ours: audit.verdict, deviation: 0, tolerance: 0, absolute: true, standing: 'practice' });
    meets(audit, expected);
  });
  test.each(order)('$fact: $less below $more', ({ fact, less, more }) => expect(largest(audits.get(less), fact)).toBeLessThan(largest(audits.get(more), fact)));
});

const fuller = join(packageFolder, '..', 'shared', 'cases', 'practice.yaml');
describe.skipIf(!existsSync(fuller))('the fuller list', async () => {
  const list = existsSync(fuller) ? (parse(readFileSync(fuller, 'utf8')) as { cases: (Expected & { id: string; plan: object; shelf?: object })[]; order: typeof order }) : { cases: [], order: [] };
  const audits = new Map<string, Audit>();
  for (const { id, plan, shelf } of list.cases) {
    const on = shelf === undefined ? base : must(readShelf(stringify({ shelf: 1, ...shelf }), 'shelf.yaml', base));
    audits.set(id, await judge(stringify(plan), id, on));
  }
  test.each(list.cases)('$id', ({ id, ...expected }) => meets(audits.get(id) as Audit, expected));
  test.each([...list.order])('$fact: $less below $more', ({ fact, less, more }) => expect(largest(audits.get(less), fact)).toBeLessThan(largest(audits.get(more), fact)));
});

async function judge(text: string, file: string, shelf: Shelf): Promise<Audit> {
  return must(await auditText(text, file, { shelf, ruleset, seed: 1, samples: 20_000 }));
}

function meets({ findings, verdict }: Audit, { expect: wanted, because }: Expected): void {
  const blamed = findings.filter((finding) => finding.fact === because).map((finding) => finding.verdict);
  if (wanted === 'no-stop') expect(findings.filter((finding) => finding.verdict === 'stop')).toEqual([]);
  else if (wanted === 'stop') {
    expect(verdict).toBe('stop');
    expect(blamed).toContain('stop');
  } else expect(blamed.some((one) => one === 'caution' || one === 'stop')).toBe(true);
}

function largest(audit: Audit | undefined, path: string): number {
  const values = (audit?.facts ?? []).filter((fact) => fact.path === path).map(({ value }) => value);
  if (values.length === 0 || values.some((value) => typeof value !== 'number')) throw new Error(`${path} is not known`);
  return Math.max(...(values as number[]));
}

function must<T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
