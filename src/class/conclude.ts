import type { Problem } from '../base/problem.js';
import type { Cutting } from '../cutting/cut-plan.js';
import type { Applied } from '../findings/applied.js';
import type { Plan } from '../plan/plan.js';
import type { Shelf } from '../shelf/shelf.js';
import type { ClassFindings } from './class-findings.js';
import type { ClassRow, NotRead } from './class-row.js';
import { poolPlans } from './pooled.js';
import { rollUp } from './roll-up.js';

/** What is kept of the files of a class while it is gone through: never a whole audit. */
export interface ClassKept {
  readonly rows: readonly ClassRow[];
  readonly others: readonly NotRead[];
  /** The plans that may be cut, each with its position among the rows. */
  readonly pool: readonly { readonly row: number; readonly plan: Plan }[];
  /** What the pages say of the files that could not be read. */
  readonly told: readonly Problem[];
}

/** What all plans of a class were judged with. */
export interface ClassBench {
  readonly shelf: Shelf;
  readonly ruleset: {
    readonly rules: readonly { readonly id: string }[];
    readonly points: ReadonlyMap<string, number>;
  };
  readonly applied: Applied;
  readonly seed: number;
  readonly samples: number;
  /** The saw at hand, where a workshop is known. */
  readonly tools?: { readonly saw?: ClassFindings['saw'] | undefined };
}

/**
 * What can be said of a class as a whole, its boards and cloth bought together, the same on every machine; `how` as for
 * `poolPlans`.
 */
export function concludeClass(
  { rows, others, pool, told }: ClassKept,
  { shelf, ruleset, applied, seed, samples, tools }: ClassBench,
  how: Cutting = {},
): ClassFindings {
  const pooled =
    pool.length === 0
      ? null
      : poolPlans(
          pool.map(({ plan }) => plan),
          shelf,
          pool.map(({ row }) => rows[row]!.no),
          how,
        );
  const count = (kind: NotRead['kind']): number => others.filter((other) => other.kind === kind).length;
  return {
    rows,
    others,
    roll_up: rollUp(rows, count('not-read'), count('beside')),
    broken: told,
    pooled,
    pooled_rows: pool.map(({ row }) => row),
    shares: pooled?.shares ?? [],
    rules: ruleset.rules.map(({ id }) => id),
    points: ruleset.points.size > 0,
    applied,
    shelf_name: shelf.name,
    measured: shelf.measured,
    currency: shelf.currency,
    ...(tools?.saw === undefined ? {} : { saw: tools.saw }),
    seed,
    samples,
  };
}

/** Why a file could not be read: the first thing that is wrong, and how much more there is. */
export function whyNotRead([first, ...more]: readonly Problem[]): string {
  if (first === undefined) return 'It could not be read.';
  return `Found ${first.found}; allowed: ${first.allowed}.${more.length === 0 ? '' : ` And ${more.length} more.`}`;
}
