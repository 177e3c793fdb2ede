import type { Problem } from '../base/problem.js';
import { listed, nearest } from '../base/schema-problems.js';
import { quoted } from '../base/wording.js';
import type { Path, YamlSource } from '../base/yaml-document.js';
import { nominalStock } from './nominal.js';
import type { Shelf } from '../shelf/shelf.js';

type Section = 'lumber' | 'nails' | 'screws' | 'glues' | 'cloths';

/** Where a plan names things of the shelf; `*` stands for every entry of a list. `none` is a word, not a name. */
const names: readonly { readonly path: readonly string[]; readonly section: Section }[] = [
  { path: ['bars', 'stock'], section: 'lumber' },
  { path: ['crossbars', '*', 'stock'], section: 'lumber' },
  { path: ['corners', 'brace', 'stock'], section: 'lumber' },
  { path: ['corners', 'glue'], section: 'glues' },
  { path: ['corners', 'nails', 'use'], section: 'nails' },
  { path: ['ply-screws', 'use'], section: 'screws' },
  { path: ['cloth', 'use'], section: 'cloths' },
];

function find(
  data: unknown,
  pattern: readonly string[],
  path: Path = [],
): { readonly path: Path; readonly name: string }[] {
  const [step, ...rest] = pattern;
  if (step === undefined) return typeof data === 'string' ? [{ path, name: data }] : [];
  if (step === '*')
    return Array.isArray(data) ? data.slice(0, 500).flatMap((item, index) => find(item, rest, [...path, index])) : [];
  if (typeof data !== 'object' || data === null || !Object.hasOwn(data, step)) return [];
  return find((data as Record<string, unknown>)[step], rest, [...path, step]);
}

/**
 * Names in a plan that the shelf does not have. Looks at the raw document, so that they show beside any other problem;
 * names left to defaults are checked by `checkDefaults`.
 */
export const checkNames = (source: YamlSource, shelf: Shelf): Problem[] =>
  names.flatMap(({ path, section }) => unknownNames(source, shelf, path, section));

/** The same for one place of any document, `*` standing for every entry of a list. */
export function unknownNames(
  source: YamlSource,
  shelf: Shelf,
  pattern: readonly string[],
  section: Section,
): Problem[] {
  return find(source.data, pattern).flatMap(({ path, name }) => {
    if (Object.hasOwn(shelf[section], name) || (section === 'glues' && name === 'none')) return [];
    const meant = section === 'lumber' ? nominalStock(name, shelf) : null;
    if (meant !== null)
      return [
        source.warning('nominal-name', path, {
          value: quoted(name),
          name: meant.key,
          allowed: listed([meant.key, ...meant.others]),
        }),
      ];
    return [unknownName(source, path, name, section, shelf)];
  });
}

/** The problem of a name that a section of the shelf does not have. */
export function unknownName(source: YamlSource, path: Path, name: string, section: Section, shelf: Shelf): Problem {
  const keys = Object.keys(shelf[section]);
  return source.problem('unknown-on-shelf', path, {
    value: quoted(name),
    name: section,
    allowed: listed(keys),
    nearest: nearest(name, keys),
  });
}
