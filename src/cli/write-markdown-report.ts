import { join } from 'node:path';
import type { Audit } from '../report/audit-view.js';
import { composeReport } from '../report/compose.js';
import { writeMarkdown } from '../report/markdown.js';
import type { AuditOptions } from './option-types.js';
import { writeFolder } from './write-files.js';

/** Writes the report of one audit and its pictures into a folder; resolves to the name of the written page. */
export async function writeMarkdownReport(
  audit: Audit,
  folder: string,
  { overwrite }: Pick<AuditOptions, 'overwrite'>,
): Promise<string> {
  const { tree, pictures } = composeReport(audit);
  writeFolder(
    folder,
    [{ name: 'report.md', text: writeMarkdown(tree) }, ...pictures.map(({ name, svg }) => ({ name, text: svg }))],
    { overwrite },
  );
  return join(folder, 'report.md');
}
