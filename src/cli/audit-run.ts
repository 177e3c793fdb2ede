import { join } from 'node:path';
import { auditText, withChanges, type Bench } from '../audit.js';
import type { Audit } from '../report/audit-view.js';
import { writeJson } from '../report/json.js';
import type { AuditOptions } from './option-types.js';
import { benchOf } from './audit-bench.js';
import { codeOf, exitCode } from './exit.js';
import { readText } from './read-text.js';
import { planFiles, planName } from './plans.js';
import { expectShortWork } from './short-work.js';
import { complain, printJson, tellPainted, tones } from './terminal.js';
import { reasonLines, verdictLine } from './verdict-lines.js';
import { writeReport } from './write-report.js';

/** Audits what was named and writes or prints what was asked for; resolves to the exit code. */
export async function runAudit(named: readonly string[], options: AuditOptions): Promise<number> {
  const asked = planFiles(named);
  // Before anything is said: the program for one audit lets the whole one do this from the start.
  if (asked.several || options.format === 'csv') return (await import('./class-run.js')).runClass(named, asked, options);
  expectShortWork();
  const bench = await benchOf(named, options);
  const [file] = asked.files;
  return bench === null || file === undefined ? exitCode.error : runOne(file, bench, options);
}

async function runOne(file: string, bench: Bench, options: AuditOptions): Promise<number> {
  const read = readText(file);
  if ('problem' in read) {
    complain([read.problem]);
    return exitCode.error;
  }
  const result = await auditText(read.text, file, bench);
  complain(result.ok ? result.warnings : result.problems);
  const withReadings = await readingsOf(options.measured);
  if (!result.ok || withReadings === null) return exitCode.error;
  const audit = withReadings(result.value);
  if (options.format === 'json') printJson(writeJson(audit));
  else {
    const folder = options.out ?? join('reports', planName(file));
    const whole = withReadings(await withChanges(result.value, bench));
    const written = await writeReport(whole, folder, options);
    tellPainted([[tones[whole.verdict], verdictLine(whole)], `  →  ${written}`]);
    for (const line of reasonLines(whole, file)) tellPainted(line);
  }
  return codeOf(audit.verdict, options.strict);
}

/**
 * Holds an audit against a bench sheet, or leaves it as it is when none is named; null after complaining about one that
 * cannot be read.
 */
async function readingsOf(file: string | undefined): Promise<((audit: Audit) => Audit) | null> {
  if (file === undefined) return (audit) => audit;
  const [{ loadMeasured }, { withMeasured }] = await Promise.all([
    import('./measured.js'),
    import('../bench-sheet/judge-sheet.js'),
  ]);
  const sheet = loadMeasured(file);
  complain(sheet.ok ? sheet.warnings : sheet.problems);
  return sheet.ok ? (audit) => withMeasured(audit, sheet.value) : null;
}
