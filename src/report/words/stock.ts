import type { UnitSystem } from '../../base/names.js';
import { formatSize } from '../../base/units-format.js';
import type { CutPlan } from '../../cutting/boards/purchase.js';
import { userText } from '../clean-text.js';
import { plural } from './plural.js';

/** Kinds of wood that a key may begin with and that are a noun by themselves; another word is said of a board. */
const nouns = /^(?:strip|board|stud|square|slat|batten)$/u;
/** A key that says a kind and a section: `strip-19x38`, `pine-19x38`. */
const kindAndSection = /^([a-z]+)-\d+x\d+$/u;

/**
 * A stock as a shop says it, by section and kind: `19 × 38 mm strip`, `19 × 38 mm pine board`. A key that says neither
 * stands behind it: `20 × 40 mm board (yard-strip)`.
 */
export function stockName(
  key: string,
  size: { readonly thickness_mm: number; readonly width_mm: number },
  units: UnitSystem,
  n = 1,
): string {
  const kind = kindAndSection.exec(key)?.[1];
  const noun = kind !== undefined && nouns.test(kind) ? plural(kind, n) : plural('board', n);
  const of = kind === undefined || nouns.test(kind) ? '' : `${kind} `;
  const own = kind === undefined ? ` (${userText(key, 40)})` : '';
  return `${formatSize(size.thickness_mm, size.width_mm, units)} ${of}${noun}${own}`;
}

/** The same with the key behind it, for who has to write it into a plan: `19 × 38 mm strips (strip-19x38)`. */
export function stockWithKey(key: string, size: Parameters<typeof stockName>[1], units: UnitSystem, n = 1): string {
  const name = stockName(key, size, units, n);
  return kindAndSection.test(key) ? `${name} (${userText(key, 40)})` : name;
}

/** The names of the stocks that are cut, by their keys; one that is not among them goes by its key. */
export function stockNames({ stocks, units }: Pick<CutPlan, 'stocks' | 'units'>): (key: string, n?: number) => string {
  const known = new Map(stocks.map(({ stock, lumber }) => [stock, lumber]));
  return (key, n = 1) => {
    const lumber = known.get(key);
    return lumber === undefined ? userText(key, 40) : stockName(key, lumber, units, n);
  };
}
