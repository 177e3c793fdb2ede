import type { Corner } from './roll-front.js';
import type { Lie } from './roll-piece.js';

/** What is still to be laid, each piece with its ways of lying. */
export type Waiting = readonly (readonly Lie[])[];

/** Sums that some set of waiting pieces fills exactly, ascending; null when there are too many to be of use. */
export type Fillable = readonly number[] | null;

/**
 * Widths (`across`) or lengths (`along`) that a set of waiting pieces fills exactly side by side, none above `most_mm`:
 * a free stretch is worth only the largest of them it holds.
 */
export function fillable(waiting: Waiting, measure: 'across' | 'along', most_mm: number, mostSums = 4096): Fillable {
  let sums = new Set<number>([0]);
  for (const lies of waiting) {
    const next = new Set(sums);
    for (const sum of sums) for (const lie of lies) if (sum + lie[measure] <= most_mm + 1e-9) next.add(sum + lie[measure]);
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

/** Area of what waits, mm². */
export function waitingArea(waiting: Waiting): number {
  return waiting.reduce((sum, lies) => sum + (lies[0] as Lie).across * (lies[0] as Lie).along, 0);
}

/**
 * A length no finish of this layout can beat: the larger of what the waiting area needs in the width that can be filled at each level, what any single
 * piece needs at the first level wide enough, and what pieces wider than half the roll need one behind the other. Corners from the start of the roll.
 */
export function leastLength_mm(corners: readonly Corner[], waiting: Waiting, widths: Fillable, roll_mm: number): number {
  return Math.max(areaLength(corners, waiting, widths, roll_mm), singleLength(corners, waiting, roll_mm), wideLength(corners, waiting, roll_mm));
}

/** True when the waiting area cannot go into the lengths that can be filled over each stretch of the roll's width, up to a length limit. */
export function tooMuchForColumns(corners: readonly Corner[], waiting: Waiting, lengths: Fillable, roll_mm: number, limit_mm: number): boolean {
  let right = roll_mm;
  let room = 0;
  for (const corner of corners) {
    room += (right - corner.x) * usableOf(lengths, limit_mm - corner.y);
    right = corner.x;
  }
  return room < waitingArea(waiting) - 1e-3;
}

function areaLength(corners: readonly Corner[], waiting: Waiting, widths: Fillable, roll_mm: number): number {
  let area = waitingArea(waiting);
  for (const [i, corner] of corners.entries()) {
    const usable = usableOf(widths, roll_mm - corner.x);
    const next = corners[i + 1];
    if (next === undefined) return usable > 0 ? corner.y + area / usable : Infinity;
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
