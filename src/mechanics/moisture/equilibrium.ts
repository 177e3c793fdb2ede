/** The four temperature-dependent constants of the sorption fit. */
interface SorptionConstants {
  readonly W: number;
  readonly K: number;
  readonly K1: number;
  readonly K2: number;
}

const celsiusConstants = (T: number): SorptionConstants => ({
  W: 349 + 1.29 * T + 0.0135 * T ** 2,
  K: 0.805 + 0.000736 * T - 0.00000273 * T ** 2,
  K1: 6.27 - 0.00938 * T - 0.000303 * T ** 2,
  K2: 1.91 + 0.0407 * T - 0.000293 * T ** 2,
});

function hailwoodHorrobin_pct({ W, K, K1, K2 }: SorptionConstants, h: number): number {
  const Kh = K * h;
  const hydrated = K1 * Kh + 2 * K1 * K2 * Kh ** 2;
  const partition = 1 + K1 * Kh + K1 * K2 * Kh ** 2;
  return (1800 / W) * (Kh / (1 - Kh) + hydrated / partition);
}

function mustBeHumidity(rh_fraction: number): void {
  if (!(rh_fraction >= 0 && rh_fraction <= 1))
    throw new RangeError(`relative humidity must be a fraction from 0 to 1, found ${rh_fraction}`);
}

/**
 * Moisture that wood settles to in air of a given humidity and temperature.
 * Percent of dry mass; humidity as a fraction 0..1, temperature in °C, meant for -1..55 °C.
 * Hailwood–Horrobin fit of Wood Handbook (2010) eq. 4-5, Celsius constants. Throws RangeError for a humidity outside
 * 0..1.
 */
export function equilibriumMoisture_pct(rh_fraction: number, temperature_C: number): number {
  mustBeHumidity(rh_fraction);
  return hailwoodHorrobin_pct(celsiusConstants(temperature_C), rh_fraction);
}
