import * as z from 'zod/mini';
import { eitherQuantity, length, quantity } from '../base/schema-parts.js';
import { readQuantity } from '../base/units.js';
import type { Dimension } from '../base/unit-table.js';

/** What can be read of one board, as it is written in a plan or on a sheet: part of a schema. */
export const boardReadings = () => ({
  twist: z.optional(
    quantity(
      'twist',
      { least: -0.7, most: 0.7, words: 'from -40 deg/m to 40 deg/m' },
      'Twist, right-handed positive',
      '0.4 deg/m',
    ),
  ),
  bow: z.optional(rise('Rise of the wide face over the length, or flatwise curvature', '2 mm')),
  crook: z.optional(rise('Rise of the narrow edge over the length, or edgewise curvature', '1 mm')),
  over: z.optional(length(100, 20_000, 'from 100 mm to 20 m', 'Length the readings were taken over', '2400 mm')),
});

function rise(description: string, example: string) {
  return eitherQuantity(
    [
      { dimension: 'length', limits: { least: -500, most: 500, words: 'from -500 mm to 500 mm' } },
      { dimension: 'curvature', limits: { least: -0.2, most: 0.2, words: 'from -0.2 /m to 0.2 /m' } },
    ],
    description,
    [example, '0.002 /m'],
  );
}

/** The texts of `boardReadings`, their shape checked. */
export interface BoardTexts {
  readonly twist?: string | undefined;
  readonly bow?: string | undefined;
  readonly crook?: string | undefined;
  readonly over?: string | undefined;
}

/**
 * What was read of one board: twist (rad/m, right-handed positive), flatwise and edgewise curvature (1/m,
 * 8·rise/length²); null where not read, or a rise without its length.
 */
export function readBoard({ twist, bow, crook, over }: BoardTexts): {
  readonly twist_rad_per_m: number | null;
  readonly bow_per_m: number | null;
  readonly crook_per_m: number | null;
} {
  const over_m = over === undefined ? null : number(over, 'length') / 1000;
  const curve = (rise: string | undefined): number | null => {
    if (rise === undefined) return null;
    const direct = readQuantity(rise, 'curvature');
    if (direct.ok) return direct.value;
    return over_m === null ? null : (8 * (number(rise, 'length') / 1000)) / over_m ** 2;
  };
  return {
    twist_rad_per_m: twist === undefined ? null : number(twist, 'twist'),
    bow_per_m: curve(bow),
    crook_per_m: curve(crook),
  };
}

function number(text: string, dimension: Dimension): number {
  const reading = readQuantity(text, dimension);
  if (!reading.ok) throw new Error(`the schema let a ${dimension} through that cannot be read: ${text}`);
  return reading.value;
}
