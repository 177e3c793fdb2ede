import { withMeasured } from '../bench-sheet/judge-sheet.js';
import type { Audit } from '../report/audit-view.js';
import { benchOf } from './audit-bench.js';
import { auditOne } from './audit-one.js';
import { exitCode } from './exit.js';
import { loadMeasured } from './measured.js';
import type { AuditOptions } from './option-types.js';
import type { PlanFiles } from './plans.js';
import { expectShortWork } from './short-work.js';
import { complain } from './terminal.js';
import { writeReport } from './write-report.js';

/** What more an audit can be: of a class, with boards in hand, a workshop or a bench sheet, as a page of HTML. */
export async function runMore(named: readonly string[], asked: PlanFiles, options: AuditOptions): Promise<number> {
  if (asked.several || options.format === 'csv') return (await import('./class-run.js')).runClass(named, asked, options);
  expectShortWork();
  const bench = await benchOf(named, options);
  const [file] = asked.files;
  if (bench === null || file === undefined) return exitCode.error;
  return auditOne(file, bench, options, { readings: async () => readingsOf(options.measured), write: writeReport });
}

/**
 * Holds an audit against a bench sheet, or leaves it as it is when none is named; null after complaining about one that
 * cannot be read.
 */
function readingsOf(file: string | undefined): ((audit: Audit) => Audit) | null {
  if (file === undefined) return (audit) => audit;
  const sheet = loadMeasured(file);
  complain(sheet.ok ? sheet.warnings : sheet.problems);
  return sheet.ok ? (audit) => withMeasured(audit, sheet.value) : null;
}
