import type { PileBoard } from './pile.js';

/** A sound stretch of a board between its ends and its knots, from the marked end, mm. */
export interface Stretch {
  readonly from_mm: number;
  readonly to_mm: number;
}

/**
 * The stretches that are left when the knots are cut out, in order; the saw's kerf falls into the knot. A board without
 * knots is one stretch.
 */
export function soundStretches({ length_mm, knots }: Pick<PileBoard, 'length_mm' | 'knots'>): readonly Stretch[] {
  const found: Stretch[] = [];
  let from_mm = 0;
  for (const knot of knots) {
    if (knot.from_mm > from_mm) found.push({ from_mm, to_mm: Math.min(knot.from_mm, length_mm) });
    from_mm = Math.max(from_mm, knot.to_mm);
  }
  if (from_mm < length_mm) found.push({ from_mm, to_mm: length_mm });
  return found;
}
