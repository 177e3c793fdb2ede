import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { barNames } from '../../src/base/names.js';
import { catalogueByPath } from '../../src/facts/catalogue.js';
import type { Fact } from '../../src/facts/fact.js';
import { warpStory, type WarpStory } from '../../src/risk/story.js';
import { warpFacts } from './of-subject.js';
import { buildModel } from '../../src/model/build-model.js';
import type { FactSettings, Model, Solution } from '../../src/model/model.js';
import { solveModel } from '../../src/solve/solve-model.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { settlePlan } from '../../src/plan/settle-plan.js';
import { assessWarp, boardState } from '../../src/risk/assess.js';
import { usefulReadings, type Reading } from '../../src/risk/readings.js';
import { chanceInWords } from '../../src/base/chance-words.js';
import { readShelf } from '../../src/shelf/read-shelf.js';

const settings: FactSettings = { corner_lift_limit_mm: 4, bar_bow_limit_mm: { top: 2, bottom: 2, left: 2, right: 2 }, seed: 1, samples: 20_000 };

const shelf = (() => {
  const read = readShelf(readFileSync(new URL('../../rules/shelf.yaml', import.meta.url), 'utf8'), 'shelf.yaml');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
})();

function solved(yaml: string): { model: Model; solution: Solution } {
  const plan = readPlanWith(yaml, 'plan.yaml', shelf);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  const model = buildModel(settlePlan(plan.value, shelf), shelf);
  return { model, solution: solveModel(model) };
}

const plan = (rest: string, bars = '{ stock: strip-19x38, lay: flat }', width = 700, height = 500): string =>
  `plan: 1\nname: Harbour study\nface: { width: ${width} mm, height: ${height} mm }\nbars: ${bars}\n${rest}`;

function factsOf(yaml: string, over: Partial<FactSettings> = {}): readonly Fact[] {
  const { model, solution } = solved(yaml);
  return warpFacts(model, solution, { ...settings, ...over });
}

function storyOf(yaml: string): WarpStory {
  const { model, solution } = solved(yaml);
  const told = warpStory(model, solution, settings);
  if (told.story === null) throw new Error(told.reason);
  return told.story;
}

const twistOfTop = { bar: 'top', ply: null };

function readingsOf(yaml: string): readonly Reading[] {
  const { model, solution } = solved(yaml);
  return usefulReadings(model, assessWarp(model, solution, settings)!.terms, boardState(model).assumptions);
}

const valueOf = (facts: readonly Fact[], path: string, about = 'frame'): number => {
  const found = facts.find((fact) => fact.path === path && fact.about === about);
  if (typeof found?.value !== 'number') throw new Error(`${path} of ${about} is not a number`);
  return found.value;
};

const simple = plan('lumber: { chosen: plain, moisture: 12 % }');

describe('facts of natural warp', () => {
  it('a board whose twist was not read is not called measured and keeps the twist of its kind', () => {
    const facts = factsOf(plan('boards: [ { for: left, bow: 2 mm, over: 1900 mm }, { for: top, twist: -0.6 deg/m } ]'));
    const said = (path: string, about: string) => facts.find((fact) => fact.path === path && fact.about === about)?.value;
    expect([said('board.measured', 'left-1'), said('board.measured', 'top-1'), said('board.measured', 'right-1')]).toEqual(['no', 'yes', 'no']);
    expect(said('board.twist_deg_per_m', 'left-1')).toBeCloseTo(0.5, 12);
    expect(said('board.twist_deg_per_m', 'top-1')).toBeCloseTo(-0.6, 12);
  });

  it('are all in the catalogue, with its units, and finite', () => {
    const facts = factsOf(plan('crossbars: [ { runs: upright, at: 2/5, stock: strip-19x38, lay: flat } ]'));
    for (const fact of facts) {
      expect(catalogueByPath.get(fact.path)?.unit, fact.path).toBe(fact.unit);
      if (typeof fact.value === 'number') expect(Number.isFinite(fact.value)).toBe(true);
      expect(fact.value).not.toBeNull();
    }
    for (const bar of barNames) expect(valueOf(facts, 'bar.natural_bow_p90_mm', bar)).toBeGreaterThan(0);
    expect(facts.filter(({ path }) => path === 'board.measured').map(({ about }) => about)).toEqual(['top-1', 'bottom-1', 'left-1', 'right-1', 'crossbar-1-1']);
  });

  it('take the spread, the drying and the reading errors from the shelf', () => {
    const { model } = solved(plan('lumber: { moisture: 16 % }'));
    const { drying_pct, assumptions } = boardState(model);
    expect(drying_pct).toBeGreaterThan(5);
    expect(drying_pct).toBeLessThan(9);
    expect(assumptions.reading_twist_rad_per_m).toBeCloseTo((0.1 * Math.PI) / 180, 12);
    expect(assumptions.correlation).toEqual({ opposed: -0.8, unsorted: 0, matched: 0.8 });
    expect(assumptions.drying_per_pct).toBe(0.05);
    expect(boardState(solved(plan('lumber: { moisture: 6 % }')).model).drying_pct).toBe(0);
  });

  it('agree with the lift summed by hand from the influence numbers', () => {
    const { model, solution } = solved(plan('lumber: { chosen: unsorted, moisture: 6 % }'));
    const deg = Math.PI / 180;
    const twist = (solution.influence ?? []).filter(({ kind }) => kind === 'twist').map(({ corner_lift }) => corner_lift / 1000);
    const facts = warpFacts(model, solution, settings);
    const mean = twist.reduce((sum, g) => sum + g * 1.0 * deg, 0);
    const sd = Math.hypot(...twist.map((g) => g * 1.2 * deg));
    // Far below the critical pull the cubic takes off a share of about 3 β (sd² + mean²) / (1 − f).
    const { factor, beta_per_mm2 } = solution.stability.propeller!;
    const less = (3 * beta_per_mm2 * (sd ** 2 + mean ** 2)) / (1 - 1 / factor);
    expect(less).toBeLessThan(1e-3);
    expect(Math.abs(valueOf(facts, 'warp.corner_lift_mean_mm') - mean)).toBeLessThan(1e-2 * sd);
    expect((1 - valueOf(facts, 'warp.corner_lift_sd_mm') / sd) / less).toBeCloseTo(1, 1);
  });

  it('expect of boards that all twist alike just what they lift, without any doubt', () => {
    const strip = shelf.lumber['strip-19x38']!;
    const sure = { mean: 0, sd: 0 };
    const spread = { ...strip.spread, unsorted: { ...strip.spread.unsorted, twist_rad_per_m: { mean: 1e-5, sd: 0 }, bow_per_m: sure, crook_per_m: sure } };
    const { model: before, solution } = solved(plan('lumber: { chosen: unsorted, moisture: 6 % }'));
    const model = buildModel(before.plan, { ...shelf, lumber: { ...shelf.lumber, 'strip-19x38': { ...strip, spread } } });
    const twist = (solution.influence ?? []).filter(({ kind }) => kind === 'twist').map(({ corner_lift }) => corner_lift / 1000);
    const mean = twist.reduce((sum, g) => sum + g * 1e-5, 0);
    expect(Math.abs(mean)).toBeGreaterThan(1e-6);
    const facts = warpFacts(model, solution, settings);
    expect(valueOf(facts, 'warp.corner_lift_sd_mm')).toBe(0);
    expect(valueOf(facts, 'warp.corner_lift_mean_mm') / mean).toBeCloseTo(1, 6);
  });

  it('expect the lift of the boards that were read, of either sign, and none of boards that may twist either way', () => {
    const { model, solution } = solved(plan('lumber: { moisture: 6 % }\nboards: [ { for: top, twist: 0.5 deg/m }, { for: bottom, twist: 0.3 deg/m }, { for: left, twist: -0.2 deg/m }, { for: right, twist: -0.4 deg/m } ]'));
    const by = (bar: string): number => (solution.influence!.find(({ member, kind }) => member === bar && kind === 'twist')!.corner_lift * Math.PI) / 180 / 1000;
    const lift = 0.5 * by('top') + 0.3 * by('bottom') - 0.2 * by('left') - 0.4 * by('right');
    const mean = valueOf(warpFacts(model, solution, settings), 'warp.corner_lift_mean_mm');
    expect(Math.abs(lift)).toBeGreaterThan(0.5);
    expect(mean / lift).toBeCloseTo(1, 2);
    expect(valueOf(factsOf(plan('lumber: { chosen: picked, moisture: 6 % }')), 'warp.corner_lift_mean_mm')).toBe(0);
  });

  it('say the same for like bars and shares that make one whole', () => {
    const facts = factsOf(simple);
    const top = valueOf(facts, 'bar.natural_bow_p90_mm', 'top');
    expect(valueOf(facts, 'bar.natural_bow_p90_mm', 'bottom') / top).toBeCloseTo(1, 2);
    const shares = facts.filter(({ path }) => path === 'warp.cause_share');
    expect(shares.reduce((sum, { value }) => sum + (value as number), 0)).toBeCloseTo(1, 10);
    expect(shares[0]?.about).toBe('twist of top and bottom as chosen');
  });

  it('use a measured board instead of the spread', () => {
    const measured = plan('boards: [ { for: top, ply: 1, twist: 0.4 deg/m, bow: 2 mm, crook: 1 mm, over: 2400 mm } ]\nlumber: { moisture: 6 % }');
    const facts = factsOf(measured);
    expect(valueOf(facts, 'board.twist_deg_per_m', 'top-1')).toBeCloseTo(0.4, 10);
    expect(valueOf(facts, 'board.twist_deg_per_m', 'left-1')).toBeCloseTo(0.5, 10);
    expect(facts.find(({ path, about }) => path === 'board.measured' && about === 'top-1')?.value).toBe('yes');
    expect(valueOf(facts, 'warp.corner_lift_sd_mm')).toBeLessThan(valueOf(factsOf(plan('lumber: { moisture: 6 % }')), 'warp.corner_lift_sd_mm'));
    const causes = facts.filter(({ path }) => path === 'warp.cause_share').map(({ about }) => about);
    expect(causes).toContain('twist of bottom as chosen');
  });

  it('are unknown, with the reason, when the flat frame does not hold', () => {
    const turned = factsOf(plan('cloth: { pull: { working: 380 N/m, peak: 800 N/m } }', '{ stock: strip-19x38, lay: flat }', 1400, 1300));
    expect(valueOf(turned, 'warp.corner_lift_chance')).toBe(1);
    expect(valueOf(turned, 'warp.corner_lift_p90_mm')).toBeGreaterThan(valueOf(turned, 'warp.corner_lift_sd_mm'));
    const bows = turned.filter(({ path }) => /^bar\.natural_|bar_bow_chance/u.test(path));
    expect(bows.length).toBe(9);
    for (const fact of bows) expect(fact).toMatchObject({ value: null, reason: expect.stringContaining('turns into a propeller') });
  });

  it('name no lift beyond the shorter side, where the curve no longer holds', () => {
    const folded = factsOf(plan('cloth: { pull: { working: 2500 N/m, peak: 2500 N/m } }', '{ stock: strip-19x38, lay: flat }', 1400, 1300));
    expect(folded.find(({ path }) => path === 'warp.corner_lift_p90_mm')).toMatchObject({ value: null, reason: expect.stringContaining('fold up') });
    expect(valueOf(folded, 'warp.corner_lift_chance')).toBe(1);
  });

  it('are all unknown, with the reason, where a crossbar bows sideways before the corners leave the plane', () => {
    const slender = 'crossbars: [ { runs: upright, at: 1/2, stock: strip-19x38, lay: flat, plies: 1 } ]\ncloth: { pull: { working: 3500 N/m, peak: 3500 N/m } }';
    const { model, solution } = solved(plan(slender, '{ stock: stud-38x89, lay: edge, plies: 2 }', 2000, 1600));
    expect(solution.stability).toMatchObject({ mode: 'sideways' });
    expect(solution.stability.load_factor).toBeLessThan(1);
    const risky = warpFacts(model, solution, settings).filter(({ path }) => !path.startsWith('board.'));
    expect(risky.length).toBeGreaterThan(10);
    for (const fact of risky) expect(fact).toMatchObject({ value: null, reason: expect.stringContaining('bows sideways') });
  });

  it('need no samples but for the chance of a bowed bar, and say why it is unknown without', () => {
    const facts = factsOf(simple, { samples: 0 });
    expect(valueOf(facts, 'warp.corner_lift_p90_mm')).toBeGreaterThan(0);
    for (const bar of barNames) expect(valueOf(facts, 'bar.natural_bow_p90_mm', bar)).toBe(valueOf(factsOf(simple), 'bar.natural_bow_p90_mm', bar));
    expect(facts.find(({ path }) => path === 'warp.bar_bow_chance')).toMatchObject({ value: null, reason: 'No samples were asked for.' });
  });

  it('put a glued pair above a solid bar of the same size, and edge above flat for bow', () => {
    const pair = factsOf(plan('', '{ stock: strip-19x38, lay: edge, plies: 2, stack: side-by-side, bond: glue+screws, pairing: opposed }'));
    const solid = factsOf(plan('', '{ stock: square-38x38, lay: flat }'));
    expect(valueOf(pair, 'warp.corner_lift_sd_mm')).toBeLessThan(valueOf(solid, 'warp.corner_lift_sd_mm'));
    const edge = factsOf(plan('', '{ stock: stud-38x89, lay: edge }', 1500, 1200));
    const flat = factsOf(plan('', '{ stock: stud-38x89, lay: flat }', 1500, 1200));
    for (const bar of barNames) expect(valueOf(edge, 'bar.natural_bow_p90_mm', bar)).toBeLessThan(valueOf(flat, 'bar.natural_bow_p90_mm', bar));
  });
});

describe('the story of the warp', () => {
  it('names what to read and what halves it', () => {
    const wet = plan('lumber: { chosen: unsorted, moisture: 18 % }');
    const [story, readings] = [storyOf(wet), readingsOf(wet)];
    expect(readings[0]?.of).toEqual(twistOfTop);
    readings.slice(1).forEach(({ settles }, i) => expect(settles).toBeLessThanOrEqual((readings[i]?.settles ?? 0) + 1e-6));
    expect(readings.length).toBe(5);
    expect(readings.map(({ of }) => of)).toContain('moisture');
    expect(story.remedies.length).toBe(3);
    expect(story.halves?.ratio).toBeLessThanOrEqual(0.5);
    expect(story.halves?.lift_p90_mm).toBeLessThan(story.p90_mm / 2 + 1e-9);
  });

  it('has nothing to propose when the boards are picked and dry', () => {
    const story = storyOf(plan('lumber: { chosen: picked, moisture: 8 % }'));
    expect(story.remedies).toEqual([]);
    expect(story.halves).toBeNull();
  });

  it('a reading settles what measuring that board then settles', () => {
    const wet = 'lumber: { chosen: unsorted, moisture: 8 % }';
    const [before, after] = [plan(wet), plan(`${wet}\nboards: [ { for: top, ply: 1, twist: 1 deg/m } ]`)];
    const reading = readingsOf(before)[0]!;
    expect(reading.of).toEqual(twistOfTop);
    expect(1 - storyOf(after).unpulled.sd ** 2 / storyOf(before).unpulled.sd ** 2).toBeCloseTo(reading.settles, 8);
    expect(readingsOf(after).map(({ of }) => of)).not.toContainEqual(twistOfTop);
  });

  it('says chances as people do', () => {
    expect([0, 0.001, 0.011, 0.1, 0.17, 0.34, 0.4, 0.5, 0.65, 0.76, 0.9, 0.99].map(chanceInWords)).toEqual([
      'fewer than 1 in 1000',
      'about 1 in 1000',
      'about 1 in 100',
      'about 1 in 10',
      'about 1 in 6',
      'about 1 in 3',
      'about 2 in 5',
      'about 1 in 2',
      'about 2 in 3',
      'about 3 in 4',
      'about 9 in 10',
      'nearly all',
    ]);
  });
});
