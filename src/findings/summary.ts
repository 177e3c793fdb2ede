import { remembered } from '../base/remembered.js';
import { verdicts, type Finding, type Verdict } from './finding.js';

const gravity = new Map<Verdict, number>(verdicts.map((verdict, rank) => [verdict, rank]));

/** The gravest of two verdicts comes last: negative when `a` is less grave than `b`. */
export function compareGravity(a: Verdict, b: Verdict): number {
  return gravity.get(a)! - gravity.get(b)!;
}

/**
 * The gravest verdict, in the order clear < caution < unknown < stop; `unknown` when nothing was asked: no rule has
 * cleared anything.
 */
export function worstVerdict(findings: readonly Finding[]): Verdict {
  if (findings.length === 0) return 'unknown';
  return findings.reduce<Verdict>(
    (worst, { verdict }) => (compareGravity(verdict, worst) > 0 ? verdict : worst),
    'clear',
  );
}

/** How many findings there are of each verdict. */
export function countVerdicts(findings: readonly Finding[]): Readonly<Record<Verdict, number>> {
  const counts = { clear: 0, caution: 0, unknown: 0, stop: 0 };
  for (const { verdict } of findings) counts[verdict] += 1;
  return counts;
}

/** How much of the limit is used, to compare: like elements of a symmetric frame differ in the rounding alone. */
const usedUp = ({ used }: Finding): number => (used === null ? -1 : Number(used.toPrecision(9)));

/**
 * Findings for the report: gravest first, then by how much of the limit is used, then by rule and element. The order
 * never depends on the input's. Sorted once for each list.
 */
export const sortFindings = remembered((findings: readonly Finding[]): readonly Finding[] =>
  findings
    .map((finding) => ({ finding, used: usedUp(finding) }))
    .sort(
      ({ finding: a, used }, { finding: b, used: other }) =>
        compareGravity(b.verdict, a.verdict) ||
        other - used ||
        alphabetical(a.rule, b.rule) ||
        alphabetical(a.about, b.about),
    )
    .map(({ finding }) => finding),
) as <F extends Finding>(findings: readonly F[]) => readonly F[];

/**
 * Findings of one rule folded into one, as a report lists them: the gravest stands for all, with every element it
 * speaks for.
 */
export interface FoldedFinding {
  readonly finding: Finding;
  readonly abouts: readonly string[];
}

/** Folds findings that share rule and verdict; within each fold the one that uses most of its limit comes first. */
export function foldFindings(findings: readonly Finding[]): readonly FoldedFinding[] {
  const folds = new Map<string, Finding[]>();
  for (const finding of sortFindings(findings)) {
    const key = `${finding.rule} ${finding.verdict}`;
    const fold = folds.get(key);
    if (fold === undefined) folds.set(key, [finding]);
    else fold.push(finding);
  }
  return [...folds.values()].map((fold) => ({ finding: fold[0]!, abouts: fold.map(({ about }) => about) }));
}

/** By code units, so that the order is the same on every machine. */
function alphabetical(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
