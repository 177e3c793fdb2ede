import fc from 'fast-check';
import type { Piece, Problem } from '../../src/timetable/calendar.js';

/** A piece of work from its length, its wait, and what it takes by the minute and while it is held. */
export function piece(minutes: number, wait_min: number, spans: readonly (readonly [resource: number, units: number, hold: number])[] = []): Piece {
  const all = [{ resource: 0, units: 1, length_min: minutes }, ...spans.map(([resource, units, hold]) => ({ resource, units, length_min: minutes + hold }))];
  return { minutes, wait_min, spans: all, longest_min: Math.max(...all.map(({ length_min }) => length_min)) };
}

/** Sessions of a length, one every so many minutes; capacities by resource: person, saw, flat, corner, bar. */
export function problemFor(frames: readonly (readonly Piece[])[], { count, length, every, capacity }: { readonly count: number; readonly length: number; readonly every: number; readonly capacity: readonly number[] }): Problem {
  const sessions = Array.from({ length: count }, (_, i) => ({ day: i, start_min: i * every, length_min: length, people: null }));
  const signatures = frames.map((frame) => JSON.stringify(frame));
  return { sessions, capacity: capacity.map((units) => sessions.map(() => units)), frames, kind: signatures.map((one) => signatures.indexOf(one)) };
}

/** A frame of sawing, gluing and finishing, in minutes of a toy workshop. */
const frame = fc.record({ saw: fc.integer({ min: 1, max: 2 }), glue: fc.integer({ min: 1, max: 2 }), hold: fc.integer({ min: 0, max: 3 }), set: fc.integer({ min: 0, max: 6 }), last: fc.integer({ min: 1, max: 3 }), three: fc.boolean() })
  .map(({ saw, glue, hold, set, last, three }) => [piece(saw, 0, [[1, 1, 0]]), piece(glue, hold + set, [[3, 2, hold]]), ...(three ? [piece(last, 0)] : [])]);

/** What a toy workshop has. */
export interface ToyShop {
  readonly people: number;
  readonly saws: number;
  readonly clamps: number;
  readonly length: number;
}
export const toyShop = fc.record<ToyShop>({ people: fc.integer({ min: 1, max: 3 }), saws: fc.integer({ min: 1, max: 2 }), clamps: fc.integer({ min: 2, max: 5 }), length: fc.integer({ min: 3, max: 5 }) });

/** Frames of one or two kinds. */
export const toyFrames = (least: number, most: number) => fc.tuple(frame, frame, fc.array(fc.boolean(), { minLength: least, maxLength: most })).map(([a, b, which]) => which.map((first) => (first ? a : b)));

export const toyProblem = (frames: readonly (readonly Piece[])[], shop: ToyShop, count: number): Problem =>
  problemFor(frames, { count, length: shop.length, every: 9, capacity: [shop.people, shop.saws, Infinity, shop.clamps, Infinity] });
