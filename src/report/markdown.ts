import type { Nodes, Root, Text } from 'mdast';
import { gfmToMarkdown } from 'mdast-util-gfm';
import { defaultHandlers, toMarkdown, type Handle } from 'mdast-util-to-markdown';
import { madeBy } from './made-by.js';

/** Joins without showing: it stands where a viewer would otherwise make an address into a link. */
const joiner = '\u2060';

/**
 * Some viewers link bare addresses and names even where the file escapes them, so the joiner goes inside: `www.`,
 * `://`, `@`.
 */
const unlinked = (text: string): string =>
  text
    .replace(/:(?=\/\/)/gu, `:${joiner}`)
    .replace(/(www)(?=\.)/giu, `$1${joiner}`)
    .replace(/@(?=[\w-])/gu, `@${joiner}`);

function withoutLinks<T extends Nodes>(node: T): T {
  if (node.type === 'text') return { ...node, value: unlinked(node.value) };
  return 'children' in node ? { ...node, children: node.children.map((child) => withoutLinks(child)) } : node;
}

/**
 * Text that reads the same escaped: no character that Markdown minds anywhere, none at its start or end that it minds
 * there. Most text of a report is such,
 * and asking the library's fifty patterns of each took a tenth of an audit.
 */
const isPlain = (text: string): boolean =>
  /^[A-Za-z\d][^\t\n\r!#&*/:<>@[\\\]^_`{|}~\u007f]*$/u.test(text) && !/ $|^\d+(?:\)|\.(?: |$))|w\.[-.\w]/iu.test(text);

/** The library's own writer of text, but for text that it would leave as it is. */
const text: Handle = (node: Text, parent, state, info) =>
  isPlain(node.value) ? node.value : defaultHandlers.text(node, parent, state, info);

/**
 * The report as GitHub-flavoured Markdown: tables unpadded, one blank line between blocks, a newline at the end.
 * All escaping of text happens here and in the library behind it.
 */
export function writeMarkdown(root: Root): string {
  const written = toMarkdown(withoutLinks(root), {
    bullet: '-',
    emphasis: '_',
    strong: '*',
    rule: '-',
    listItemIndent: 'one',
    handlers: { text },
    extensions: [gfmToMarkdown({ tablePipeAlign: false, tableCellPadding: true })],
  });
  return `${written}\n<!-- ${madeBy} -->\n`;
}
