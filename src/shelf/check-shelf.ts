import { quoted } from '../base/wording.js';
import type { Problem } from '../base/problem.js';
import { listed, nearest } from '../base/schema-problems.js';
import type { YamlSource } from '../base/yaml-document.js';
import { fillScrew } from './fill-entries.js';
import { proposalNumbers, type ProposalName } from './proposals.js';
import { namedSources } from './shelf-sources.js';
import { gives, type ShelfInput } from './shelf-schema.js';
import type { Screw, Shelf } from './shelf.js';

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
  for (const name of gives)
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
export function checkShelf(
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
    const said = wanted.unit === 'ratio' ? '' : ` ${wanted.unit}`;
    if (!(value >= wanted.least && value <= wanted.most))
      problems.push(
        source.problem('out-of-range', ['proposals', name, 'value'], {
          value: `${value}${said}`,
          allowed: `from ${wanted.least} to ${wanted.most}${said}`,
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
