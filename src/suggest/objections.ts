import { problemAt } from '../base/messages.js';
import type { Problem } from '../base/problem.js';
import { pathText, type YamlSource } from '../base/yaml-document.js';
import { checkAlone } from '../plan/check-alone.js';
import { checkPlan } from '../plan/check-plan.js';
import type { PlanInput } from '../plan/plan-schema.js';
import type { Plan } from '../plan/plan.js';
import type { Shelf } from '../shelf/shelf.js';

/** A plan that is not written down yet has no lines to point at. */
const unwritten: YamlSource = {
  file: '',
  data: {},
  place: (path) => ({ file: '', path: pathText(path), line: 0, column: 0 }),
  written: () => '',
  problem: (code, path, details) => problemAt(code, { file: '', path: pathText(path), line: 0, column: 0 }, details),
  warning: (code, path, details) =>
    problemAt(code, { file: '', path: pathText(path), line: 0, column: 0 }, details, 'warning'),
};

/** What the plan reader would say against a plan that was made by changing another: errors and warnings alike. */
export function objections(plan: Plan, shelf: Shelf): readonly Problem[] {
  return [...checkAlone(plan, {} as PlanInput, unwritten), ...checkPlan(plan, shelf, unwritten)];
}

/** Codes of the warnings that a plan already has: a change is not to blame for those. */
export const knownObjections = (plan: Plan, shelf: Shelf): ReadonlySet<string> =>
  new Set(objections(plan, shelf).map(({ code }) => code));

/** Whether the plan reader would have nothing new to say against a changed plan. */
export function readable(plan: Plan, shelf: Shelf, known: ReadonlySet<string>): boolean {
  return objections(plan, shelf).every(({ code, severity }) => severity === 'warning' && known.has(code));
}
