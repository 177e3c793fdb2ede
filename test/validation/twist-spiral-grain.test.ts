/**
 * W. C. Stevens and D. D. Johnston 1960: φ = 2 l θ s / (r (1 + s)) (formula from memory; that it explains 66 % of the variance of twist was
 * read in an abstract on Norway spruce). l length m, θ spiral grain angle, s tangential shrinkage strain, r distance from the pith m.
 * The last row stands in a second list of check values (twist_check: 6.99°, 3.495 °/m, printed to three or four figures).
 */
import { describe, expect, it } from 'vitest';
import { spiralTwist_rad_per_m } from './warp-anchors.js';
import { expectShare } from './recorded.js';

const deg = Math.PI / 180;

describe('twist from spiral grain (Stevens and Johnston 1960, memory)', () => {
  it.each([
    { l: 2, theta: 2, s: 0.02, r: 0.05, phi_deg: 3.13725, tolerance: 1e-5 },
    { l: 1.2, theta: 2, s: 0.02, r: 0.05, phi_deg: 1.88235, tolerance: 1e-5 },
    { l: 1, theta: 3, s: 0.07, r: 0.02, phi_deg: 19.6262, tolerance: 1e-5 },
    { l: 1, theta: 2, s: 0.07, r: 0.07, phi_deg: 3.73832, tolerance: 1e-5 },
    { l: 2, theta: 3, s: 0.03, r: 0.05, phi_deg: 6.99, tolerance: 1e-3 },
  ])('twist-spiral: $l m, $theta°, s = $s, r = $r m → $phi_deg°', ({ l, theta, s, r, phi_deg, tolerance }) => {
    expectShare((l * spiralTwist_rad_per_m(theta * deg, s, r)) / deg, phi_deg, tolerance);
  });

  it('agrees with what was measured: 10–20 °/m next to the pith, under 4 °/m at 70 mm (Eur. J. Wood Prod. 69, 2011, seen)', () => {
    const near = spiralTwist_rad_per_m(3 * deg, 0.07, 0.02) / deg;
    expect(near).toBeGreaterThan(10);
    expect(near).toBeLessThan(20);
    expect(spiralTwist_rad_per_m(2 * deg, 0.07, 0.07) / deg).toBeLessThan(4);
  });
});
