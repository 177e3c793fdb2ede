import { stringify } from 'yaml';
import { factInput, factsOfPlan } from '../../src/facts/fact-source.js';
import type { JudgedFinding } from '../../src/bench-sheet/make-finding.js';
import type { Finding, Verdict } from '../../src/findings/finding.js';
import { buildModel } from '../../src/model/build-model.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { solveModel } from '../../src/solve/solve-model.js';
import type { Promised } from '../../src/bench-sheet/promised.js';
import type { Sheet } from '../../src/bench-sheet/sheet.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';

const shelf = shippedShelf();

/** A frame of the Gullmark Street Studio, promised with a corner-lift limit of 4 mm, 3 mm of bow, and no rule's finding unless given. */
export function promisedBy(changes: object = {}, findings: readonly JudgedFinding[] = []): Promised & { readonly verdict: Verdict } {
  const plan = { plan: 1, name: 'Gullmark Street trial', face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'strip-19x38', lay: 'edge' }, ...changes };
  const read = readPlanWith(stringify(plan), 'plan.yaml', shelf);
  if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
  const model = buildModel(read.value, shelf);
  const solution = solveModel(model);
  const settings = { corner_lift_limit_mm: 4, bar_bow_limit_mm: { top: 3, bottom: 3, left: 3, right: 3 }, seed: 1, samples: 2000 };
  return { plan: read.value, model, solution, facts: factsOfPlan(factInput(model, solution, settings, shelf)).all(), findings, settings, verdict: 'clear' };
}

export const nothing: Sheet = {
  plan: null, when: 'after-cloth', when_said: true, diagonals_mm: null, corner_lift_mm: null, lifted: null, winding_mm: null, bow_mm: {}, inward_bow_mm: {}, tap_Hz: null, push: null,
  weight_kg: null, moisture_pct: null, frame: null, student: null, boards: [], test_joints: [],
};

/** A finding by the end of its rule's id; throws when there is none. */
export function spoken(findings: readonly Finding[], rule: string, about?: string): Finding {
  const finding = findings.find((f) => f.rule === `measured/${rule}` && (about === undefined || f.about === about));
  if (finding === undefined) throw new Error(`nothing was said of ${rule}`);
  return finding;
}

/** A rule's own finding, for tests that need its limit. */
export const ruled = (fact: JudgedFinding['fact'], limit: number, about = 'frame', verdict: Verdict = 'clear'): JudgedFinding => ({
  rule: `studio/${fact}`, title: 'A rule', about, verdict, fact, actual: 0, limit, unit: 'mm', used: null, say: '', do: [], cautions: [], source: 'proposal',
});
