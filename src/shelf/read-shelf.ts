import { evenGive, type JointGive } from '../base/joint-give.js';
import { quoted } from '../base/messages.js';
import type { Problem, Result } from '../base/problem.js';
import { listed, nearest, schemaProblems } from '../base/schema-problems.js';
import { inFileOrder, limitProblems, readYaml, type YamlSource } from '../base/yaml-document.js';
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
import { inventedSource, namedSources, sourcesOf } from './shelf-sources.js';
import { shelfInputSchema, type ShelfInput } from './shelf-schema.js';
import type { JointBuild, Joints, LumberDefaults, Screw, Shelf, WarpSpread } from './shelf.js';

function formatProblem(source: YamlSource): Problem | null {
  const { data } = source;
  if (typeof data !== 'object' || data === null || Array.isArray(data))
    return source.problem('not-a-map', [], { value: `\`${source.written([])}\`` });
  const format = Object.hasOwn(data, 'shelf') ? (data as { readonly shelf: unknown }).shelf : undefined;
  if (format === 1) return null;
  if (typeof format === 'number' && Number.isInteger(format) && format > 1)
    return source.problem('later-format', ['shelf'], { name: 'shelf', value: source.written(['shelf']) });
  return source.problem('not-this-format', format === undefined ? [] : ['shelf'], {
    name: 'shelf',
    value: format === undefined ? 'no `shelf: 1`' : `\`shelf: ${source.written(['shelf'])}\``,
  });
}

const sections = [
  'lumber-defaults',
  'spread',
  'species',
  'lumber',
  'nails',
  'screws',
  'drills',
  'glues',
  'cloths',
  'grounds',
  'joints',
  'hardware',
  'cutting',
  'proposals',
] as const;

/** Gives that a shelf may lack: newer than some shelves, or no longer asked for (a brace is counted by itself). */
const optionalGives = new Set(['keyed', 'braced-glued', 'braced-dry']);

/** What a shelf that stands alone must have. */
function missingParts(input: ShelfInput, source: YamlSource): Problem[] {
  const missing: string[][] = sections.filter((section) => input[section] === undefined).map((section) => [section]);
  for (const field of ['E', 'E-over-G', 'density', 'species'] as const)
    if (input['lumber-defaults'] && input['lumber-defaults'][field] === undefined)
      missing.push(['lumber-defaults', field]);
  for (const way of ['unsorted', 'plain', 'picked'] as const)
    for (const kind of ['twist', 'bow', 'crook'] as const)
      if (input.spread && input.spread[way]?.[kind] === undefined) missing.push(['spread', way, kind]);
  for (const name of Object.keys(shelfInputSchema.shape.joints._zod.def.innerType.shape.give._zod.def.innerType.shape))
    if (input.joints && !optionalGives.has(name) && input.joints.give?.[name as 'nothing'] === undefined)
      missing.push(['joints', 'give', name]);
  for (const name of ['mitre', 'butt', 'half-lap'] as const)
    if (input.joints && input.joints.bond?.[name] === undefined) missing.push(['joints', 'bond', name]);
  for (const name of ['kerf', 'end-trim'] as const)
    if (input.cutting && input.cutting[name] === undefined) missing.push(['cutting', name]);
  for (const name of ['none', 'few', 'many'] as const)
    if (input.cutting && input.cutting['knot-waste']?.[name] === undefined)
      missing.push(['cutting', 'knot-waste', name]);
  for (const name of Object.keys(proposalNumbers))
    if (input.proposals && !Object.hasOwn(input.proposals, name)) missing.push(['proposals', name]);
  return missing.map((path) => source.problem('missing', path, { name: path.at(-1) ?? '' }));
}

/** A screw's thread is cut into its shank, its head is wider than that, and its thread is no longer than itself. */
function screwProblems(
  { key, root_mm, shank_mm, head_mm, thread_mm, length_mm }: Screw,
  source: YamlSource,
): Problem[] {
  const said = (field: string): string => `a ${field} of ${source.written(['screws', key, field])}`;
  const wrong = (field: string, than: string): Problem =>
    source.problem('impossible-screw', ['screws', key, field], { value: said(field), allowed: than });
  return [
    ...(root_mm > shank_mm
      ? [wrong('root', `no more than the shank, ${source.written(['screws', key, 'shank'])}`)]
      : []),
    ...(head_mm <= shank_mm ? [wrong('head', `more than the shank, ${source.written(['screws', key, 'shank'])}`)] : []),
    ...(thread_mm > length_mm
      ? [wrong('thread', `no more than the length, ${source.written(['screws', key, 'length'])}`)]
      : []),
  ];
}

/** What a shelf file gets wrong by itself or against the one it is laid over. */
function checkShelf(
  input: ShelfInput,
  source: YamlSource,
  base: Shelf | undefined,
  known: ReadonlySet<string> | null,
): Problem[] {
  const problems: Problem[] = base === undefined ? missingParts(input, source) : [];
  const species = [...Object.keys(input.species ?? {}), ...Object.keys(base?.species ?? {})];
  const woods: (readonly [
    readonly string[],
    {
      readonly species?: string | undefined;
      readonly G?: string | undefined;
      readonly 'E-over-G'?: number | undefined;
    },
  ])[] = Object.entries(input.lumber ?? {}).map(([key, entry]) => [['lumber', key], entry] as const);
  if (input['lumber-defaults']) woods.push([['lumber-defaults'], input['lumber-defaults']]);
  for (const [path, entry] of woods) {
    if (entry.species !== undefined && !species.includes(entry.species))
      problems.push(
        source.problem('unknown-on-shelf', [...path, 'species'], {
          value: quoted(entry.species),
          name: 'species',
          allowed: listed(species),
          nearest: nearest(entry.species, species),
        }),
      );
    if (entry.G !== undefined && entry['E-over-G'] !== undefined)
      problems.push(source.problem('both-G', [...path, 'E-over-G'], {}, 'key'));
  }
  for (const [key, screw] of Object.entries(input.screws ?? {}))
    problems.push(...screwProblems(fillScrew(key, screw), source));
  for (const [name, { unit, value, inches }] of Object.entries(input.proposals ?? {})) {
    const names = Object.keys(proposalNumbers);
    if (!Object.hasOwn(proposalNumbers, name)) {
      problems.push(
        source.problem(
          'unknown-proposal',
          ['proposals', name],
          { value: quoted(name), allowed: listed(names), nearest: nearest(name, names) },
          'key',
        ),
      );
      continue;
    }
    const wanted = proposalNumbers[name as ProposalName];
    if (unit !== undefined && unit !== wanted.unit)
      problems.push(
        source.problem('other-unit-of-proposal', ['proposals', name, 'unit'], {
          value: quoted(unit),
          allowed: wanted.unit,
        }),
      );
    if (inches !== undefined && wanted.unit !== 'mm')
      problems.push(
        source.problem('other-unit-of-proposal', ['proposals', name, 'inches'], {
          value: quoted(inches),
          allowed: wanted.unit,
        }),
      );
    if (!(value >= wanted.least && value <= wanted.most))
      problems.push(
        source.problem('out-of-range', ['proposals', name, 'value'], {
          value: String(value),
          allowed: `from ${wanted.least} to ${wanted.most} ${wanted.unit}`,
        }),
      );
  }
  for (const { path, key, field } of namedSources(input)) {
    if (field !== null && !field.known.includes(field.name))
      problems.push(
        source.problem(
          'unknown-source-field',
          path,
          { value: quoted(field.name), allowed: listed(field.known), nearest: nearest(field.name, field.known) },
          'key',
        ),
      );
    if (known !== null && !known.has(key))
      problems.push(source.problem('unknown-source', path, { value: quoted(key), nearest: nearest(key, [...known]) }));
  }
  return problems;
}

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

function fillShelf(input: ShelfInput, base: Shelf | undefined): Shelf {
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
  const replaced = [
    'lumber',
    'nails',
    'screws',
    'glues',
    'cloths',
    'grounds',
    'hardware',
    'supplies',
    'species',
  ].flatMap((section) => Object.keys(input[section as 'nails'] ?? {}).map((key) => `${section}.${key}.`));
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

/**
 * Reads a shelf that stands alone, or one laid over `base`: entries add to or replace those of the same key; blocks
 * fill in what they name.
 * With `knownSources` every source key must be one of them. All problems at once, with their places; never throws on
 * any text.
 */
export function readShelf(text: string, file: string, base?: Shelf, knownSources?: ReadonlySet<string>): Result<Shelf> {
  const { source, problems } = readYaml(text, file);
  if (source === null) return { ok: false, problems };
  const wrongFormat = formatProblem(source);
  if (wrongFormat !== null) return { ok: false, problems: limitProblems([...problems, wrongFormat]) };
  const checked = shelfInputSchema.safeParse(source.data);
  if (!checked.success)
    return {
      ok: false,
      problems: limitProblems(
        inFileOrder([...problems, ...schemaProblems(shelfInputSchema, checked.error.issues, source)]),
      ),
    };
  const all = inFileOrder([...problems, ...checkShelf(checked.data, source, base, knownSources ?? null)]);
  if (all.some(({ severity }) => severity === 'error')) return { ok: false, problems: limitProblems(all) };
  return { ok: true, value: fillShelf(checked.data, base), warnings: all };
}
