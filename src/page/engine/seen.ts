import {
  chanceInWords,
  formatFixed,
  formatNumber,
  formatQuantity,
  glanceOf,
  limitInWords,
  verdictWord,
  type Audit,
  type Change,
  type Problem,
  type Result,
  type Ruleset,
  type Shelf,
} from '../../index.js';
import type { BenchSeen, ChangeSeen, ClassSeen, ShelfItem } from './protocol.js';

/** Shelf and ruleset as the page shows them. */
export function benchSeen(problems: readonly Problem[], shelf: Shelf | null, ruleset: Ruleset | null): BenchSeen {
  const items = <T extends { readonly key: string }>(
    entries: Readonly<Record<string, T>> | undefined,
    said: (entry: T) => string,
  ): readonly ShelfItem[] => Object.values(entries ?? {}).map((entry) => ({ key: entry.key, said: said(entry) }));
  return {
    problems,
    sections: {
      lumber: items(
        shelf?.lumber,
        ({ nominal, thickness_mm, width_mm }) =>
          `${nominal === null ? '' : `${nominal}, `}${formatNumber(thickness_mm)} × ${formatNumber(width_mm)} mm`,
      ),
      nails: items(shelf?.nails, ({ name }) => name),
      screws: items(shelf?.screws, ({ name }) => name),
      glues: items(shelf?.glues, ({ name }) => name),
      cloths: items(shelf?.cloths, ({ name }) => name),
      grounds: items(shelf?.grounds, ({ name }) => name),
    },
    currency: shelf?.currency ?? '',
    shelf_name: shelf?.name ?? '',
    limits: [...(ruleset?.limits.values() ?? [])].map((limit) => ({
      name: limit.name,
      said: limitInWords(limit),
      source: limit.source,
      history: (ruleset?.history.get(`limit ${limit.name}`) ?? []).map(({ file, ruleset: name, said }) => ({
        file,
        ruleset: name,
        said,
      })),
    })),
    ruleset_name: ruleset?.name ?? '',
  };
}

/** A tried change in the plan's own units. */
export function changeSeen(change: Change, { plan, shelf }: Audit, text: string | null): ChangeSeen {
  return {
    words: change.words,
    verdict: change.verdict,
    word: verdictWord[change.verdict],
    reserve: formatFixed(change.twist_reserve, 2),
    chance: change.lift_chance === null ? 'unknown' : chanceInWords(change.lift_chance),
    cost: change.cost === null ? 'unknown' : `${formatQuantity(change.cost, 'cost', plan.units)} ${shelf.currency}`,
    weight: formatQuantity(change.weight_kg, 'kg', plan.units),
    text,
  };
}

/** A plan's row in the table of a class, without its marks; null stands for a bench that cannot be read. */
export function rowOf(file: string, read: Result<Audit> | null): Omit<ClassSeen, 'marks'> {
  if (read?.ok !== true)
    return {
      file,
      name: '',
      verdict: null,
      word: 'Cannot be read',
      worst: '',
      chance: '',
      cost: '',
      problems: read?.problems ?? [],
    };
  const { name, verdict, word, reasons, amounts } = glanceOf(read.value);
  const said = (of: string): string => amounts.find((amount) => amount.name === of)?.said ?? '';
  return {
    file,
    name,
    verdict,
    word,
    worst: reasons[0]?.say ?? '',
    chance: said('Frames with a lifted corner'),
    cost: said('Cost'),
    problems: read.warnings,
  };
}
