import { formatProblem } from '../base/file-format.js';
import type { Problem, Result } from '../base/problem.js';
import { schemaProblems } from '../base/schema-problems.js';
import { inFileOrder, limitProblems, readYaml, type YamlSource } from '../base/yaml-document.js';
import type { Shelf } from '../shelf/shelf.js';
import { checkAlone } from './check-alone.js';
import { checkNames } from './check-names.js';
import { checkPlan } from './check-plan.js';
import { fillPlan } from './fill-plan.js';
import { withEntries } from './nominal.js';
import { planInputSchema } from './plan-schema.js';
import type { Plan } from './plan.js';
import { settlePlan } from './settle-plan.js';

type Read = { readonly plan: Plan | null; readonly source: YamlSource | null; readonly problems: readonly Problem[] };

function read(text: string, file: string): Read {
  const { source, problems } = readYaml(text, file);
  if (source === null) return { plan: null, source, problems };
  const wrongFormat = formatProblem(source, 'plan');
  if (wrongFormat !== null) return { plan: null, source: null, problems: [...problems, wrongFormat] };
  const checked = planInputSchema.safeParse(source.data);
  if (!checked.success)
    return {
      plan: null,
      source,
      problems: [...problems, ...schemaProblems(planInputSchema, checked.error.issues, source)],
    };
  const plan = fillPlan(checked.data);
  return { plan, source, problems: [...problems, ...checkAlone(plan, checked.data, source)] };
}

function finish(plan: Plan | null, problems: readonly Problem[]): Result<Plan> {
  if (plan === null || problems.some(({ severity }) => severity === 'error'))
    return { ok: false, problems: limitProblems(inFileOrder(problems)) };
  return { ok: true, value: plan, warnings: inFileOrder(problems) };
}

/**
 * Reads a plan by itself: every default filled in and listed under `assumed`, or every problem with its place. Never
 * throws on any text.
 * Names of stock, screws and so on are not looked up, and defaults that depend on the shelf are not settled: see
 * `readPlanWith`.
 */
export function readPlan(text: string, file: string): Result<Plan> {
  const { plan, problems } = read(text, file);
  return finish(plan, problems);
}

/**
 * Reads a plan against a shelf: as `readPlan`, with every name looked up, sizes checked against each other, and
 * shelf-dependent defaults settled.
 */
export function readPlanWith(text: string, file: string, shelf: Shelf): Result<Plan> {
  const { plan: written, source, problems } = read(text, file);
  const plan = written === null ? null : withEntries(written, shelf);
  const names = source === null ? [] : checkNames(source, shelf);
  if (plan === null || source === null) return finish(null, [...problems, ...names]);
  const settled = settlePlan(plan, shelf);
  return finish(settled, [...problems, ...names, ...checkPlan(settled, shelf, source)]);
}
