import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/findings/finding.js';
import { ruleAndSubject, ruleInWords, valueAndLimit } from '../../../src/report/words/check-line.js';

const finding = (part: Partial<Finding>): Finding => ({ rule: 'bars/roll', about: 'top', verdict: 'clear', fact: 'bar.roll_mrad', actual: null, limit: null, unit: 'mm', used: null, say: '', do: [], cautions: [], source: 'practice', ...part });

describe('a clear check in short', () => {
  it.each<[string, Partial<Finding>, string, string]>([
    ['at most', { actual: 1.5, limit: 6, used: 0.25 }, '1.5 mm, at most 6 mm', '1/16 in, at most 15/64 in'],
    ['at most, by size: the sign is the way it goes', { actual: -1.5, limit: 6, used: 0.25 }, '1.5 mm, at most 6 mm', '1/16 in, at most 15/64 in'],
    ['at least', { actual: 8, limit: 2, used: 0.25 }, '8 mm, at least 2 mm', '5/16 in, at least 5/64 in'],
    ['far more than the least', { actual: 1000, limit: 3, used: 0.003 }, 'plenty, at least 3 mm', 'plenty, at least 1/8 in'],
    ['nothing at all', { actual: 0, limit: 6, used: 0 }, 'none, at most 6 mm', 'none, at most 15/64 in'],
    ['just met, either way', { actual: 6, limit: 6, used: 1 }, '6 mm, limit 6 mm', '15/64 in, limit 15/64 in'],
    ['a limit of nothing', { actual: -210, limit: 0, used: null }, 'in order', 'in order'],
    ['a share of what it can carry', { actual: 0.26, limit: 1, used: 0.26, unit: 'ratio' }, 'in order', 'in order'],
    ['a chance', { actual: 0, limit: 0.1, used: 0, unit: 'chance' }, 'fewer than 1 in 1000, at most 10 %', 'fewer than 1 in 1000, at most 10 %'],
    ['a word', { actual: 'few', limit: 'few', unit: 'word' }, 'few', 'few'],
    ['not known', { actual: null, limit: 3 }, 'unknown', 'unknown'],
  ])('%s', (_, part, metric, inch) => {
    expect(valueAndLimit(finding(part), 'metric')).toBe(metric);
    expect(valueAndLimit(finding(part), 'inch')).toBe(inch);
  });

  it('is called by its id, with the subject where that alone would say little', () => {
    expect(ruleInWords('hanging/wire-strength')).toBe('wire strength');
    expect(ruleAndSubject('hanging/wire-strength')).toBe('wire strength');
    expect(ruleAndSubject('corners/use')).toBe('corner use');
  });
});
