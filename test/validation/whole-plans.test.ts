/**
 * Whole audits of a dozen unsymmetric plans against sums by hand: statics of a rectangle of four bars, Saint-Venant's torsion
 * series, a membrane's double sine series, Hailwood–Horrobin and eqs. 13-2 and 13-3 of Wood Handbook (2010), Crank's series,
 * statics of a wire. Derived, in whole-plans-by-hand.ts, without anything of the tool; mm, N, kg. What is compared is the
 * audit's JSON, so the wiring is in it.
 */
import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { auditText } from '../../src/audit.js';
import { loadRules, loadShelf } from '../../src/cli/load.js';
import type { Result } from '../../src/base/problem.js';
import { auditData } from '../../src/report/json.js';
import { byHand } from './whole-plans-by-hand.js';
import { planOf, wholePlans, type WholePlan } from './whole-plans.js';
import { expectWithin, noteShare } from './recorded.js';

interface Told {
  readonly facts: readonly { readonly path: string; readonly about: string; readonly value: unknown }[];
  readonly supplies: { readonly lines: readonly { readonly kind: string; readonly for_one: number }[] };
}

function must<T>(read: Result<T>): T {
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}
const bench = { shelf: must(loadShelf(undefined)), ruleset: must(loadRules(undefined)), seed: 1, samples: 50 };
const audits = await Promise.all(
  wholePlans.map(async (p) => auditData(must(await auditText(stringify(planOf(p)), 'plan.yaml', bench))) as unknown as Told),
);
const told = (p: WholePlan): Told => audits[wholePlans.indexOf(p)]!;
const valueOf = ({ facts }: Told, key: string): number => {
  const [path, about] = key.split(' ');
  return facts.find((one) => one.path === path && (about === undefined || one.about === about))?.value as number;
};

/**
 * What the tool itself rounds or leaves out of a formula: the bow line has 16 stations or more, the middle of a bar need not
 * be one of them (its roll there is up to a 400th less), bars give a little along their length, days are found to a
 * thousandth. All else agrees to the digits of a double.
 */
const tolerance = (key: string): number =>
  /roll_.*mrad/u.test(key) ? 3e-3 : /bow/u.test(key) ? 2e-3 : /moment|dish|push/u.test(key) ? 1e-3 : /wait/u.test(key) ? 5e-4 : 1e-9;

describe.each(wholePlans.map((p) => [p.name, p] as const))('%s', (_, p) => {
  test('every number that can be had by hand (derived)', () => {
    const audit = told(p);
    for (const [key, theirs] of Object.entries(byHand(p))) {
      const ours = valueOf(audit, key);
      noteShare(ours, theirs, tolerance(key), 'derived');
      const deviation = theirs === 0 ? ours : ours / theirs - 1;
      expect.soft(Math.abs(deviation), `${key}: told ${ours}, by hand ${theirs}`).toBeLessThan(tolerance(key));
    }
    expect(Object.keys(byHand(p)).length).toBeGreaterThanOrEqual(30);
  });
  test('staples for every side, none farther apart than asked (derived)', () => {
    const { supplies } = told(p);
    const count = 2 * (Math.ceil(p.face[0] / p.fixing[1]) + Math.ceil(p.face[1] / p.fixing[1]));
    expectWithin(supplies.lines.find(({ kind }) => kind === 'staple')!.for_one, count, 0, 'derived');
  });
});

/** All ways to share pieces among boards. */
function shared<T>([first, ...rest]: readonly T[]): readonly (readonly (readonly T[])[])[] {
  if (first === undefined) return [[]];
  const beside = (boards: readonly (readonly T[])[], i: number): readonly (readonly T[])[] =>
    boards.map((one, j) => (i === j ? [first, ...one] : one));
  return shared(rest).flatMap((boards) => [[[first], ...boards], ...boards.map((_, i) => beside(boards, i))]);
}

/** The least that boards cost, when each piece takes `more` mm beside its length and a board lends `share` of itself less 2 × 15 mm. */
function least(p: WholePlan, pieces: readonly number[], more: number, share: number): number {
  const price = (board: readonly number[]): number => {
    const length = board.reduce((a, b) => a + b + more, 0);
    return Math.min(...p.sold.filter(([long]) => long * share - 30 >= length).map(([, cost]) => cost));
  };
  return Math.min(...shared(pieces).map((boards) => boards.map(price).reduce((a, b) => a + b, 0)));
}

/** Bars of one ply: mitred pieces nested head to foot save up to a bar's width each; a twentieth of a board is lost to knots. */
const single = wholePlans.filter(({ bars }) => bars['plies'] === undefined);
const bounds = (p: WholePlan): readonly [low: number, high: number] => {
  const [W, H] = p.face;
  const short = p.cut === 'butt' ? H - 2 * p.w : H;
  return [least(p, [W, W, short, short], 3 - (p.cut === 'mitre' ? p.w : 3 / 4), 0.95), least(p, [W, W, H, H], 3, 0.95)];
};

test('the boards cost what trying every way of sharing the pieces finds, whether mitres nest or not (derived)', () => {
  expect(single.filter((p) => bounds(p)[0] === bounds(p)[1]).length).toBeGreaterThanOrEqual(7);
  for (const p of single) {
    const cost = valueOf(told(p), 'cutting.cost');
    const [low, high] = bounds(p);
    expect.soft(cost, p.name).toBeGreaterThanOrEqual(low - 1e-9);
    expect.soft(cost, p.name).toBeLessThanOrEqual(high + 1e-9);
  }
});
