import { readFileSync } from 'node:fs';
import type { Bench } from '../../src/audit.js';
import type { CutPlan } from '../../src/cutting/boards/purchase.js';
import type { Plan } from '../../src/plan/plan.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import type { Shelf } from '../../src/shelf/shelf.js';
import { pricesOf, type Price } from '../../src/suggest/price.js';

const fileText = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

function shipped(): Bench {
  const shelf = readShelf(fileText('rules/shelf.yaml'), 'shelf.yaml');
  const ruleset = loadRuleset((name) => fileText(`rules/${name}`), 'baseline.yaml');
  if (!shelf.ok || !ruleset.ok) throw new Error(JSON.stringify([shelf, ruleset]));
  return { shelf: shelf.value, ruleset: ruleset.value, seed: 3, samples: 400 };
}

/** The shipped shelf and baseline, with few samples. */
export const bench: Bench = shipped();

/** The same with only some of the lumber. */
export function benchWith(...stocks: readonly string[]): Bench {
  return { ...bench, shelf: { ...bench.shelf, lumber: Object.fromEntries(Object.entries(bench.shelf.lumber).filter(([key]) => stocks.includes(key))) } };
}

/** The example that must not be cut as it stands. */
export const stairwell = fileText('reports/stairwell-banner/plan.yaml');

/** A plan from its text; throws with the problems when it cannot be read. */
export function planOf(text: string, on: Bench = bench): Plan {
  const plan = readPlanWith(text, 'plan.yaml', on.shelf);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems, null, 1));
  return plan.value;
}

/** What two plans must share to be the same frame: everything but the list of what was assumed. */
export const withoutNotes = (plan: Plan): Plan => ({ ...plan, assumed: [] });

/** Cost and weight of one plan cut as given. */
export function priceOf(plan: Plan, cut: CutPlan, shelf: Shelf): Price {
  const [price] = pricesOf([plan], cut, shelf);
  if (price === undefined) throw new Error('a plan has a price');
  return price;
}
