import type { Fare, Use } from '../suggest/fare.js';

/** Sizes looked at, in whole steps. */
export interface Steps {
  readonly first: number;
  readonly last: number;
  /** How many sizes right below the one that is given must pass as well: an edge may be ragged. */
  readonly below: number;
}

/** How a size fares, steps. */
export type FareAt = (steps: number) => Promise<Fare>;

/**
 * The largest size that passes; null when none is found that does, `last` when that does. So the size given passes and
 * the next step up fails; between the sizes that were tried a frame is taken to fare no better the larger it is.
 * It begins at a `guess`, and tries next where some limit would be used up, so that few sizes are tried; where that says
 * nothing, it strides on, or halves the gap.
 */
export async function largest({ first, last, below }: Steps, guess: number, fareAt: FareAt): Promise<number | null> {
  const tryAt = async (at: number): Promise<Tried> => ({ at, fare: await fareAt(at) });
  const found = (await downFrom(Math.min(last, Math.max(first, guess)))) ?? (await fromSmallest());
  if (found === null) return null;
  return steady(await narrow(found.high === null ? await upFrom(found.low) : found, tryAt));

  /** The size itself where those right below it pass too; else the next below for which that is so, if there is one. */
  async function steady(at: number): Promise<number> {
    for (let down = 1; down <= below && at - down >= first; down++) {
      const tried = await tryAt(at - down);
      if (tried.fare.passes) continue;
      const lower = await downFrom(at - down);
      return lower === null ? at : steady(await narrow(lower, tryAt));
    }
    return at;
  }

  /** From a size down to one that passes, and from one that passes right away no further; null when none does. */
  async function downFrom(start: number): Promise<Found | null> {
    let high: Tried | null = null;
    for (let at = start; ;) {
      const tried = await tryAt(at);
      if (tried.fare.passes) return { low: tried, high };
      if (at === first) return null;
      high = tried;
      at = Math.max(first, Math.floor(at * stride));
    }
  }

  /** Small frames may fail where larger ones pass: sizes that grow by half, from the smallest up. */
  async function fromSmallest(): Promise<Found | null> {
    let low: Tried | null = null;
    for (const at of growing(first, last)) {
      const tried = await tryAt(at);
      if (tried.fare.passes) low = tried;
      else if (low !== null) return { low, high: tried };
    }
    return low === null ? null : { low, high: null };
  }

  /** Up to the first size that fails. */
  async function upFrom(start: Tried): Promise<Found> {
    let [before, low]: [Tried | null, Tried] = [null, start];
    while (low.at < last) {
      const ahead = before === null ? null : crossingOf(before, low, low.fare.uses);
      const most = low.at / stride;
      const at = Math.min(
        last,
        Math.max(low.at + 1, Math.ceil(Math.min(ahead === null ? most : ahead + 1, 1.5 * most))),
      );
      const tried = await tryAt(at);
      if (!tried.fare.passes) return { low, high: tried };
      [before, low] = [low, tried];
    }
    return { low, high: null };
  }
}

/** By so much smaller, or larger, is the next size where nothing tells a better one. */
const stride = 0.8;

/** A size that was tried. */
interface Tried {
  readonly at: number;
  readonly fare: Fare;
}

/** A size that passes, and one above it that does not; null where there is none to the last. */
interface Found {
  readonly low: Tried;
  readonly high: Tried | null;
}

/** The last that passes, between one that does and one that does not. */
async function narrow(found: Found, tryAt: (at: number) => Promise<Tried>): Promise<number> {
  let { low, high } = found;
  for (let slow = 0; high !== null && high.at - low.at > 1;) {
    const width: number = high.at - low.at;
    const crossing: number | null = slow < 2 ? crossingOf(low, high, high.fare.uses) : null;
    const at = Math.min(high.at - 1, Math.max(low.at + 1, Math.floor(crossing ?? (low.at + high.at) / 2)));
    const tried = await tryAt(at);
    if (tried.fare.passes) low = tried;
    else high = tried;
    slow = crossing !== null && high.at - low.at > width / 2 ? slow + 1 : 0;
  }
  return low.at;
}

/**
 * Where the first of these limits, as the larger of two sizes uses them, is used up exactly, the use of each taken to
 * grow as a power of the size; null where none grows.
 */
function crossingOf(small: Tried, large: Tried, limits: readonly Use[]): number | null {
  const before = new Map(small.fare.uses.map((use) => [use.of, use]));
  const crossings = limits.flatMap((limit): number[] => {
    const use = before.get(limit.of);
    if (use === undefined) return [];
    const [less, more] = [usedOf(use, limit), usedOf(limit, limit)];
    const power = Math.log(more / less) / Math.log(large.at / small.at);
    const crossing = large.at * more ** (-1 / power);
    return power > leastPower && less < 1 && crossing >= small.at ? [crossing] : [];
  });
  return crossings.length === 0 ? null : Math.min(...crossings);
}

/** What grows more slowly with the size than this power of it is taken not to grow. */
const leastPower = 0.05;

/** The share that a value uses of the limit that stands in the way. */
function usedOf({ actual, limit, verdict }: Use, against: Use): number {
  const own = against.verdict === 'stop' && verdict !== 'stop' ? against.limit : limit;
  return against.most ? actual / own : own / actual;
}

/** Sizes that grow by half from one to the next, and the largest. */
function growing(first: number, last: number): readonly number[] {
  const sizes: number[] = [];
  for (let steps = first; steps < last; steps = Math.max(steps + 1, Math.round(steps * 1.5))) sizes.push(steps);
  return [...sizes, last];
}
