import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { measureTwist } from '../../src/measure/measure-twist.js';
import type { PileBoard } from '../../src/pile/pile.js';
import { readPile } from '../../src/pile/read-pile.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';
import { folder, looksLikeABug, type Folder } from './command.js';
import { converse, lendsTerminal } from './conversation.js';

const shelf = shippedShelf();
const deg = (rad: number | null): number => ((rad ?? Number.NaN) * 180) / Math.PI;

function boardsIn(here: Folder, file: string): readonly PileBoard[] {
  const result = readPile(readFileSync(join(here.path, file), 'utf8'), file, shelf);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value.boards;
}

/** What `measure twist` says of the same sticks, deg/m. */
const twistBy = (rise_mm: number, length_mm: number, hand: 'right' | 'left'): number => measureTwist({ rise_mm, width_mm: 400, length_mm, hand }).value;

describe('new --pile, from flags', () => {
  it('turns the side that stands high into the hand of measure twist, and says beside it what was seen', () => {
    const here = folder();
    const { code, out, err } = here.run('new', '--pile', '--name', 'Shed, back wall', '--stock', 'strip-19x38', '--mark', 'A', 'B', '3', 'D', '--length', '2400 mm', '1800 mm', '2400 mm', '900 mm',
      '--sticks', '400 mm', '--over', '800 mm', '--rise', '3 mm', '2 mm', '0 mm', 'unread', '--high', 'right', 'left', 'level', 'unread', '--bow', '6 mm', 'unread', '0 mm', 'unread');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('shed-back-wall.yaml is written');
    const [a, b, c, d] = boardsIn(here, 'shed-back-wall.yaml');
    expect([a, b, c, d].map((board) => board?.mark)).toEqual(['A', 'B', '3', 'D']);
    expect(deg(a!.twist_rad_per_m)).toBeCloseTo(twistBy(3, 800, 'left'), 9);
    expect(deg(b!.twist_rad_per_m)).toBeCloseTo(twistBy(2, 800, 'right'), 9);
    expect(deg(a!.twist_rad_per_m)).toBeLessThan(0);
    expect(c!.twist_rad_per_m).toBe(0);
    expect(d).toMatchObject({ length_mm: 900, twist_rad_per_m: null, bow_per_m: null });
    expect(a!.bow_per_m).toBeCloseTo((8 * 0.006) / 2.4 ** 2, 12);
    const text = readFileSync(join(here.path, 'shed-back-wall.yaml'), 'utf8');
    expect(text).toMatch(/mark: A,.*for: left.*# the far stick stands high on the right\n/);
    expect(text).toMatch(/mark: B,.*for: right.*# the far stick stands high on the left\n/);
    // `measure twist` itself, as it is run, of the same sticks.
    const measured = here.run('measure', 'twist', '--rise', '3 mm', '--width', '400 mm', '--length', '800 mm', '--hand', 'left').out;
    expect(Number(/twist: (-?[\d.]+) deg\/m/.exec(measured)?.[1])).toBeCloseTo(deg(a!.twist_rad_per_m), 2);
  });

  it('counts unread boards without marks; place takes the file', () => {
    const here = folder();
    expect(here.run('new', '--pile', '--name', 'Rack', '--stock', 'strip-19x38', '--length', '8 ft', '--unread', '6').code).toBe(0);
    expect(boardsIn(here, 'rack.yaml')).toHaveLength(6);
  });

  it.each([
    [['--mark', 'A', 'B', '--rise', '3 mm', '--high', 'left', 'left', '--sticks', '400 mm'], '--rise has 1 values for 2 boards'],
    [['--mark', 'A', '--rise', '3 mm', '--sticks', '400 mm'], 'needs --high'],
    [['--mark', 'A', '--rise', '3 mm', '--high', 'level', '--sticks', '400 mm'], 'needs --high'],
    [['--mark', 'A', '--rise', '3 mm', '--high', 'left'], '--rise needs --sticks'],
    [['--mark', 'A', 'A'], 'A'],
    [[], 'There is no board'],
    [['--mark', 'A', '--width', '900 mm'], '--width'],
  ] as const)('refuses %j, and writes nothing', (flags, said) => {
    const here = folder();
    const { code, err } = here.run('new', '--pile', '--name', 'Rack', '--stock', 'strip-19x38', '--length', '2400 mm', ...flags);
    expect(code).toBe(1);
    expect(err).toContain(said);
    expect(err).not.toMatch(looksLikeABug);
    expect(here.files()).toEqual([]);
  });

  it('tells a plan from a pile', () => {
    const { code, err } = folder().run('new', '--name', 'Nook', '--width', '900 mm', '--height', '650 mm', '--stock', 'strip-19x38', '--rise', '3 mm');
    expect(code).toBe(1);
    expect(err).toContain('give --pile');
  });
});

describe.skipIf(!lendsTerminal)('new --pile, as a conversation on a terminal', () => {
  it('asks what is seen at the bench and writes the hand', () => {
    const here = folder();
    const screen = converse(here, [
      ['Where do the boards lie', 'Shed\\r'], ['Which letter is on it', 'A\\r'], ['How long is it', '2400 mm\\r'], ['by how much do the two sticks', '3\\r'], ['Write the unit after', ' mm\\r'],
      ['which side does the FAR stick', '\\033[B\\r'], ['How long are the sticks', '400 mm\\r'], ['from one stick to the other', '\\177\\177\\177\\177\\177\\177\\1772000 mm\\r'],
      ['Bow: how deep', '6 mm\\r'], ['Which wide face', '\\033[B\\r'], ['Crook: how deep', '\\r'], ['Knots to cut round', '310..340 mm\\r'], ['One more board', 'n'], ['Which file', '\\r'],
    ], 'new', '--pile', '--stock', 'strip-19x38');
    expect(screen).toContain('shed.yaml is written');
    const [board] = boardsIn(here, 'shed.yaml');
    expect(board).toMatchObject({ mark: 'A', length_mm: 2400, crook_per_m: null, knots: [{ from_mm: 310, to_mm: 340 }] });
    expect(deg(board!.twist_rad_per_m)).toBeCloseTo(twistBy(3, 2000, 'left'), 9);
    expect(board!.bow_per_m).toBeCloseTo((-8 * 0.006) / 2.4 ** 2, 12);
  });

  it('Ctrl+C leaves without writing anything', () => {
    const here = folder();
    expect(converse(here, [['Where do the boards lie', 'Shed\\r'], ['Which letter is on it', '\\003']], 'new', '--pile')).toContain('Nothing was written.');
    expect(existsSync(join(here.path, 'shed.yaml'))).toBe(false);
  });
});
