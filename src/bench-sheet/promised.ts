import type { About } from '../base/names.js';
import type { Fact, FactPath } from '../facts/fact.js';
import { findFact } from '../facts/find-fact.js';
import type { FactSettings, Model, Solution } from '../model/model.js';
import type { Plan } from '../plan/plan.js';
import type { JudgedFinding } from './make-finding.js';

/** What an audit promised of the frame, as far as readings are held against it. */
export interface Promised {
  readonly plan: Plan;
  readonly model: Model;
  readonly solution: Solution;
  readonly facts: readonly Fact[];
  readonly findings: readonly JudgedFinding[];
  readonly settings: FactSettings;
}

/** A fact's number, finite, or null. */
export function factOf({ facts }: Promised, path: FactPath, about: About | null = null): number | null {
  return finite(findFact(facts, path, about));
}

/**
 * The limit that the ruleset set on a fact of an element, when it is a number; null when no rule spoke of it. Findings
 * of readings do not count.
 */
export function limitOn({ findings }: Promised, fact: FactPath, about: About | null = null): number | null {
  const finding = findings.find(
    (f) =>
      !f.rule.startsWith('measured/') &&
      f.fact === fact &&
      (about === null || f.about === about) &&
      typeof f.limit === 'number',
  );
  return finite(finding === undefined ? null : (finding.limit as number));
}

/** The number itself when it is one that can be compared; else null, so that nothing passes by being no number. */
export const finite = (value: number | null | undefined): number | null =>
  value !== null && value !== undefined && Number.isFinite(value) ? value : null;
