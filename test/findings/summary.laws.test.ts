import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cautions } from '../../src/findings/cautions.js';
import { verdicts, type Finding, type Verdict } from '../../src/findings/finding.js';
import { compareGravity, countVerdicts, foldFindings, sortFindings, worstVerdict } from '../../src/findings/summary.js';

const finding = (verdict: Verdict, rule = 'a', about = 'top', used: number | null = null): Finding =>
  ({ rule, title: 'A rule', about, verdict, fact: 'bar.dish_mm', actual: 1, limit: 2, unit: 'mm', used, say: '', do: [], cautions: [], source: 'proposal' });

test('the worst verdict, in the order clear < caution < unknown < stop', () => {
  expect(worstVerdict([])).toBe('unknown');
  expect(worstVerdict([finding('clear'), finding('caution')])).toBe('caution');
  expect(worstVerdict([finding('unknown'), finding('caution')])).toBe('unknown');
  expect(worstVerdict([finding('unknown'), finding('stop'), finding('clear')])).toBe('stop');
  expect(compareGravity('unknown', 'caution')).toBeGreaterThan(0);
  expect(countVerdicts([finding('stop'), finding('stop'), finding('unknown')])).toEqual({ clear: 0, caution: 0, unknown: 1, stop: 2 });
});

test('sorted for a report: gravest first, then by the limit used, then by name', () => {
  const sorted = sortFindings([finding('caution', 'b', 'top', 1.1), finding('caution', 'a', 'right', 1.1), finding('clear', 'a', 'top', 0.9), finding('caution', 'a', 'left', 1.1), finding('caution', 'c', 'top', null), finding('stop', 'z'), finding('caution', 'd', 'top', 1.4)]);
  expect(sorted.map(({ verdict, rule, about }) => `${verdict} ${rule} ${about}`)).toEqual(['stop z top', 'caution d top', 'caution a left', 'caution a right', 'caution b top', 'caution c top', 'clear a top']);
});

test('folded: one entry for each rule and verdict, the most used first', () => {
  const folded = foldFindings([finding('caution', 'a', 'left', 1.1), finding('clear', 'a', 'top', 0.4), finding('caution', 'a', 'right', 1.3)]);
  expect(folded.map(({ finding: one, abouts }) => [one.verdict, one.about, abouts])).toEqual([['caution', 'right', ['right', 'left']], ['clear', 'top', ['top']]]);
});

test('every caution has an id of its own and a sentence', () => {
  expect(new Set(cautions.map(({ id }) => id)).size).toBe(cautions.length);
  for (const { text } of cautions) expect(text).toMatch(/^[A-Z].+\.$/);
});

const findings = fc.array(fc.record({ verdict: fc.constantFrom(...verdicts), rule: fc.constantFrom('a', 'b'), about: fc.constantFrom('top', 'left'), used: fc.option(fc.double({ min: 0, max: 3, noNaN: true })) }).map(({ verdict, rule, about, used }) => finding(verdict, rule, about, used)), { maxLength: 12 });

test('law: sorting does not depend on the order given, and the first is the worst', () => {
  fc.assert(fc.property(findings, (list) => {
    expect(sortFindings([...list].reverse())).toEqual(sortFindings(list));
    expect(sortFindings(list)[0]?.verdict ?? 'unknown').toBe(worstVerdict(list));
  }));
});
