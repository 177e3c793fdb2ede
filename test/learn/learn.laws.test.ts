import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { departures } from '../../src/learn/departures.js';
import { chanceOfAtLeast } from '../../src/learn/chances.js';
import { formatQuantity } from '../../src/base/units-format.js';
import { outlierWords } from '../../src/learn/page-words.js';
import { learn, learnFrames } from '../../src/learn/learn.js';
import type { KeptPromise } from '../../src/learn/promise-ledger.js';
import { answers, asPromised, Chance, planTexts, shelf, studioYear } from './invented-studio.js';
import { sheetText } from './sheet-text.js';

const texts = (frames: number, seed: number) => [
  ...planTexts,
  ...studioYear(frames, asPromised, new Chance(seed), { boards_read: 0.4, corners_loaded: 0.3 }).frames.flatMap(({ sheets }) => sheets.map(({ file, sheet }) => ({ file, text: sheetText(sheet) }))),
];
const year = texts(6, 11);
const told = (files: typeof year) => {
  const { entries, promises, kept, departures: departed } = learn(files, shelf);
  return { entries, kept, promises: promises.map(({ file, reading, rank }) => `${file} ${reading} ${rank.toFixed(9)}`).sort(), departed };
};

describe('learning', () => {
  const once = told(year);

  test('has something to say of this year', () => {
    expect(once.promises.length).toBeGreaterThan(80);
    expect(once.entries.map(({ key, what, of }) => `${key} ${what} ${of}`)).toEqual([
      'strip-19x38 bow spread', 'strip-19x38 crook spread', 'strip-19x38 twist spread', 'strip-19x38 twist mean', 'mitre-glued-nailed give mean', 'cotton-duck-340 pull mean', 'moisture moisture mean',
    ]);
  });

  test('does not hang on the order of the files', () => {
    fc.assert(fc.property(fc.shuffledSubarray(year, { minLength: year.length }), (shuffled) => { expect(told(shuffled)).toEqual(once); }), { numRuns: 2 });
  });

  test('is the same in inches', () => {
    const inch = (text: string): string => text.replace(/(-?[\d.]+) mm/gu, (_, mm: string) => `${Number(mm) / 25.4} in`).replace(/([\d.]+) kg/gu, (_, kg: string) => `${Number(kg) / 0.45359237} lb`).replace(/(-?[\d.]+) deg\/m/gu, (_, deg: string) => `${Number(deg) * 0.3048} deg/ft`);
    const other = told(year.map(({ file, text }) => ({ file, text: text.startsWith('sheet') ? inch(text) : text })));
    other.entries.forEach(({ posterior }, i) => { for (const end of ['mean', 'sd', 'low', 'high'] as const) expect(posterior[end]).toBeCloseTo(once.entries[i]!.posterior[end], 6); });
    expect(other.kept).toEqual(once.kept);
  });

  test('in two runs, the first’s beliefs before the second, comes to the same as in one', () => {
    const folder = studioYear(5, asPromised, new Chance(5), { boards_read: 0.5, corners_loaded: 0.5 });
    const half = (from: number, to: number) => ({ ...folder, frames: folder.frames.slice(from, to) });
    const whole = learnFrames(folder, shelf, undefined, new Map(answers));
    const first = learnFrames(half(0, 3), shelf, undefined, new Map(answers));
    const second = learnFrames(half(3, 5), shelf, first.beliefs, new Map(answers));
    for (const entry of second.entries) {
      const same = whole.entries.find((other) => other.key === entry.key && other.what === entry.what && other.of === entry.of)!;
      for (const end of ['mean', 'sd', 'low', 'high'] as const) expect(entry.posterior[end]).toBeCloseTo(same.posterior[end], 9);
    }
  });

  test('without a sheet changes nothing', () => {
    const none = learn(planTexts, shelf);
    expect(none).toMatchObject({ frames: 0, promises: [], entries: [], departures: [], outliers: [], kept: { within_nine_in_ten: [0, 0], chance: 1 } });
    expect(none.folder.plans_without_sheets.map(({ name }) => name)).toEqual(['crossed', 'oblong', 'small']);
  });

  test('an outlier is shown and still counts', () => {
    const wrong = year.map((one) => (one.file === 'oblong-2-a.yaml' ? { ...one, text: one.text.replace(/corner-lift: .*/u, 'corner-lift: 95 mm') } : one));
    const found = learn(wrong, shelf);
    expect(found.outliers.map(({ file, reading }) => `${file} ${reading}`)).toContain('oblong-2-a.yaml corner-lift');
    for (const { measured, judged: [low, high] } of found.outliers) expect(measured < low || measured > high).toBe(true);
    const spread = (entries: typeof found.entries): number => entries.find(({ what, of }) => what === 'twist' && of === 'spread')!.posterior.mean;
    expect(spread(found.entries)).toBeGreaterThan(spread(once.entries) * 1.05);
  });
});

test('a lift far smaller than was promised after the first reading is asked about with the range that it misses, not with the sizes up to the largest nine tenths', () => {
  const twice = year.map((one) => (one.file.endsWith('.yaml') && /corner-lift/u.test(one.text) ? { ...one, text: one.text.replace(/corner-lift: .*/u, /when: before-cloth/u.test(one.text) ? 'corner-lift: 40 mm' : 'corner-lift: 1 mm') } : one));
  const small = learn(twice, shelf).outliers.filter(({ measured }) => measured === 1);
  expect(small.length).toBeGreaterThan(0);
  for (const one of small) {
    expect(one.judged[0]).toBeGreaterThan(1);
    expect(outlierWords(one, null, 'metric')).toContain(`where ${formatQuantity(Number(one.judged[0].toPrecision(3)), 'mm', 'metric')} to`);
  }
});

/** Ranks as even as chance makes them, in the groups of a class of four students and three plans. */
const honest = (chance: Chance): readonly KeptPromise[] => Array.from({ length: 120 }, (_, i) => {
  const rank = chance.even();
  const kind = (['corner-lift', 'bow', 'inward-bow', 'tap', 'moisture'] as const)[i % 5]!;
  return { plan: `plan ${i % 3}`, frame: 1, file: `${i}.yaml`, student: `student ${i % 4}`, stock: 'strip-19x38', chosen: 'plain', when: i % 2 === 0 ? 'before-cloth' : 'after-cloth', kind, reading: kind, unit: 'mm', measured: rank, rank, rank_between: [rank, rank], low: 0.05, high: 0.95 };
});

describe('alarms', () => {
  test('an honest promise raises a false one in no more years than is said', () => {
    const years = 150;
    let alarms = 0;
    for (let i = 0; i < years; i++) if (departures(honest(new Chance(3000 + i))).some(({ alarm }) => alarm)) alarms++;
    expect(chanceOfAtLeast(years, alarms, 0.05)).toBeGreaterThan(0.01);
  });

  test('a student whose readings run high is named', () => {
    const bent = honest(new Chance(9)).map((promise) => (promise.student === 'student 2' ? { ...promise, rank: Math.sqrt(Math.sqrt(promise.rank)) } : promise));
    expect(departures(bent).filter(({ alarm }) => alarm).map(({ group, name, way }) => `${group} ${name} ${way}`)).toContain('student student 2 higher');
  });

  test('readings that scatter wider than promised are told so', () => {
    const wide = honest(new Chance(10)).map((promise) => ({ ...promise, rank: promise.rank < 0.5 ? promise.rank ** 3 : 1 - (1 - promise.rank) ** 3 }));
    expect(departures(wide).find(({ group }) => group === 'all')).toMatchObject({ alarm: true, way: 'wider' });
  });
});
