import type { MembraneBorder } from './membrane-border.js';
import type { Tension } from './skin-energy.js';

/**
 * A thread of the skin between two border nodes that lie opposite: it resists their moving apart sideways, in freedom
 * `freedom` (0 = x, 1 = y).
 */
export interface Thread {
  readonly from: number;
  readonly to: number;
  readonly freedom: 0 | 1;
  /** Tension it carries over its length. */
  readonly k: number;
}

/** Nodes that threads join, with the freedom across the thread: those along x swing along y, and the other way. */
export function threadEnds({ bottom, top, left, right }: MembraneBorder): readonly Omit<Thread, 'k'>[] {
  const ends: Omit<Thread, 'k'>[] = [];
  for (let n = 0; n < left.length; n++) ends.push({ from: left[n]!, to: right[n]!, freedom: 1 });
  for (let n = 0; n < bottom.length; n++) ends.push({ from: bottom[n]!, to: top[n]!, freedom: 0 });
  return ends;
}

/**
 * Stiffness of the threads under tension, each carrying its share of the edge: T·share/length on the difference of its
 * ends' sideways movements. Under its own
 * tension a frame may then turn in its plane without cost, as it may turn out of it; without them it would seem to lean
 * over under forces that keep
 * their direction, which cloth does not do.
 */
export function threadsUnder(border: MembraneBorder, tension: Tension): readonly Thread[] {
  const { width, height, along_x, along_y } = border;
  const count = along_y.length;
  return threadEnds(border).map(({ from, to, freedom }, i) => ({
    from,
    to,
    freedom,
    k:
      freedom === 1
        ? (tension.x * shareOf(along_y, i) * height) / width
        : (tension.y * shareOf(along_x, i - count) * width) / height,
  }));
}

/** The share of an edge that the thread at node n stands for: half the way to its neighbours. */
const shareOf = (at: readonly number[], n: number): number => ((at[n + 1] ?? at[n]!) - (at[n - 1] ?? at[n]!)) / 2;
