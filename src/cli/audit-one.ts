import { join } from 'node:path';
import { auditText, withChanges, type Bench } from '../audit.js';
import type { Audit } from '../report/audit-view.js';
import { writeJson } from '../report/json.js';
import { codeOf, exitCode } from './exit.js';
import type { AuditOptions } from './option-types.js';
import { planName } from './plans.js';
import { readText } from './read-text.js';
import { complain, printJson, tellPainted, tones } from './terminal.js';
import { reasonLines, verdictLine } from './verdict-lines.js';

/** How an audit becomes what was asked for. */
export interface Making {
  /** Holds an audit against what was read at the bench; null after complaining about a sheet that cannot be read. */
  readonly readings: () => Promise<((audit: Audit) => Audit) | null>;
  /** Writes the report into a folder; resolves to the name of the page. */
  readonly write: (audit: Audit, folder: string, options: AuditOptions) => Promise<string>;
}

/** Audits one plan and writes its report, or prints its numbers; resolves to the exit code. */
export async function auditOne(
  file: string,
  bench: Bench,
  options: AuditOptions,
  { readings, write }: Making,
): Promise<number> {
  const read = readText(file);
  if ('problem' in read) {
    complain([read.problem]);
    return exitCode.error;
  }
  const result = await auditText(read.text, file, bench);
  complain(result.ok ? result.warnings : result.problems);
  const withReadings = await readings();
  if (!result.ok || withReadings === null) return exitCode.error;
  const audit = withReadings(result.value);
  if (options.format === 'json') printJson(writeJson(audit));
  else {
    const folder = options.out ?? join('reports', planName(file));
    const whole = withReadings(await withChanges(result.value, bench));
    const written = await write(whole, folder, options);
    tellPainted([[tones[whole.verdict], verdictLine(whole)], `  →  ${written}`]);
    for (const line of reasonLines(whole, file)) tellPainted(line);
  }
  return codeOf(audit.verdict, options.strict);
}
