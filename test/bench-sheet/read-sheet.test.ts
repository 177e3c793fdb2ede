import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { readSheet } from '../../src/bench-sheet/read-sheet.js';

const full = `sheet: 1
plan: Reading-nook panel
when: finished
diagonals: [1110 mm, 43-3/4 in]
corner-lift: 4 mm
lifted: top-left
winding: 1/8 in
bow: { top: 1 mm, left: -2 mm }
inward-bow: { right: 0.5 mm }
tap: 14 Hz
push: { weight: 500 g, sag: 7 mm }
weight: 6 lb
moisture: 9 %
frame: 2
student: Noor
boards: [ { for: top, mark: A, twist: -0.4 deg/m, bow: 2 mm, over: 2000 mm }, { for: left, ply: 2, mark: B7 } ]
test-joints: [ { way: plane, weight: 2 kg, arm: 300 mm, moves: 1.5 mm } ]
`;

/** Code and place of every problem. */
function problems(text: string): readonly string[] {
  const read = readSheet(text, 'sheet.yaml');
  return (read.ok ? read.warnings : read.problems).map(({ code, line, column }) => `${code} ${line}:${column}`);
}

describe('a good sheet', () => {
  test('every reading, in its unit', () => {
    const read = readSheet(full, 'sheet.yaml');
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.warnings).toEqual([]);
    expect(read.value).toEqual({
      plan: 'Reading-nook panel', when: 'finished', when_said: true, diagonals_mm: [1110, 1111.25], corner_lift_mm: 4, lifted: 'top-left', winding_mm: 3.175,
      bow_mm: { top: 1, left: -2 }, inward_bow_mm: { right: 0.5 }, tap_Hz: 14, push: { weight_g: 500, sag_mm: 7, pad_mm: null }, weight_kg: expect.closeTo(6 * 0.45359237, 12), moisture_pct: 9, frame: 2, student: 'Noor',
      boards: [
        { for: 'top', ply: 1, mark: 'A', twist_rad_per_m: expect.closeTo(-0.4 * (Math.PI / 180), 12), bow_per_m: expect.closeTo((8 * 0.002) / 4, 12), crook_per_m: null },
        { for: 'left', ply: 2, mark: 'B7', twist_rad_per_m: null, bow_per_m: null, crook_per_m: null },
      ],
      test_joints: [{ way: 'plane', weight_g: 2000, arm_mm: 300, moves_mm: 1.5 }],
    });
  });

  test('every reading may be left out; the stage is then taken and marked so', () => {
    const read = readSheet('sheet: 1\ncorner-lift: 2 mm\n', 'sheet.yaml');
    expect(read.ok && read.value).toMatchObject({ when: 'after-cloth', when_said: false, plan: null, diagonals_mm: null, tap_Hz: null, bow_mm: {} });
  });
});

describe('a broken sheet says what is wrong and where', () => {
  test.each([
    ['an unknown key', 'sheet: 1\ncorner-lft: 4 mm\n', ['unknown-key 2:1']],
    ['no unit', 'sheet: 1\ncorner-lift: 4\n', ['no-unit 2:14']],
    ['another unit', 'sheet: 1\ntap: 14 mm\n', ['other-unit 2:6']],
    ['a decimal comma', 'sheet: 1\nweight: 2,8 kg\n', ['decimal-comma 2:9']],
    ['one diagonal', 'sheet: 1\ndiagonals: [1110 mm]\n', ['not-two-diagonals 2:12']],
    ['three diagonals', 'sheet: 1\ndiagonals: [1110 mm, 1111 mm, 1112 mm]\n', ['not-two-diagonals 2:12']],
    ['cloth readings before the cloth', 'sheet: 1\nwhen: before-cloth\ntap: 14 Hz\npush: { weight: 500 g, sag: 7 mm }\n', ['no-cloth-yet 3:1', 'no-cloth-yet 4:1']],
    ['a corner without a lift', 'sheet: 1\ntap: 14 Hz\nlifted: top-left\n', ['corner-without-lift 3:1']],
    ['another corner', 'sheet: 1\ncorner-lift: 4 mm\nlifted: top\n', ['not-one-of 3:9']],
    ['another bar', 'sheet: 1\nbow: { upper: 1 mm }\n', ['unknown-key 2:8']],
    ['a push without its sag', 'sheet: 1\npush: { weight: 500 g }\n', ['missing 2:7']],
    ['a bow without its length', 'sheet: 1\nboards: [ { for: top, bow: 2 mm } ]\n', ['bow-without-over 2:28']],
    ['a negative lift', 'sheet: 1\ncorner-lift: -4 mm\n', ['out-of-range 2:14']],
    ['a reading left empty', 'sheet: 1\ntap:\n', ['left-empty 2:1']],
    ['a plan', 'plan: 1\nname: Small study\n', ['not-this-format 1:1']],
    ['a later format', 'sheet: 2\ntap: 14 Hz\n', ['later-format 1:8']],
    ['a list', '- 4 mm\n', ['not-a-map 1:1']],
    ['two things at once', 'sheet: 1\nwhen: later\nweight: 3\n', ['not-one-of 2:7', 'no-unit 3:9']],
  ])('%s', (_, text, wanted) => {
    const read = readSheet(text, 'sheet.yaml');
    expect(read.ok).toBe(false);
    expect(problems(text)).toEqual(wanted);
  });

  test('the nearest key is named, and the caret line is there', () => {
    const read = readSheet('sheet: 1\ncorner-lft: 4 mm\n', 'sheet.yaml');
    if (read.ok) throw new Error('it should be refused');
    expect(read.problems[0]).toMatchObject({ file: 'sheet.yaml', excerpt: 'corner-lft: 4 mm', hint: 'Did you mean `corner-lift`?' });
  });

  test('a sheet without a reading is read, with a warning', () => {
    expect(readSheet('sheet: 1\nplan: Small study\n', 'sheet.yaml').ok).toBe(true);
    expect(problems('sheet: 1\nplan: Small study\nbow: {}\n')).toEqual(['nothing-read 1:1']);
  });

  test('no text makes it throw', () => {
    fc.assert(fc.property(fc.oneof(fc.string(), fc.json(), fc.dictionary(fc.constantFrom('sheet', 'tap', 'diagonals', 'push', 'when'), fc.jsonValue()).map((data) => stringify(data))), (text) => {
      const read = readSheet(text, 'sheet.yaml');
      expect(read.ok || read.problems.length > 0).toBe(true);
    }), { numRuns: 150 });
  });
});
