import type { UnitSystem } from '../base/names.js';
import { tapeMark_mm } from '../base/tape.js';
import { inventedSource } from '../shelf/shelf-sources.js';
import type { Pack, Shelf } from '../shelf/shelf.js';

/** So many of one pack. */
export interface BoughtPack extends Pack {
  readonly count: number;
}

/** Packs that together hold at least what is needed. */
export interface BoughtPacks {
  readonly packs: readonly BoughtPack[];
  readonly holds: number;
  readonly cost: number;
}

/** Whole cents, so that sums of what is printed are what is printed. */
export const cents = (amount: number): number => Math.ceil(amount * 100 - 1e-6) / 100;

/** Whether nobody has asked for the price that an entry gives in a field. */
export const isInvented = (shelf: Shelf, entry: string | null, field: string): boolean =>
  entry !== null && shelf.sources[`${entry}.${field}`] === inventedSource;

/**
 * Up to whole steps in which a shop cuts it off, else to the next mark of the tape, mm. Never too little: the mark's
 * thousandth does not count for long steps.
 */
export function stepsOf(length_mm: number, step_mm: number | null, units: UnitSystem): number {
  const step = step_mm ?? tapeMark_mm(units);
  return Math.ceil(length_mm / step - 1e-9) * step;
}

/** Greatest common divisor of whole numbers. */
const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** Cheapest way to hold so much: its cost, what it holds, how many packs, and the last of them. */
interface Way {
  readonly cost: number;
  readonly holds: number;
  readonly count: number;
  readonly last: number;
}

const cheaper = (p: Way, q: Way): boolean => (p.cost - q.cost || p.holds - q.holds || p.count - q.count) < 0;

/**
 * The packs to buy for `needed` pieces or ml: least cost, then least left over, then fewest packs; never too little.
 * Exact: amounts grow step by step, each
 * step the best of one more pack on what was best before. Null when there are no packs.
 */
export function buyPacks(packs: readonly Pack[], needed: number): BoughtPacks | null {
  if (packs.length === 0) return null;
  const sizes = packs.map(({ holds }) => Math.max(1, Math.floor(holds + 1e-9)));
  const step = sizes.reduce(gcd, 0);
  const steps = Math.max(0, Math.ceil(needed / step - 1e-9));
  const ways: Way[] = [{ cost: 0, holds: 0, count: 0, last: -1 }];
  for (let n = 1; n <= steps; n++) {
    const next = packs.map(({ price }, last): Way => {
      const before = ways[Math.max(0, n - (sizes[last] as number) / step)] as Way;
      return {
        cost: before.cost + Math.round(price * 10_000),
        holds: before.holds + (sizes[last] as number),
        count: before.count + 1,
        last,
      };
    });
    ways.push(next.reduce((best, way) => (cheaper(way, best) ? way : best)));
  }
  const counts = packs.map(() => 0);
  for (let n = steps; n > 0;) {
    const { last } = ways[n] as Way;
    counts[last] = (counts[last] as number) + 1;
    n = Math.max(0, n - (sizes[last] as number) / step);
  }
  const found = ways[steps] as Way;
  return {
    packs: packs.flatMap((pack, i) => (counts[i] === 0 ? [] : [{ ...pack, count: counts[i] as number }])),
    holds: found.holds,
    cost: cents(found.cost / 10_000),
  };
}
