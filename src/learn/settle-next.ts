import type { LearnedEntry } from './entries.js';

/** What would make a number known well enough. */
export interface NextStep {
  readonly entry: LearnedEntry;
  /** How many times the high end of the band is the low one. */
  readonly times: number;
  /** Boards to read, or test corners to load; null where neither tells of it. */
  readonly more: { readonly what: 'boards' | 'test corners'; readonly count: number } | null;
  /** Frames like those so far that would do the same; null when they have told nothing yet. */
  readonly frames: number | null;
  /** Known well enough: the ends of the band within this factor (`proposal`). */
  readonly enough: number;
}

/** Between the ends of the middle nine tenths of a normal, in standard deviations. */
const band_sds = 3.29;
/**
 * A board's reading adds this much to the precision (one over variance) of the logarithm of a spread: the normal's
 * Fisher information.
 */
const per_board = 2;
/**
 * A test corner adds this much to that of the logarithm of the usual give: joints differ by a factor of two, and the
 * bench reads a corner within a third.
 */
const per_corner = 1 / (Math.LN2 ** 2 + 0.33 ** 2);

/**
 * A number is known well enough when the ends of its band lie within this factor (`proposal`): it then decides few
 * verdicts more.
 */
const well = { spread: 1.5, give: 2, pull: 1.25 } as const;

/** Precision of a number's logarithm, as its band shows it. */
const precision = ({ low, high }: LearnedEntry['prior']): number => (band_sds / Math.log(high / low)) ** 2;

/**
 * What would settle the numbers fastest, the least known first. Only numbers above zero have a logarithm; the usual
 * twist goes with its spread.
 */
export function nextSteps(entries: readonly LearnedEntry[]): readonly NextStep[] {
  return entries
    .filter(({ posterior: { low }, what }) => low > 0 && what !== 'moisture')
    .map((entry): NextStep => {
      const { what, of, posterior, prior, from, boards, joints } = entry;
      const now = precision(posterior);
      const enough = well[what === 'give' ? 'give' : what === 'pull' ? 'pull' : 'spread'];
      const wanted = Math.max(0, (band_sds / Math.log(enough)) ** 2 - now);
      const single = of === 'spread' ? per_board : what === 'give' ? per_corner : null;
      const byFrames =
        (now - precision(prior) - (single ?? 0) * (of === 'spread' ? boards : joints)) / Math.max(1, from);
      return {
        entry,
        enough,
        times: posterior.high / posterior.low,
        more:
          single === null
            ? null
            : { what: of === 'spread' ? 'boards' : 'test corners', count: Math.ceil(wanted / single) },
        frames: byFrames > 0.05 ? Math.ceil(wanted / byFrames) : null,
      };
    })
    .filter(({ entry }) => !(entry.what === 'twist' && entry.of === 'mean'))
    .sort((a, b) => b.times - a.times);
}
