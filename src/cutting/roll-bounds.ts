import type { Corner } from './roll-front.js';
import type { Lie } from './roll-piece.js';

/** What is still to be laid, each piece with its ways of lying. */
export type Waiting = readonly (readonly Lie[])[];

/** Widths that some set of waiting pieces fills exactly, ascending, none above the roll: a free width is worth only the largest of them it holds. */
export function fillableWidths(waiting: Waiting, roll_mm: number, most = 4096): readonly number[] | null {
  let sums = new Set<number>([0]);
  for (const lies of waiting) {
    const next = new Set(sums);
    for (const sum of sums) for (const lie of lies) if (sum + lie.across <= roll_mm) next.add(sum + lie.across);
    if (next.size > most) return null;
    sums = next;
  }
  return [...sums].sort((p, q) => p - q);
}

/**
 * A length no finish of this layout can beat: the larger of what the waiting area needs in the width that can be filled at each level, what any single
 * piece needs at the first level wide enough, and what pieces wider than half the roll need one behind the other. Corners from the start of the roll.
 */
export function leastLength_mm(corners: readonly Corner[], waiting: Waiting, widths: readonly number[] | null, roll_mm: number): number {
  return Math.max(areaLength(corners, waiting, widths, roll_mm), singleLength(corners, waiting, roll_mm), wideLength(corners, waiting, roll_mm));
}

function areaLength(corners: readonly Corner[], waiting: Waiting, widths: readonly number[] | null, roll_mm: number): number {
  let area = waiting.reduce((sum, lies) => sum + (lies[0] as Lie).across * (lies[0] as Lie).along, 0);
  if (area === 0) return 0;
  for (const [i, corner] of corners.entries()) {
    const free = roll_mm - corner.x;
    const usable = widths === null ? free : largestUpTo(widths, free);
    const next = corners[i + 1];
    if (next === undefined) return corner.y + (usable > 0 ? area / usable : Infinity);
    const room = usable * (next.y - corner.y);
    if (room >= area) return corner.y + area / usable;
    area -= room;
  }
  return 0;
}

function singleLength(corners: readonly Corner[], waiting: Waiting, roll_mm: number): number {
  return waiting.reduce((most, lies) => Math.max(most, Math.min(...lies.map((lie) => firstLevel(corners, lie.across, roll_mm) + lie.along))), 0);
}

/** Only pieces that are wider than half the roll whichever way they lie: no two of them lie side by side. */
function wideLength(corners: readonly Corner[], waiting: Waiting, roll_mm: number): number {
  const wide = waiting.filter((lies) => lies.every((lie) => 2 * lie.across > roll_mm + 1e-9));
  if (wide.length === 0) return 0;
  const narrowest = Math.min(...wide.flatMap((lies) => lies.map((lie) => lie.across)));
  return firstLevel(corners, narrowest, roll_mm) + wide.reduce((sum, lies) => sum + Math.min(...lies.map((lie) => lie.along)), 0);
}

function firstLevel(corners: readonly Corner[], across: number, roll_mm: number): number {
  return corners.find((corner) => corner.x + across <= roll_mm + 1e-9)?.y ?? Infinity;
}

function largestUpTo(ascending: readonly number[], most: number): number {
  let [low, high] = [0, ascending.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ascending[middle] as number) <= most + 1e-9) low = middle + 1;
    else high = middle;
  }
  return ascending[low - 1] ?? 0;
}
