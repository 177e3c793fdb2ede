import { join } from 'node:path';
import type { Problem } from '../base/problem.js';
import type { ClassFindings } from '../class/class-findings.js';
import { composePackInParts } from '../class/class-pack.js';
import { composeClassPage } from '../class/class-page.js';
import type { NotRead } from '../class/class-row.js';
import { composeNotReadPage } from '../class/not-read-page.js';
import type { Report } from '../report/compose.js';
import { writeMarkdown } from '../report/markdown.js';
import { unpacked, type KeptSheet } from './kept-sheet.js';
import { writeFolder } from './write-files.js';

/** How a page is written, and whether over what somebody else wrote. */
export interface PageOptions {
  readonly format: 'md' | 'html';
  readonly overwrite: boolean;
}

/** Writes the page about all plans; resolves to its name. */
export const writeClassPage = (found: ClassFindings, out: string, options: PageOptions): Promise<string> =>
  writePage(composeClassPage(found), out, 'class', options, 'The class at a glance');

/** Writes the one file to print for all; resolves to its name. */
export async function writePack(
  found: ClassFindings,
  sheets: readonly KeptSheet[],
  out: string,
  overwrite: boolean,
): Promise<string> {
  const { parts, pictures } = composePackInParts(found, () => unpacked(sheets));
  const { htmlByParts } = await import('../report/html-by-parts.js');
  const title = { title: 'Class pack', lang: 'en', layout: 'pack' } as const;
  const text = htmlByParts(() => parts(unpacked(sheets)), pictures, title);
  writeFolder(out, [{ name: 'class-pack.html', text }], { overwrite });
  return join(out, 'class-pack.html');
}

/** Writes the page that says a file could not be read, where its report would stand; resolves to its name. */
export const writeNotRead = (
  other: NotRead,
  problems: readonly Problem[],
  folder: string,
  options: PageOptions,
): Promise<string> => writePage(composeNotReadPage(other, problems), folder, 'report', options, 'Not read');

async function writePage(
  { tree, pictures }: Report,
  out: string,
  name: string,
  { format, overwrite }: PageOptions,
  title: string,
): Promise<string> {
  if (format === 'md') {
    writeFolder(
      out,
      [
        { name: `${name}.md`, text: writeMarkdown(tree) },
        ...pictures.map((picture) => ({ name: picture.name, text: picture.svg })),
      ],
      { overwrite },
    );
    return join(out, `${name}.md`);
  }
  const { writeHtml } = await import('../report/html.js');
  writeFolder(
    out,
    [{ name: `${name}.html`, text: writeHtml(tree, pictures, { title, lang: 'en', layout: 'table' }) }],
    { overwrite },
  );
  return join(out, `${name}.html`);
}
