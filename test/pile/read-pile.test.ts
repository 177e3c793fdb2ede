import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { readPile } from '../../src/pile/read-pile.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';

const shelf = shippedShelf();
const deg = Math.PI / 180;

const full = `pile: 1
name: Shed, back wall
boards:
  - { mark: A, stock: strip-19x38, length: 2400 mm, twist: { rise: 3 mm, width: 400 mm, over: 2000 mm, for: right }, bow: 6 mm, over: 2000 mm, hollow: marked-face, crook: 2 mm, hollow-edge: other-edge, knots: [ 900..940 mm, 310..340 mm ] }
  - { mark: B, stock: strip-19x38, length: 44-1/2 in, twist: -0.4 deg/m, bow: 0.004 /m, hollow: other-face }
  - { mark: u1, stock: stud-38x64, length: 700 mm, twist: { rise: 4 mm, width: 300 mm, for: left } }
  - { stock: strip-19x38, length: 2400 mm, count: 3 }
`;

const boardsOf = (text: string) => {
  const read = readPile(text, 'pile.yaml', shelf);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
};

/** Code of every problem, and what stands where it points. */
function problems(text: string): readonly string[] {
  const read = readPile(text, 'pile.yaml', shelf);
  return (read.ok ? read.warnings : read.problems).map(({ code, line, column }) => `${code} at ${text.split('\n')[line - 1]!.slice(column - 1).split(/[ ,]/)[0]}`);
}

describe('a good pile', () => {
  test('every reading, in its unit and with its sign; unread boards counted out and named past the marks that are taken', () => {
    const pile = boardsOf(full);
    expect(pile).toMatchObject({ name: 'Shed, back wall', units: 'metric' });
    expect(pile.boards.map(({ mark, marked, length_mm }) => [mark, marked, length_mm])).toEqual([['A', true, 2400], ['B', true, 1130.3], ['u1', true, 700], ['u2', false, 2400], ['u3', false, 2400], ['u4', false, 2400]]);
    const [a, b, c, d] = pile.boards;
    expect(a).toMatchObject({ knots: [{ from_mm: 310, to_mm: 340 }, { from_mm: 900, to_mm: 940 }] });
    // Winding sticks: the angle of 3 mm over 400 mm, over 2 m. An arc of rise s over a chord c has the curvature 8 s / c².
    expect(a!.twist_rad_per_m).toBeCloseTo(Math.atan2(3, 400) / 2, 12);
    expect(a!.bow_per_m).toBeCloseTo((8 * 0.006) / 4, 12);
    expect(a!.crook_per_m).toBeCloseTo((-8 * 0.002) / 4, 12);
    expect(b).toMatchObject({ bow_per_m: -0.004, crook_per_m: null, knots: [] });
    expect(b!.twist_rad_per_m).toBeCloseTo(-0.4 * deg, 12);
    expect(c!.twist_rad_per_m).toBeCloseTo(-Math.atan2(4, 300) / 0.7, 12);
    expect(d).toMatchObject({ twist_rad_per_m: null, bow_per_m: null, crook_per_m: null });
  });

  test('a rise without the length it was read over is taken over the whole board', () => {
    const [board] = boardsOf('pile: 1\nboards:\n  - { mark: K, stock: strip-19x38, length: 1600 mm, bow: 5 mm }\n').boards;
    expect(board!.bow_per_m).toBeCloseTo(0.04 / 1.6 ** 2, 12);
  });
});

describe('a broken pile says what is wrong and where, all at once', () => {
  const one = (rest: string): string => `pile: 1\nboards:\n  - { mark: A, stock: strip-19x38, length: 2400 mm${rest} }\n`;
  test.each([
    ['an unknown key', one(', twst: 1 deg/m'), ['unknown-key at twst:']],
    ['no unit', one(', bow: 6'), ['no-unit at 6']],
    ['a stock the shelf lacks', 'pile: 1\nboards:\n  - { stock: strip-19x83, length: 2400 mm }\n', ['unknown-on-shelf at strip-19x83']],
    ['two faults far apart', 'pile: 1\nboards:\n  - { stock: plank, length: 2400 mm }\n  - { stock: strip-19x38, length: 24 }\n', ['unknown-on-shelf at plank', 'no-unit at 24']],
    ['a mark used twice', `${one('')}  - { mark: A, stock: strip-19x38, length: 900 mm }\n`, ['mark-twice at A']],
    ['a reading for several boards', one(', count: 3').replace('mark: A, ', '').replace('count', 'twist: 1 deg/m, count'), ['one-for-several at twist:']],
    ['a knot beyond the board', one(', knots: [ 2390..2410 mm ]'), ['knot-beyond-board at 2390..2410']],
    ['a knot that ends before it begins', one(', knots: [ 340..310 mm ]'), ['turned-range at 340..310']],
    ['sticks without their length', one(', twist: { rise: 3 mm }'), ['missing at {']],
    ['a third hand', one(', twist: { rise: 3 mm, width: 400 mm, for: up }'), ['not-one-of at up']],
    ['a reading over more than the board, which may have been longer once', one(', bow: 3 mm, over: 3 m'), ['over-beyond-board at 3']],
    ['no boards', 'pile: 1\nboards: []\n', ['too-many at []']],
    ['a plan', 'plan: 1\nname: Small study\n', ['not-this-format at plan:']],
    ['a later format', 'pile: 2\nboards: []\n', ['later-format at 2']],
  ])('%s', (_, text, expected) => expect(problems(text)).toEqual(expected));

  test('whatever the text, it answers', () => {
    const board = fc.record({ mark: fc.anything(), stock: fc.constantFrom('strip-19x38', 'x', 3), length: fc.constantFrom('2400 mm', '1 in', 'x'), twist: fc.anything(), knots: fc.anything() }, { requiredKeys: [] });
    fc.assert(fc.property(fc.record({ pile: fc.constantFrom(1, 2, 'x'), boards: fc.oneof(fc.array(board), fc.anything()) }), (data) => {
      const read = readPile(stringify(data), 'pile.yaml', shelf);
      if (!read.ok) expect(read.problems.length).toBeGreaterThan(0);
    }), { numRuns: 200 });
  });
});
