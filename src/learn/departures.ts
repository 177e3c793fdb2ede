import { chanceOfAtLeast, chiSquareShare, holm, normalQuantile } from './chances.js';
import { normalTail } from '../risk/normal.js';
import type { KeptPromise } from './promise-ledger.js';

/** Chance of any false alarm among all comparisons of one page, however many there are. */
export const alarm_level = 0.05;

/** What a group of readings has in common. */
export type GroupKind = 'all' | 'kind' | 'plan' | 'boards' | 'step' | 'student';

/** Readings of one group against what was promised of them. */
export interface Departure {
  readonly group: GroupKind;
  /** Which plan, board kind, step or student; the user's own text. */
  readonly name: string;
  readonly readings: number;
  /**
   * Readings above and below the middle of what was promised pull this apart from 0; one is one standard deviation of
   * luck.
   */
  readonly shift: number;
  /** Chance that luck alone departs this far, for this group alone. */
  readonly chance: number;
  /** The same with all groups looked at (Holm): an alarm when it is at most `alarm_level`. */
  readonly chance_of_all: number;
  readonly alarm: boolean;
  /** Whether the readings run high, low, or scatter wider than promised. */
  readonly way: 'higher' | 'lower' | 'wider';
}

/** The groups that are looked at, and what puts a reading into each. */
const grouping: readonly { readonly group: GroupKind; readonly of: (promise: KeptPromise) => string | null }[] = [
  { group: 'all', of: () => 'all readings' },
  { group: 'kind', of: ({ kind }) => kind },
  { group: 'plan', of: ({ plan }) => plan },
  {
    group: 'boards',
    of: ({ stock, chosen, kind }) =>
      kind === 'corner-lift' || kind === 'winding' || kind === 'bow' ? `${stock}, ${chosen}` : null,
  },
  { group: 'step', of: ({ when }) => when },
  { group: 'student', of: ({ student }) => student },
];

/**
 * Which groups depart from what was promised. Of each group two things are asked: do its readings run high or low (the
 * sum of their normal scores), and do
 * they scatter wider than promised (the sum of the squares; chi-square); the likelier departure counts, twice over for
 * having asked two. Holm's steps over all groups keep
 * the chance of any false alarm at or below `alarm_level`. A group that holds the very readings of another is asked
 * once.
 */
export function departures(promises: readonly KeptPromise[]): readonly Departure[] {
  const seen = new Set<string>();
  const groups = grouping.flatMap(({ group, of }) => {
    const byName = new Map<string, { promise: KeptPromise; at: number }[]>();
    promises.forEach((promise, at) => {
      const name = of(promise);
      if (name !== null) byName.set(name, [...(byName.get(name) ?? []), { promise, at }]);
    });
    return [...byName]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .flatMap(([name, members]) => {
        const mark = members.map(({ at }) => at).join(' ');
        return seen.has(mark)
          ? []
          : (seen.add(mark), [{ group, name, scores: members.map(({ promise }) => normalQuantile(promise.rank)) }]);
      });
  });
  const asked = groups.map(({ group, name, scores }) => {
    const n = scores.length;
    const shift = scores.reduce((sum, z) => sum + z, 0) / Math.sqrt(n);
    const byShift = 2 * normalTail(Math.abs(shift));
    const byScatter =
      1 -
      chiSquareShare(
        n,
        scores.reduce((sum, z) => sum + z * z, 0),
      );
    const way: Departure['way'] = byScatter < byShift ? 'wider' : shift > 0 ? 'higher' : 'lower';
    return { group, name, readings: n, shift, chance: Math.min(1, 2 * Math.min(byShift, byScatter)), way };
  });
  const all = holm(asked.map(({ chance }) => chance));
  return asked.map((one, i) => ({ ...one, chance_of_all: all[i]!, alarm: all[i]! <= alarm_level }));
}

/**
 * “Said 1 in 10, happened k of n”: readings in the top tenth of what was promised, and the chance that luck alone makes
 * as many.
 */
export interface TopTenth {
  readonly kind: KeptPromise['kind'];
  readonly step: 'bare' | 'stretched';
  readonly happened: number;
  readonly of: number;
  readonly chance: number;
}

/** The count for every kind of reading, bare and with the cloth on. */
export function topTenths(promises: readonly KeptPromise[]): readonly TopTenth[] {
  const groups = new Map<string, KeptPromise[]>();
  for (const promise of promises) {
    const key = `${promise.kind}|${promise.when === 'before-cloth' ? 'bare' : 'stretched'}`;
    groups.set(key, [...(groups.get(key) ?? []), promise]);
  }
  return [...groups]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, members]) => {
      const [kind, step] = key.split('|') as [KeptPromise['kind'], TopTenth['step']];
      const happened = members.filter(({ rank }) => rank > 0.9).length;
      return { kind, step, happened, of: members.length, chance: chanceOfAtLeast(members.length, happened, 0.1) };
    });
}
