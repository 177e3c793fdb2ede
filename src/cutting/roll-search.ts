import { fillable, leastLength_mm, tooMuchForColumns, usableOf, type Fillable, type Waiting } from './roll-bounds.js';
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

/** What is known of a set of waiting pieces, whatever has been laid before them. */
interface Rest {
  readonly indices: readonly number[];
  readonly waiting: Waiting;
  readonly widths: Fillable;
  readonly lengths: Fillable;
}

/**
 * Looks for the shortest layout below a known length. Pieces are laid on the corners of the staircase in every order; it turns back where what waits
 * cannot end below the best so far, and where the same pieces have left the same staircase before. The first (largest) piece is kept in the near left
 * quarter by its middle: mirror images come to the same. Stops after `steps` positions looked at (a count, not a time: the same in every run).
 */
export function searchRoll(pieces: readonly OpenPiece[], roll_mm: number, known_mm: number, steps: number): RollSearch {
  const order = [...pieces].sort((p, q) => area(q) - area(p));
  const allLengths = fillable(order.map((p) => p.lies), 'along', known_mm);
  const rests = new Map<number, Rest>();
  const seen = new Set<string>();
  let limit_mm = usableOf(allLengths, known_mm - grain_mm);
  let best: readonly Laid[] | null = null;
  let left = steps;

  const restOf = (mask: number): Rest => {
    const known = rests.get(mask);
    if (known !== undefined) return known;
    const indices = order.flatMap((_, i) => (mask & (1 << i) ? [] : [i]));
    const waiting = indices.map((i) => (order[i] as OpenPiece).lies);
    const rest = { indices, waiting, widths: fillable(waiting, 'across', roll_mm), lengths: fillable(waiting, 'along', known_mm) };
    rests.set(mask, rest);
    return rest;
  };

  const descend = (laid: readonly Laid[], mask: number, end_mm: number): void => {
    if (laid.length === order.length) {
      best = laid;
      limit_mm = usableOf(allLengths, end_mm - grain_mm);
      return;
    }
    const corners = cornersOf(laid);
    const { indices, waiting, widths, lengths } = restOf(mask);
    if (leastLength_mm(corners, waiting, widths, roll_mm) > limit_mm + grain_mm) return;
    if (tooMuchForColumns(corners, waiting, lengths, roll_mm, limit_mm)) return;
    const key = `${mask}|${corners.map((c) => `${c.x},${c.y}`).join(';')}`;
    if (seen.has(key)) return;
    for (const corner of corners) {
      const tried = new Set<string>();
      for (const index of indices) {
        for (const lie of (order[index] as OpenPiece).lies) {
          const size = `${lie.across}x${lie.along}`;
          // the largest piece is bound to its quarter, so an equal one is not the same as it
          if (index > 0 && tried.has(size)) continue;
          if (index > 0) tried.add(size);
          const end = corner.y + lie.along;
          if (corner.x + lie.across > roll_mm + 1e-9 || end > limit_mm + grain_mm) continue;
          if (index === 0 && (2 * corner.x + lie.across > roll_mm + 1e-9 || corner.y + end > limit_mm + grain_mm)) continue;
          if (!touches(laid, corner, lie)) continue;
          if (left-- <= 0) return;
          descend([...laid, { ...corner, across: lie.across, along: lie.along, index, lie }], mask | (1 << index), Math.max(end_mm, end));
        }
      }
    }
    if (left > 0) seen.add(key);
  };
  if (limit_mm > 0) descend([], 0, 0);
  const found = best as readonly Laid[] | null;
  const placed = found === null ? null : found.map(({ index, lie, x, y }) => place((order[index] as OpenPiece).piece, lie, x, y));
  return { placed, finished: left > 0 };
}

function area(open: OpenPiece): number {
  return open.piece.across_mm * open.piece.along_mm;
}

/** A block in a layout pushed left and down leans on something on its left and on something below, laid before it. */
function touches(laid: readonly Block[], { x, y }: Corner, lie: Lie): boolean {
  const onLeft = x === 0 || laid.some((b) => b.x + b.across === x && b.y < y + lie.along && b.y + b.along > y);
  const below = y === 0 || laid.some((b) => b.y + b.along === y && b.x < x + lie.across && b.x + b.across > x);
  return onLeft && below;
}
