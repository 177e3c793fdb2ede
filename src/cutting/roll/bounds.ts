import type { Lie } from './piece.js';

/** What is still to be laid, each piece with its ways of lying. */
export type Waiting = readonly (readonly Lie[])[];

/**
 * From `y` along the roll on (until the next level), `used` of its width is taken. Levels ascend in y and descend in
 * use; the last one is open-ended.
 */
export interface Level {
  readonly y: number;
  readonly used: number;
}

/** Widths that some set of waiting pieces fills exactly, ascending; null when there are too many to be of use. */
export type Fillable = readonly number[] | null;

/**
 * Widths that a set of waiting pieces fills exactly side by side, none above the roll: a free width is worth only the
 * largest of them it holds.
 */
export function fillableWidths(waiting: Waiting, roll_mm: number): Fillable {
  return fillable(
    waiting.map((lies) => lies.map((lie) => lie.across)),
    roll_mm,
  );
}

/**
 * Lengths that a set of pieces fills exactly one behind the other, none above the limit: where a layout pushed together
 * can end.
 */
export function fillableLengths(waiting: Waiting, limit_mm: number): Fillable {
  return fillable(
    waiting.map((lies) => lies.map((lie) => lie.along)),
    limit_mm,
  );
}

function fillable(choices: readonly (readonly number[])[], most_mm: number, mostSums = 4096): Fillable {
  let sums = new Set<number>([0]);
  for (const sizes of choices) {
    const next = new Set(sums);
    for (const sum of sums) for (const size of sizes) if (sum + size <= most_mm + 1e-9) next.add(sum + size);
    if (next.size > mostSums) return null;
    sums = next;
  }
  return [...sums].sort((p, q) => p - q);
}

/** The part of a free stretch that can be filled, mm. */
export function usableOf(sums: Fillable, free_mm: number): number {
  if (sums === null) return Math.max(free_mm, 0);
  let [low, high] = [0, sums.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sums[middle] as number) <= free_mm + 1e-9) low = middle + 1;
    else high = middle;
  }
  return sums[low - 1] ?? 0;
}

/**
 * A length that no finish of this layout can beat: the larger of what the waiting area needs in the width that can be
 * filled at each level, what any single
 * piece needs from the first level with room for it, and what pieces that cannot lie side by side need one behind the
 * other.
 */
export function leastLength_mm(levels: readonly Level[], waiting: Waiting, widths: Fillable, roll_mm: number): number {
  return Math.max(
    areaLength(levels, waiting, widths, roll_mm),
    singleLength(levels, waiting, roll_mm),
    wideLength(levels, waiting, roll_mm),
  );
}

function areaLength(levels: readonly Level[], waiting: Waiting, widths: Fillable, roll_mm: number): number {
  let area = waiting.reduce((sum, lies) => sum + (lies[0] as Lie).across * (lies[0] as Lie).along, 0);
  for (const [i, level] of levels.entries()) {
    const usable = usableOf(widths, roll_mm - level.used);
    const next = levels[i + 1];
    if (next === undefined) return usable > 0 ? level.y + area / usable : area > 0 ? Infinity : 0;
    const room = usable * (next.y - level.y);
    if (room >= area) return usable > 0 ? level.y + area / usable : 0;
    area -= room;
  }
  return 0;
}

function singleLength(levels: readonly Level[], waiting: Waiting, roll_mm: number): number {
  return waiting.reduce(
    (most, lies) => Math.max(most, Math.min(...lies.map((lie) => firstRoom(levels, lie.across, roll_mm) + lie.along))),
    0,
  );
}

/**
 * The widest pieces, as long as each is too wide to lie beside any wider one whichever way they lie: they come one
 * behind the other.
 */
function wideLength(levels: readonly Level[], waiting: Waiting, roll_mm: number): number {
  const sized = waiting.map((lies) => ({
    across: Math.min(...lies.map((lie) => lie.across)),
    along: Math.min(...lies.map((lie) => lie.along)),
  }));
  sized.sort((p, q) => q.across - p.across);
  let [behind, most] = [0, 0];
  for (const [i, piece] of sized.entries()) {
    const before = sized[i - 1];
    if (before !== undefined && before.across + piece.across <= roll_mm + 1e-9) break;
    behind += piece.along;
    most = Math.max(most, firstRoom(levels, piece.across, roll_mm) + behind);
  }
  return most;
}

function firstRoom(levels: readonly Level[], across: number, roll_mm: number): number {
  return levels.find((level) => level.used + across <= roll_mm + 1e-9)?.y ?? Infinity;
}
