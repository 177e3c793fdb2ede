import type { UnitSystem } from '../base/names.js';
import { remembered } from '../base/remembered.js';
import type { Cloth, Hardware, Lumber, Shelf, Supply } from './shelf.js';

const mapped = <T>(entries: Readonly<Record<string, T>>, change: (entry: T) => T): Record<string, T> =>
  Object.fromEntries(Object.entries(entries).map(([key, entry]) => [key, change(entry)]));

const lumberIn = (lumber: Lumber): Lumber => ({
  ...lumber,
  ...lumber.inches,
  lengths: lumber.lengths?.map((one) => ({ ...one, length_mm: one.inches_mm ?? one.length_mm })) ?? null,
});

const clothIn = (cloth: Cloth): Cloth => ({
  ...cloth,
  roll_mm: cloth.inches?.roll_mm ?? cloth.roll_mm,
  sold_by_mm: cloth.inches?.sold_by_mm ?? cloth.sold_by_mm,
});

const hardwareIn = (hardware: Hardware): Hardware => ({
  ...hardware,
  sold_by_mm: hardware.inches?.sold_by_mm ?? hardware.sold_by_mm,
});

const supplyIn = (supply: Supply): Supply => ({ ...supply, ...supply.inches });

const inInches = remembered(
  (shelf: Shelf): Shelf => ({
    ...shelf,
    lumber: mapped(shelf.lumber, lumberIn),
    cloths: mapped(shelf.cloths, clothIn),
    hardware: mapped(shelf.hardware, hardwareIn),
    supplies: mapped(shelf.supplies, supplyIn),
    proposals: mapped(shelf.proposals, (entry) => ({ ...entry, value: entry.inches_mm ?? entry.value })),
  }),
  (inches) => inches,
);

/**
 * The shelf as a shop of this unit system stocks it: in inches, entries that have a twin take its lengths and sections;
 * what has none stays as it is.
 * The same shelf gives the same object every time; a shelf that is in inches already stays so.
 */
export const shelfIn = (shelf: Shelf, units: UnitSystem): Shelf => (units === 'metric' ? shelf : inInches(shelf));
