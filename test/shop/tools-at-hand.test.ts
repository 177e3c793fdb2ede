import { describe, expect, test } from 'vitest';
import { audit } from '../../src/audit.js';
import { sortFindings } from '../../src/findings/summary.js';
import { orderOfWork } from '../../src/order-of-work/order-of-work.js';
import { toolLimits } from '../../src/order-of-work/tool-limits.js';
import { readShop } from '../../src/shop/read-shop.js';
import { toolsAtHand } from '../../src/shop/tools-at-hand.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';
import { bench, planOf } from '../suggest/studio.js';

const tools = (lines: string) => {
  const read = readShop(`shop: 1\n${lines}\n`, 'shop.yaml');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return toolsAtHand(read.value);
};
const mitred = { face: { width: '730 mm', height: '470 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' } };
const plied = { face: { width: '1230 mm', height: '870 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, stack: 'side-by-side', bond: 'glue' } };
const words = (plan: object, lines: string): string => orderOfWork(demoModel(plan), tools(lines)).map(({ text }) => text).join('\n');
const limits = (plan: object, lines: string): readonly string[] => toolLimits(demoModel(plan), tools(lines)).map(({ id }) => id);

test('the best saw counts, and the highest where all heights are known', () => {
  expect(tools('saws: [ { kind: hand, most: 40 mm }, { kind: mitre-box, most: 90 mm } ]')).toEqual({ saw: 'mitre-box', saw_height_mm: 90 });
  expect(tools('saws: [ { kind: hand }, { kind: mitre-box, most: 90 mm } ]')).toEqual({ saw: 'mitre-box' });
  expect(tools('clamps: { corner: 2 }\nflat-places: 0\nmoisture-meter: false')).toEqual({ corner_clamps: 2, flat_place: false, moisture_meter: false });
});

describe('the order of work for what there is', () => {
  test('a workshop that says nothing, or has everything, changes no word and limits nothing', () => {
    const full = 'saws: [ { kind: mitre-box } ]\nclamps: { corner: 4, bar: 60 }\nflat-places: 2\nmoisture-meter: true';
    for (const plan of [mitred, plied]) {
      expect(words(plan, full)).toBe(orderOfWork(demoModel(plan)).map(({ text }) => text).join('\n'));
      expect([limits(plan, full), limits(plan, '')]).toEqual([[], []]);
    }
  });

  test.each([
    ['no saw', mitred, 'saws: [ { kind: none } ]', /ask the shop for the trial first[\s\S]*give the cut list to the shop/u, 'no-saw'],
    ['a hand saw', mitred, 'saws: [ { kind: hand } ]', /There is no mitre box[\s\S]*plane the ends true/u, 'mitre-by-hand'],
    ['a low saw', plied, 'saws: [ { kind: power, most: 30 mm } ]', /the saw here cuts 30 mm/u, 'saw-too-low'],
    ['one pair of corner clamps', mitred, 'clamps: { corner: 2 }', /glue two corners across from each other[\s\S]*then the other two/u, 'few-corner-clamps'],
    ['no corner clamps', mitred, 'clamps: { corner: 0 }', /wind a cord twice round/u, 'few-corner-clamps'],
    ['one pair of bar clamps', plied, 'clamps: { bar: 2 }', /There are 2 clamps and a bar asks for 6[\s\S]*one bar at a time/u, 'few-bar-clamps'],
    ['no flat table', mitred, 'flat-places: 0', /no rocking on two straight battens[\s\S]*clamp them on two straight battens[\s\S]*Lay the frame on two straight battens/u, 'no-flat-place'],
    ['no moisture meter', mitred, 'moisture-meter: false', /^There is no moisture meter: weigh one board[\s\S]*every second day[\s\S]*stops losing/u, 'no-moisture-meter'],
  ] as const)('%s', (_, plan, lines, says, id) => {
    expect(words(plan, lines)).toMatch(says);
    expect(words(plan, '')).not.toMatch(says);
    expect(limits(plan, lines)).toEqual([id]);
  });

  test('what is cut in the shop calls for no caution about the saw here', () => {
    expect(orderOfWork(demoModel(mitred), tools('saws: [ { kind: none } ]')).flatMap(({ cautions }) => cautions)).not.toContain('saw-blade');
  });
});

test('a limit is a caution of the audit with its way round; without a workshop there is none, and nothing is ever cleared by it', async () => {
  const plan = planOf('plan: 1\nname: Larder\nface: { width: 460 mm, height: 370 mm }\nbars: { stock: strip-19x38, lay: flat }\n');
  const plain = await audit(plan, bench);
  const short = await audit(plan, { ...bench, tools: tools('clamps: { corner: 2 }\nmoisture-meter: false') });
  const own = short.findings.filter(({ rule }) => rule.startsWith('tools/'));
  expect(own.map(({ rule, verdict }) => [rule, verdict])).toEqual([['tools/few-corner-clamps', 'caution'], ['tools/no-moisture-meter', 'caution']]);
  expect(own.every(({ do: ways }) => ways.length === 1)).toBe(true);
  expect(short.findings.filter(({ rule }) => !rule.startsWith('tools/'))).toEqual(sortFindings(plain.findings));
  expect([plain.verdict, short.verdict]).toEqual(['clear', 'caution']);
});
