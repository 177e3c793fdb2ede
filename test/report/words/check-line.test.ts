import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/findings/finding.js';
import { valueAndLimit } from '../../../src/report/words/check-line.js';

const finding = (part: Partial<Finding>): Finding => ({ rule: 'bars/roll', title: 'Roll of the bar', about: 'top', verdict: 'clear', fact: 'bar.roll_mrad', actual: null, limit: null, unit: 'mm', used: null, say: '', do: [], cautions: [], source: 'practice', ...part });

describe('a clear check in short', () => {
  it.each<[string, Partial<Finding>, string, string]>([
    ['at most', { actual: 1.5, limit: 6, used: 0.25 }, '1.5 mm; at most 6 mm', '1/16 in; at most 15/64 in'],
    ['at most, by size: the sign is the way it goes', { actual: -1.5, limit: 6, used: 0.25 }, '1.5 mm; at most 6 mm', '1/16 in; at most 15/64 in'],
    ['at least', { actual: 8, limit: 2, used: 0.25 }, '8 mm; at least 2 mm', '5/16 in; at least 5/64 in'],
    ['far more than the least', { actual: 1000, limit: 3, used: 0.003 }, 'plenty; at least 3 mm', 'plenty; at least 1/8 in'],
    ['nothing at all', { actual: 0, limit: 6, used: 0 }, 'none; at most 6 mm', 'none; at most 15/64 in'],
    ['just met, either way', { actual: 6, limit: 6, used: 1 }, '6 mm, just the limit', '15/64 in, just the limit'],
    ['a limit of nothing', { actual: -210, limit: 0, used: null, unit: 'mm' }, 'none', 'none'],
    ['no less than nothing', { actual: 210, limit: 0, used: null, unit: 'N' }, '210 N', '47 lbf'],
    ['a count of which there may be none', { actual: 0, limit: 0, used: 0, unit: 'count' }, 'none', 'none'],
    ['a share of what it can carry', { actual: 0.26, limit: 1, used: 0.26, unit: 'ratio' }, '26 %; at most 100 %', '26 %; at most 100 %'],
    ['a share that must be reached', { actual: 1.6, limit: 1, used: 0.625, unit: 'ratio' }, '160 %; at least 100 %', '160 %; at least 100 %'],
    ['a chance', { actual: 0, limit: 0.1, used: 0, unit: 'chance' }, 'fewer than 1 in 1000; at most 10 %', 'fewer than 1 in 1000; at most 10 %'],
    ['money', { actual: 40.5, limit: 90, used: 0.45, unit: 'cost' }, '40.50 EUR; at most 90.00 EUR', '40.50 EUR; at most 90.00 EUR'],
    ['below nought where something is wanted', { actual: -6, limit: 2, used: null, fact: 'cloth.clearance_mm' }, 'less than none, −6 mm; at least 2 mm', 'less than none, −15/64 in; at least 5/64 in'],
    ['so near that it reads alike, over', { actual: 6.04, limit: 6, used: 6.04 / 6 }, 'just over 6 mm; at most 6 mm', 'just over 15/64 in; at most 15/64 in'],
    ['so near that it reads alike, under', { actual: 5.96, limit: 6, used: 6 / 5.96 }, 'just under 6 mm; at least 6 mm', 'just under 15/64 in; at least 15/64 in'],
    ['a word', { actual: 'few', limit: 'few', unit: 'word' }, 'few', 'few'],
    ['not known', { actual: null, limit: 3 }, 'unknown', 'unknown'],
  ])('%s', (_, part, metric, inch) => {
    expect(valueAndLimit(finding(part), 'metric', 'EUR')).toBe(metric);
    expect(valueAndLimit(finding(part), 'inch', 'EUR')).toBe(inch);
  });
});
