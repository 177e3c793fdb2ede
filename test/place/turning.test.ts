import { describe, expect, test } from 'vitest';
import { roomFor, leftOf } from '../../src/place/room.js';
import { allLies, asLying, markedSides, turningSigns, type Lie } from '../../src/place/turning.js';
import { soundStretches } from '../../src/pile/stretches.js';
import fc from 'fast-check';

const flatTop = { about: 'top', runs: 'level', lay: 'flat' } as const;
const reading = { twist_rad_per_m: 0.02, bow_per_m: 0.004, crook_per_m: 0.003 };
const lie = (face: Lie['face'], end: Lie['end']): Lie => ({ face, end });

describe('how a board lies', () => {
  // Worked out with a strip of paper in hand: hollow of the bow on the marked face, of the crook on the marked edge (upper edge, letter up, marked end left).
  test.each([
    ['flat on top, letter to the viewer, marked end left: hollow towards the viewer and upwards, so the middle goes back and down', flatTop, lie('marked', 'marked-first'), [-0.004, -0.003]],
    ['the same turned end for end: the marked edge is below', flatTop, lie('marked', 'marked-last'), [-0.004, 0.003]],
    ['rolled face about, marked end still left', flatTop, lie('other', 'marked-first'), [0.004, 0.003]],
    ['face about and end for end', flatTop, lie('other', 'marked-last'), [0.004, -0.003]],
    ['flat on the left, letter to the viewer, marked end down: a quarter turn puts the marked edge on the left, so the middle goes right', { about: 'left', runs: 'upright', lay: 'flat' } as const, lie('marked', 'marked-first'), [-0.004, 0.003]],
    ['on edge on top, letter outwards (up), marked end left: hollow upwards, marked edge to the wall, so the middle goes down and to the viewer', { about: 'top', runs: 'level', lay: 'edge' } as const, lie('marked', 'marked-first'), [-0.004, 0.003]],
    ['on edge below, letter outwards (down), marked end left: hollow downwards, marked edge to the viewer', { about: 'bottom', runs: 'level', lay: 'edge' } as const, lie('marked', 'marked-first'), [0.004, -0.003]],
    ['on edge on the right, letter outwards (right), marked end down', { about: 'right', runs: 'upright', lay: 'edge' } as const, lie('marked', 'marked-first'), [-0.004, -0.003]],
  ])('%s', (_, place, how, [bow, crook]) => {
    expect(asLying(reading, place, how)).toEqual({ twist_rad_per_m: 0.02, bow_per_m: bow, crook_per_m: crook });
  });

  test('the four lies of any place give the four pairs of signs, face about turns the bow, end for end the crook, and nothing the twist', () => {
    for (const about of ['top', 'bottom', 'left', 'right', 'crossbar-1']) for (const lay of ['flat', 'edge'] as const) {
      const place = { about, lay, runs: about === 'left' || about === 'right' ? ('upright' as const) : ('level' as const) };
      expect(new Set(allLies.map((how) => JSON.stringify(turningSigns(place, how)))).size).toBe(4);
      for (const face of ['marked', 'other'] as const) {
        const [one, other] = [turningSigns(place, lie(face, 'marked-first')), turningSigns(place, lie(face, 'marked-last'))];
        expect([one.bow * other.bow, one.crook * other.crook]).toEqual([1, -1]);
      }
      for (const how of allLies) expect(asLying(reading, place, how).twist_rad_per_m).toBe(0.02);
    }
  });

  test('the marked edge is the upper one when the letter looks at one and the marked end is on the left', () => {
    const { face, edge } = markedSides(flatTop, lie('marked', 'marked-first'));
    expect([face, edge]).toEqual([[0, 0, 1], [-0, 1, 0].map((n) => n + 0)].map((v) => v.map((n) => expect.closeTo(n, 12))));
  });
});

describe('room on a board', () => {
  test('knots are cut round and every saw cut is paid', () => {
    const stretches = soundStretches({ length_mm: 2000, knots: [{ from_mm: 310, to_mm: 340 }, { from_mm: 900, to_mm: 905 }] });
    expect(stretches).toEqual([{ from_mm: 0, to_mm: 310 }, { from_mm: 340, to_mm: 900 }, { from_mm: 905, to_mm: 2000 }]);
    expect(roomFor(stretches, [{ length_mm: 560, kerf_mm: 3 }])).toEqual([340]);
    expect(roomFor(stretches, [{ length_mm: 546, kerf_mm: 3 }, { length_mm: 546, kerf_mm: 3 }, { length_mm: 546, kerf_mm: 3 }])).toEqual([340, 905, 1454]);
    expect(roomFor(stretches, [{ length_mm: 546.5, kerf_mm: 3 }, { length_mm: 546.5, kerf_mm: 3 }, { length_mm: 546.5, kerf_mm: 3 }])).toBeNull();
    expect(roomFor(stretches, [{ length_mm: 1096, kerf_mm: 3 }])).toBeNull();
    expect(roomFor([], [{ length_mm: 1, kerf_mm: 0 }])).toBeNull();
  });

  test('pieces lie inside their stretches and a kerf apart; a leftover is what remains', () => {
    fc.assert(fc.property(
      fc.array(fc.tuple(fc.integer({ min: 50, max: 900 }), fc.integer({ min: 5, max: 60 })), { minLength: 1, maxLength: 4 }),
      fc.array(fc.integer({ min: 30, max: 500 }), { minLength: 1, maxLength: 5 }),
      (parts, lengths) => {
        let at = 0;
        const knots = parts.map(([sound, knot]) => ({ from_mm: (at += sound), to_mm: (at += knot) }));
        const stretches = soundStretches({ length_mm: at + 200, knots });
        const wanted = lengths.map((length_mm) => ({ length_mm, kerf_mm: 3 }));
        const room = roomFor(stretches, wanted);
        if (room === null) {
          // A single piece that fits somewhere is never refused.
          expect(lengths.length === 1 && stretches.some(({ from_mm, to_mm }) => to_mm - from_mm >= lengths[0]!)).toBe(false);
          return;
        }
        const placed = room.map((from_mm, i) => ({ from_mm, ...wanted[i]! })).sort((a, b) => a.from_mm - b.from_mm);
        for (const { from_mm, length_mm } of placed) expect(stretches.some((s) => from_mm >= s.from_mm && from_mm + length_mm <= s.to_mm + 0.01)).toBe(true);
        placed.slice(1).forEach((piece, i) => expect(piece.from_mm - placed[i]!.from_mm - placed[i]!.length_mm).toBeGreaterThanOrEqual(stretches.some((s) => s.from_mm === piece.from_mm) ? 0 : 3));
        const left = leftOf(stretches, placed).reduce((sum, { from_mm, to_mm }) => sum + to_mm - from_mm, 0);
        const sound = stretches.reduce((sum, { from_mm, to_mm }) => sum + to_mm - from_mm, 0);
        const cut = lengths.reduce((sum, one) => sum + one, 0);
        expect(left).toBeLessThanOrEqual(sound - cut + 1e-6);
        expect(left).toBeGreaterThanOrEqual(sound - cut - 3 * lengths.length - 0.01);
      },
    ), { numRuns: 200 });
  });
});
