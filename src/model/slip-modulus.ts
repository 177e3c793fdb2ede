/** How a dowel-like fastening is set, which decides the formula for its slip. */
export type SlipKind = 'screw' | 'nail-bored' | 'nail' | 'staple';

/**
 * Slip modulus K_ser of one fastening in one shear plane, N/mm, for shape (serviceability).
 * For stability take two thirds of it. `density_kg_per_m3` is the mean density; `diameter_mm` the shank.
 * Source: en1995-1-1 Table 7.1.
 */
export function slipModulus_N_per_mm(density_kg_per_m3: number, diameter_mm: number, kind: SlipKind = 'screw'): number {
  const rho = density_kg_per_m3 ** 1.5;
  switch (kind) {
    case 'screw':
    case 'nail-bored':
      return (rho * diameter_mm) / 23;
    case 'nail':
      return (rho * diameter_mm ** 0.8) / 30;
    case 'staple':
      return (rho * diameter_mm ** 0.8) / 80;
  }
}
