import { describe, expect, it } from 'vitest';
import { cutPlan } from '../../src/cutting/cut-plan.js';
import type { SawAtHand } from '../../src/base/saw.js';
import { markingOrder } from '../../src/cutting/marking.js';
import { boards, shelfWith, studioPlan } from './studio.js';

const shelf = shelfWith('strip-19x38', boards([2400, 3.2]));
const crossed = { crossbars: [{ runs: 'upright', at: '1/2', stock: 'strip-19x38', lay: 'flat' }] };

describe('the order at the saw', () => {
  const cut = cutPlan([studioPlan(crossed)], shelf);
  const order = markingOrder(cut);

  it('sets the stop once per length, square ends before mitres, longest first', () => {
    expect(order.steps.map(({ ends, stop_mm }) => [ends, stop_mm])).toEqual([['square', 544], ['mitre', 900], ['mitre', 620]]);
    expect(order.steps.map(({ cuts }) => cuts.map(({ tag }) => tag).sort())).toEqual([['C1'], ['B', 'T'], ['L', 'R']]);
  });

  it('keeps pairs that must match together', () => {
    expect(order.steps.map(({ matching }) => matching.map((tags) => [...tags].sort()))).toEqual([[], [['B', 'T']], [['L', 'R']]]);
    const square = markingOrder(cutPlan([studioPlan({ face: { width: '500 mm', height: '500 mm' }, count: 2 })], shelf));
    expect(square.steps).toHaveLength(1);
    expect(square.steps[0]?.matching.map((tags) => [...tags].sort())).toEqual([['1-B', '1-L', '1-R', '1-T'], ['2-B', '2-L', '2-R', '2-T']]);
  });

  it('makes the trial on the shortest leftover that can be held, or on scrap', () => {
    const lefts = cut.stocks[0]?.boards.map(({ left_mm }) => left_mm).filter((left) => left >= 200) ?? [];
    expect(lefts.length).toBeGreaterThan(0);
    for (const test of order.tests) expect(test.length_mm).toBe(Math.min(...lefts));
    expect(order.tests.map(({ ends }) => ends)).toEqual([['square', 'mitre']]);
    expect(order.tests[0]?.words).toMatch(/one square cut .* then on the same piece two 45° cuts/);
    const exact = markingOrder(cutPlan([studioPlan({ face: { width: '1000 mm', height: '1000 mm' } })], shelfWith('strip-19x38', boards([1100, 1]), { end_trim_mm: 0 })));
    expect(exact.tests).toMatchObject([{ ends: ['mitre'], board: null, length_mm: null }]);
    expect(exact.tests[0]?.words).toContain('scrap');
  });

  it('of leftovers alike, takes the one of the first board', () => {
    // Each square-ended side on a board of its own: four leftovers, two and two alike.
    const alike = markingOrder(cutPlan([studioPlan({ face: { width: '700 mm', height: '700 mm' }, corners: { cut: 'half-lap' } })], shelfWith('strip-19x38', boards([1000, 1]), { end_trim_mm: 0 })));
    expect(alike.tests).toMatchObject([{ board: 1, length_mm: 300 }]);
  });

  it('says it in the reader’s units', () => {
    expect(order.steps[1]?.words).toMatch(/^Set the stop once: 45° at both ends, 900 mm from long point to long point\. Cut .*board 1/);
    const inch = markingOrder(cutPlan([studioPlan({ face: { width: '30 in', height: '20 in' } })], shelf));
    expect(inch.steps[0]?.words).toContain('30 in from long point');
  });

  it('the strips of a lip have their own steps, each strip of each frame once, at the length of the cut list', () => {
    const lipped = cutPlan([studioPlan({ bars: { stock: 'strip-19x38', lay: 'flat', lip: '6 mm' }, count: 2 })], shelf);
    const { lips } = markingOrder(lipped, 'mitre-box');
    expect(lips.map(({ stop_mm }) => stop_mm)).toEqual([900, 620]);
    expect(lips.flatMap(({ cuts }) => cuts.map(({ tag }) => tag)).sort()).toEqual(['1-lip B', '1-lip L', '1-lip R', '1-lip T', '2-lip B', '2-lip L', '2-lip R', '2-lip T']);
    expect(lips[0]?.words).toMatch(/^Strips of the lip: set the stop once: 45° at both ends, 900 mm .* Take the other 45° slot/);
    expect(order.lips).toEqual([]);
  });

  it('speaks of stops and slots only where the saw has them', () => {
    const words = (saw: SawAtHand): string => { const { tests, steps } = markingOrder(cut, saw); return [...tests, ...steps].map((one) => one.words).join(' '); };
    expect(words('hand')).not.toMatch(/\bstop\b|swing|slot|fence|your saw/iu);
    expect(words('hand')).toMatch(/Cut one stick to the length and mark every piece from it: 45° at both ends, 900 mm from long point to long point\. Saw /);
    expect(words('mitre-box')).toMatch(/other 45° slot/);
    expect(words('mitre-box')).not.toMatch(/swing/iu);
    expect(words('power')).not.toMatch(/slot/);
    expect(words('none')).toMatch(/^Ask for a trial on scrap .*In the shop, against one stop: .* Have cut /);
    expect(words('none')).not.toMatch(/Set the stop|Cut T|fence|Swing/);
  });

  it('turns every other mitred piece, never the first', () => {
    const mitres = order.steps.filter(({ ends }) => ends === 'mitre').flatMap(({ cuts }) => cuts);
    for (const board of new Set(mitres.map((one) => one.board))) expect(mitres.filter((one) => one.board === board).map(({ turn }) => turn)).toEqual(mitres.filter((one) => one.board === board).map((_, i) => i % 2 === 1));
  });

  it('cuts blanks now and their mitres when the glue has set', () => {
    const glued = markingOrder(cutPlan([studioPlan({ bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue' } })], shelf));
    expect(glued.steps.map(({ ends, stop_mm }) => [ends, stop_mm])).toEqual([['square', 920], ['square', 640]]);
    expect(glued.later.map(({ ends, stop_mm, cuts }) => [ends, stop_mm, cuts.map(({ tag }) => tag).sort()])).toEqual([['mitre', 900, ['B', 'T']], ['mitre', 620, ['L', 'R']]]);
    expect(order.later).toEqual([]);
  });
});
