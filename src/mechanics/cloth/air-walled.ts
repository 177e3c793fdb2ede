import { once } from '../../base/once.js';
import { gaussLegendre } from './gauss-legendre.js';

const rule = once(() => gaussLegendre(16));

/**
 * Air carried by both faces of a cloth set in a wide wall, in its lowest half-wave shape: m_air = C · air density ·
 * shorter side.
 * Returns C for an aspect ratio of 1 or more; air taken as incompressible, the wall endless. One face carries half.
 * One-sided integral ∬∬ v v′/r over the rectangle, brought down to two dimensions by the overlap of a half-sine with
 * itself.
 * Source: korotkin-added-mass, eqs. 6.7–6.8. Throws RangeError for an aspect below 1.
 */
export function airCoefficientWalled(aspect: number): number {
  if (!(aspect >= 1 && Number.isFinite(aspect)))
    throw new RangeError(`aspect ratio must be 1 or more, found ${aspect}`);
  const integral = 4 * (overTriangle(aspect, 1) + overTriangle(1, aspect));
  const squareOfShape = aspect / 4;
  const oneFace = integral / (2 * Math.PI * squareOfShape);
  return 2 * oneFace;
}

/**
 * The part of the quarter-plane integral between the side `p` and the diagonal. The corner's 1/r cancels against the
 * narrowing of the triangle, and the slope t = sinh(s)/k takes away what is left of it in long rectangles.
 */
function overTriangle(p: number, q: number): number {
  const k = q / p;
  const S = Math.asinh(k);
  const { nodes, weights } = rule();
  let sum = 0;
  for (const [i, u] of nodes.entries()) {
    for (const [j, x] of nodes.entries()) {
      const t = Math.sinh(S * x) / k;
      const weight = (weights[i] as number) * (weights[j] as number);
      // dt / √(1 + k²t²) = S/k dx
      sum += weight * q * (S / k) * halfSineOverlap(p * u, p) * halfSineOverlap(q * u * t, q);
    }
  }
  return sum;
}

/** ∫ sin(πx/L) sin(π(x + shift)/L) dx over the stretch where both lie inside 0..L. */
function halfSineOverlap(shift: number, L: number): number {
  const angle = (Math.PI * shift) / L;
  return 0.5 * ((L - shift) * Math.cos(angle) + (L / Math.PI) * Math.sin(angle));
}
