import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rollUp } from '../../src/class/roll-up.js';
import { row } from './rows.js';

const anyRow = fc.record({ name: fc.string({ minLength: 1, maxLength: 6 }), found: fc.dictionary(fc.constantFrom('bars/a', 'bars/b', 'cloth/c', 'warp/d'), fc.constantFrom('caution' as const, 'unknown' as const, 'stop' as const)), cost: fc.option(fc.double({ min: 0, max: 100, noNaN: true })) }).map(({ name, found, cost }) => row(name, found, cost));
const anyClass = fc.array(anyRow, { maxLength: 12 });

describe('adding up a class', () => {
  it('counts every plan once and every finding once', () => {
    fc.assert(fc.property(anyClass, (rows) => {
      const { plans, verdicts, common } = rollUp(rows, 0);
      expect(plans).toBe(rows.length);
      expect(verdicts.clear + verdicts.caution + verdicts.unknown + verdicts.stop).toBe(rows.length);
      expect(common.reduce((sum, one) => sum + one.plans, 0)).toBe(rows.reduce((sum, { findings }) => sum + findings.length, 0));
      for (const one of common) {
        expect(one.stops + one.unknowns + one.cautions).toBe(one.plans);
        expect(one.rows).toEqual(rows.flatMap(({ findings }, i) => (findings.some(({ rule }) => rule === one.rule) ? [i] : [])));
      }
    }));
  });

  it('says the most frequent first, and shows the gravest case of each', () => {
    fc.assert(fc.property(anyClass, (rows) => {
      const { common } = rollUp(rows, 0);
      common.forEach((one, i) => {
        const next = common[i + 1];
        if (next !== undefined) expect(one.plans > next.plans || (one.plans === next.plans && one.stops >= next.stops)).toBe(true);
        if (one.stops > 0) expect(one.example.verdict).toBe('stop');
        expect(rows[one.example_row]?.findings).toContainEqual(one.example);
      });
    }));
  });

  it('does not depend on the order of the plans', () => {
    fc.assert(fc.property(anyClass, (rows) => {
      const counts = (list: typeof rows) => rollUp(list, 0).common.map(({ rule, plans, stops, unknowns, cautions }) => ({ rule, plans, stops, unknowns, cautions }));
      expect(counts([...rows].reverse())).toEqual(counts(rows));
    }));
  });

  it('costs are added where they are known; none known is no cost, not zero', () => {
    expect(rollUp([row('a', {}, 3), row('b', {}, null), row('c', {}, 4.5)], 0).cost_alone).toBe(7.5);
    expect(rollUp([row('b', {}, null)], 0).cost_alone).toBeNull();
    expect(rollUp([], 3)).toMatchObject({ plans: 0, broken: 3, cost_alone: null });
  });
});
