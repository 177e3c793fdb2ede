/**
 * Which end of the far winding stick stands high, for somebody who sights over the near one; `level` when they agree.
 */
export type HighEnd = 'left' | 'right' | 'level';

/**
 * The hand of a board's twist from its winding sticks. A right-handed screw turns clockwise as it goes away from the
 * eye, so the far stick's left end
 * rises and its right end sinks: left high is right-handed, right high left-handed. It is the same from either end of
 * the board. Null when they agree.
 * Source: geometry.
 */
export function handOfSticks(high: HighEnd): 'right' | 'left' | null {
  return high === 'level' ? null : high === 'left' ? 'right' : 'left';
}
