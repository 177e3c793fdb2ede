import type { Verdict } from '../../src/findings/finding.js';
import { verdicts } from '../../src/findings/finding.js';
import type { ClassRow, RowFinding } from '../../src/class/class-row.js';

/** A row made up for tests: a name, and what was found by rule. */
export function row(name: string, found: Readonly<Record<string, RowFinding['verdict']>>, cost: number | null = 10): ClassRow {
  const findings = Object.entries(found).map(([rule, verdict]): RowFinding => ({ rule, title: `Title of ${rule}`, verdict, say: `${rule} in ${name}.`, do: [`Mend ${rule}.`] }));
  findings.sort((a, b) => verdicts.indexOf(b.verdict) - verdicts.indexOf(a.verdict));
  const verdict: Verdict = findings[0]?.verdict ?? 'clear';
  const marks = new Map(findings.map(({ rule, verdict: given }) => [rule, { verdict: given, value: '3 mm' }]));
  return { no: 1, file: `${name}.yaml`, page: `${name}/report.md`, name, student: null, count: 1, units: 'metric', verdict, lift_chance: 0.05, cost, findings, marks, points: null, choices: new Map(), figures: [] };
}
