import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deserialize, serialize } from 'node:v8';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { composeClassPack, composePackInParts } from '../../src/class/class-pack.js';
import type { ClassFindings } from '../../src/class/class-findings.js';
import { concludeClass } from '../../src/class/conclude.js';
import { classPieces, entriesOf, type FileDone } from '../../src/cli/class-work.js';
import { unpacked, type KeptSheet } from '../../src/cli/kept-sheet.js';
import { loadRules, loadShelf } from '../../src/cli/load.js';
import type { AuditOptions } from '../../src/cli/option-types.js';
import { htmlByParts } from '../../src/report/html-by-parts.js';
import { writeHtml } from '../../src/report/html.js';
import { appliedOf } from '../../src/rules/say/applied.js';
import { folder } from '../cli/command.js';

const must = <T>(read: { readonly ok: true; readonly value: T } | { readonly ok: false }): T => {
  if (!read.ok) throw new Error('not read');
  return read.value;
};
const plans = fileURLToPath(new URL('room/plans', import.meta.url));
const here = folder();
const [shelf, baseline] = [must(loadShelf(undefined)), must(loadRules(undefined))];
const bench = { shelf, ruleset: baseline, baseline, seed: 1, samples: 500 };
const options: AuditOptions = { format: 'md', names: 'shown', strict: false, overwrite: false, seed: 1, samples: 500, out: join(here.path, 'r') };
const files = readdirSync(plans).slice(0, 8).map((name) => ({ file: join(plans, name), not: null }));
const done: FileDone[] = [];

beforeAll(async () => {
  const piece = classPieces({ work: 'class', entries: entriesOf(files, options), bench, options });
  for (const i of files.keys()) done.push(await piece(i, () => undefined));
});
afterAll(() => done.splice(0));

/** Objects that can be reached from one, itself with it; text and numbers are none. */
function objectsIn(root: unknown): number {
  const seen = new Set<object>();
  const open: unknown[] = [root];
  for (let one = open.pop(); one !== undefined || open.length > 0; one = open.pop()) {
    if (typeof one === 'function') throw new Error('a function may keep anything');
    if (typeof one !== 'object' || one === null || seen.has(one)) continue;
    seen.add(one);
    if (one instanceof Uint8Array) continue;
    if (one instanceof Map) open.push(...one.keys(), ...one.values());
    else open.push(...(Object.values(one) as unknown[]));
  }
  return seen.size;
}

describe('what is kept of a plan of a class once it is judged', () => {
  it('is small: no model, no audit and no tree of a page, so that thousands of plans take little', () => {
    for (const one of done) {
      expect(one.row).not.toBeNull();
      // A row with a mark for each rule, a plan, a sheet put away: measured 8 to 11 kB, of which the marks take 4.
      expect(serialize(one).length).toBeLessThan(14_000);
      expect(objectsIn(one)).toBeLessThan(250);
      expect(one.sheet!.packed.length).toBeLessThan(3000);
      // What lies behind it in memory is no longer than itself.
      expect(one.sheet!.packed.buffer.byteLength).toBe(one.sheet!.packed.length);
    }
  });

  it('is data alone, the same when it comes from another thread', () => {
    for (const one of done) expect(deserialize(serialize(one))).toEqual(one);
  });
});

describe('the pack of a class written part by part', () => {
  const sheets = (): KeptSheet[] => done.map(({ sheet }, row) => ({ ...sheet!, row }));
  const found = (): ClassFindings => {
    const pool = done.flatMap(({ plan }, row) => (plan === null ? [] : [{ row, plan }]));
    return concludeClass({ rows: done.map(({ row }) => row!), others: [], pool, told: [] }, { ...bench, applied: appliedOf(baseline, baseline) });
  };
  const title = { title: 'Class pack', lang: 'en', layout: 'pack' } as const;

  it('is letter for letter that which is written at once, and no two sheets are out at the same time', () => {
    const whole = composeClassPack(found(), [...unpacked(sheets())]);
    let [out, most] = [0, 0];
    const one = function* () {
      for (const sheet of unpacked(sheets())) {
        most = Math.max(most, ++out);
        yield sheet;
        out--;
      }
    };
    const { parts, pictures } = composePackInParts(found(), one);
    const pieces = [...htmlByParts(() => parts(one()), pictures, title)];
    expect(pieces.length).toBeGreaterThan(done.length + 2);
    expect(pieces.join('')).toBe(writeHtml(whole.tree, whole.pictures, title));
    expect(pieces.join('')).toContain('Chalk on it');
    expect(most).toBe(1);
  });
});
