import { userText } from '../report/clean-text.js';
import type { UnitSystem } from '../base/names.js';
import { findFact } from '../facts/find-fact.js';
import type { Finding, Verdict } from '../findings/finding.js';
import { sortFindings } from '../findings/summary.js';
import type { Audit } from '../report/audit-view.js';
import { choicesOf, figuresOf, type Choices } from './choices.js';
import { marksOf, pointsOf, type Marks, type PointsEarned } from './marks.js';

/** What one rule found wrong in one plan: its gravest finding stands for all of that rule. */
export interface RowFinding {
  readonly rule: string;
  readonly title: string;
  readonly verdict: Exclude<Verdict, 'clear'>;
  readonly say: string;
  readonly do: readonly string[];
}

/** A file that was named or stands in a folder that was named. */
export interface FileOfClass {
  /** Its place among all files, counted from 1: what it goes by where names are hidden, and in narrow columns. */
  readonly no: number;
  /** File as the user named it; its number where names are hidden. */
  readonly file: string;
}

/** What is kept of one audit for a page about many: a few hundred bytes instead of the whole. */
export interface ClassRow extends FileOfClass {
  /** Where the plan's own page stands, seen from the class page; null when none was written. */
  readonly page: string | null;
  readonly name: string;
  readonly student: string | null;
  readonly count: number;
  readonly units: UnitSystem;
  readonly verdict: Verdict;
  /** Chance 0..1 that a corner stands further off the wall than the limit; null when unknown. */
  readonly lift_chance: number | null;
  /** Cost of everything for all frames of the plan, in the shelf's currency; null when unknown. */
  readonly cost: number | null;
  /** Everything that is not clear, gravest first, one for each rule. */
  readonly findings: readonly RowFinding[];
  /** What every rule that spoke made of it. */
  readonly marks: Marks;
  /** Null where the ruleset gives no points. */
  readonly points: PointsEarned | null;
  readonly choices: Choices;
  readonly figures: readonly (number | null)[];
}

/** A file that gave no plan, so that nobody disappears. */
export interface NotRead extends FileOfClass {
  /** Where the page stands that says so; null when none was written. */
  readonly page: string | null;
  /** `not-read`: it may have been meant as a plan. `beside`: it is something else, and nothing is missing. */
  readonly kind: 'not-read' | 'beside';
  /** What was found, in a sentence. */
  readonly why: string;
}

/** How a plan of a class is called and where its page stands. */
export interface RowPlace extends FileOfClass {
  readonly page: string | null;
  readonly points: ReadonlyMap<string, number>;
}

/** The row of one audit. */
export function classRow(audit: Audit, { no, file, page, points }: RowPlace): ClassRow {
  const marks = marksOf(audit.findings, audit.plan.units, userText(audit.shelf.currency, 8));
  return {
    no,
    file,
    page,
    name: audit.plan.name,
    student: audit.plan.student,
    count: audit.plan.count,
    units: audit.plan.units,
    verdict: audit.verdict,
    lift_chance: findFact(audit.facts, 'warp.corner_lift_chance', null),
    cost: findFact(audit.facts, 'cutting.total_cost', null),
    findings: gravestOfEachRule(audit.findings),
    marks,
    points: pointsOf(marks, points),
    choices: choicesOf(audit),
    figures: figuresOf(audit),
  };
}

function gravestOfEachRule(findings: readonly Finding[]): RowFinding[] {
  const kept = new Map<string, RowFinding>();
  for (const { rule, title, verdict, say, do: next } of sortFindings(findings))
    if (verdict !== 'clear' && !kept.has(rule)) kept.set(rule, { rule, title, verdict, say, do: next });
  return [...kept.values()];
}
