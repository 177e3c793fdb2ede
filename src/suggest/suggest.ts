import type { Bench } from '../bench.js';
import type { Model, Solution } from '../model/model.js';
import type { Plan } from '../plan/plan.js';
import type { Audit } from '../report/audit-view.js';
import { allBuilds } from './builds.js';
import type { Edit } from './edit.js';
import { examinerFor } from './examine.js';
import { mayStop, stands, type Wish } from './judge.js';
import { boardOptions } from './options.js';
import { reasonOf } from './reason.js';
import { Search } from './search.js';
import { aims, type Aim } from './aims.js';
import { spaceInWords } from './space-words.js';

export type { Wish } from './judge.js';
export type { Aim } from './aims.js';

/** What to look for. */
export interface Goals {
  /** No caution and nothing unknown either; else no stop is enough. */
  readonly clear: boolean;
  /** Told of each build that is examined: the how-manieth, and how many there are at most. */
  readonly onExamined?: (examined: number, builds: number) => Promise<void> | void;
}

/** One plan worth changing to, confirmed by its full audit. */
export interface Suggestion {
  /** What it is best at: of all plans in the space none that keeps the wish is cheaper, lighter, or changes less. */
  readonly aims: readonly Aim[];
  readonly edit: Edit;
  readonly plan: Plan;
  readonly audit: Audit;
  readonly reason: string;
}

/** What was looked through, so that `cheapest` is a claim one can check. */
export interface Tried {
  /** The space in sentences. */
  readonly space: readonly string[];
  /** Plans in the space: every build with every choice of boards, hung and set back as planned. */
  readonly candidates: number;
  readonly builds: number;
  /** Builds the plan reader would not take: outside the space. */
  readonly refused: number;
  /** Builds whose facts were worked out; the others cannot beat what was found. */
  readonly examined: number;
  /** Full audits made to confirm. */
  readonly audited: number;
  /** Rules that stood in the way of a build at its best, and of how many builds, the most obstinate first. */
  readonly in_the_way: readonly { readonly rule: string; readonly builds: number }[];
}

/** The answer to a search. */
export interface Suggestions {
  readonly wish: Wish;
  readonly planned: Audit;
  /** At most one for each aim, those of the same plan together; empty when nothing in the space keeps the wish. */
  readonly found: readonly Suggestion[];
  readonly tried: Tried;
}

/** Whether an audited plan keeps the wish. */
export function keeps(audited: Audit, wish: Wish, { ruleset }: Bench): boolean {
  const stopping = new Set(ruleset.rules.filter(mayStop).map(({ id }) => id));
  return !audited.findings.some(({ rule, verdict }) => stands(verdict, stopping.has(rule), wish));
}

/**
 * Searches the changes a person would make for plans that keep the wish: the cheapest, the lightest, and the one that
 * changes least. Exhaustive over
 * the space told in `tried.space`: a build is passed over only when its exact or least possible cost, weight or number
 * of changes cannot win, or when
 * facts already worked out stand in the way of the wish. Each answer is confirmed by `audit`, the full one. Pure, and
 * the same every time.
 */
export async function searchPlans(
  plan: Plan,
  bench: Bench,
  goals: Goals,
  audit: (plan: Plan, bench: Bench, solve: (model: Model) => Solution) => Promise<Audit>,
): Promise<Suggestions> {
  const wish: Wish = goals.clear ? 'clear' : 'no-stop';
  const examiner = examinerFor(bench, wish);
  const audited = (one: Plan): Promise<Audit> => audit(one, bench, (model) => examiner.frames.of(model));
  const planned = await audited(plan);
  const space = allBuilds(plan, bench.shelf);
  const search = new Search(plan, space, examiner, (examined) => goals.onExamined?.(examined, space.builds.length));
  const audits = new Map<string, Audit>();
  const found = new Map<string, Suggestion>();
  for (const aim of aims) {
    for await (const candidate of search.best(aim)) {
      if (aim === 'cheapest' && candidate.cents === Infinity) break;
      const key = JSON.stringify(candidate.plan);
      const confirmed = audits.get(key) ?? (await audited(candidate.plan));
      audits.set(key, confirmed);
      if (!keeps(confirmed, wish, bench)) continue;
      const before = found.get(key);
      found.set(key, {
        aims: [...(before?.aims ?? []), aim],
        edit: candidate.edit,
        plan: candidate.plan,
        audit: confirmed,
        reason: reasonOf(planned, confirmed, candidate.edit, wish),
      });
      break;
    }
  }
  return {
    wish,
    planned,
    found: [...found.values()],
    tried: {
      space: spaceInWords(plan, bench.shelf),
      candidates: space.builds.reduce((sum, build) => sum + boardOptions(build.plan).length, 0),
      builds: space.builds.length,
      refused: space.refused,
      examined: search.examined,
      audited: audits.size,
      in_the_way: [...search.inTheWay]
        .map(([rule, builds]) => ({ rule, builds }))
        .sort((a, b) => b.builds - a.builds || (a.rule < b.rule ? -1 : 1)),
    },
  };
}
