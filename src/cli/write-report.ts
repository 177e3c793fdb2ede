import { join } from 'node:path';
import type { Audit } from '../report/audit-view.js';
import { composeReport, reportTitle } from '../report/compose.js';
import type { AuditOptions } from './option-types.js';
import { writeFolder } from './write-files.js';
import { writeMarkdownReport } from './write-markdown-report.js';

/** Writes the report of one audit into a folder; resolves to the name of the written page. */
export async function writeReport(
  audit: Audit,
  folder: string,
  { format, overwrite }: Pick<AuditOptions, 'format' | 'overwrite'>,
): Promise<string> {
  if (format === 'md') return writeMarkdownReport(audit, folder, { overwrite });
  const { tree, pictures, first, sheet } = composeReport(audit);
  const { writeHtml } = await import('../report/html.js');
  const text = writeHtml(tree, pictures, { title: reportTitle(audit), lang: 'en', first, sheet });
  writeFolder(folder, [{ name: 'report.html', text }], { overwrite });
  return join(folder, 'report.html');
}
