import { auditOne } from './audit-one.js';
import { loadBench } from './bench.js';
import { exitCode } from './exit.js';
import type { AuditOptions } from './option-types.js';
import { planFiles } from './plans.js';
import { expectShortWork } from './short-work.js';
import { writeMarkdownReport } from './write-markdown-report.js';

/** Audits what was named and writes or prints what was asked for; resolves to the exit code. */
export async function runAudit(named: readonly string[], options: AuditOptions): Promise<number> {
  const asked = planFiles(named);
  // Before anything is said: the program for one audit lets the whole one do this from the start.
  if (asked.several || asksForMore(options)) return (await import('./audit-more.js')).runMore(named, asked, options);
  expectShortWork();
  const bench = loadBench(options);
  const [file] = asked.files;
  if (bench === null || file === undefined) return exitCode.error;
  return auditOne(file, bench, options, { readings: async () => (audit) => audit, write: writeMarkdownReport });
}

/** Whether more is asked for than the report or the numbers of a plan, judged with shelf and rules. */
const asksForMore = ({ format, pile, shop, measured }: AuditOptions): boolean =>
  format === 'html' || format === 'csv' || [pile, shop, measured].some((file) => file !== undefined);
