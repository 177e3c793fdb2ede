import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { audit } from '../../src/audit.js';
import type { Fact, FactPath } from '../../src/facts/fact.js';
import type { Plan } from '../../src/plan/plan.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { allBuilds } from '../../src/suggest/builds.js';
import { applyEdit, mergeEdits, noEdit, type Edit } from '../../src/suggest/edit.js';
import { examineBuild, examinerFor } from '../../src/suggest/examine.js';
import { specOf } from '../../src/facts/catalogue.js';
import type { MovedBy } from '../../src/facts/declare.js';
import { boardOptions, hangOptions, setbackOptions } from '../../src/suggest/options.js';
import { leastHanging } from '../../src/suggest/least-hanging.js';
import { billUnhung, cutting, leastPrice, leastPriceCut, pricesOf, roughPrices } from '../../src/suggest/price.js';
import { keeps } from '../../src/suggest/suggest.js';
import { planTexts } from './random-plans.js';
import { bench, benchWith, planOf, priceOf } from './studio.js';
import { everything, runs } from '../effort.js';

/** What everything costs follows boards to pick from as well as hooks and wire; it is asked with the hanging, and dearer boards are left to the full audit. */
const movedByBoardsToo: ReadonlySet<string> = new Set(['cutting.total_cost', 'cutting.used_cost']);

const few = benchWith('strip-19x38', 'stud-38x64');

/** A build somewhere in the space of a random plan. */
const someBuild = fc.tuple(planTexts, fc.nat(), fc.nat()).map(([text, which, option]) => {
  const read = readPlanWith(text, 'plan.yaml', few.shelf);
  if (!read.ok) return null;
  const { builds } = allBuilds(read.value, few.shelf);
  const build = builds[which % builds.length];
  return build === undefined ? null : { plan: read.value, build, option };
}).filter((one) => one !== null);

const pick = (options: readonly Edit[], n: number): Edit | undefined => (options.length === 0 ? undefined : options[n % options.length]);

/** A plan is settled in the order build, setback, hanging: what hangs is asked after every setback, so a setback may move it. */
const moves = (group: MovedBy, path: FactPath): boolean => {
  const { moved_by } = specOf(path);
  return moved_by === group || (group === 'setback' && moved_by === 'hanging') || (group === 'boards' && movedByBoardsToo.has(path));
};

describe('what is left out of an examination', () => {
  it('facts of a group move only when that group is changed', async () => {
    const moved = async (from: Plan, to: Plan, group: MovedBy): Promise<void> => {
      const [before, after] = [await audit(from, few), await audit(to, few)];
      const table = (facts: readonly Fact[]): Map<string, unknown> => new Map(facts.filter(({ path }) => !moves(group, path)).map(({ path, about, value }) => [`${path}@${about}`, value]));
      expect(table(after.facts)).toEqual(table(before.facts));
    };
    await fc.assert(
      fc.asyncProperty(someBuild, async ({ plan, build, option }) => {
        const changed = (edit: Edit): Plan => applyEdit(plan, mergeEdits(build.edit, edit), few.shelf);
        for (const [group, options] of [['boards', boardOptions(build.plan)], ['hanging', hangOptions(build.plan)], ['setback', setbackOptions(build.plan)]] as const) {
          const edit = pick(options, option);
          if (edit !== undefined) await moved(build.plan, changed(edit), group);
        }
      }),
      { numRuns: runs(6) },
    );
  });

  it('what an examination rules out the full audit rules out too, and what it lets through in every group the full audit keeps', async () => {
    let out = 0;
    let through = 0;
    for (const wish of ['no-stop', 'clear'] as const) {
      const examiner = examinerFor(few, wish);
      await fc.assert(
        fc.asyncProperty(someBuild, async ({ plan, build, option }) => {
          const edit = mergeEdits(build.edit, pick(boardOptions(build.plan), option) ?? { words: [] });
          const changed = applyEdit(plan, edit, few.shelf);
          const examined = await examineBuild(build.plan, cutting(build.plan, few.shelf), examiner);
          const against = 'against' in examined ? examined.against : [...(await examined.againstStability()), ...(await examined.againstBoards(changed)), ...(await examined.againstSetback(changed)), ...(await examined.againstHanging(changed))];
          const kept = keeps(await audit(changed, few), wish, few);
          expect({ kept, against: [...against] }).toEqual({ kept: against.length === 0, against: [...against] });
          if (kept) through += 1;
          else out += 1;
        }),
        { numRuns: runs(25) },
      );
    }
    expect(out).toBeGreaterThan(everything ? 5 : 0);
    expect(through).toBeGreaterThan(everything ? 5 : 0);
  });

  it('the price promised before cutting and hanging is never above the price paid, whichever way the frames hang', async () => {
    await fc.assert(
      fc.asyncProperty(someBuild, fc.constantFrom(1, 3), async ({ build }, count) => {
        const plan = { ...build.plan, count };
        const cut = cutting(plan, few.shelf);
        const unhung = billUnhung(plan, few.shelf);
        const promises = [roughPrices(few.shelf)(plan), leastPrice(unhung, few.shelf), leastPriceCut(unhung, cut, few.shelf)];
        for (const hung of [noEdit, ...hangOptions(plan)]) {
          const paid = priceOf(applyEdit(plan, hung, few.shelf), cut, few.shelf);
          for (const promised of promises) {
            expect(promised.cents).toBeLessThanOrEqual(paid.cents);
            expect(promised.grams).toBeLessThanOrEqual(paid.grams);
          }
        }
      }),
      { numRuns: runs(25) },
    );
  });

  it('what a piece hangs by is promised to the cent and gram where nothing else can change', () => {
    const plan = planOf('plan: 1\nname: Stair light\nface: { width: 30 in, height: 22 in }\nbars: { stock: strip-19x38, lay: flat }\nhang: { by: two-hooks }\n');
    const cut = cutting(plan, few.shelf);
    const [hung, unhung] = [priceOf(plan, cut, few.shelf), priceOf({ ...plan, hang: { ...plan.hang, by: 'none' } }, cut, few.shelf)];
    const least = leastHanging(plan, few.shelf);
    expect(Math.abs(least.cents - (hung.cents - unhung.cents))).toBeLessThanOrEqual(1);
    expect(Math.abs(least.grams - (hung.grams - unhung.grams))).toBeLessThanOrEqual(1);
    expect(least.cents).toBeGreaterThan(50);
    expect(leastHanging({ ...plan, hang: { ...plan.hang, by: 'none' } }, few.shelf)).toEqual({ cents: 0, grams: 0 });
  });

  it('plans that differ in their boards alone cost and weigh together what each does by itself', async () => {
    await fc.assert(
      fc.asyncProperty(someBuild, async ({ plan, build }) => {
        const cut = cutting(build.plan, few.shelf);
        const plans = boardOptions(build.plan).map((boards) => applyEdit(plan, mergeEdits(build.edit, boards), few.shelf));
        expect(pricesOf(plans, cut, few.shelf)).toEqual(plans.map((one) => priceOf(one, cut, few.shelf)));
      }),
      { numRuns: runs(25) },
    );
  });

  it('a cloth too wide for its roll is found before anything is solved, by the very facts of the audit', async () => {
    const text = 'plan: 1\nname: Wide\nface: { width: 1700 mm, height: 1600 mm }\nbars: { stock: stud-38x64, lay: edge }\n';
    const read = readPlanWith(text, 'plan.yaml', bench.shelf);
    if (!read.ok) throw new Error('the plan must be readable');
    const examiner = examinerFor(bench, 'no-stop');
    const asked: (readonly Fact[])[] = [];
    const watched = { ...examiner, judge: { ...examiner.judge, against: async (...args: Parameters<typeof examiner.judge.against>) => (asked.push(args[0]), examiner.judge.against(...args)) } };
    expect(await examineBuild(read.value, cutting(read.value, bench.shelf), watched)).toEqual({ against: ['cloth/roll'] });
    const { facts } = await audit(read.value, bench);
    expect(asked.length).toBe(1);
    for (const fact of asked[0] ?? []) expect(facts).toContainEqual(fact);
  });

  it('every fact that needs samples is known as one', async () => {
    const text = 'plan: 1\nname: A\nface: { width: 700 mm, height: 500 mm }\nbars: { stock: square-38x38, lay: flat }\n';
    const read = readPlanWith(text, 'plan.yaml', bench.shelf);
    if (!read.ok) throw new Error('the plan must be readable');
    const [some, none] = [await audit(read.value, bench), await audit(read.value, { ...bench, samples: 0 })];
    const values = (facts: readonly Fact[]): Map<string, unknown> => new Map(facts.filter(({ path }) => specOf(path).known_from !== 'samples').map(({ path, about, value }) => [`${path}@${about}`, value]));
    expect(values(none.facts)).toEqual(values(some.facts));
  });
});
