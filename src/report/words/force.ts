import { GRAVITY_N_PER_KG } from '../../base/gravity.js';
import type { UnitSystem } from '../../base/names.js';
import { formatNumber, formatQuantity } from '../../base/units-format.js';

const newtons_per_pound = 4.4482216152605;

/** A force with something to feel it by, N: `79 N (the weight of 8 kg)`. */
export function forceInWords(force_N: number, units: UnitSystem): string {
  const said = formatQuantity(force_N, 'N', units);
  return units === 'metric'
    ? `${said} (the weight of ${formatQuantity(force_N / GRAVITY_N_PER_KG, 'kg', units)})`
    : `${said} (the weight of ${formatNumber(force_N / newtons_per_pound, 2)} lb)`;
}

/** What a pull along an edge feels like, N/m: `as if 20 kg hung on each metre of edge`. */
export function pullInWords(pull_N_per_m: number, units: UnitSystem): string {
  return units === 'metric'
    ? `as if ${formatNumber(pull_N_per_m / GRAVITY_N_PER_KG, 2)} kg hung on each metre of edge`
    : `as if ${formatNumber((pull_N_per_m * 0.3048) / newtons_per_pound, 2)} lb hung on each foot of edge`;
}

/** How hard clamps press, MPa: `7 to 10 kg on each square centimetre`. */
export function pressureInWords(low_MPa: number, high_MPa: number, units: UnitSystem): string {
  const [per, unit] =
    units === 'metric'
      ? [GRAVITY_N_PER_KG / 100, 'kg on each square centimetre']
      : [0.00689475729316836, 'lb on each square inch'];
  return `${formatNumber(low_MPa / per, 2)} to ${formatNumber(high_MPa / per, 2)} ${unit}`;
}
