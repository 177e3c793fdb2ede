import { evenGive, type JointGive } from '../base/joint-give.js';
import {
  fillCloth,
  fillDrills,
  fillGlue,
  fillGround,
  fillHardware,
  fillNail,
  fillScrew,
  fillSpecies,
  fillSupply,
  ownersSource,
  quantity,
} from './fill-entries.js';
import { fillLumber, fillSpreads, relean } from './fill-lumber.js';
import { proposalNumbers, type ProposalName } from './proposals.js';
import { entrySections, inventedSource, sourcesOf } from './shelf-sources.js';
import type { ShelfInput } from './shelf-schema.js';
import type { JointBuild, Joints, LumberDefaults, Shelf, WarpSpread } from './shelf.js';

const mapped = <In, Out>(
  entries: Readonly<Record<string, In>> | undefined,
  fill: (key: string, entry: In) => Out,
): Record<string, Out> =>
  Object.fromEntries(Object.entries(entries ?? {}).map(([key, entry]) => [key, fill(key, entry)]));

/**
 * A dry tongue in its slot, for shelves written before there were keyed corners: almost nothing in the plane
 * (proposal).
 */
const keyedGive: JointGive = { plane: 100, out: 8, twist: 8 };

function fillJoints(input: ShelfInput['joints'], base: Joints | undefined): Joints {
  const give = (name: keyof NonNullable<NonNullable<ShelfInput['joints']>['give']>, field: JointBuild): JointGive => {
    const given = input?.give?.[name];
    return typeof given === 'number'
      ? evenGive(given)
      : (given ?? base?.give[field] ?? (field === 'keyed' ? keyedGive : evenGive(0)));
  };
  const bond = (name: 'mitre' | 'butt' | 'half-lap', field: keyof Joints['bond_MPa']): number => {
    const text = input?.bond?.[name];
    return text === undefined ? (base?.bond_MPa[field] ?? 0) : quantity(text, 'stress');
  };
  return {
    give: {
      mitre_glued_nailed: give('mitre-glued-nailed', 'mitre_glued_nailed'),
      mitre_glued: give('mitre-glued', 'mitre_glued'),
      mitre_nailed: give('mitre-nailed', 'mitre_nailed'),
      nothing: give('nothing', 'nothing'),
      half_lap_glued: give('half-lap-glued', 'half_lap_glued'),
      butt_glued: give('butt-glued', 'butt_glued'),
      keyed: give('keyed', 'keyed'),
      crossbar_glued: give('crossbar-glued', 'crossbar_glued'),
      crossbar_dry: give('crossbar-dry', 'crossbar_dry'),
    },
    bond_MPa: { mitre: bond('mitre', 'mitre'), butt: bond('butt', 'butt'), half_lap: bond('half-lap', 'half_lap') },
    source: input === undefined ? (base?.source ?? ownersSource) : (input.source ?? ownersSource),
  };
}

function fillCutting(input: ShelfInput['cutting'], base: Shelf['cutting'] | undefined): Shelf['cutting'] {
  const mm = (text: string | undefined, fallback: number | undefined): number =>
    text === undefined ? (fallback ?? 0) : quantity(text, 'length');
  const waste = (name: 'none' | 'few' | 'many'): number => {
    const text = input?.['knot-waste']?.[name];
    return text === undefined ? (base?.knot_waste_share[name] ?? 0) : quantity(text, 'fraction');
  };
  return {
    kerf_mm: mm(input?.kerf, base?.kerf_mm),
    end_trim_mm: mm(input?.['end-trim'], base?.end_trim_mm),
    knot_waste_share: { none: waste('none'), few: waste('few'), many: waste('many') },
  };
}

const still: WarpSpread = {
  twist_rad_per_m: { mean: 0, sd: 0 },
  bow_per_m: { mean: 0, sd: 0 },
  crook_per_m: { mean: 0, sd: 0 },
};

/** What the file says, and where it says nothing what the shelf below it says. Lengths in mm, stresses in MPa. */
export function fillShelf(input: ShelfInput, base: Shelf | undefined): Shelf {
  const given = input['lumber-defaults'];
  const defaults: LumberDefaults = {
    E_MPa: given?.E === undefined ? (base?.lumber_defaults.E_MPa ?? 0) : quantity(given.E, 'stress'),
    E_over_G: given?.['E-over-G'] ?? base?.lumber_defaults.E_over_G ?? 16,
    density_kg_per_m3:
      given?.density === undefined
        ? (base?.lumber_defaults.density_kg_per_m3 ?? 0)
        : quantity(given.density, 'density'),
    species: given?.species ?? base?.lumber_defaults.species ?? '',
  };
  const spreads = fillSpreads(input.spread, base?.spread ?? { unsorted: still, plain: still, picked: still });
  const species = { ...base?.species, ...mapped(input.species, fillSpecies) };
  const ownPrices = input.prices?.source ?? (input.prices?.demo === true ? inventedSource : ownersSource);
  const pricesSource = input.prices?.source ?? base?.prices_source ?? ownPrices;
  const replaced = entrySections.flatMap((section) =>
    Object.keys(input[section] ?? {}).map((key) => `${section}.${key}.`),
  );
  const kept = Object.entries(base?.sources ?? {}).filter(
    ([where]) => !replaced.some((start) => where.startsWith(start)),
  );
  const sources = { ...Object.fromEntries(kept), ...sourcesOf(input, ownPrices) };
  return {
    name: input.name ?? base?.name ?? 'Shelf',
    currency: input.prices?.currency ?? base?.currency ?? '',
    demo_prices: input.prices?.demo ?? base?.demo_prices ?? false,
    prices_source: pricesSource,
    lumber_defaults: defaults,
    spread: spreads,
    species,
    lumber: {
      ...mapped(base?.lumber, (_, lumber) => relean(lumber, spreads, species)),
      ...mapped(input.lumber, (key, entry) => fillLumber(key, entry, defaults, spreads, species)),
    },
    nails: { ...base?.nails, ...mapped(input.nails, fillNail) },
    screws: { ...base?.screws, ...mapped(input.screws, fillScrew) },
    drills: input.drills === undefined ? (base?.drills ?? []) : fillDrills(input.drills),
    glues: { ...base?.glues, ...mapped(input.glues, fillGlue) },
    cloths: { ...base?.cloths, ...mapped(input.cloths, fillCloth) },
    grounds: { ...base?.grounds, ...mapped(input.grounds, fillGround) },
    joints: fillJoints(input.joints, base?.joints),
    hardware: { ...base?.hardware, ...mapped(input.hardware, fillHardware) },
    supplies: { ...base?.supplies, ...mapped(input.supplies, fillSupply) },
    cutting: fillCutting(input.cutting, base?.cutting),
    proposals: {
      ...base?.proposals,
      ...mapped(input.proposals, (name, entry) => ({
        value: entry.value,
        unit: proposalNumbers[name as ProposalName].unit,
        source: entry.source ?? ownersSource,
        ...(entry.inches === undefined ? {} : { inches_mm: quantity(entry.inches, 'length') }),
      })),
    },
    sources,
    measured: Object.keys(sources).filter((where) => sources[where] === 'measured'),
    learned: {
      ...base?.learned,
      ...mapped(input.learned, (_, { frames, boards, joints, date }) => ({
        frames,
        boards: boards ?? 0,
        joints: joints ?? 0,
        date: date ?? null,
      })),
    },
  };
}
