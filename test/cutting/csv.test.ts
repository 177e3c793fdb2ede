import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutListCsv, toCsv } from '../../src/cutting/csv.js';
import { readCsv } from './read-csv.js';
import { cutPlan } from '../../src/cutting/cut-plan.js';
import { demoShelf, studioPlan } from './studio.js';

describe('CSV', () => {
  it('comes back cell by cell, whatever is in the text, formulas disarmed', () => {
    const text = fc.oneof(fc.string(), fc.constantFrom('=1+1', '+4', '-2', '@SUM(A1)', '\t=1', '\r=1', ' =1', 'a,b', 'say "no"', 'two\r\nlines', '＝1'));
    fc.assert(fc.property(fc.array(fc.array(text, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 }), (rows) => {
      const back = readCsv(toCsv(rows));
      expect(back).toHaveLength(rows.length);
      rows.forEach((row, r) => row.forEach((cell, c) => {
        const got = back[r]?.[c];
        expect(got === cell || got === `'${cell}`).toBe(true);
        expect(/^[=+\-@\t\r]/.test(got ?? '')).toBe(false);
      }));
    }), { numRuns: 300 });
  });

  it('writes numbers as numbers', () => {
    expect(toCsv([['length', 12.5], ['none', Number.NaN]])).toBe('length,12.5\r\nnone,\r\n');
  });

  it('lists every piece with its board and lengths', () => {
    const cut = cutPlan([studioPlan({ name: '=HYPERLINK("x"), "low water"' })], demoShelf);
    const rows = readCsv(cutListCsv(cut));
    const column = (name: string): number => (rows[0] ?? []).indexOf(name);
    expect(rows).toHaveLength(5);
    expect(rows.slice(1).map((row) => row[column('piece')]).sort()).toEqual(['B', 'L', 'R', 'T']);
    expect(rows.slice(1).every((row) => row[column('plan')] === '\'=HYPERLINK("x"), "low water"')).toBe(true);
    const top = rows.find((row) => row[column('piece')] === 'T');
    // Boards are counted from one, and each piece starts where its board says.
    const places = cut.stocks[0]!.boards.flatMap(({ pieces }, i) => pieces.map(({ tag, from_mm }) => [tag, String(i + 1), String(Math.round(from_mm * 1000) / 1000)]));
    expect(rows.slice(1).map((row) => [row[column('piece')], row[1], row[column('starts at mm')]])).toEqual(places);
    expect([top?.[column('cut length')], top?.[column('cut length mm')], top?.[column('short point mm')], top?.[column('ends')]]).toEqual(['900 mm', '900', '824', 'mitre']);
  });
});
