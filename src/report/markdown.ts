import type { Root } from 'mdast';
import { gfmToMarkdown } from 'mdast-util-gfm';
import { toMarkdown } from 'mdast-util-to-markdown';

/**
 * The report as GitHub-flavoured Markdown: tables unpadded, one blank line between blocks, a newline at the end.
 * All escaping of text happens here, in the library.
 */
export function writeMarkdown(root: Root): string {
  return toMarkdown(root, { bullet: '-', emphasis: '_', strong: '*', rule: '-', listItemIndent: 'one', extensions: [gfmToMarkdown({ tablePipeAlign: false, tableCellPadding: true })] });
}
