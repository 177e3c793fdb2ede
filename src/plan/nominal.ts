import type { Shelf } from '../shelf/shelf.js';
import type { Plan } from './plan.js';

/** What a shop's name for a size, such as `1x2`, means on the shelf. */
export interface Nominal {
  /** The first entry that shops call so. */
  readonly key: string;
  /** Further entries of the same name and the same actual size. */
  readonly others: readonly string[];
}

/**
 * The entry that a nominal name means; null where it is a key of its own, no entry is called so, or entries of
 * different sizes are.
 */
export function nominalStock(name: string, { lumber }: Shelf): Nominal | null {
  if (Object.hasOwn(lumber, name)) return null;
  const plain = (text: string): string =>
    text
      .toLowerCase()
      .replaceAll(/["\s]|by/gu, (sign) => (sign === 'by' ? 'x' : ''))
      .replace('×', 'x');
  const called = Object.values(lumber).filter(({ nominal }) => nominal !== null && plain(nominal) === plain(name));
  const [first, ...others] = called;
  if (
    first === undefined ||
    others.some(({ thickness_mm, width_mm }) => thickness_mm !== first.thickness_mm || width_mm !== first.width_mm)
  )
    return null;
  return { key: first.key, others: others.map(({ key }) => key) };
}

/** The plan with every nominal name of stock replaced by the entry it means, each noted as assumed. */
export function withEntries(plan: Plan, shelf: Shelf): Plan {
  const assumed = [...plan.assumed];
  const entry = (path: string, name: string): string => {
    const meant = nominalStock(name, shelf);
    if (meant === null) return name;
    const noted = assumed.findIndex((one) => one.path === path);
    const note = { path, value: `${meant.key}, which shops call ${name}` };
    if (noted < 0) assumed.push(note);
    else assumed[noted] = note;
    return meant.key;
  };
  const bars = { ...plan.bars, stock: entry('bars.stock', plan.bars.stock) };
  const crossbars = plan.crossbars.map((crossbar, i) => ({
    ...crossbar,
    stock: entry(`crossbars[${i}].stock`, crossbar.stock),
  }));
  const { brace } = plan.corners;
  const corners =
    brace?.stock == null
      ? plan.corners
      : { ...plan.corners, brace: { ...brace, stock: entry('corners.brace.stock', brace.stock) } };
  return { ...plan, bars, crossbars, corners, assumed };
}
