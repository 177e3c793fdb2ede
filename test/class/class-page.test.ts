import { describe, expect, it } from 'vitest';
import { composeClassPage } from '../../src/class/class-page.js';
import type { ClassFindings } from '../../src/class/class-findings.js';
import { rollUp } from '../../src/class/roll-up.js';
import type { ClassRow } from '../../src/class/class-row.js';
import { writeMarkdown } from '../../src/report/markdown.js';
import { trial } from '../report/applied.js';
import { row } from './rows.js';

function page(rows: readonly ClassRow[], more: Partial<ClassFindings> = {}): string {
  return writeMarkdown(composeClassPage({ rows, others: [], roll_up: rollUp(rows, 0), broken: [], pooled: null, pooled_rows: [], shares: [], rules: [], points: false, applied: trial, shelf_name: 'Shelf', measured: [], currency: 'EUR', seed: 1, samples: 20_000, ...more }).tree);
}

describe('the class page', () => {
  it('says in one sentence how the class stands', () => {
    const rows = [row('a', {}), row('b', { 'bars/x': 'caution' }), row('c', { 'bars/x': 'stop' }), row('d', { 'bars/y': 'unknown' })];
    expect(page(rows)).toContain('**4 plans: 1 clear, 1 to be cut with care, 1 not cleared because something is unknown, 1 not to be cut yet.**');
  });

  it('has a row for each plan with its worst finding, and how many more there are', () => {
    const text = page([row('first', { 'bars/x': 'stop', 'cloth/y': 'caution', 'warp/z': 'caution' }), row('second', {})]);
    expect(text).toMatch(/\| \*\*1\.\*\* \[first\]\(first\/report\.md\) \| \*\*✕ Stop\*\* \| bars\/x in first\. And 2 more\. \|/);
    expect(text).toMatch(/\| \*\*1\.\*\* \[second\]\(second\/report\.md\) \| \*\*● Clear\*\* \| Nothing: every check that applies is met\. \|/);
  });

  it('tells what most got wrong, most frequent first, with what to do; what concerns one plan alone is left to its page', () => {
    const text = page([row('a', { 'bars/rare': 'stop', 'cloth/often': 'caution' }), row('b', { 'cloth/often': 'caution', 'warp/twice': 'caution' }), row('c', { 'cloth/often': 'stop', 'warp/twice': 'caution' })]);
    const often = text.indexOf('**3 of 3** (1 stop, 2 caution): Title of cloth/often (cloth/often). In “c”: cloth/often in c. Mend cloth/often.');
    const twice = text.indexOf('**2 of 3** (2 caution): Title of warp/twice');
    expect(often).toBeGreaterThan(0);
    expect(twice).toBeGreaterThan(often);
    expect(text).not.toContain('**1 of 3**');
    expect(text).toContain('One more finding concerns a single plan each');
  });

  it('lists broken plans with place, what was found, what is allowed and what to do', () => {
    const text = page([row('a', {})], { broken: [{ code: 'x', severity: 'error', file: 'plans/b.yaml', path: 'face.width', line: 3, column: 16, found: '-500 mm', allowed: 'from 50 mm to 20 m', hint: 'Check the number.' }] });
    expect(text).toContain('plans/b.yaml:3:16, face.width: found -500 mm; allowed: from 50 mm to 20 m. Check the number.');
  });

  it('what people wrote cannot become links, images, tables or HTML', () => {
    const nasty = '| ![x](http://evil) <script>alert(1)</script> [l](j)';
    const text = page([{ ...row('a', { 'bars/x': 'stop' }), name: nasty, file: nasty }]);
    expect(text).not.toMatch(/(?<!\\)!\[x|(?<!\\)<script|(?<!\\)\[l\]\(/);
    expect(text.split('\n').filter((line) => line.startsWith('| ') && line.includes('evil'))).toHaveLength(1);
  });

  it('says which numbers the studio measured itself', () => {
    expect(page([row('a', {})], { measured: ['lumber.strip-19x38.E', 'lumber.strip-19x38.spread', 'joints.give', 'lumber.oak-1.5in.E', 'proposals.blank-trim'] })).toContain('Measured by the studio itself: strip-19x38 (E, spread); joints (give); oak-1.5in (E); blank-trim.');
    expect(page([row('a', {})])).not.toContain('Measured by the studio');
  });

  it('without a plan that may be cut there is nothing to buy', () => {
    expect(page([row('a', { 'bars/x': 'stop' })])).toContain('No plan is cleared for cutting yet, so there is nothing to buy.');
  });
});
