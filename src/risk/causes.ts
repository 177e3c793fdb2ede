import type { BoardWarp } from './ply-warp.js';
import type { WarpTerm } from './terms.js';

/** One cause of the corner lift's uncertainty. */
export interface Cause {
  /** Share of the variance of the corner lift; all causes together make 1. */
  readonly share: number;
  /** Null where small causes of several kinds are put together. */
  readonly from: BoardWarp | null;
  readonly part: CausePart | null;
  /** Bars and crossbars it comes from: one, the two opposite bars, or crossbars. */
  readonly members: readonly string[];
}

/** Where a part of the variance comes from. */
export type CausePart = 'chosen' | 'reading' | 'drying';

const parts: readonly CausePart[] = ['chosen', 'reading', 'drying'];

/** Causes smaller than this are put together; those smaller still are rounding and left out. */
const small_share = 0.005;
const rounding_share = 1e-9;

/**
 * Splits the variance of the corner lift by what causes it: which bars, twist or bow or crook, choosing or drying or
 * the reading error.
 * Opposite bars stand together, crossbars stand together. Largest first; empty when nothing varies.
 */
export function liftCauses(terms: readonly WarpTerm[]): readonly Cause[] {
  const groups = new Map<string, { from: BoardWarp; part: CausePart; members: string[]; variance: number }>();
  let total = 0;
  for (const term of terms) {
    for (const part of parts) {
      const variance = term.lift ** 2 * term.warp[`${part}_var`];
      if (variance === 0) continue;
      total += variance;
      const key = `${groupOf(term.warp.member)} ${term.warp.from} ${part}`;
      const group = groups.get(key) ?? { from: term.warp.from, part, members: [], variance: 0 };
      group.members.push(term.warp.member);
      group.variance += variance;
      groups.set(key, group);
    }
  }
  const causes = [...groups.values()]
    .map(({ from, part, members, variance }): Cause => ({
      share: variance / total,
      from,
      part,
      members,
    }))
    .filter((cause) => cause.share > rounding_share)
    .sort((a, b) => b.share - a.share);
  return gatherSmall(causes);
}

function gatherSmall(causes: readonly Cause[]): readonly Cause[] {
  const small = causes.filter((cause) => cause.share < small_share);
  if (small.length < 2) return causes;
  const share = small.reduce((sum, cause) => sum + cause.share, 0);
  const members = [...new Set(small.flatMap((cause) => cause.members))];
  return [...causes.filter((cause) => cause.share >= small_share), { share, from: null, part: null, members }];
}

function groupOf(member: string): string {
  if (member === 'top' || member === 'bottom') return 'level';
  return member === 'left' || member === 'right' ? 'upright' : 'crossbars';
}
