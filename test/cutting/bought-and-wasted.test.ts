import { describe, expect, test } from 'vitest';
import { needsOf } from '../../src/cost/needs.js';
import { cutPlan } from '../../src/cutting/cut-plan.js';
import { boardsFor, shortBoards } from '../../src/cutting/enough-boards.js';
import { buildModel } from '../../src/model/build-model.js';
import { boards, demoShelf, shelfWith, studioPlan } from './studio.js';

const saw = { kerf_mm: 3, end_trim_mm: 0, knot_waste_share: { none: 0, few: 0, many: 0 } };

describe('boards', () => {
  test('exactly as many as there are is enough; one fewer is short by one', () => {
    const plan = studioPlan();
    const shelf = (available: number) => shelfWith('strip-19x38', boards([1000, 3, available]), saw);
    const whole = cutPlan([plan], shelf(9));
    expect(whole.stocks[0]!.kinds).toMatchObject([{ length_mm: 1000, count: 4 }]);
    expect(shortBoards(whole, shelf(4))).toEqual([]);
    expect(shortBoards(whole, shelf(3))).toEqual([{ stock: 'strip-19x38', length_mm: 1000, price: 3, needed: 4, available: 3 }]);
    expect(boardsFor([plan], shelf(4)).short).toEqual([]);
    expect(boardsFor([plan], shelf(3)).short).toMatchObject([{ needed: 4, available: 3 }]);
  });
  test('waste is what is bought less what the frame holds: a mitred piece counts at the mean of its two lengths', () => {
    const cut = cutPlan([studioPlan()], shelfWith('strip-19x38', boards([1000, 3]), saw));
    const used_mm = 2 * (900 - 38) + 2 * (620 - 38);
    expect(cut.waste_share).toBeCloseTo(1 - used_mm / 4000, 12);
  });
});

describe('what hanging takes', () => {
  const needs = (more: object) => Object.fromEntries(needsOf(buildModel(studioPlan(more), demoShelf)).filter(({ used_for }) => used_for.includes('hanging')).map(({ kind, amount }) => [kind, amount]));
  test('two rings, as many hooks as the plan says, and the wire with 300 mm for its knots, up to the tape’s mark', () => {
    const { ring, hook, wire } = needs({ hang: { by: 'wire', from: 'inside', slack: '61 mm', hooks: 1 } });
    expect([ring, hook]).toEqual([2, 1]);
    const length_mm = 2 * Math.hypot((900 - 2 * 38) / 2, 61);
    expect(wire).toBe(Math.ceil(length_mm * 2) / 2 + 300);
  });
  test('an inch plan: a foot of wire for the knots, the rest up to a sixteenth', () => {
    const { wire } = needs({ face: { width: '36 in', height: '24 in' }, hang: { by: 'wire', from: 'back', slack: '2-1/2 in', hooks: 2 } });
    const length_in = 2 * Math.hypot((36 - 38.1 / 25.4) / 2, 2.5);
    expect(wire! / 25.4).toBeCloseTo(Math.ceil(length_in * 16) / 16 + 12, 6);
  });
  test('two hooks take two rings and two hooks, and no wire', () => {
    expect(needs({ hang: { by: 'two-hooks' } })).toEqual({ ring: 2, hook: 2 });
  });
});
