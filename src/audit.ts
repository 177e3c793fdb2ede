import type { BarName } from './base/names.js';
import { cutPlan } from './cutting/cut-plan.js';
import { allFacts } from './facts/all-facts.js';
import { worstVerdict } from './findings/summary.js';
import { buildModel } from './model/build-model.js';
import { leftOut } from './model/left-out.js';
import type { FactSettings, Model } from './model/model.js';
import { solveModel } from './solve/solve-model.js';
import type { Plan } from './plan/plan.js';
import { readPlanWith } from './plan/read-plan.js';
import type { Audit, Change } from './report/audit-view.js';
import type { Result } from './base/problem.js';
import { evaluateRules } from './rules/evaluate.js';
import { limitValue } from './rules/limit-value.js';
import type { Ruleset } from './rules/ruleset.js';
import type { Shelf } from './shelf/shelf.js';
import { applyEdit } from './suggest/edit.js';
import { asChange, firstAid } from './suggest/first-aid.js';

/** What a plan is judged with. The seed and the number of samples make the sampling repeatable. */
export interface Bench {
  readonly shelf: Shelf;
  readonly ruleset: Ruleset;
  readonly seed: number;
  readonly samples: number;
}

/** The text of a plan → the finished audit, or every problem in the plan with its place. Pure: no files, no clock. */
export async function auditText(text: string, file: string, bench: Bench): Promise<Result<Audit>> {
  const plan = readPlanWith(text, file, bench.shelf);
  if (!plan.ok) return plan;
  return { ok: true, value: await audit(plan.value, bench), warnings: plan.warnings };
}

/** The pipeline: plan → model → solution → facts → findings → what a report may see. */
export async function audit(plan: Plan, bench: Bench): Promise<Audit> {
  const model = buildModel(plan, bench.shelf);
  const solution = solveModel(model);
  const cut = cutPlan([plan], bench.shelf);
  const chosen = settings(model, bench);
  const facts = allFacts(model, solution, cut, chosen);
  const judged = await evaluateRules(bench.ruleset, facts, { units: plan.units });
  return {
    plan,
    shelf: bench.shelf,
    model,
    solution,
    facts,
    findings: judged.findings,
    verdict: worstVerdict(judged.findings),
    silent: judged.silent,
    switched_off: bench.ruleset.off.map(({ id, reason }) => ({ rule: id, reason })),
    assumed: plan.assumed,
    left_out: leftOut(model),
    ruleset_name: bench.ruleset.name,
    seed: bench.seed,
    samples: bench.samples,
    changes: [],
    settings: chosen,
    cut,
  };
}

/** Frames sampled for each change: enough for its verdict; only the bow of bars is sampled, all else is exact. */
const samplesForChanges = 4000;

/** The same audit with what the usual changes would do, each found by auditing the changed plan; a plan that is clear needs none. */
export async function withChanges(audited: Audit, bench: Bench): Promise<Audit> {
  if (audited.verdict === 'clear') return audited;
  const quick = { ...bench, samples: Math.min(bench.samples, samplesForChanges) };
  const changes: Change[] = [];
  for (const edit of firstAid(audited)) changes.push(asChange(edit.words, await audit(applyEdit(audited.plan, edit), quick)));
  return { ...audited, changes };
}

/** The two limits that define a chance: they come from the ruleset and are needed before the facts exist. */
function settings(model: Model, { ruleset, seed, samples }: Bench): FactSettings {
  const { width_mm, height_mm } = model.plan.face;
  const shorter_mm = Math.min(width_mm, height_mm);
  const longer_mm = Math.max(width_mm, height_mm);
  const limit_mm = (name: string, span_mm: number): number => {
    const known: Readonly<Record<string, number>> = { 'frame.shorter_side_mm': shorter_mm, 'frame.longer_side_mm': longer_mm, 'bar.span_mm': span_mm };
    return limitValue(ruleset, name, (path) => known[path] ?? null)?.value ?? Number.NaN;
  };
  const bow_mm = (name: BarName): number => limit_mm('bar-bow', model.bars[name].span_mm);
  return {
    corner_lift_limit_mm: limit_mm('corner-lift', longer_mm),
    bar_bow_limit_mm: { top: bow_mm('top'), bottom: bow_mm('bottom'), left: bow_mm('left'), right: bow_mm('right') },
    seed,
    samples,
  };
}
