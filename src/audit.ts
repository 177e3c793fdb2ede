import { lazily } from './base/lazily.js';
import { factSettings, type Bench } from './bench.js';
import { factInput, factsOfPlan } from './facts/fact-source.js';
import { sortFindings, worstVerdict } from './findings/summary.js';
import { toolFindings } from './shop/tool-findings.js';
import { assumedJoints } from './model/assumed-joints.js';
import { buildModel } from './model/build-model.js';
import { leftOut } from './model/left-out.js';
import { solveModel } from './solve/solve-model.js';
import type { Model, Solution } from './model/model.js';
import type { Plan } from './plan/plan.js';
import { chanceByLuck, liftSum, sightingTable } from './place/sighting.js';
import { readPlanWith } from './plan/read-plan.js';
import type { Audit } from './report/audit-view.js';
import type { Result } from './base/problem.js';
import { appliedOf } from './rules/say/applied.js';
import { evaluateRules } from './rules/evaluate.js';
import { sheetsOf } from './sheets/sheets.js';
import { examinerFor } from './suggest/examine.js';
import { usualChanges, type TriedChange } from './suggest/first-aid.js';

export type { Bench } from './bench.js';

/** The text of a plan → the finished audit, or every problem in the plan with its place. Pure: no files, no clock. */
export async function auditText(text: string, file: string, bench: Bench): Promise<Result<Audit>> {
  const plan = readPlanWith(text, file, bench.shelf);
  if (!plan.ok) return plan;
  return { ok: true, value: await audit(plan.value, bench), warnings: plan.warnings };
}

/**
 * The pipeline: plan → model → solution → facts → findings → what a report may see. What no rule asks and nobody reads,
 * facts, bill and pages, is not worked out. `solve` may know the solutions of frames that were solved before.
 */
export async function audit(plan: Plan, bench: Bench, solve: (model: Model) => Solution = solveModel): Promise<Audit> {
  const model = buildModel(plan, bench.shelf);
  const solution = solve(model);
  const settings = factSettings(model, bench);
  const input = factInput(model, solution, settings, bench.shelf);
  const facts = factsOfPlan(input);
  const judged = await evaluateRules(bench.ruleset, facts, { units: plan.units, currency: model.shelf.currency });
  const findings =
    bench.tools === undefined
      ? judged.findings
      : sortFindings([...judged.findings, ...toolFindings(model, bench.tools)]);
  const tools = bench.tools === undefined ? {} : { tools: bench.tools };
  const read = { facts: () => facts.all(), cut: () => input.cut };
  return lazily(
    {
      ...read,
      supplies: () => input.bought,
      sheets: () => sheetsOf(lazily(read, { plan, model, solution, findings, settings, ...tools })),
      assumed: () => [...plan.assumed, ...assumedJoints(model)],
      left_out: () => leftOut(model),
    },
    {
      plan,
      shelf: model.shelf,
      model,
      solution,
      findings,
      verdict: worstVerdict(judged.findings.length === 0 ? [] : findings),
      silent: judged.silent,
      applied: appliedOf(bench.ruleset, bench.baseline ?? null),
      seed: bench.seed,
      samples: bench.samples,
      changes: [],
      settings,
      sources: bench.sources ?? [],
      ...tools,
    },
  );
}

/** Chances of a lifted corner below this need no sighting of more boards. */
const worth_sighting = 0.02;

/**
 * With what sighting boards at the shop would bring, for a plan whose boards nobody has measured yet and whose corners
 * may well lift.
 */
function withSighting(audited: Audit): Audit {
  const { model, solution, settings, plan } = audited;
  const sum = plan.boards.length > 0 ? null : liftSum({ model, solution, settings, copy: 1 });
  return sum === null || chanceByLuck(sum) < worth_sighting
    ? audited
    : { ...audited, sighting: sightingTable(sum, audited.seed) };
}

/** As sure as so many frames for each change: enough for its verdict; only the chance of a bowed bar is sampled. */
const samplesForChanges = 4000;

/** An audit with what the usual changes would do, each with what is needed to make it. */
export interface AuditWithChanges extends Audit {
  readonly changes: readonly TriedChange[];
}

/**
 * The same audit with what the usual changes would do, each found by auditing the changed plan; a plan that is clear
 * needs none.
 * `pause` is waited for before each: a page lets its other work in there, and gives up by throwing.
 */
export async function withChanges(
  audited: Audit,
  bench: Bench,
  pause: () => Promise<void> = async () => {},
): Promise<AuditWithChanges> {
  const told = withSighting(audited);
  if (audited.verdict === 'clear') return { ...told, changes: [] };
  const quick = { ...bench, samples: Math.min(bench.samples, samplesForChanges) };
  const examiner = examinerFor(quick, 'no-stop');
  examiner.frames.keep(audited.model, audited.solution);
  const tried = async (plan: Plan): Promise<Audit> => {
    await pause();
    return audit(plan, quick, (model) => examiner.frames.of(model));
  };
  return { ...told, changes: await usualChanges(audited, { audit: tried, examiner }) };
}
