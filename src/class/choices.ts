import { specOf } from '../facts/catalogue.js';
import type { FactPath } from '../facts/fact.js';
import { findFact } from '../facts/find-fact.js';
import type { Audit } from '../report/audit-view.js';

/**
 * What plans choose, in the words of the class page, and the fact that says it. All bars and corners of a plan are
 * built alike.
 */
const chosen: readonly (readonly [words: string, path: FactPath, about: string | null])[] = [
  ['Bars', 'bar.stock', 'top'],
  ['Bars lie', 'bar.lay', 'top'],
  ['Plies', 'bar.plies_count', 'top'],
  ['Crossbars', 'frame.crossbars_count', null],
  ['Corners', 'corner.cut', 'top-left'],
  ['Corner glue', 'corner.glue', 'top-left'],
  ['Nails', 'corner.nail', 'top-left'],
  ['Corner braces', 'corner.brace', 'top-left'],
  ['Boards chosen', 'lumber.chosen', null],
  ['Cloth', 'cloth.use', null],
  ['Coats of ground', 'cloth.ground_coats_count', null],
];

/** What one plan chose, by the words above. */
export type Choices = ReadonlyMap<string, string>;

/** The choices of one plan. */
export function choicesOf({ facts, shelf }: Audit): Choices {
  // Boards go by their keys: their names would differ between plans in inches and in millimetres.
  const names: Partial<Record<FactPath, Readonly<Record<string, { readonly name: string }>>>> = {
    'corner.glue': shelf.glues,
    'corner.nail': shelf.nails,
    'cloth.use': shelf.cloths,
  };
  const said = ([words, path, about]: (typeof chosen)[number]): readonly (readonly [string, string])[] => {
    const value = facts.find((fact) => fact.path === path && (about === null || fact.about === about))?.value;
    return value === undefined || value === null ? [] : [[words, names[path]?.[String(value)]?.name ?? String(value)]];
  };
  return new Map(chosen.flatMap(said));
}

/** What a class usually chooses in one respect, and who does otherwise. */
export interface UsualChoice {
  readonly what: string;
  readonly usual: string;
  readonly plans: number;
  /** Positions of the rows that chose otherwise, and what they chose. */
  readonly others: readonly { readonly row: number; readonly chose: string }[];
}

/** Where more than half of a class chose alike and some did not: the usual choice and who departs from it. */
export function usualChoices(rows: readonly { readonly choices: Choices }[]): readonly UsualChoice[] {
  return chosen.flatMap(([what]): UsualChoice[] => {
    const all = rows.flatMap(({ choices }, row) => (choices.has(what) ? [{ row, chose: choices.get(what)! }] : []));
    const counts = new Map<string, number>();
    for (const { chose } of all) counts.set(chose, (counts.get(chose) ?? 0) + 1);
    const usual = [...counts].find(([, plans]) => plans * 2 > all.length);
    if (usual === undefined || usual[1] === all.length) return [];
    return [{ what, usual: usual[0], plans: usual[1], others: all.filter(({ chose }) => chose !== usual[0]) }];
  });
}

/** The figures that a class is told in: words, and the fact in its own unit. */
export const figures = (
  [
    ['Longer side', 'frame.longer_side_mm'],
    ['Shorter side', 'frame.shorter_side_mm'],
    ['Reserve against twisting', 'frame.twist_reserve'],
    ['Chance of a lifted corner', 'warp.corner_lift_chance'],
    ['Weight, finished', 'frame.weight_kg'],
    ['Distance between staples', 'cloth.staple_spacing_mm'],
    ['Cost alone', 'cutting.total_cost'],
  ] as const
).map(([words, path]) => ({ words, path, unit: specOf(path).unit }));

/** The figures of one plan in the order above; null where unknown. */
export const figuresOf = ({ facts }: Audit): readonly (number | null)[] =>
  figures.map(({ path }) => findFact(facts, path, null));
