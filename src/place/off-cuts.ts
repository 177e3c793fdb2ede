import type { Knot } from '../pile/pile.js';
import { soundStretches, type Stretch } from '../pile/stretches.js';
import type { Place } from './result.js';

/**
 * What falls off a board in front of its pieces, between two of them or behind them; mm from the marked end, clear of
 * the slants at its ends.
 */
export interface OffCut extends Stretch {
  /** How many of its ends are sawn at 45°. */
  readonly slanted: number;
  /** Bad places that reach into it, and the sound wood beside them. */
  readonly bad: readonly Knot[];
  readonly sound: readonly Stretch[];
}

/**
 * Two neighbours on a board with nothing of use between them, and how far apart they are on each side of the board, mm.
 */
export interface Meeting {
  readonly before: Place;
  readonly after: Place;
  /** Along the marked edge (of pieces mitred on edge the marked face), and along the side across from it. */
  readonly marked_mm: number;
  readonly other_mm: number;
}

/** Whether the long side of a mitred piece lies on the marked edge or face; null for square ends. */
export type LongSide = (place: Place) => 'marked' | 'other' | null;

const dust_mm = 1e-3;

/** Pieces of one board in order from its marked end. */
export const inOrder = (places: readonly Place[]): readonly Place[] =>
  [...places].sort((a, b) => a.from_mm - b.from_mm);

export const endOf = ({ from_mm, slot }: Place): number => from_mm + slot.piece.cut_mm;

/**
 * What truly falls off a board that these pieces are sawn from: bad places fall off with their neighbours until
 * somebody saws them off.
 */
export function offCutsOf(board: Place['board'], places: readonly Place[]): readonly OffCut[] {
  const own = inOrder(places);
  if (board.cut !== null) return [];
  return Array.from({ length: own.length + 1 }, (_, i): OffCut => {
    const [before, after] = [own[i - 1], own[i]];
    const from_mm = before === undefined ? 0 : endOf(before) + before.kerf_mm;
    const to_mm = after === undefined ? board.length_mm : after.from_mm - after.kerf_mm;
    const clip = (one: Stretch): Stretch => ({
      from_mm: Math.max(from_mm, one.from_mm),
      to_mm: Math.min(to_mm, one.to_mm),
    });
    const inside = (all: readonly Stretch[]): readonly Stretch[] =>
      all.map(clip).filter((one) => one.to_mm - one.from_mm > dust_mm);
    const slanted = [before, after].filter((place) => place?.slot.piece.ends === 'mitre').length;
    return {
      from_mm,
      to_mm,
      slanted,
      bad: board.knots.filter((knot) => inside([knot]).length > 0),
      sound: inside(soundStretches(board)),
    };
  }).filter(({ from_mm, to_mm }) => to_mm - from_mm > dust_mm);
}

/** Neighbours between which nothing of use falls off. */
export function meetingsOf(board: Place['board'], places: readonly Place[], longSide: LongSide): readonly Meeting[] {
  const own = inOrder(places);
  const offCuts = offCutsOf(board, places);
  return own.slice(1).flatMap((after, i): Meeting[] => {
    const before = own[i] as Place;
    if (offCuts.some(({ from_mm, sound }) => from_mm > before.from_mm && from_mm < after.from_mm && sound.length > 0))
      return [];
    const gap_mm = after.from_mm - endOf(before);
    const on = (side: 'marked' | 'other'): number =>
      [before, after].reduce(
        (sum, place) => sum + ([null, side].includes(longSide(place)) ? 0 : place.slot.piece.across_mm),
        gap_mm,
      );
    return [{ before, after, marked_mm: on('marked'), other_mm: on('other') }];
  });
}

/**
 * How far all pieces that follow each other from the very end of a board may move along it; null where none begins at
 * the end.
 */
export function slackAtStart(board: Place['board'], places: readonly Place[]): number | null {
  const [first] = inOrder(places);
  if (board.cut !== null || first === undefined || first.from_mm > dust_mm) return null;
  const end_mm = soundStretches(board)[0]?.to_mm ?? 0;
  const last =
    inOrder(places)
      .filter(({ from_mm }) => from_mm < end_mm)
      .at(-1) ?? first;
  return Math.max(0, end_mm - endOf(last) - last.kerf_mm);
}
