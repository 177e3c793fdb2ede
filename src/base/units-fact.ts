import { readQuantity, unitsOf, type QuantityFault } from './units.js';
import type { Dimension } from './unit-table.js';
import type { QuantityUnit } from './units-format.js';

/**
 * How a written quantity becomes a fact's number: its dimension, and what one of the dimension's own units is in the
 * fact's unit.
 */
const dimensions: Readonly<Partial<Record<QuantityUnit, readonly [Dimension, number]>>> = {
  mm: ['length', 1],
  mrad: ['angle', (Math.PI / 180) * 1000],
  N: ['force', 1],
  Nm: ['moment', 1],
  'N/m': ['pull', 1],
  kg: ['mass', 1e-3],
  deg: ['angle', 1],
  'deg/m': ['twist', 180 / Math.PI],
  Hz: ['frequency', 1],
  share: ['fraction', 1],
  chance: ['fraction', 1],
  pct: ['percent', 1],
  days: ['time', 1 / 24],
  ml: ['volume', 1],
  MPa: ['stress', 1],
  C: ['temperature', 1],
};

/**
 * Units that may be written as a bare number: 1.5, 3, 12.40, and fractions such as 1/150; twists are then degrees a
 * metre.
 */
const bare: ReadonlySet<QuantityUnit> = new Set(['cost', 'count', 'ratio', 'share', 'chance', 'deg/m']);

/** A written value read for a fact, or why not, with the spellings that would do. */
export type FactReading =
  | { readonly ok: true; readonly value: number | string }
  | { readonly ok: false; readonly fault: QuantityFault; readonly units: readonly string[] };

/**
 * Reads what a rule writes (`3.0 mm`, `1/8 in`, `35 %`, `1/150`, 1.5, `propeller`) as the number of a fact in `unit`.
 * A bare number is taken only for counts, ratios, costs, shares, chances and twists: a length without a unit is a
 * fault. Non-finite numbers are faults.
 */
export function readForFact(written: unknown, unit: QuantityUnit): FactReading {
  const known = dimensions[unit];
  const spellings =
    known === undefined ? ['a plain number'] : [...(bare.has(unit) ? ['a plain number'] : []), ...unitsOf(known[0])];
  const failed = (fault: QuantityFault): FactReading => ({ ok: false, fault, units: spellings });
  if (unit === 'word') return typeof written === 'string' ? { ok: true, value: written } : failed('not-a-number');
  if (typeof written === 'number') {
    if (!Number.isFinite(written)) return failed('not-a-number');
    return bare.has(unit) ? { ok: true, value: written } : failed('no-unit');
  }
  if (typeof written !== 'string') return failed('not-a-number');
  if (unit === 'deg/m') {
    const plain = readQuantity(written, 'fraction');
    if (plain.ok && !written.includes('%')) return plain;
  }
  const [dimension, factor] = known ?? ['fraction', 1];
  const reading = readQuantity(written, dimension);
  if (!reading.ok) return failed(reading.fault);
  if (known === undefined && written.includes('%')) return failed('other-unit');
  return { ok: true, value: factor === 1 ? reading.value : reading.value * factor };
}
