import type { BarName } from '../../base/names.js';

/** One staple in the order of fixing. */
export interface Staple {
  readonly side: BarName;
  /** Place along the side from its left or bottom end, 0..1. */
  readonly at: number;
  /** Which round of the work it belongs to: 1 = the middles. */
  readonly round: number;
}

/**
 * Staples along one side, no farther apart than the spacing, the outermost half a spacing from the corner folds; never
 * fewer than 3.
 */
export function staplesAlong(length_mm: number, every_mm: number): number {
  return Math.max(3, Math.ceil(length_mm / every_mm - 1e-9));
}

const opposite: readonly (readonly [BarName, BarName])[] = [
  ['top', 'bottom'],
  ['left', 'right'],
];

/**
 * The order of fixing: the middle of each side first, opposite sides in turn, then outward a staple to each hand, the
 * corners last.
 * Common practice: so the cloth is drawn evenly and no fold runs off to a corner.
 */
export function stapleOrder(perSide: Readonly<Record<BarName, number>>): Staple[] {
  const queues = new Map<BarName, number[][]>();
  for (const [first, second] of opposite) for (const side of [first, second]) queues.set(side, outward(perSide[side]));
  const rounds = Math.max(...[...queues.values()].map((rings) => rings.length));
  const order: Staple[] = [];
  for (let round = 0; round < rounds; round++) {
    for (const pair of opposite) {
      const rings = pair.map((side) => ringOf(queues.get(side) ?? [], round, rounds));
      for (let i = 0; i < Math.max(...rings.map((ring) => ring.length)); i++) {
        for (const [s, side] of pair.entries()) {
          const at = rings[s]?.[i];
          if (at !== undefined) order.push({ side, at, round: round + 1 });
        }
      }
    }
  }
  return order;
}

/** Staples of a side from the middle outward, one or two (left and right of it) at a time. */
function outward(count: number): number[][] {
  const places = Array.from({ length: count }, (_, i) => (i + 0.5) / count);
  const rings: number[][] = [];
  for (let i = Math.floor((count - 1) / 2); i >= 0; i--) {
    const mirror = count - 1 - i;
    rings.push(i === mirror ? [places[i] as number] : [places[i] as number, places[mirror] as number]);
  }
  return rings;
}

/**
 * What a side does in a round: its middle in the first; a shorter side then waits, so that the corners of all sides
 * fall in the last rounds together.
 */
function ringOf(rings: readonly number[][], round: number, rounds: number): readonly number[] {
  if (round === 0) return rings[0] ?? [];
  const ring = round - (rounds - rings.length);
  return ring > 0 ? (rings[ring] ?? []) : [];
}
