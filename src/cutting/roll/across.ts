/** A piece with its stretch along the roll settled. */
export interface Strip {
  readonly from: number;
  readonly to: number;
  readonly across: number;
}

export interface AcrossSearch {
  /**
   * A place across the roll for every strip; null when there is none, or when the search was stopped (`finished`
   * false).
   */
  readonly places: readonly number[] | null;
  readonly finished: boolean;
  /** Strips put down on the way. */
  readonly steps: number;
}

/**
 * Finds places across the roll so that no two strips that share a level overlap. Strips are put down from the left,
 * each as far left as those before it
 * allow; a branch ends when at some level what lies there and what must still come there is wider than the roll. Stops
 * after `steps` strips put down.
 */
export function placeAcross(strips: readonly Strip[], roll_mm: number, steps: number): AcrossSearch {
  const cuts = [...new Set(strips.flatMap((s) => [s.from, s.to]))].sort((p, q) => p - q);
  const covers = strips.map((s) =>
    cuts.slice(0, -1).flatMap((cut, level) => (cut >= s.from - 1e-9 && cut < s.to - 1e-9 ? [level] : [])),
  );
  const toCome = cuts
    .slice(0, -1)
    .map((_, level) => strips.reduce((sum, s, i) => (covers[i]?.includes(level) ? sum + s.across : sum), 0));
  const places = new Array<number>(strips.length).fill(-1);
  const dead = new Set<string>();
  let left = steps;

  const descend = (mask: number, front: readonly number[], coming: readonly number[]): boolean => {
    if (mask === (1 << strips.length) - 1) return true;
    const key = `${mask}|${front.join(',')}`;
    if (dead.has(key)) return false;
    for (const [i, strip] of strips.entries()) {
      if (mask & (1 << i)) continue;
      if (left-- <= 0) return false;
      const levels = covers[i] as readonly number[];
      const x = Math.max(...levels.map((level) => front[level] as number));
      const after = [...front];
      const less = [...coming];
      for (const level of levels) {
        after[level] = x + strip.across;
        less[level] = (less[level] as number) - strip.across;
      }
      if (after.some((used, level) => used + (less[level] as number) > roll_mm + 1e-6)) continue;
      places[i] = x;
      if (descend(mask | (1 << i), after, less)) return true;
    }
    dead.add(key);
    return false;
  };
  const found = descend(
    0,
    toCome.map(() => 0),
    toCome,
  );
  return { places: found ? places : null, finished: found || left > 0, steps: steps - left };
}
