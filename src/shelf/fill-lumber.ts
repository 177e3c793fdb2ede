import type { Choosing } from '../base/names.js';
import { ownersSource, quantity, sides } from './fill-entries.js';
import type { ShelfInput } from './shelf-schema.js';
import type { Lumber, LumberDefaults, Normal, Species, StockLength, WarpSpread } from './shelf.js';

/** The ways of choosing boards. */
export const choosings = ['unsorted', 'plain', 'picked'] as const satisfies readonly Choosing[];

type SpreadInput = NonNullable<ShelfInput['spread']>;
type WarpInput = NonNullable<SpreadInput['plain']>;
type Spreads = Readonly<Record<Choosing, WarpSpread>>;

const normal = (input: { readonly mean: string; readonly sd: string }, dimension: 'twist' | 'curvature'): Normal => ({
  mean: quantity(input.mean, dimension),
  sd: quantity(input.sd, dimension),
});

/** One way's spread, what is missing taken from `fallback`. */
export function fillWarp(input: WarpInput | undefined, fallback: WarpSpread): WarpSpread {
  return {
    twist_rad_per_m: input?.twist ? normal(input.twist, 'twist') : fallback.twist_rad_per_m,
    bow_per_m: input?.bow ? normal(input.bow, 'curvature') : fallback.bow_per_m,
    crook_per_m: input?.crook ? normal(input.crook, 'curvature') : fallback.crook_per_m,
  };
}

/** All three ways, what is missing taken from `fallback`. */
export const fillSpreads = (
  input: { readonly [Way in Choosing]?: WarpInput | undefined } | undefined,
  fallback: Spreads,
): Spreads => ({
  unsorted: fillWarp(input?.unsorted, fallback.unsorted),
  plain: fillWarp(input?.plain, fallback.plain),
  picked: fillWarp(input?.picked, fallback.picked),
});

type LumberInput = NonNullable<ShelfInput['lumber']>[string];

/** One lumber entry; only its size is needed, and what falls back to the shelf's defaults is listed in `assumed`. */
export function fillLumber(
  key: string,
  entry: LumberInput,
  defaults: LumberDefaults,
  spreads: Spreads,
  species: Readonly<Record<string, Species>>,
): Lumber {
  const assumed: string[] = [];
  const take = <T>(field: string, given: T | undefined, fallback: T): T => {
    if (given !== undefined) return given;
    assumed.push(field);
    return fallback;
  };
  const E_MPa = take('E', entry.E === undefined ? undefined : quantity(entry.E, 'stress'), defaults.E_MPa);
  const ownG =
    entry.G !== undefined
      ? quantity(entry.G, 'stress')
      : entry['E-over-G'] !== undefined
        ? E_MPa / entry['E-over-G']
        : undefined;
  const G_MPa = take('G', ownG, E_MPa / defaults.E_over_G);
  const density_kg_per_m3 = take(
    'density',
    entry.density === undefined ? undefined : quantity(entry.density, 'density'),
    defaults.density_kg_per_m3,
  );
  const wood = species[take('species', entry.species, defaults.species)];
  if (wood === undefined) throw new Error(`the species of ${key} was not checked`);
  const lengths: StockLength[] | undefined = entry.lengths?.map(({ length, inches, price, available }) => ({
    length_mm: quantity(length, 'length'),
    inches_mm: inches === undefined ? null : quantity(inches, 'length'),
    price,
    available: available ?? null,
  }));
  for (const way of choosings)
    for (const kind of ['twist', 'bow', 'crook'] as const)
      if (entry.spread?.[way]?.[kind] === undefined) assumed.push(`spread.${way}.${kind}`);
  return {
    key,
    nominal: entry.nominal ?? null,
    ...sides(entry.size),
    inches: entry.inches === undefined ? null : sides(entry.inches),
    E_MPa,
    G_MPa,
    density_kg_per_m3,
    species: wood,
    lengths: lengths === undefined ? null : lengths.sort((a, b) => a.length_mm - b.length_mm),
    spread: fillSpreads(entry.spread, spreads),
    source: entry.source ?? ownersSource,
    assumed,
  };
}

/**
 * A board of the shelf below, after the species or default spreads it leans on were changed by a shelf laid over it.
 */
export function relean(lumber: Lumber, spreads: Spreads, species: Readonly<Record<string, Species>>): Lumber {
  const assumed = new Set(lumber.assumed);
  const way = (choosing: Choosing): WarpSpread => ({
    twist_rad_per_m: assumed.has(`spread.${choosing}.twist`)
      ? spreads[choosing].twist_rad_per_m
      : lumber.spread[choosing].twist_rad_per_m,
    bow_per_m: assumed.has(`spread.${choosing}.bow`) ? spreads[choosing].bow_per_m : lumber.spread[choosing].bow_per_m,
    crook_per_m: assumed.has(`spread.${choosing}.crook`)
      ? spreads[choosing].crook_per_m
      : lumber.spread[choosing].crook_per_m,
  });
  return {
    ...lumber,
    species: species[lumber.species.key] ?? lumber.species,
    spread: { unsorted: way('unsorted'), plain: way('plain'), picked: way('picked') },
  };
}
