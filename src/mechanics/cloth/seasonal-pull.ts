import { pullFromHeldShrinkage_N_per_m } from './pull-changes.js';

/** Shrinkage of a sized canvas at a relative humidity of 98 %, fraction. Source: hedley-1988. */
const shrinkageAtAnchor = 0.01;
const anchorHumidity = 0.98;

/**
 * How steeply shrinkage grows with humidity, ε = 1 % · (h/0.98)^n: most of it comes in damp air. Middle, gentle and
 * steep reading (proposal).
 */
const exponents = { middle: 4, gentle: 2, steep: 8 };

/** A rough number with the range it may lie in. */
export interface RoughPull {
  readonly value_N_per_m: number;
  readonly low_N_per_m: number;
  readonly high_N_per_m: number;
}

/**
 * Change of pull between the driest and the dampest air of the room, N/m, the damp end tighter. Only its order of size
 * is known: one published shrinkage and
 * a proposed curve through it. Glue size and old stiff grounds pull the other way in very dry air; that is left out.
 * Humidities as fractions, low ≤ high.
 */
export function seasonalSwing(stiffness_N_per_m: number, humidity_low: number, humidity_high: number): RoughPull {
  const swing = (n: number): number =>
    pullFromHeldShrinkage_N_per_m(
      stiffness_N_per_m,
      shrinkageAtAnchor * ((humidity_high / anchorHumidity) ** n - (humidity_low / anchorHumidity) ** n),
    );
  const all = [swing(exponents.middle), swing(exponents.gentle), swing(exponents.steep)];
  return { value_N_per_m: swing(exponents.middle), low_N_per_m: Math.min(...all), high_N_per_m: Math.max(...all) };
}
