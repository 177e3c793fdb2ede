import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { audit } from '../../src/audit.js';
import type { FactPath } from '../../src/facts/fact.js';
import { findFact } from '../../src/facts/find-fact.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { aims, type Aim } from '../../src/suggest/aims.js';
import { allBuilds } from '../../src/suggest/builds.js';
import { applyEdit, mergeEdits, type Edit } from '../../src/suggest/edit.js';
import { boardOptions } from '../../src/suggest/options.js';
import { cutting, type Price } from '../../src/suggest/price.js';
import { compareRanks, type Rank } from '../../src/suggest/queue.js';
import { suggest } from '../../src/suggest-plans.js';
import { keeps, type Suggestions } from '../../src/suggest/suggest.js';
import { tellSuggestions } from '../../src/suggest/tell.js';
import { writeEdit } from '../../src/suggest/write-plan.js';
import { planTexts } from './random-plans.js';
import { bench, benchWith, planOf, stairwell, priceOf } from './studio.js';
import { everything, runs } from '../effort.js';

const ofAim = (answer: Suggestions, aim: (typeof aims)[number]) => {
  const found = answer.found.find((one) => one.aims.includes(aim));
  if (found === undefined) throw new Error(`nothing is ${aim}`);
  return found;
};

describe('the example that must not be cut', () => {
  it.runIf(everything)('has plans without a stop, each as promised', async () => {
    const plan = planOf(stairwell);
    const answer = await suggest(plan, bench, { clear: false });
    expect(answer.planned.verdict).toBe('stop');
    expect(answer.found.flatMap((one) => one.aims).sort()).toEqual([...aims].sort());
    for (const { plan: changed, edit } of answer.found) {
      const again = await audit(changed, bench);
      expect(again.findings.filter(({ verdict }) => verdict === 'stop')).toEqual([]);
      expect(changed).toEqual(applyEdit(plan, edit, bench.shelf));
    }
    const number = (aim: (typeof aims)[number], path: FactPath): number => findFact(ofAim(answer, aim).audit.facts, path, null) ?? Number.NaN;
    for (const other of aims) {
      expect(number('cheapest', 'cutting.total_cost')).toBeLessThanOrEqual(number(other, 'cutting.total_cost') + 0.005);
      expect(number('lightest', 'frame.weight_kg')).toBeLessThanOrEqual(number(other, 'frame.weight_kg') + 0.0005);
      expect(ofAim(answer, 'least-change').edit.words.length).toBeLessThanOrEqual(ofAim(answer, other).edit.words.length);
    }
  });
});

describe('a space small enough to audit every plan in it', () => {
  const measured = `plan: 1
name: Small trial
face: { width: 1050 mm, height: 880 mm }
bars: { stock: planed-21x45, lay: flat }
lumber: { chosen: unsorted, moisture: 15 % }
boards: [ { for: top, twist: 0.6 deg/m } ]
hang: { by: none }
`;
  it.runIf(everything)('the best of all is the best that was suggested, for either wish', async () => {
    const on = benchWith('planed-21x45', 'strip-19x38');
    const plan = planOf(measured, on);
    const wishes = ['no-stop', 'clear'] as const;
    const best = new Map<string, Rank>();
    let candidates = 0;
    for (const build of allBuilds(plan, on.shelf).builds) {
      const cut = cutting(build.plan, on.shelf);
      for (const boards of boardOptions(build.plan)) {
        const edit = mergeEdits(build.edit, boards);
        const changed = applyEdit(plan, edit, on.shelf);
        candidates += 1;
        const audited = await audit(changed, on);
        for (const wish of wishes.filter((one) => keeps(audited, one, on)))
          for (const aim of aims) {
            const rank = rankOf(aim, edit, priceOf(changed, cut, on.shelf));
            const before = best.get(`${wish} ${aim}`);
            if (before === undefined || compareRanks(rank, before) < 0) best.set(`${wish} ${aim}`, rank);
          }
      }
    }
    for (const wish of wishes) {
      const answer = await suggest(plan, on, { clear: wish === 'clear' });
      expect(answer.tried.candidates).toBe(candidates);
      expect(answer.tried.examined).toBeLessThanOrEqual(answer.tried.builds);
      for (const aim of aims) {
        const { plan: changed, edit } = ofAim(answer, aim);
        expect({ wish, aim, rank: rankOf(aim, edit, priceOf(changed, cutting(changed, on.shelf), on.shelf)) }).toEqual({ wish, aim, rank: best.get(`${wish} ${aim}`) });
      }
    }
  });
});

const rankOf = (aim: Aim, { words }: Edit, { cents, grams }: Price): Rank =>
  aim === 'cheapest' ? [cents, words.length, grams] : aim === 'lightest' ? [grams, words.length, cents] : [words.length, cents, grams];

describe('an answer', () => {
  it('keeps its promise on random plans, and says when there is none', async () => {
    const on = benchWith('strip-19x38', 'stud-38x64');
    await fc.assert(
      fc.asyncProperty(planTexts, async (text) => {
        const read = readPlanWith(text, 'plan.yaml', on.shelf);
        fc.pre(read.ok);
        if (!read.ok) return;
        const answer = await suggest(read.value, on, { clear: false });
        if (answer.found.length === 0) expect(answer.tried.in_the_way.length).toBeGreaterThan(0);
        for (const one of answer.found) {
          const written = readPlanWith(writeEdit(text, one.edit, one.plan) ?? '', 'plan.yaml', on.shelf);
          if (!written.ok) throw new Error(JSON.stringify(written.problems));
          const again = await audit(written.value, on);
          expect(again.verdict).not.toBe('stop');
          expect(again.facts).toEqual(one.audit.facts);
        }
      }),
      { numRuns: runs(4) },
    );
  });

  it('of a plan that no change in the space can save: nothing, and what stands in the way', async () => {
    const on = benchWith('planed-21x45');
    const plan = planOf('plan: 1\nname: Too wide for its roll\nface: { width: 2300 mm, height: 2200 mm }\nbars: { stock: planed-21x45, lay: flat }\nboards: [ { for: left, twist: 0 deg/m } ]\n', on);
    const answer = await suggest(plan, on, { clear: false });
    expect(answer.found).toEqual([]);
    expect(answer.tried.in_the_way).toContainEqual({ rule: 'cloth/roll', builds: answer.tried.builds });
    expect(tellSuggestions(answer)).toContain('no plan without a stop was found');
  });

  it('of a plan that keeps the wish already: nothing has to change', async () => {
    const on = benchWith('square-38x38');
    const plan = planOf('plan: 1\nname: Small and stout\nface: { width: 500 mm, height: 400 mm }\nbars: { stock: square-38x38, lay: flat }\nboards: [ { for: left, twist: 0 deg/m } ]\n', on);
    const answer = await suggest(plan, on, { clear: false });
    expect(answer.planned.verdict).not.toBe('stop');
    expect(ofAim(answer, 'least-change').edit.words).toEqual([]);
    expect(ofAim(answer, 'least-change').plan).toEqual(plan);
  });
});
