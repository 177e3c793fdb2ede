import type { Verdict } from '../findings/finding.js';
import { sortFindings, worstVerdict } from '../findings/summary.js';
import { frameAsRead } from './frame-as-read.js';
import { judgeBows } from './judge-bows.js';
import { judgeDiagonals } from './judge-diagonals.js';
import { judgeLift } from './judge-lift.js';
import { judgeMaterial } from './judge-material.js';
import { judgePull } from './judge-pull.js';
import { findingOf, type JudgedFinding } from './make-finding.js';
import type { Measured } from './measured.js';
import { finite, type Promised } from './promised.js';
import { rescueOf } from './rescue.js';
import type { Sheet } from './sheet.js';

/** Holds the readings of a bench sheet against what the audit promised; pure. */
export function judgeSheet(promised: Promised, sheet: Sheet): Measured {
  const frame = frameAsRead(promised.model, promised.solution, sheet);
  const lift = judgeLift(promised, sheet, frame);
  const findings = [
    ...rightPlan(promised, sheet),
    ...judgeDiagonals(promised, sheet),
    ...lift.findings,
    ...judgeBows(promised, sheet, frame),
    ...judgePull(promised, sheet),
    ...judgeMaterial(promised, sheet),
  ];
  const limit_mm = finite(promised.settings.corner_lift_limit_mm);
  const { diagnosis } = lift;
  const rescue =
    diagnosis === null || limit_mm === null || Math.abs(diagnosis.lift_mm) <= limit_mm
      ? null
      : rescueOf(promised.model, promised.solution, sheet, diagnosis.lift_mm, frame.pull_share, limit_mm);
  return { sheet, pull: frame.pull, findings, diagnosis, rescue };
}

/**
 * The audit with its readings: their findings join the others, and the verdict is the worst of all, so a good reading
 * never clears anything.
 */
export function withMeasured<A extends Promised & { readonly verdict: Verdict }>(
  audit: A,
  sheet: Sheet,
): A & { readonly measured: Measured } {
  const measured = judgeSheet(audit, sheet);
  const findings = sortFindings([...audit.findings, ...measured.findings]);
  return { ...audit, findings, verdict: worstVerdict(findings), measured };
}

function rightPlan({ plan }: Promised, sheet: Sheet): readonly JudgedFinding[] {
  if (sheet.plan === null || sheet.plan === plan.name) return [];
  return [
    findingOf({
      rule: 'plan',
      verdict: 'caution',
      fact: '',
      actual: sheet.plan,
      limit: plan.name,
      unit: 'word',
      source: 'practice',
      say: `The sheet was filled in for “${sheet.plan}”, this plan is “${plan.name}”.`,
      do: ['Make sure that sheet and plan belong together.'],
    }),
  ];
}
