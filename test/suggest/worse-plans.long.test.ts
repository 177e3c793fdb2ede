/** As `worse-plans.laws.test.ts`, over many more drawn frames. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareGravity } from '../../src/findings/summary.js';
import { drawn, findingsOf, verdictOf, worsenings } from './worse-plans.js';

test.each(worsenings)('$name never betters a verdict', async ({ make, except }) => {
  await fc.assert(fc.asyncProperty(drawn, async (frame) => {
    const [before, after] = [await findingsOf(frame), await findingsOf(make(frame))];
    fc.pre(before !== null && after !== null);
    if (before === null || after === null) return;
    const lost = before.filter(({ rule, about, verdict }) => verdict !== 'clear' && compareGravity(after.find((f) => f.rule === rule && f.about === about)?.verdict ?? 'clear', verdict) < 0);
    expect({ better: compareGravity(verdictOf(after, except), verdictOf(before, except)) < 0, lost: lost.map(({ rule, about, actual }) => `${rule} ${about} ${actual}`) }).toMatchObject({ better: false });
  }), { numRuns: Number(process.env['RUNS'] ?? 60) });
}, 900_000);
