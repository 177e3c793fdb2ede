import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { soundStretches } from '../../src/pile/stretches.js';
import type { PileBoard } from '../../src/pile/pile.js';
import { composePlacePage } from '../../src/place-page/page.js';
import { chalkBehind, endWords, faceWords, longSideOf } from '../../src/place-page/lie-words.js';
import { endOf, meetingsOf, offCutsOf, slackAtStart, type LongSide } from '../../src/place/off-cuts.js';
import { placePlans } from '../../src/place/place-plans.js';
import type { Place } from '../../src/place/result.js';
import { leftOf, roomFor } from '../../src/place/room.js';
import { allLies } from '../../src/place/turning.js';
import { writeMarkdown } from '../../src/report/markdown.js';
import { overlap } from '../../src/report/drawings/labels.js';
import { labelsOf, pathsOf, sheetOf } from '../report/svg-reading.js';
import { bench, board, pileOf, planOf, someFrames } from './pile-for-tests.js';

/** A piece as far as off-cuts look at it. */
const pieceOn = (on: PileBoard, from_mm: number, cut_mm: number, of: { readonly kerf_mm?: number; readonly mitred?: boolean; readonly tag?: string } = {}): Place =>
  ({ board: on, from_mm, kerf_mm: of.kerf_mm ?? 4.5, lie: { face: 'marked', end: 'marked-first' }, slot: { frame: 0, tag: of.tag ?? 'T', piece: { cut_mm, ends: of.mitred === false ? 'square' : 'mitre', across_mm: of.mitred === false ? 0 : 38 } } }) as unknown as Place;

describe('what falls off a board', () => {
  const c = board('C', { length_mm: 1800, knots: [{ from_mm: 310, to_mm: 340 }] });

  test('in front of a piece the saw leaves less than the knot’s distance, with the knot in it; the sound part ends at the knot', () => {
    expect(offCutsOf(c, [pieceOn(c, 340, 900)])).toEqual([
      { from_mm: 0, to_mm: 335.5, slanted: 1, bad: c.knots, sound: [{ from_mm: 0, to_mm: 310 }] },
      { from_mm: 1244.5, to_mm: 1800, slanted: 1, bad: [], sound: [{ from_mm: 1244.5, to_mm: 1800 }] },
    ]);
  });

  test('the sound parts are the leftovers that the placing counts, for any pieces and knots wider than a saw cut', () => {
    fc.assert(fc.property(
      fc.array(fc.tuple(fc.integer({ min: 60, max: 900 }), fc.integer({ min: 12, max: 60 })), { maxLength: 4 }),
      fc.array(fc.integer({ min: 30, max: 500 }), { minLength: 1, maxLength: 5 }),
      (parts, lengths) => {
        let at = 0;
        const knots = parts.map(([sound, knot]) => ({ from_mm: (at += sound), to_mm: (at += knot) }));
        const on = board('A', { length_mm: at + 170, knots });
        const stretches = soundStretches(on);
        const wanted = lengths.map((length_mm) => ({ length_mm, kerf_mm: 4.5 }));
        const room = roomFor(stretches, wanted);
        fc.pre(room !== null);
        const sound = offCutsOf(on, room!.map((from_mm, i) => pieceOn(on, from_mm, lengths[i]!))).flatMap((one) => one.sound);
        expect(sound).toEqual(leftOf(stretches, wanted.map((one, i) => ({ ...one, from_mm: room![i]! }))));
      },
    ), { numRuns: 100 });
  });

  test('two mitres: a wedge where the long sides lie on one edge, a slanting strip where they do not, the saw cut between square ends', () => {
    const a = board('A', { length_mm: 2400 });
    const pair = (mitred: boolean): readonly Place[] => [pieceOn(a, 0, 900, { mitred }), pieceOn(a, 904.5, 650, { mitred })];
    const gaps = (places: readonly Place[], side: LongSide): unknown => meetingsOf(a, places, side).map(({ marked_mm, other_mm }) => [marked_mm, other_mm]);
    expect(gaps(pair(true), () => 'other')).toEqual([[4.5 + 2 * 38, 4.5]]);
    expect(gaps(pair(true), ({ from_mm }) => (from_mm === 0 ? 'marked' : 'other'))).toEqual([[4.5 + 38, 4.5 + 38]]);
    expect(gaps(pair(false), () => null)).toEqual([[4.5, 4.5]]);
    // A useful rest between two pieces is no meeting.
    expect(meetingsOf(a, [pieceOn(a, 0, 300), pieceOn(a, 900, 300)], () => 'marked')).toEqual([]);
  });

  test('pieces that begin at the end of the board may move as far as the rest behind them is long, up to the first knot', () => {
    const k = board('K', { length_mm: 2000, knots: [{ from_mm: 1000, to_mm: 1030 }] });
    expect(slackAtStart(k, [pieceOn(k, 0, 600), pieceOn(k, 604.5, 300), pieceOn(k, 1030, 400)])).toBeCloseTo(1000 - 904.5 - 4.5, 9);
    expect(slackAtStart(k, [pieceOn(k, 1030, 400)])).toBeNull();
  });
});

const rackPlan = 'plan: 1\nname: Rack panel\nface: { width: 900 mm, height: 650 mm }\nbars: { stock: square-38x38, lay: flat }\ncorners: { cut: mitre, glue: pva }\nlumber: { chosen: picked, moisture: 9 % }\n';
/** Curvature of a hollow so deep over a length. */
const hollow = (depth_mm: number, length_mm: number): number => (8 * depth_mm) / 1000 / (length_mm / 1000) ** 2;
const square = (mark: string, of: Parameters<typeof board>[1]): PileBoard => board(mark, { stock: 'square-38x38', ...of });
const rack = [
  square('A', { length_mm: 2400, twist: 1.8, bow_per_m: hollow(5, 2400), crook_per_m: hollow(2, 2400) }),
  square('C', { length_mm: 1800, twist: -1.7, bow_per_m: hollow(3, 1800), crook_per_m: -hollow(1, 1800), knots: [{ from_mm: 310, to_mm: 340 }] }),
  square('D', { length_mm: 1130, twist: -1.4 }),
  square('E', { length_mm: 2400, twist: 4.5 }),
];

describe('the page for the bench', () => {
  const placed = placePlans([planOf(rackPlan)], pileOf(rack), bench);
  const { tree, pictures } = composePlacePage(placed);
  const page = writeMarkdown(tree);
  const places = placed.frames[0]!.places;

  test('tells the sides of square boards by their hollows, and where the mitres meet what falls out', () => {
    expect(page).toContain('**C**: letter on the side with the hollow of 3 mm from end to end; marked edge = its round edge, across from the neighbouring hollow of 1 mm.');
    expect(page).toContain('told apart by their letters alone: A and E');
    expect(page).not.toContain('wide face');
    const meeting = places.map((place) => places.find((next) => next.board === place.board && Math.abs(next.from_mm - endOf(place) - 4.5) < 0.01)).filter((next) => next !== undefined);
    expect(meeting).toHaveLength(1);
    expect(page).toMatch(/a wedge falls out, 4\.5 mm along the (?:other|marked) edge \(the long side\), 80\.5 mm along the/u);
    expect(page).toContain('335.5 mm clear of its 45° end, with the bad place at 310 mm to 340 mm in it: saw square at 310 mm from the marked end, and 310 mm of sound wood is left');
  });

  test('leaves out what does not apply, and names what was not read', () => {
    for (const absent of ['ply', 'keeps the hand', '| ', 'on edge']) expect(page).not.toContain(absent);
    expect(page).toContain('bow and crook of D');
    expect(page.match(/“Lifted” means/gu)).toHaveLength(1);
  });

  test('what lies behind is dashed, and said to lie behind', () => {
    const behind = places.filter(({ lie }) => lie.face === 'other');
    expect(behind.length).toBeGreaterThan(0);
    const dashed = (pictures.at(-1)!.svg.match(/stroke-dasharray/gu) ?? []).length;
    expect(dashed).toBe(2 * behind.length);
    expect(page.match(/its name and arrow are now behind/gu) ?? []).toHaveLength(behind.length);
  });
});

describe('how a piece gets from the bench into the frame', () => {
  type Vector = readonly [number, number, number];
  /** Half turns as a hand does them: end over end about the board's cross axis, sideways about its length, flat round about the vertical. */
  const turns = { stay: ([x, y, z]: Vector): Vector => [x, y, z], flat: ([x, y, z]: Vector): Vector => [-x, -y, z], tip: ([x, y, z]: Vector): Vector => [-x, y, -z], roll: ([x, y, z]: Vector): Vector => [x, -y, -z] };
  /** A quarter turn that brings what lay on the left down. */
  const quarter = ([x, y, z]: Vector): Vector => [-y, x, z];
  // On the bench the letter looks up at one (z), the stroke lies left and the marked edge on top (y).
  const bench_sides = { letter: [0, 0, 1], stroke: [-1, 0, 0], edge: [0, 1, 0] } as const;
  const hand = { 'marked marked-first': 'stay', 'marked marked-last': 'flat', 'other marked-last': 'tip', 'other marked-first': 'roll' } as const;
  const outwards = { top: [0, 1, 0], bottom: [0, -1, 0], left: [-1, 0, 0], right: [1, 0, 0] } as const;

  test.each(allLies.flatMap((lie) => (['top', 'bottom', 'left', 'right'] as const).map((about) => [about, lie] as const)))('%s, %o: turned by hand, the long side named on the page looks outwards, letter and stroke where the page says', (about, lie) => {
    const runs = about === 'top' || about === 'bottom' ? ('level' as const) : ('upright' as const);
    const place = { slot: { frame: 0, tag: 'X', piece: { about, runs, lay: 'flat', ends: 'mitre', part: 'bar' } }, lie } as unknown as Place;
    const turned = (v: Vector): Vector => (runs === 'upright' ? quarter : turns.stay)(turns[hand[`${lie.face} ${lie.end}`]](v)).map((n) => n + 0) as unknown as Vector;
    const [letter, stroke, edge] = [turned(bench_sides.letter), turned(bench_sides.stroke), turned(bench_sides.edge)];
    expect(faceWords(place)).toBe(letter[2] > 0 ? 'to you' : 'to the wall');
    expect(chalkBehind(place)).toBe(letter[2] < 0);
    const ends: Readonly<Record<string, Vector>> = { left: [-1, 0, 0], right: [1, 0, 0], up: [0, 1, 0], down: [0, -1, 0] };
    expect(ends[endWords(place)]).toEqual(stroke);
    expect(longSideOf(place)).toBe(edge.every((n, i) => n === outwards[about][i]) ? 'marked' : 'other');
  });
});

describe('pictures of the bench page', () => {
  const strips = [board('A', { length_mm: 2400, twist: 1, crook_per_m: 0.002 }), board('long-name-12', { length_mm: 2400, twist: -1.1, knots: [{ from_mm: 620, to_mm: 640 }, { from_mm: 1400, to_mm: 1460 }] }), board('C', { length_mm: 1250, twist: 0.4 }), board('D', { length_mm: 2100 }), board('E', { length_mm: 700, twist: 0.2 })];
  const inches = 'plan: 1\nname: Inches\nface: { width: 36 in, height: 24 in }\nbars: { stock: square-38x38, lay: flat }\nlumber: { chosen: plain, moisture: 9 % }\n';
  const paired = 'plan: 1\nname: Pairs\nface: { width: 800 mm, height: 600 mm }\nbars: { stock: strip-19x38, lay: flat, plies: 2 }\nlumber: { chosen: plain, moisture: 9 % }\n';
  test.each([...Object.entries(someFrames).map(([name, plan]) => [name, plan, strips] as const), ['inches', inches, rack] as const, ['paired', paired, strips] as const])('%s: no label on another or off the sheet, every piece drawn as long as it is', (_, plan, boards) => {
    const placed = placePlans([planOf(plan)], pileOf(boards), bench);
    const { pictures } = composePlacePage(placed);
    expect(pictures.length).toBeGreaterThan(1);
    for (const { svg, name } of pictures) {
      const labels = labelsOf(svg);
      const { width, height } = sheetOf(svg);
      expect(labels.filter(({ box }) => box.x < 0 || box.y < 0 || box.x + box.width > width || box.y + box.height > height).map(({ text }) => text), name).toEqual([]);
      expect(labels.flatMap((a, i) => labels.slice(i + 1).filter((b) => overlap(a.box, b.box) >= 1).map((b) => `${a.text} on ${b.text}`)), name).toEqual([]);
    }
    const places = placed.frames[0]!.places;
    const longest = Math.max(...places.map((place) => place.board.length_mm));
    const lengths = pathsOf(pictures[0]!.svg, true).map((points) => Math.max(...points.map(({ x }) => x)) - Math.min(...points.map(({ x }) => x)));
    for (const { slot } of places) expect(lengths.some((long) => Math.abs(long - (slot.piece.cut_mm * (400 - 32)) / longest) < 0.05), slot.tag).toBe(true);
  });
});
