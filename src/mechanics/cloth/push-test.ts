import { GRAVITY_N_PER_KG } from '../../base/gravity.js';
import { middlePush, patchSag_mm } from '../../fit/patch-sag.js';
import { mustBePositive, type ClothSpan } from '../../fit/span.js';

/** Sag in the middle under a weight (g) on a square pad, mm, for pulls in N/m. See {@link patchSag_mm}. */
export function pushSag_mm(
  span: ClothSpan,
  pull: { readonly x_N_per_m: number; readonly y_N_per_m: number },
  weight_g: number,
  pad_mm: number,
): number {
  return patchSag_mm(span, pull, middlePush((weight_g / 1000) * GRAVITY_N_PER_KG, pad_mm));
}

/**
 * Pull (the one along the width; the other keeps `y_over_x`) from the sag under a weight in the middle, N/m.
 * Sag goes as one over pull at a fixed ratio, so one reference sag is enough. Throws RangeError for a reading that is
 * not above zero.
 */
export function pullFromPush_N_per_m(
  span: ClothSpan,
  sag_mm: number,
  weight_g: number,
  pad_mm: number,
  y_over_x = 1,
): number {
  mustBePositive({ sag_mm, weight_g, y_over_x });
  const reference_N_per_m = 100;
  return (
    (reference_N_per_m *
      pushSag_mm(span, { x_N_per_m: reference_N_per_m, y_N_per_m: reference_N_per_m * y_over_x }, weight_g, pad_mm)) /
    sag_mm
  );
}

/**
 * Pull that the push itself adds by stretching the cloth, N/m: stiffness × mean stretch, the stretch being a quarter of
 * force × sag over pull × area
 * (each direction takes half of the slope's square, spread evenly). A first estimate: it says how far a push reading
 * may be too high.
 */
export function pullAddedByPush_N_per_m(
  span: ClothSpan,
  pull_N_per_m: number,
  force_N: number,
  sag_mm: number,
  stiffness_N_per_m: number,
): number {
  const area_m2 = (span.width_mm * span.height_mm) / 1e6;
  return (stiffness_N_per_m * force_N * (sag_mm / 1000)) / (4 * pull_N_per_m * area_m2);
}
