import { ownersSource } from './fill-entries.js';
import type { ShelfInput } from './shelf-schema.js';

type Entry = { readonly source?: string | undefined; readonly sources?: Readonly<Record<string, string>> | undefined };

/** Sections of a shelf that are one entry each, those that hold entries by key, and with them its single numbers. */
const singleSections = ['lumber-defaults', 'spread', 'drills', 'joints', 'cutting'] as const;
export const entrySections = [
  'species',
  'lumber',
  'nails',
  'screws',
  'glues',
  'cloths',
  'grounds',
  'hardware',
  'supplies',
] as const;
const keyedSections = [...entrySections, 'proposals'] as const;

/** Source of prices that nobody asks. */
export const inventedSource = 'invented';

/** Fields that are no numbers, and so need no source. */
const wordy: ReadonlySet<string> = new Set([
  'name',
  'nominal',
  'kind',
  'source',
  'sources',
  'currency',
  'demo',
  'inches',
]);
const isPrice = (field: string): boolean => field === 'price' || field === 'packs' || field.startsWith('price-');

function fieldsOf(entry: object): string[] {
  return Object.keys(entry).filter((field) => !wordy.has(field));
}

/**
 * Every number a shelf file gives, as `lumber.strip-19x38.E`, with the key of its source; prices have the source of
 * `prices`.
 */
export function sourcesOf(input: ShelfInput, pricesSource: string): Record<string, string> {
  const found: Record<string, string> = {};
  const note = (where: string, entry: Entry): void => {
    for (const field of fieldsOf(entry))
      found[`${where}.${field}`] =
        entry.sources?.[field] ?? (isPrice(field) ? pricesSource : (entry.source ?? ownersSource));
    if ('lengths' in entry && entry.lengths !== undefined)
      found[`${where}.price`] = entry.sources?.['price'] ?? pricesSource;
  };
  for (const section of singleSections) {
    const entry = input[section];
    if (entry) note(section, entry);
  }
  for (const section of keyedSections)
    for (const [key, entry] of Object.entries(input[section] ?? {})) {
      if (section === 'proposals') found[`proposals.${key}`] = entry.source ?? ownersSource;
      else note(`${section}.${key}`, entry);
    }
  return found;
}

/** A source named in a shelf file: where it stands, and what it is named for. */
export interface NamedSource {
  readonly path: readonly string[];
  readonly key: string;
  /** The field a `sources:` line speaks of, and the fields there are; null for a `source:` line. */
  readonly field: { readonly name: string; readonly known: readonly string[] } | null;
}

/** Every `source:` and `sources:` of a shelf file with its place. */
export function namedSources(input: ShelfInput): NamedSource[] {
  const found: NamedSource[] = [];
  const collect = (path: readonly string[], entry: Entry): void => {
    if (entry.source !== undefined) found.push({ path: [...path, 'source'], key: entry.source, field: null });
    const known = [...fieldsOf(entry), ...('lengths' in entry ? ['price', 'available'] : [])];
    for (const [name, key] of Object.entries(entry.sources ?? {}))
      found.push({ path: [...path, 'sources', name], key, field: { name, known } });
  };
  for (const section of ['prices', ...singleSections] as const) {
    const entry = input[section];
    if (entry) collect([section], entry);
  }
  for (const section of keyedSections)
    for (const [key, entry] of Object.entries(input[section] ?? {})) collect([section, key], entry);
  return found;
}
