import type { Nodes, Root } from 'mdast';
import { gfmToMarkdown } from 'mdast-util-gfm';
import { toMarkdown } from 'mdast-util-to-markdown';
import { madeBy } from './made-by.js';

/** Joins without showing: it stands where a viewer would otherwise make an address into a link. */
const joiner = '\u2060';

/** Some viewers link bare addresses and names even where the file escapes them, so the joiner goes inside: `www.`, `://`, `@`. */
const unlinked = (text: string): string => text.replace(/:(?=\/\/)/gu, `:${joiner}`).replace(/(www)(?=\.)/giu, `$1${joiner}`).replace(/@(?=[\w-])/gu, `@${joiner}`);

function withoutLinks<T extends Nodes>(node: T): T {
  if (node.type === 'text') return { ...node, value: unlinked(node.value) };
  return 'children' in node ? { ...node, children: node.children.map((child) => withoutLinks(child)) } : node;
}

/**
 * The report as GitHub-flavoured Markdown: tables unpadded, one blank line between blocks, a newline at the end.
 * All escaping of text happens here and in the library behind it.
 */
export function writeMarkdown(root: Root): string {
  const text = toMarkdown(withoutLinks(root), { bullet: '-', emphasis: '_', strong: '*', rule: '-', listItemIndent: 'one', extensions: [gfmToMarkdown({ tablePipeAlign: false, tableCellPadding: true })] });
  return `${text}\n<!-- ${madeBy} -->\n`;
}
