import { readQuantity, readSize } from '../base/units.js';
import type { Dimension } from '../base/unit-table.js';
import type { ShelfInput } from './shelf-schema.js';
import type { Cloth, Drill, Glue, Ground, Hardware, Nail, Pack, Screw, Species, Supply } from './shelf.js';

/** The value of a quantity the schema has already accepted, in the dimension's own unit. */
export function quantity(text: string, dimension: Dimension): number {
  const reading = readQuantity(text, dimension);
  if (!reading.ok) throw new Error(`the schema let a ${dimension} through that cannot be read: ${text}`);
  return reading.value;
}

const mm = (text: string): number => quantity(text, 'length');
const share = (text: string): number => quantity(text, 'fraction');
const hours = (text: string): number => quantity(text, 'time');

/** A cross-section, the smaller side first, mm. */
export function sides(text: string): { readonly thickness_mm: number; readonly width_mm: number } {
  const reading = readSize(text);
  if (reading === null) throw new Error(`the schema let a size through that cannot be read: ${text}`);
  const { first_mm, second_mm } = reading;
  return { thickness_mm: Math.min(first_mm, second_mm), width_mm: Math.max(first_mm, second_mm) };
}

/** Source of an entry that names none. */
export const ownersSource = 'owner';
const sourceOf = (entry: { readonly source?: string | undefined }): string => entry.source ?? ownersSource;

type Entry<Section extends keyof ShelfInput> =
  NonNullable<ShelfInput[Section]> extends Record<string, infer One> ? One : never;

/** Bending yield of a nail or screw that gives none, MPa (90,000 psi; recalled from the NDS). */
const usualYield_MPa = 620;

const maybe_mm = (text: string | undefined): number | null => (text === undefined ? null : mm(text));

interface PackInput {
  readonly holds: number | string;
  readonly price: number;
  readonly called?: string | undefined;
}

/** Packs, the smallest first. */
const fillPacks = (packs: readonly PackInput[] | undefined): readonly Pack[] =>
  (packs ?? [])
    .map(({ holds, price, called }) => ({
      holds: typeof holds === 'number' ? holds : quantity(holds, 'volume'),
      price,
      called: called ?? '',
    }))
    .sort((a, b) => a.holds - b.holds);

export const fillSpecies = (key: string, entry: Entry<'species'>): Species => ({
  key,
  name: entry.name,
  specific_gravity: entry.gravity,
  change_radial: share(entry.radial),
  change_tangential: share(entry.tangential),
  source: sourceOf(entry),
});

export const fillNail = (key: string, entry: Entry<'nails'>): Nail => ({
  key,
  name: entry.name,
  diameter_mm: mm(entry.diameter),
  length_mm: mm(entry.length),
  yield_MPa: entry.yield === undefined ? usualYield_MPa : quantity(entry.yield, 'stress'),
  price: entry.price,
  packs: fillPacks(entry.packs),
  source: sourceOf(entry),
});

export const fillScrew = (key: string, entry: Entry<'screws'>): Screw => ({
  key,
  name: entry.name,
  shank_mm: mm(entry.shank),
  root_mm: mm(entry.root),
  head_mm: mm(entry.head),
  length_mm: mm(entry.length),
  thread_mm: entry.thread === undefined ? (mm(entry.length) * 2) / 3 : mm(entry.thread),
  yield_MPa: entry.yield === undefined ? usualYield_MPa : quantity(entry.yield, 'stress'),
  price: entry.price,
  packs: fillPacks(entry.packs),
  source: sourceOf(entry),
});

/** Drills by growing diameter, as printed on them. */
export const fillDrills = (drills: NonNullable<ShelfInput['drills']>): Drill[] =>
  [...(drills.inch ?? []), ...(drills.metric ?? [])]
    .map((label) => ({ label, diameter_mm: mm(label) }))
    .sort((a, b) => a.diameter_mm - b.diameter_mm);

export const fillGlue = (key: string, entry: Entry<'glues'>): Glue => ({
  key,
  name: entry.name,
  spread_g_per_m2: quantity(entry.spread, 'mass-per-area'),
  density_g_per_ml: quantity(entry.density, 'density') / 1000,
  open_min: Math.round(hours(entry.open) * 60 * 1000) / 1000,
  clamp_min: Math.round(hours(entry.clamp) * 60 * 1000) / 1000,
  handle_h: hours(entry.handle),
  cure_h: hours(entry.cure),
  least_temperature_C: quantity(entry.coldest, 'temperature'),
  price_per_100ml: entry['price-per-100ml'],
  packs: fillPacks(entry.packs),
  source: sourceOf(entry),
});

export const fillCloth = (key: string, entry: Entry<'cloths'>): Cloth => ({
  key,
  name: entry.name,
  mass_g_per_m2: quantity(entry.mass, 'mass-per-area'),
  roll_mm: mm(entry.roll),
  price_per_m: entry['price-per-m'],
  stiffness_N_per_m: quantity(entry.stiffness, 'pull'),
  shrinkage: share(entry.shrinkage),
  pull_N_per_m: entry.pull === undefined ? null : quantity(entry.pull, 'pull'),
  sold_by_mm: maybe_mm(entry['sold-by']),
  inches:
    entry.inches === undefined
      ? null
      : { roll_mm: maybe_mm(entry.inches.roll), sold_by_mm: maybe_mm(entry.inches['sold-by']) },
  source: sourceOf(entry),
});

export const fillGround = (key: string, entry: Entry<'grounds'>): Ground => ({
  key,
  name: entry.name,
  mass_g_per_m2_per_coat: quantity(entry['coat-mass'], 'mass-per-area'),
  ml_per_m2_per_coat: quantity(entry['coat-volume'], 'volume-per-area'),
  price_per_100ml: entry['price-per-100ml'],
  crack_strain: share(entry.crack),
  dry_h: hours(entry.dry),
  packs: fillPacks(entry.packs),
  source: sourceOf(entry),
});

export const fillHardware = (key: string, entry: Entry<'hardware'>): Hardware => ({
  key,
  name: entry.name,
  kind: entry.kind,
  rating_N: quantity(entry.rating, 'force'),
  thread_diameter_mm: entry['thread-diameter'] === undefined ? 0 : mm(entry['thread-diameter']),
  thread_length_mm: entry['thread-length'] === undefined ? 0 : mm(entry['thread-length']),
  mass_g: quantity(entry.mass, 'mass'),
  price: entry.price,
  packs: fillPacks(entry.packs),
  sold_by_mm: maybe_mm(entry['sold-by']),
  inches: entry.inches === undefined ? null : { sold_by_mm: maybe_mm(entry.inches['sold-by']) },
  source: sourceOf(entry),
});

const sheetOf = (text: string): readonly [number, number] => {
  const { thickness_mm, width_mm } = sides(text);
  return [thickness_mm, width_mm];
};

export const fillSupply = (key: string, entry: Entry<'supplies'>): Supply => {
  const { inches } = entry;
  return {
    key,
    name: entry.name,
    kind: entry.kind,
    leg_mm: maybe_mm(entry.leg),
    thickness_mm: maybe_mm(entry.thickness),
    sheet_mm: entry.size === undefined ? null : sheetOf(entry.size),
    length_mm: maybe_mm(entry.length),
    inches:
      inches === undefined
        ? null
        : {
            ...(inches.leg === undefined ? {} : { leg_mm: mm(inches.leg) }),
            ...(inches.thickness === undefined ? {} : { thickness_mm: mm(inches.thickness) }),
            ...(inches.size === undefined ? {} : { sheet_mm: sheetOf(inches.size) }),
            ...(inches.length === undefined ? {} : { length_mm: mm(inches.length) }),
          },
    packs: fillPacks(entry.packs),
    source: sourceOf(entry),
  };
};
