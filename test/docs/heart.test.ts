import { describe, expect, test } from 'vitest';
import { audit } from '../../src/audit.js';
import { chanceInWords } from '../../src/base/chance-words.js';
import { loadRules, loadShelf } from '../../src/cli/load.js';
import type { FactPath } from '../../src/facts/fact.js';
import { findFact } from '../../src/facts/find-fact.js';
import { buildModel } from '../../src/model/build-model.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { assessWarp } from '../../src/risk/assess.js';
import { solveModel } from '../../src/solve/solve-model.js';
import { page } from './readme.js';

/** The numbers in README.md's half page on the propeller: its table is recomputed row by row, and so are the figures in its sentences. */
const strip = 'bars: { stock: strip-19x38, lay: flat }';
const pair = (rest: string): string => `bars: { stock: strip-19x38, lay: edge, plies: 2, stack: side-by-side, ${rest} }`;
const braces = 'corners: { brace: { kind: timber, leg: 200 mm, stock: strip-19x38, lay: flat } }';
const rows: Readonly<Record<string, string>> = {
  'one strip to each bar, laid flat': strip,
  'the same, boards picked with winding sticks': `${strip}\nlumber: { chosen: picked }`,
  'one strip, and a crossbar upright in the middle': `${strip}\ncrossbars: [ { runs: upright, at: 1/2, stock: strip-19x38, lay: flat } ]`,
  'one strip, and a glued brace in each corner': `${strip}\n${braces}`,
  'two strips to each bar, only screwed': pair('bond: screws'),
  'two strips, glued': pair('bond: glue'),
  'one solid bar of 38 × 38 mm': 'bars: { stock: square-38x38, lay: flat }',
  'two strips, glued, and a glued brace in each corner': `${pair('bond: glue')}\n${braces}`,
};

const bench = { shelf: value(loadShelf(undefined)), ruleset: value(loadRules(undefined)), seed: 1, samples: 1000 };
const planOf = (build: string, face = '{ width: 1000 mm, height: 800 mm }') => value(readPlanWith(`plan: 1\nname: Heart\nface: ${face}\n${build}\n`, 'heart.yaml', bench.shelf));
const readme = page('README.md');
const printed = /<!-- heart -->\n([\s\S]*?)\n<!-- \/heart -->/.exec(readme)![1]!.split('\n').slice(2);

describe('the table of README.md', () => {
  test('has these rows and no others', () => expect(printed.map((row) => row.split(' | ')[0]!.slice(2))).toEqual(Object.keys(rows)));

  test.each(Object.entries(rows))('%s', async (name, build) => {
    const { facts } = await audit(planOf(build), bench);
    const number = (path: FactPath): number => findFact(facts, path, 'frame') as number;
    const chance = chanceInWords(number('warp.corner_lift_chance'));
    const row = `| ${name} | ${(Math.round(number('frame.critical_pull_N_per_m') / 10) * 10).toFixed(0)} N/m | ${number('frame.twist_reserve').toFixed(1)} | ${chance} |`;
    expect(printed[Object.keys(rows).indexOf(name)]).toBe(row);
  });
});

describe('the sentences beside it', () => {
  const J = (build: string): number => buildModel(planOf(build), bench.shelf).bars.top.section.J_mm4;

  test('a glued pair twists about five times as hard as one strip, a loose one only twice', () => {
    expect(J(pair('bond: glue')) / J(strip)).toBeCloseTo(5, 0);
    expect(J(pair('bond: none')) / J(strip)).toBeCloseTo(2, 6);
  });

  const critical = async (plan: ReturnType<typeof planOf>): Promise<number> => findFact((await audit(plan, bench)).facts, 'frame.critical_pull_N_per_m', 'frame') as number;

  test('on twice the side a strip bears about a sixth of the pull', async () => {
    const square = (side_mm: number) => planOf(strip, `{ width: ${side_mm + 38} mm, height: ${side_mm + 38} mm }`);
    const ratio = (await critical(square(600))) / (await critical(square(1200)));
    expect(ratio).toBeGreaterThan(5.5);
    expect(ratio).toBeLessThan(6.5);
  });

  test('at half the critical pull the twist of the boards is magnified about twofold', async () => {
    const lift_sd_mm = (pull_N_per_m: number): number => {
      const model = buildModel(planOf(`${strip}\ncloth: { pull: ${pull_N_per_m} N/m }`), bench.shelf);
      return assessWarp(model, solveModel(model), { corner_lift_limit_mm: 5, bar_bow_limit_mm: { top: 5, bottom: 5, left: 5, right: 5 }, seed: 1, samples: 1000 })!.lift.sd;
    };
    const half = (await critical(planOf(strip))) / 2;
    expect(lift_sd_mm(half) / lift_sd_mm(1)).toBeGreaterThan(1.8);
    expect(lift_sd_mm(half) / lift_sd_mm(1)).toBeLessThan(2.2);
  });
});

/** The value of a result that must be one. */
function value<T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
