import { readQuantity } from '../base/units.js';
import type { Dimension } from '../base/unit-table.js';

/** The value of a quantity the schema has already accepted. */
export function quantity(text: string, dimension: Dimension): number {
  const reading = readQuantity(text, dimension);
  if (!reading.ok) throw new Error(`the schema let a ${dimension} through that cannot be read: ${text}`);
  return reading.value;
}

/** A length in mm. */
export const mm = (text: string): number => quantity(text, 'length');
/** The same where it may be left out. */
export const maybe_mm = (text: string | undefined): number | undefined => (text === undefined ? undefined : mm(text));
