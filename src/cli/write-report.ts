import { join } from 'node:path';
import type { Audit } from '../report/audit-view.js';
import { composeReport, reportTitle } from '../report/compose.js';
import { writeMarkdown } from '../report/markdown.js';
import type { AuditOptions } from './option-types.js';
import { writeFolder } from './write-files.js';

/** Writes the report of one audit into a folder; resolves to the name of the written page. */
export async function writeReport(
  audit: Audit,
  folder: string,
  { format, overwrite }: Pick<AuditOptions, 'format' | 'overwrite'>,
): Promise<string> {
  const report = composeReport(audit);
  const { tree, pictures } = report;
  if (format === 'md') {
    writeFolder(
      folder,
      [{ name: 'report.md', text: writeMarkdown(tree) }, ...pictures.map(({ name, svg }) => ({ name, text: svg }))],
      { overwrite },
    );
    return join(folder, 'report.md');
  }
  const { writeHtml } = await import('../report/html.js');
  writeFolder(
    folder,
    [
      {
        name: 'report.html',
        text: writeHtml(tree, pictures, {
          title: reportTitle(audit),
          lang: 'en',
          first: report.first,
          sheet: report.sheet,
        }),
      },
    ],
    { overwrite },
  );
  return join(folder, 'report.html');
}
