import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placeAcross, type Strip } from '../../src/cutting/roll/across.js';
import { fillableWidths, leastLength_mm, type Level } from '../../src/cutting/roll/bounds.js';
import { lengthOf, liesOf, type Lie, type RollPiece } from '../../src/cutting/roll/piece.js';
import { packRoll } from '../../src/cutting/roll/roll.js';
import { searchRoll } from '../../src/cutting/roll/search.js';
import { packInRows } from '../../src/cutting/roll/shelves.js';
import { packAlongSkyline } from '../../src/cutting/roll/skyline.js';
import { runs } from '../effort.js';
import { overlaps, shortestByTrial } from './roll-trial.js';

const sizes = (most: number, across = 6): fc.Arbitrary<RollPiece[]> =>
  fc
    .array(fc.record({ along_mm: fc.integer({ min: 1, max: 7 }), across_mm: fc.integer({ min: 1, max: across }), turnable: fc.boolean() }), { minLength: 1, maxLength: most })
    .map((all) => all.map((size, i) => ({ name: `c${i}`, ...size })));
const opened = (pieces: readonly RollPiece[], roll_mm: number) => pieces.map((piece) => ({ piece, lies: liesOf(piece, roll_mm) }));
const lie = (across: number, along: number): Lie => ({ across, along, turned: false });

describe('a place across the roll for each strip', () => {
  /** Whether every strip finds a whole-numbered place where it overlaps no other: all of them are tried. */
  function canLie(strips: readonly Strip[], roll: number): boolean {
    const laid: { from: number; to: number; x: number; across: number }[] = [];
    const visit = (i: number): boolean => {
      const strip = strips[i];
      if (strip === undefined) return true;
      for (let x = 0; x + strip.across <= roll; x++) {
        if (laid.some((one) => one.from < strip.to && strip.from < one.to && one.x < x + strip.across && x < one.x + one.across)) continue;
        laid.push({ ...strip, x });
        if (visit(i + 1)) return true;
        laid.pop();
      }
      return false;
    };
    return visit(0);
  }
  const strips = fc.array(fc.record({ from: fc.integer({ min: 0, max: 6 }), long: fc.integer({ min: 1, max: 5 }), across: fc.integer({ min: 1, max: 4 }) }), { minLength: 1, maxLength: 6 })
    .map((all) => all.map(({ from, long, across }): Strip => ({ from, to: from + long, across })));

  test('is found where trying every place finds one, and strips that share a level never overlap', () => {
    let none = 0;
    fc.assert(fc.property(strips, fc.integer({ min: 4, max: 8 }), (all, roll) => {
      const { places, finished, steps } = placeAcross(all, roll, 1e6);
      expect([finished, steps > 0]).toEqual([true, true]);
      expect(places !== null).toBe(canLie(all, roll));
      if (places === null) none++;
      else all.forEach((p, i) => {
        const x = places[i]!;
        expect(x >= 0 && x + p.across <= roll).toBe(true);
        all.slice(0, i).forEach((q, j) => expect(p.from < q.to && q.from < p.to && x < places[j]! + q.across && places[j]! < x + p.across).toBe(false));
      });
    }), { numRuns: runs(800) });
    expect(none).toBeGreaterThan(10);
  });

  test('ends after so many strips put down, and says whether it had ended by itself', () => {
    const abreast: Strip[] = [3, 2, 4].map((across) => ({ from: 0, to: 5, across }));
    expect(placeAcross(abreast, 9, 100)).toEqual({ places: [0, 3, 5], finished: true, steps: 3 });
    expect(placeAcross(abreast, 9, 3)).toEqual({ places: [0, 3, 5], finished: true, steps: 3 });
    expect(placeAcross(abreast, 9, 2)).toMatchObject({ places: null, finished: false });
    expect(placeAcross(abreast, 8, 100)).toMatchObject({ places: null, finished: true });
    // Too wide from the first: each of the three is tried, and with that the allowance is used up.
    expect(placeAcross(abreast, 8, 3)).toEqual({ places: null, finished: false, steps: 3 });
  });
});

describe('the search for the shortest length', () => {
  test('finds what trying every place finds, from no layout known; below that length it finds nothing', () => {
    fc.assert(fc.property(sizes(4), fc.integer({ min: 6, max: 9 }), (pieces, roll) => {
      const open = opened(pieces, roll);
      const best = shortestByTrial(pieces, roll);
      const known = pieces.reduce((sum, p) => sum + Math.max(p.along_mm, p.across_mm), 1);
      const found = searchRoll(open, roll, known, 1e6);
      expect([found.finished, found.placed === null ? null : lengthOf(found.placed)]).toEqual([true, best]);
      expect(overlaps(found.placed!, roll)).toEqual([]);
      expect(found.placed!.map(({ name }) => name).sort()).toEqual(pieces.map(({ name }) => name));
      for (const { name, turned, along_mm, across_mm } of found.placed!) {
        const piece = pieces.find((one) => one.name === name)!;
        expect(turned ? [across_mm, along_mm, true] : [along_mm, across_mm, piece.turnable]).toEqual([piece.along_mm, piece.across_mm, piece.turnable]);
      }
      expect(searchRoll(open, roll, best, 1e6)).toEqual({ placed: null, finished: true });
      const hasty = searchRoll(open, roll, known, 1);
      if (hasty.finished) expect(lengthOf(hasty.placed!)).toBe(best);
    }), { numRuns: runs(240) });
  });

  test('lengths in tenths add up to one more or less in the last digit by their order: the shortest is found all the same', () => {
    const tenths = [[9, 2], [7, 6], [7, 2], [5, 3], [6, 3], [6, 5]];
    const length = (unit: number): number => {
      const pieces = tenths.map(([along, across], i) => ({ name: `c${i}`, along_mm: along! / unit, across_mm: across! / unit, turnable: false }));
      const { placed, finished } = searchRoll(opened(pieces, 10 / unit), 10 / unit, 100, 1e6);
      expect(finished).toBe(true);
      return lengthOf(placed!) * unit;
    };
    expect(length(1)).toBe(17);
    expect(length(10)).toBeCloseTo(17, 9);
  });

  test('says of one that was stopped that it was', () => {
    const open = opened([[5, 3], [4, 4], [6, 2], [3, 3], [2, 5]].map(([along_mm, across_mm], i) => ({ name: `c${i}`, along_mm: along_mm!, across_mm: across_mm!, turnable: true })), 7);
    expect(searchRoll(open, 7, 100, 3)).toEqual({ placed: null, finished: false });
    expect(searchRoll(open, 7, 100, 1e6)).toMatchObject({ finished: true });
  });

  test('no layout is shorter than what the bound says is least', () => {
    fc.assert(fc.property(sizes(4), fc.integer({ min: 6, max: 9 }), (pieces, roll) => {
      const waiting = pieces.map((piece) => liesOf(piece, roll));
      const start: Level[] = [{ y: 0, used: 0 }];
      const least = leastLength_mm(start, waiting, fillableWidths(waiting, roll), roll);
      const best = shortestByTrial(pieces, roll);
      expect(least).toBeLessThanOrEqual(best);
      const loose = leastLength_mm(start, waiting, null, roll);
      expect(loose).toBeLessThanOrEqual(least);
      expect(loose).toBeGreaterThanOrEqual(pieces.reduce((sum, p) => sum + p.along_mm * p.across_mm, 0) / roll - 1e-9);
      // The same behind a strip over the whole roll: everything comes so much later.
      expect(leastLength_mm([{ y: 0, used: roll }, { y: 3, used: 0 }], waiting, fillableWidths(waiting, roll), roll)).toBeCloseTo(least + 3, 9);
    }), { numRuns: runs(200) });
  });
});

describe('quick layouts', () => {
  test('along the skyline: each piece where it ends first, then farthest left, the better way round', () => {
    fc.assert(fc.property(sizes(7), fc.integer({ min: 7, max: 11 }), (pieces, roll) => {
      const front = new Array<number>(roll).fill(0);
      const wanted = pieces.map((piece) => {
        const spots = liesOf(piece, roll).flatMap((way) => Array.from({ length: roll - way.across + 1 }, (_, x) => ({ way, x, y: Math.max(...front.slice(x, x + way.across)) })));
        const end = Math.min(...spots.map(({ way, y }) => y + way.along));
        const best = spots.filter(({ way, y }) => y + way.along === end).sort((p, q) => p.x - q.x)[0]!;
        front.fill(end, best.x, best.x + best.way.across);
        return { name: piece.name, x_mm: best.x, y_mm: best.y, across_mm: best.way.across, along_mm: best.way.along, turned: best.way.turned };
      });
      expect(packAlongSkyline(opened(pieces, roll), roll)).toEqual(wanted);
    }), { numRuns: runs(800) });
  });

  test('in rows, longest first: the last row, the first with room, or the one with least room left', () => {
    const laid = [[4, 5], [5, 6], [3, 4], [2, 3], [1, 1]].map(([across, along], i) => ({ piece: { name: `c${i}`, along_mm: along!, across_mm: across!, turnable: false }, lie: lie(across!, along!) }));
    const rows = (rule: 'next' | 'first' | 'best', roll = 9) => Object.fromEntries(packInRows(laid, roll, rule).map(({ name, x_mm, y_mm }) => [name, [x_mm, y_mm]]));
    // c1 and c0 fill the first row of 9 to the edge; c2, c3 and c4 share the second.
    expect(rows('next')).toEqual({ c1: [0, 0], c0: [5, 0], c2: [0, 6], c3: [3, 6], c4: [5, 6] });
    // 8 wide: c1 alone in the first row, c0 with c2 in the second; then c3 beside c1 for `first`, c3 in a row of its own for `next`.
    expect(rows('next', 8)).toEqual({ c1: [0, 0], c0: [0, 6], c2: [4, 6], c3: [0, 11], c4: [2, 11] });
    expect(rows('first', 8)).toEqual({ c1: [0, 0], c0: [0, 6], c2: [5, 0], c3: [4, 6], c4: [6, 6] });
    // 10 wide: 1 of room is left in the first row, 7 in the second of c2; the last piece goes where least is left.
    expect(rows('best', 10)).toEqual({ c1: [0, 0], c0: [5, 0], c2: [0, 6], c3: [3, 6], c4: [9, 0] });
    expect(rows('first', 10)['c4']).toEqual([9, 0]);
    expect(rows('next', 10)['c4']).toEqual([5, 6]);
    // Equally long: the wider first.
    expect(packInRows([[2, 4], [3, 4]].map(([across, along], i) => ({ piece: { name: `c${i}`, along_mm: along!, across_mm: across!, turnable: false }, lie: lie(across!, along!) })), 9, 'next').map(({ name, x_mm }) => [name, x_mm])).toEqual([['c1', 0], ['c0', 3]]);
  });
});

describe('a roll', () => {
  const piece = (name: string, along_mm: number, across_mm: number, turnable = false): RollPiece => ({ name, along_mm, across_mm, turnable });

  test('pieces all alike come in full rows, a row each for so many as fit abreast; unlike in one size they do not', () => {
    const alike = (n: number, roll: number) => packRoll(Array.from({ length: n }, (_, i) => piece(`c${i}`, 700, 500)), roll);
    expect([alike(1, 1500), alike(3, 1500), alike(4, 1500), alike(3, 1499), alike(40, 1500)].map(({ length_mm, proven }) => [length_mm, proven])).toEqual([[700, true], [700, true], [1400, true], [1400, true], [9800, true]]);
    // 31 pieces are too many to be searched, so only equal ones are proven.
    const odd = (last: RollPiece) => packRoll([...Array.from({ length: 30 }, (_, i) => piece(`c${i}`, 700, 500)), last], 1500);
    expect(odd(piece('same', 700, 500))).toMatchObject({ length_mm: 7700, least_mm: 7700, proven: true });
    for (const last of [piece('longer', 701, 500), piece('wider', 700, 501), piece('turns', 700, 500, true)]) expect(odd(last).least_mm, last.name).toBeLessThan(odd(last).length_mm);
  });

  test('thirty cloths are searched, thirty-one no more: five round a middle and strips over the whole roll', () => {
    const round = [[500, 900], [900, 500], [500, 900], [900, 500], [400, 400]].map(([along, across], i) => piece(`c${i}`, along!, across!));
    const behind = (n: number) => packRoll([...round, ...Array.from({ length: n }, (_, i) => piece(`s${i}`, 100, 1400))], 1400);
    // 1400 for the five, which fill it, and 100 for each strip.
    expect(behind(25)).toMatchObject({ length_mm: 1400 + 2500, least_mm: 3900, proven: true });
    const quick = behind(26);
    expect(quick).toMatchObject({ least_mm: 1400 + 2600, proven: false });
    expect(quick.length_mm).toBeGreaterThan(4000);
  });

  test('a piece is turned only where that gains length', () => {
    const placed = packRoll([piece('long', 900, 600), piece('either', 500, 400, true)], 1500).placed;
    expect(placed.map(({ name, turned }) => [name, turned])).toEqual([['long', false], ['either', false]]);
    expect(packRoll([piece('either', 500, 400, true)], 1500).placed[0]).toMatchObject({ turned: true, along_mm: 400 });
  });

  test('is told from the cut end on, from the left', () => {
    const { placed } = packRoll([piece('a', 300, 900), piece('b', 500, 700), piece('c', 500, 600), piece('d', 200, 500)], 1500);
    placed.slice(1).forEach((one, i) => expect(one.y_mm > placed[i]!.y_mm || (one.y_mm === placed[i]!.y_mm && one.x_mm > placed[i]!.x_mm)).toBe(true));
  });

  test('what is used and what is least', () => {
    const layout = packRoll([piece('a', 700, 800), piece('b', 500, 900), piece('wide', 400, 1600)], 1500);
    expect(layout).toMatchObject({ length_mm: 1200, least_mm: 1200, proven: true, too_wide: ['wide'] });
    expect(layout.used_share).toBeCloseTo((700 * 800 + 500 * 900) / (1500 * 1200), 12);
    expect(packRoll([piece('exact', 700, 1500)], 1500)).toMatchObject({ length_mm: 700, used_share: 1, too_wide: [] });
    expect(packRoll([piece('wide', 400, 1600)], 1500)).toMatchObject({ length_mm: 0, least_mm: 0, used_share: 0, proven: true, too_wide: ['wide'], placed: [] });
  });
});
