const seconds_per_day = 86_400;

/**
 * Time constant of a plank that dries through both faces, days: τ = L²/(π² D); thickness in mm, D in m²/s. Source:
 * crank (from memory).
 */
export function dryingTime_days(thickness_mm: number, diffusion_m2_per_s: number): number {
  return (thickness_mm / 1000) ** 2 / (Math.PI ** 2 * diffusion_m2_per_s) / seconds_per_day;
}

/**
 * Share of the way to its new moisture that a plank has gone, 0..1: E = 1 − (8/π²) Σ exp(−n² t/τ)/n², n odd. Both faces
 * open, no film of still air.
 * For short times, where the series is slow, the half-space answer E = 4 √(D t / (π L²)) takes over (they differ by
 * less than 1e-8 there). Source: crank (from memory).
 */
export function plankDried_share(thickness_mm: number, diffusion_m2_per_s: number, days: number): number {
  if (days <= 0) return 0;
  const ratio = days / dryingTime_days(thickness_mm, diffusion_m2_per_s);
  if (ratio < 0.1) return (4 / Math.PI ** 1.5) * Math.sqrt(ratio);
  let left = 0;
  for (let n = 1; n < 40; n += 2) left += Math.exp(-n * n * ratio) / n ** 2;
  return 1 - (8 / Math.PI ** 2) * left;
}

/** The same for a bar open on all four sides: 1 − E = (1 − E_x)(1 − E_y). */
export function barDried_share(
  thickness_mm: number,
  width_mm: number,
  diffusion_m2_per_s: number,
  days: number,
): number {
  return (
    1 -
    (1 - plankDried_share(thickness_mm, diffusion_m2_per_s, days)) *
      (1 - plankDried_share(width_mm, diffusion_m2_per_s, days))
  );
}

/**
 * Days until a bar, all four sides open, has gone a share of the way to its new moisture (nine tenths unless said), to
 * a thousandth of a day.
 * The diffusion number is uncertain by a factor of three, and so are the days. Throws RangeError for a share outside
 * 0..1.
 */
export function daysToDry(thickness_mm: number, width_mm: number, diffusion_m2_per_s: number, share = 0.9): number {
  if (!(share > 0 && share < 1)) throw new RangeError(`the share must lie between 0 and 1, found ${share}`);
  let [early, late] = [0, dryingTime_days(Math.min(thickness_mm, width_mm), diffusion_m2_per_s)];
  while (barDried_share(thickness_mm, width_mm, diffusion_m2_per_s, late) < share) late *= 2;
  while (late - early > 1e-3) {
    const middle = (early + late) / 2;
    if (barDried_share(thickness_mm, width_mm, diffusion_m2_per_s, middle) < share) early = middle;
    else late = middle;
  }
  return late;
}
