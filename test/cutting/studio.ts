import { readFileSync } from 'node:fs';
import { stringify } from 'yaml';
import type { Plan } from '../../src/plan/plan.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import type { Shelf, StockLength } from '../../src/shelf/shelf.js';

const read = readShelf(readFileSync(new URL('../../rules/shelf.yaml', import.meta.url), 'utf8'), 'shelf.yaml');
if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));

/** The demonstration shelf. */
export const demoShelf: Shelf = read.value;

/** The demonstration shelf with other lengths for one stock, and other saw numbers. */
export function shelfWith(stock: string, lengths: readonly StockLength[] | null, cutting: Partial<Shelf['cutting']> = {}): Shelf {
  const lumber = demoShelf.lumber[stock];
  if (lumber === undefined) throw new Error(stock);
  return { ...demoShelf, lumber: { ...demoShelf.lumber, [stock]: { ...lumber, lengths } }, cutting: { ...demoShelf.cutting, ...cutting } };
}

/** Boards of one stock from lengths and prices. */
export const boards = (...list: readonly (readonly [length_mm: number, price: number, available?: number])[]): StockLength[] =>
  list.map(([length_mm, price, available]) => ({ length_mm, price, available: available ?? null }));

/** A plan of the Gullmark Street Studio: an oblong of flat 19 × 38 strips unless `more` says otherwise. */
export function studioPlan(more: object = {}, shelf: Shelf = demoShelf): Plan {
  const words = { plan: 1, name: 'Ferry landing, low water', face: { width: '900 mm', height: '620 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, ...more };
  const plan = readPlanWith(stringify(words), 'plan.yaml', shelf);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems, null, 1));
  return plan.value;
}
