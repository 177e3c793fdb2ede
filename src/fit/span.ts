/** The free rectangle of a stretched cloth: width along x, height along y, mm. */
export interface ClothSpan {
  readonly width_mm: number;
  readonly height_mm: number;
}

/** Longer over shorter side of a span, 1 or more. */
export function aspectRatio(span: ClothSpan): number {
  return Math.max(span.width_mm, span.height_mm) / Math.min(span.width_mm, span.height_mm);
}

/** Shorter side of a span, m. */
export function shorterSide_m(span: ClothSpan): number {
  return Math.min(span.width_mm, span.height_mm) / 1000;
}

/**
 * Throws RangeError unless every named number is finite and above zero: a wrong reading must not become a number that
 * looks right.
 */
export function mustBePositive(numbers: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(numbers)) {
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name} must be above zero, found ${value}`);
  }
}
