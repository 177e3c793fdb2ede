import { aspectRatio, shorterSide_m, type ClothSpan } from '../../fit/span.js';

/**
 * Middle sag of a membrane under an even load as a share c of q b²/T (b the shorter side), for an aspect ratio of 1 or more.
 * c = ⅛ [1 − (32/π³) Σ (−1)^((n−1)/2) / (n³ cosh(nπr/2))], n odd. Source: saint-venant (the soap-film analogy).
 */
export function uniformSagFactor(aspect: number): number {
  let sum = 0;
  for (let n = 1, sign = 1; n < 60; n += 2, sign = -sign) sum += sign / (n ** 3 * Math.cosh((n * Math.PI * aspect) / 2));
  return (1 - (32 / Math.PI ** 3) * sum) / 8;
}

/** Middle sag under an even load such as the cloth's own weight lying flat, mm; load in Pa, equal pull both ways in N/m. */
export function uniformSag_mm(span: ClothSpan, pull_N_per_m: number, load_Pa: number): number {
  return (1000 * uniformSagFactor(aspectRatio(span)) * load_Pa * shorterSide_m(span) ** 2) / pull_N_per_m;
}
