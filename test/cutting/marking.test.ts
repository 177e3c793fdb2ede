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

  it('of leftovers, takes none under 200 mm', () => {
    // Two butted sides of 824 mm on a board each: what is left of 1024 mm is just enough, of 1023.5 mm is not.
    const tried = (length: number) => markingOrder(cutPlan([studioPlan({ face: { width: '900 mm', height: '824 mm' }, corners: { cut: 'butt' } })], shelfWith('strip-19x38', boards([length, 1]), { end_trim_mm: 0 }))).tests[0];
    expect(tried(1024)).toMatchObject({ ends: ['square'], length_mm: 200, words: expect.stringContaining('Saw the leftover of 200 mm off the end of board 1 first') });
    expect(tried(1023.5)).toMatchObject({ board: null, length_mm: null, words: expect.stringMatching(/^No leftover is long enough/u) });
  });

  it('what is cut already is not sawn: only the other pieces have a stop, and where all are ready nothing is tried', () => {
    const hand = (...lengths: readonly number[]) => cutPlan([studioPlan()], shelfWith('strip-19x38', [...boards([2400, 3]), ...lengths.map((length_mm, i) => ({ length_mm, price: 0, available: 1, as_is: 'mitre' as const, mark: `P${i}` }))]));
    const some = markingOrder(hand(900, 900, 620));
    expect(some.steps.map(({ stop_mm, cuts, matching }) => [stop_mm, cuts.map(({ tag }) => tag), matching])).toEqual([[620, ['R'], []]]);
    expect(some.steps[0]!.words).toMatch(/^Set the stop once: 45° at both ends, 620 mm .* Cut R from board 1\./u);
    expect(some.tests).toHaveLength(1);
    expect(markingOrder(hand(900, 900, 620, 620))).toEqual({ tests: [], steps: [], later: [], lips: [] });
  });

  it('a saw that swings to one side only is spoken of where a power saw may do the mitres', () => {
    const trial = (saw: SawAtHand | undefined, corners = 'mitre') => markingOrder(cutPlan([studioPlan({ corners: { cut: corners } })], shelf), saw).tests[0]!.words;
    const told = (words: string) => words.includes('If your saw swings to one side only');
    expect([undefined, 'power', 'mitre-box', 'hand', 'none'].map((saw) => told(trial(saw as SawAtHand | undefined)))).toEqual([true, true, false, false, false]);
    expect(told(trial(undefined, 'butt'))).toBe(false);
    const scrap = (saw: SawAtHand | undefined) => markingOrder(cutPlan([studioPlan({ face: { width: '1000 mm', height: '1000 mm' } })], shelfWith('strip-19x38', boards([1100, 1]), { end_trim_mm: 0 })), saw).tests[0]!.words;
    expect([told(scrap('power')), told(scrap('hand'))]).toEqual([true, false]);
    expect(trial(undefined, 'half-lap')).toContain('then on the same piece the trial lap');
    expect(trial(undefined, 'butt')).not.toContain('lap');
  });

  it('a piece that lies the other way round is named, by hand and in the shop with its short side, at a stop with the shorter stop', () => {
    // All four on one board, nested: every other one is turned, one of each length.
    const whole = cutPlan([studioPlan()], shelfWith('strip-19x38', boards([3600, 5]), { end_trim_mm: 0 }));
    const words = (saw: SawAtHand, stop_mm: number) => markingOrder(whole, saw).steps.find((step) => step.stop_mm === stop_mm)!;
    for (const stop_mm of [900, 620]) {
      const turned = words('hand', stop_mm).cuts.filter(({ turn }) => turn).map(({ tag }) => tag);
      expect(turned).toHaveLength(1);
      const short = `${turned[0]} lies the other way round on the board, ${stop_mm - 76} mm from short point to short point.`;
      expect(words('hand', stop_mm).words).toContain(short);
      expect(words('none', stop_mm).words).toContain(short);
      expect(words('power', stop_mm).words).toContain(`Short side to the fence for ${turned[0]}: there set the stop to ${stop_mm - 76} mm.`);
    }
    const square = cutPlan([studioPlan({ face: { width: '400 mm', height: '400 mm' } })], shelf);
    const two = markingOrder(square, 'hand').steps[0]!;
    expect(two.words).toContain(`${two.cuts.filter(({ turn }) => turn).map(({ tag }) => tag).join(', ')} lie the other way round on the board, 324 mm`);
    expect(two.cuts.filter(({ turn }) => turn)).toHaveLength(2);
    // A board for each: nothing is turned, and nothing is said of it.
    const apart = markingOrder(cutPlan([studioPlan()], shelfWith('strip-19x38', boards([940, 1]))), 'power');
    expect(apart.steps.every(({ cuts, words: told }) => cuts.every(({ turn }) => !turn) && !told.includes('Short side'))).toBe(true);
  });

  it('one piece of a length is marked with square and knife, several from one stick', () => {
    const one = markingOrder(cut, 'hand').steps[0]!;
    expect(one.words).toMatch(/^Mark with square and knife: square ends, 544 mm\. Saw C1 from board \d\.$/u);
    const two = cutPlan([studioPlan({ crossbars: [...crossed.crossbars, { runs: 'upright', at: '1/4', stock: 'strip-19x38', lay: 'edge' }] })], shelf);
    expect(markingOrder(two, 'hand').steps[0]!.words).toMatch(/^Cut one stick to the length and mark every piece from it: square ends, 544 mm\. Saw C/u);
    // Two crossbars are no pair that must match.
    expect(markingOrder(two, 'hand').steps[0]!.matching).toEqual([]);
  });

  it('plies of one place match, and plies of one crossbar', () => {
    const glued = cutPlan([studioPlan({ bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue' }, crossbars: [{ runs: 'upright', at: '1/2', stock: 'strip-19x38', lay: 'edge', plies: 2 }] })], shelf);
    const { steps, later } = markingOrder(glued);
    expect(steps.map(({ stop_mm, matching }) => [stop_mm, matching.map((tags) => [...tags].sort()).sort()])).toEqual([[920, [['B1', 'T1'], ['B2', 'T2']]], [640, [['L1', 'R1'], ['L2', 'R2']]], [564, [['C11', 'C12']]]]);
    expect(later.map(({ ends, stop_mm, cuts, matching }) => [ends, stop_mm, cuts.map(({ tag, board, turn }) => `${tag} ${board} ${turn}`).sort(), matching.map((tags) => [...tags].sort())])).toEqual([
      ['mitre', 900, ['B 0 false', 'T 0 false'], [['B', 'T']]], ['mitre', 620, ['L 0 false', 'R 0 false'], [['L', 'R']]], ['square', 544, ['C1 0 false'], []],
    ]);
    expect(later[2]!.words).toContain('Cut C1.');
    expect(later[0]!.words).not.toContain('board');
  });

  it('narrow mitres before wide ones of the same length, square ends first', () => {
    const mixed = cutPlan([studioPlan({ corners: { brace: { kind: 'timber', leg: '250 mm', stock: 'strip-19x38', lay: 'edge' } }, ...crossed })], shelf);
    expect(markingOrder(mixed).steps.map(({ ends }) => ends)).toEqual(['square', 'mitre', 'mitre', 'mitre']);
    // On edge a brace is 19 mm across, less than the bars' 38 mm.
    expect(markingOrder(mixed).steps[1]!.cuts.map(({ tag }) => tag).sort()).toEqual(['BL', 'BR', 'TL', 'TR']);
    expect(markingOrder(mixed).steps.slice(2).map(({ stop_mm }) => stop_mm)).toEqual([900, 620]);
  });

  it('strips of the lips of unlike frames match frame by frame', () => {
    const lipped = (face: object, count = 1) => studioPlan({ face, count, bars: { stock: 'strip-19x38', lay: 'flat', lip: '6 mm' } });
    const { lips } = markingOrder(cutPlan([lipped({ width: '700 mm', height: '500 mm' }), lipped({ width: '500 mm', height: '400 mm' }, 2)], shelf));
    expect(lips.map(({ stop_mm, matching, cuts }) => [stop_mm, matching, cuts.length])).toEqual([
      [700, [['1-lip T', '1-lip B']], 2],
      [500, [['1-lip L', '1-lip R'], ['2.1-lip T', '2.1-lip B'], ['2.2-lip T', '2.2-lip B']], 6],
      [400, [['2.1-lip L', '2.1-lip R'], ['2.2-lip L', '2.2-lip R']], 4],
    ]);
    expect(lips[0]!.cuts.every(({ board, turn }) => board === 0 && !turn)).toBe(true);
  });
});
