import { fillableWidths, leastLength_mm, type Waiting } from './roll-bounds.js';
import { cornersOf, type Block, type Corner } from './roll-front.js';
import { place, type Lie, type PlacedCloth, type RollPiece } from './roll-piece.js';

/** A piece to search with: at most thirty of them. */
export interface OpenPiece {
  readonly piece: RollPiece;
  readonly lies: readonly Lie[];
}

export interface RollSearch {
  /** The best layout found that is shorter than the one given, or null when there is none or none was found. */
  readonly placed: readonly PlacedCloth[] | null;
  /** True when the search ended by itself: then nothing shorter exists. */
  readonly finished: boolean;
}

/** Improvements smaller than this are not worth another layout, mm. */
const grain_mm = 1e-6;

interface Laid extends Block {
  readonly index: number;
  readonly lie: Lie;
}

/**
 * Looks for the shortest layout below a known length: lays the pieces on the corners of the staircase in every order that leads to a different layout,
 * and turns back where even the waiting area cannot end below the best so far. Stops after `steps` positions looked at (a count, not a time: the same every run).
 */
export function searchRoll(pieces: readonly OpenPiece[], roll_mm: number, known_mm: number, steps: number): RollSearch {
  const order = [...pieces].sort((p, q) => area(q) - area(p));
  const widths = new Map<number, readonly number[] | null>();
  let best_mm = known_mm;
  let best: readonly Laid[] | null = null;
  let left = steps;

  const widthsOf = (mask: number, waiting: Waiting): readonly number[] | null => {
    const known = widths.get(mask);
    if (known !== undefined) return known;
    const fresh = fillableWidths(waiting, roll_mm);
    widths.set(mask, fresh);
    return fresh;
  };

  const descend = (laid: readonly Laid[], mask: number, end_mm: number): void => {
    if (laid.length === order.length) {
      best_mm = end_mm;
      best = laid;
      return;
    }
    const corners = cornersOf(laid);
    const waitingIndices = order.flatMap((_, i) => (mask & (1 << i) ? [] : [i]));
    const waiting = waitingIndices.map((i) => (order[i] as OpenPiece).lies);
    if (Math.max(end_mm, leastLength_mm(corners, waiting, widthsOf(mask, waiting), roll_mm)) >= best_mm - grain_mm) return;
    for (const corner of corners) {
      const tried = new Set<string>();
      for (const index of waitingIndices) {
        for (const lie of (order[index] as OpenPiece).lies) {
          const key = `${lie.across}x${lie.along}`;
          if (tried.has(key)) continue;
          tried.add(key);
          if (corner.x + lie.across > roll_mm + 1e-9 || corner.y + lie.along >= best_mm - grain_mm) continue;
          if (couldHaveGoneBefore(laid, corner, lie)) continue;
          if (left-- <= 0) return;
          descend([...laid, { ...corner, across: lie.across, along: lie.along, index, lie }], mask | (1 << index), Math.max(end_mm, corner.y + lie.along));
        }
      }
    }
  };
  descend([], 0, 0);
  const found: readonly Laid[] | null = best;
  const placed = found === null ? null : (found as readonly Laid[]).map(({ index, lie, x, y }) => place((order[index] as OpenPiece).piece, lie, x, y));
  return { placed, finished: left > 0 };
}

function area(open: OpenPiece): number {
  return open.piece.across_mm * open.piece.along_mm;
}

/**
 * True when the last block and the one about to be laid could change turns and lead to the same layout, and the other order is the one kept
 * (farther along the roll last, then farther right last).
 */
function couldHaveGoneBefore(laid: readonly Laid[], corner: Corner, lie: Lie): boolean {
  const last = laid.at(-1);
  if (last === undefined) return false;
  if (corner.y > last.y || (corner.y === last.y && corner.x > last.x)) return false;
  const lastStaysOpen = last.x >= corner.x + lie.across || last.y >= corner.y + lie.along;
  if (!lastStaysOpen) return false;
  return cornersOf(laid.slice(0, -1)).some((c) => c.x === corner.x && c.y === corner.y);
}
