/**
 * Air carried by both faces of a cloth that hangs free, with air passing round its edges: C by aspect ratio.
 * Source: solved with a series of edge-compatible dipoles for the lowest half-wave shape (checked there against the
 * rigid plates of dnv-rp-c205),
 * and again in this project's tests with flat panels refined to nothing.
 */
const table: readonly { readonly aspect: number; readonly C: number }[] = [
  { aspect: 10, C: 0.84 },
  { aspect: 5, C: 0.8104 },
  { aspect: 3, C: 0.7624 },
  { aspect: 2, C: 0.6996 },
  { aspect: 1.5, C: 0.64 },
  { aspect: 1.25, C: 0.5964 },
  { aspect: 1, C: 0.5383 },
];

/**
 * The longest aspect ratio of the table; beyond it the coefficient is held, which is at most 3 % low (the endless strip
 * has about 0.865).
 */
export const longestTabulatedAspect = 10;

/**
 * Air carried by both faces of a free cloth in its lowest half-wave shape: m_air = C · air density · shorter side.
 * Returns C for an aspect ratio of 1 or more, between table rows by the cubic through the four nearest, held beyond 10.
 * C √(1 + 1/aspect²) against 1/aspect is what is interpolated, being nearly straight. Throws RangeError for an aspect
 * below 1.
 */
export function airCoefficientFree(aspect: number): number {
  if (!(aspect >= 1 && Number.isFinite(aspect)))
    throw new RangeError(`aspect ratio must be 1 or more, found ${aspect}`);
  const s = 1 / Math.min(aspect, longestTabulatedAspect);
  return cubicThrough(nearestFour(s), s) / Math.hypot(1, s);
}

interface Point {
  readonly s: number;
  readonly value: number;
}

const points: readonly Point[] = table.map(({ aspect, C }) => ({
  s: 1 / aspect,
  value: C * Math.hypot(1, 1 / aspect),
}));

function nearestFour(s: number): readonly Point[] {
  const after = points.findIndex((p) => p.s >= s - 1e-12);
  const first = Math.min(Math.max(after - 2, 0), points.length - 4);
  return points.slice(first, first + 4);
}

/** Lagrange's polynomial through the given points, at s. */
function cubicThrough(through: readonly Point[], s: number): number {
  return through.reduce(
    (sum, p) =>
      sum + through.reduce((part, other) => (other === p ? part : (part * (s - other.s)) / (p.s - other.s)), p.value),
    0,
  );
}
