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
  const level = left.map((from, n) => ({ from, to: right[n]!, freedom: 1 as const }));
  const upright = bottom.map((from, n) => ({ from, to: top[n]!, freedom: 0 as const }));
  return [...level, ...upright];
}

/**
 * Stiffness of the threads under tension, each carrying its share of the edge: T·share/length on the difference of its
 * ends' sideways movements. Under its own
 * tension a frame may then turn in its plane without cost, as it may turn out of it; without them it would seem to lean
 * over under forces that keep
 * their direction, which cloth does not do.
 */
export function threadsUnder(border: MembraneBorder, tension: Tension): readonly Thread[] {
  const share = (at: readonly number[], n: number): number => ((at[n + 1] ?? at[n]!) - (at[n - 1] ?? at[n]!)) / 2;
  const { width, height, along_x, along_y } = border;
  const pulls = [
    ...along_y.map((_, n) => (tension.x * share(along_y, n) * height) / width),
    ...along_x.map((_, n) => (tension.y * share(along_x, n) * width) / height),
  ];
  return threadEnds(border).map((ends, i) => ({ ...ends, k: pulls[i]! }));
}
