import type { Verdict } from '../findings/finding.js';
import { compareGravity } from '../findings/summary.js';
import type { ClassRow, RowFinding } from './class-row.js';

/** One rule that several plans did not meet. */
export interface CommonFinding {
  readonly rule: string;
  /** How many plans it was found in, and with which verdicts. */
  readonly plans: number;
  readonly stops: number;
  readonly unknowns: number;
  readonly cautions: number;
  /** Positions of those plans among the rows, in order. */
  readonly rows: readonly number[];
  /** The gravest case, to say it in words. */
  readonly example: RowFinding;
  readonly example_row: number;
}

/** A class in figures. */
export interface RollUp {
  readonly plans: number;
  /** Files that could not be read. */
  readonly broken: number;
  /** Files that are something else than plans. */
  readonly beside: number;
  readonly verdicts: Readonly<Record<Verdict, number>>;
  /** Found in most plans first; of equals, the one with more stops, then by rule. */
  readonly common: readonly CommonFinding[];
  /** Sum over the plans whose cost is known, each bought alone; null when none is. */
  readonly cost_alone: number | null;
}

/** Adds up the rows of a class. The order of the rows decides nothing but the order in which plans are named. */
export function rollUp(rows: readonly ClassRow[], brokenFiles: number, besideFiles = 0): RollUp {
  const verdicts = { clear: 0, caution: 0, unknown: 0, stop: 0 };
  for (const { verdict } of rows) verdicts[verdict] += 1;
  const costs = rows.flatMap(({ cost }) => (cost === null ? [] : [cost]));
  return {
    plans: rows.length,
    broken: brokenFiles,
    beside: besideFiles,
    verdicts,
    common: commonFindings(rows),
    cost_alone: costs.length === 0 ? null : costs.reduce((sum, cost) => sum + cost, 0),
  };
}

function commonFindings(rows: readonly ClassRow[]): CommonFinding[] {
  const byRule = new Map<string, { row: number; finding: RowFinding }[]>();
  rows.forEach(({ findings }, row) => {
    for (const finding of findings) {
      const cases = byRule.get(finding.rule);
      if (cases === undefined) byRule.set(finding.rule, [{ row, finding }]);
      else cases.push({ row, finding });
    }
  });
  const common = [...byRule].map(([rule, cases]): CommonFinding => {
    const count = (verdict: Verdict): number => cases.filter(({ finding }) => finding.verdict === verdict).length;
    const worst = cases.reduce((best, one) =>
      compareGravity(one.finding.verdict, best.finding.verdict) > 0 ? one : best,
    );
    return {
      rule,
      plans: cases.length,
      stops: count('stop'),
      unknowns: count('unknown'),
      cautions: count('caution'),
      rows: cases.map(({ row }) => row),
      example: worst.finding,
      example_row: worst.row,
    };
  });
  return common.sort(
    (a, b) => b.plans - a.plans || b.stops - a.stops || b.unknowns - a.unknowns || (a.rule < b.rule ? -1 : 1),
  );
}
