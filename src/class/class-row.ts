import type { UnitSystem } from '../base/names.js';
import { findFact } from '../facts/find-fact.js';
import type { Finding, Verdict } from '../findings/finding.js';
import { sortFindings } from '../findings/summary.js';
import type { Audit } from '../report/audit-view.js';

/** What one rule found wrong in one plan: its gravest finding stands for all of that rule. */
export interface RowFinding {
  readonly rule: string;
  readonly verdict: Exclude<Verdict, 'clear'>;
  readonly say: string;
  readonly do: readonly string[];
}

/** What is kept of one audit for a page about many: a few hundred bytes instead of the whole. */
export interface ClassRow {
  /** File as the user named it. */
  readonly file: string;
  /** Where the plan's own page stands, seen from the class page; null when none was written. */
  readonly page: string | null;
  readonly name: string;
  readonly count: number;
  readonly units: UnitSystem;
  readonly verdict: Verdict;
  /** Chance 0..1 that a corner stands further off the wall than the limit; null when unknown. */
  readonly lift_chance: number | null;
  /** Cost of everything for all frames of the plan, in the shelf's currency; null when unknown. */
  readonly cost: number | null;
  /** Everything that is not clear, gravest first, one for each rule. */
  readonly findings: readonly RowFinding[];
}

/** The row of one audit. */
export function classRow(audit: Audit, file: string, page: string | null): ClassRow {
  return {
    file,
    page,
    name: audit.plan.name,
    count: audit.plan.count,
    units: audit.plan.units,
    verdict: audit.verdict,
    lift_chance: findFact(audit.facts, 'warp.corner_lift_chance', null),
    cost: findFact(audit.facts, 'cutting.total_cost', null),
    findings: gravestOfEachRule(audit.findings),
  };
}

function gravestOfEachRule(findings: readonly Finding[]): RowFinding[] {
  const kept = new Map<string, RowFinding>();
  for (const { rule, verdict, say, do: next } of sortFindings(findings))
    if (verdict !== 'clear' && !kept.has(rule)) kept.set(rule, { rule, verdict, say, do: next });
  return [...kept.values()];
}
