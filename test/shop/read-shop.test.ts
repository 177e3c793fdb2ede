import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayInWords, dayNumber, dayText, weekdayOf, weekdays } from '../../src/base/days.js';
import { readShop } from '../../src/shop/read-shop.js';

const full = `shop: 1
name: Room 12
sessions: { on: [ tuesday, friday ], from: 2027-01-12, not-on: [ 2027-01-15 ], at: 17:30, length: 90 min, people: 24 }
clamps: { corner: 32, bar: 60 }
saws: [ { kind: mitre-box, count: 8, most: 90 mm }, { kind: hand } ]
flat-places: 6
moisture-meter: false
tools: [ { name: mitre box and saw, price: 14, count: 8 } ]
compare-with: { price: 32, for: { width: 500 mm, height: 400 mm } }
`;

const shopOf = (text: string) => {
  const read = readShop(text, 'shop.yaml');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
};

/** Code of every problem, and what stands where it points. */
const problems = (text: string): readonly string[] => {
  const read = readShop(text, 'shop.yaml');
  return (read.ok ? read.warnings : read.problems).map(({ code, line, column }) => `${code} at ${text.split('\n')[line - 1]!.slice(column - 1).split(/[ ,]/)[0]}`);
};

describe('a good workshop', () => {
  test('everything in its unit; sessions on their days, without the holidays', () => {
    const shop = shopOf(full);
    expect(shop).toMatchObject({ name: 'Room 12', repeated: true, corner_clamps: 32, bar_clamps: 60, flat_places: 6, moisture_meter: false, compare_with: { price: 32, width_mm: 500, height_mm: 400 } });
    expect(shop.saws).toEqual([{ kind: 'mitre-box', count: 8, most_mm: 90 }, { kind: 'hand', count: 1, most_mm: null }]);
    expect(shop.tools).toEqual([{ name: 'mitre box and saw', price: 14, count: 8 }]);
    expect(shop.sessions.slice(0, 3).map(({ day, length_min, people }) => [dayText(day), length_min, people])).toEqual([['2027-01-12', 90, 24], ['2027-01-19', 90, 24], ['2027-01-22', 90, 24]]);
    expect(shop.sessions[0]!.start_min).toBe((shop.sessions[0]!.day * 24 + 17.5) * 60);
  });

  test('a list of dates in any order; what is left out is not counted', () => {
    const shop = shopOf('shop: 1\nsessions: [ { date: 2027-03-02, length: 2 h }, { date: 2027-02-27, length: 45 min, people: 3 } ]\n');
    expect(shop.sessions.map(({ day, length_min, people }) => [dayText(day), length_min, people])).toEqual([['2027-02-27', 45, 3], ['2027-03-02', 120, null]]);
    expect(shop).toMatchObject({ repeated: false, corner_clamps: null, bar_clamps: null, saws: null, flat_places: null, moisture_meter: null, tools: [], compare_with: null });
  });
});

test('every mistake at its place, all at once', () => {
  expect(problems('shop: 1\nsessions: { on: [ tusday ], from: 2027-02-29, length: 90, people: 0 }\nclamps: { corners: 4 }\nsaws: [ { kind: axe } ]\n')).toEqual(
    ['not-one-of at tusday', 'not-a-day at 2027-02-29', 'no-unit at 90', 'out-of-range at 0', 'unknown-key at corners:', 'not-one-of at axe']);
  expect(problems('shop: 1\nsessions: [ { date: 2027-03-02, at: 18:00, length: 2 h }, { date: 2027-03-02, at: 19:30, length: 1 h } ]\nsaws: [ { kind: none, count: 2 } ]\n')).toEqual(['session-twice at 2027-03-02', 'no-saw-with at count:']);
  expect(problems('shop: 1\nsessions: [ { date: 2027-03-02, at: 25:00, length: 2 h } ]\nsaws: [ { kind: none }, { kind: hand } ]\n')).toEqual(['not-a-time at 25:00']);
  expect(problems('pile: 1\n')).toEqual(['not-this-format at pile:']);
  expect(problems('shop: 2\n')).toEqual(['later-format at 2']);
});

test('days: a second count, by adding one day after the other, gives the same text and weekday', () => {
  // 1 March 1999 was a Monday.
  let number = dayNumber('1999-03-01')!;
  for (let i = 0; i < 4 * 366; i++, number++) {
    const utc = new Date(Date.UTC(1999, 2, 1 + i));
    expect(dayText(number)).toBe(utc.toISOString().slice(0, 10));
    expect(weekdayOf(number)).toBe(weekdays[(utc.getUTCDay() + 6) % 7]);
  }
  expect(dayInWords(dayNumber('2027-01-12')!)).toBe('Tuesday, 12 January 2027');
  fc.assert(fc.property(fc.integer({ min: -130_000, max: 370_000 }), (n) => dayNumber(dayText(n)) === n));
  expect(['2027-02-29', '2100-02-29', '2027-13-01', '2027-1-2', 'tomorrow', '2027-00-10'].map(dayNumber)).toEqual([null, null, null, null, null, null]);
});
