import { parse } from 'yaml';
import { plainYaml } from './plain-yaml.js';

/** How a source stands behind its numbers. */
export const sourceStatuses = ['seen', 'memory', 'practice', 'proposal', 'measured', 'derived'] as const;
/** One of `sourceStatuses`. */
export type SourceStatus = (typeof sourceStatuses)[number];

/** One entry of the bibliography. */
export interface Source {
  readonly key: string;
  readonly title: string;
  /** Edition, part or place inside the work; empty when the entry names none. */
  readonly edition: string;
  readonly year: number | null;
  readonly status: SourceStatus;
  readonly note: string;
}

const text = (value: unknown): string => (typeof value === 'string' ? value : '');

/**
 * The bibliography of `rules/sources.yaml`, in its order. The file ships with the project and is its own: an entry
 * without key, title or a known status,
 * or a key given twice, is a bug and throws an Error that names it.
 */
export function readSources(yaml: string): readonly Source[] {
  const document: unknown = parse(yaml, { ...plainYaml, maxAliasCount: 0 });
  const list =
    typeof document === 'object' && document !== null ? (document as { readonly list?: unknown }).list : undefined;
  if (!Array.isArray(list)) throw new Error('the list of sources has no `list:`');
  const seen = new Set<string>();
  return list.map((entry: unknown, index) => {
    const fields = (typeof entry === 'object' && entry !== null ? entry : {}) as Readonly<Record<string, unknown>>;
    const key = text(fields['key']);
    const status = sourceStatuses.find((known) => known === fields['status']);
    if (key === '' || text(fields['title']) === '' || status === undefined)
      throw new Error(`source ${key === '' ? `number ${index + 1}` : key} needs a key, a title and a status`);
    if (seen.has(key)) throw new Error(`source ${key} stands in the list twice`);
    seen.add(key);
    return {
      key,
      title: text(fields['title']),
      edition: text(fields['edition']),
      year: typeof fields['year'] === 'number' ? fields['year'] : null,
      status,
      note: text(fields['note']),
    };
  });
}
