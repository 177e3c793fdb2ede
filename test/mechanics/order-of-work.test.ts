import { describe, expect, test } from 'vitest';
import { orderOfWork, type ToolsAtHand } from '../../src/order-of-work/order-of-work.js';
import { sawReach } from '../../src/order-of-work/saw-reach.js';
import { demoModel } from './fasteners/demo-model.js';

const small = { face: { width: '630 mm', height: '470 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' } };
const steps = (plan: object, tools: ToolsAtHand = {}) => orderOfWork(demoModel(plan), tools);
const text = (plan: object, id: string, tools: ToolsAtHand = {}): string => steps(plan, tools).find((step) => step.id === id)?.text ?? '';

describe('steps of the trade, each where it belongs', () => {
  test('the front edge is shaped while the bars are square-ended, before the trial joint and the cut', () => {
    const ids = steps(small).map(({ id }) => id);
    const at = (id: string): number => ids.indexOf(id);
    expect(at('edge')).toBeLessThan(at('trial'));
    expect(at('trial')).toBeLessThan(at('cut'));
    for (const [before, after] of [['threads', 'stretch'], ['stretch', 'second-round'], ['second-round', 'corners'], ['corners', 'trim'], ['trim', 'ground'], ['ground', 'rest'], ['rest', 'hang'], ['dust-cover', 'hang'], ['hang', 'when-slack']] as const) expect([before, after, at(before) < at(after)]).toEqual([before, after, true]);
  });

  test('a half-lap is marked, sawn and tried with its own length and depth', () => {
    const lap = { ...small, corners: { cut: 'half-lap' } };
    for (const id of ['trial', 'cut']) expect(text(lap, id)).toMatch(/38 mm[\s\S]*9\.5 mm/);
    expect(text(lap, 'cut')).toMatch(/shoulders on the waste side, then the cheeks/);
    expect(text({ ...lap, bars: { stock: 'strip-19x38', lay: 'edge' } }, 'trial')).toMatch(/19 mm long and 19 mm deep/);
  });

  test('glued corners are never said to be opened with keys', () => {
    expect(text(small, 'when-slack')).not.toMatch(/keys/);
    expect(text(small, 'when-slack')).toMatch(/cannot be opened/);
  });
});

describe('the saw', () => {
  const high = { face: { width: '1730 mm', height: '1310 mm' }, bars: { stock: 'board-19x89', lay: 'edge' } };
  test('does not reach a board of 89 mm on edge: the order of work says what to do; flat it does', () => {
    expect(sawReach(demoModel(high))).toEqual({ saw_mm: 65, highest_mm: 89, reaches: false });
    expect(text(high, 'cut')).toMatch(/stand 89 mm high and a common mitre box cuts 65 mm[\s\S]*meet the cut from the other edge/);
    expect(sawReach(demoModel(small)).reaches).toBe(true);
    expect(text(small, 'cut')).not.toMatch(/mitre box/);
  });
  test('of the workshop counts where it is known, and inches are told in half inches', () => {
    expect(text(high, 'cut', { saw_height_mm: 90 })).not.toMatch(/mitre box/);
    expect(sawReach(demoModel(small), { saw_height_mm: 15 }).reaches).toBe(false);
    const inch = demoModel({ ...high, face: { width: '60 in', height: '48 in' } });
    expect(sawReach(inch).saw_mm).toBe(2.5 * 25.4);
  });
  test('a deep crossbar counts as well', () => {
    expect(sawReach(demoModel({ ...small, bars: { stock: 'stud-38x64', lay: 'edge' }, crossbars: [{ runs: 'upright', at: '1/3', stock: 'board-19x89', lay: 'edge' }] })).highest_mm).toBe(89);
  });
});

test('the strips of a lip are sawn to the cut list and glued on when the bars are cut, on butted bars when the frame is closed', () => {
  const ids = (cut: string) => steps({ ...small, bars: { ...small.bars, lip: '4 mm' }, corners: { cut } }).map(({ id }) => id);
  for (const cut of ['mitre', 'keyed']) expect([cut, ids(cut).indexOf('edge') - ids(cut).indexOf('cut')]).toEqual([cut, 1]);
  for (const cut of ['butt', 'half-lap']) expect([cut, ids(cut).indexOf('edge') > ids(cut).indexOf('glue-corners')]).toEqual([cut, true]);
  expect(ids('mitre').filter((id) => id === 'edge')).toHaveLength(1);
});
