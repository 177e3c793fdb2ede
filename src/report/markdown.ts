import type { Nodes, Root, RootContent, Text } from 'mdast';
import { gfmToMarkdown } from 'mdast-util-gfm';
import { defaultHandlers, toMarkdown, type Handle } from 'mdast-util-to-markdown';
import { madeBy } from './made-by.js';
import { isPlain, plainMarkdown } from './plain-markdown.js';

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

/** The same tree with nothing in it that a viewer would link; a part without such is the very part that was given. */
function withoutLinks<T extends Nodes>(node: T): T {
  if (node.type === 'text') return /:\/\/|www\.|@/iu.test(node.value) ? { ...node, value: unlinked(node.value) } : node;
  if (!('children' in node)) return node;
  const children = node.children.map((child) => withoutLinks(child));
  return children.every((child, i) => child === node.children[i]) ? node : { ...node, children };
}

/** The library's own writer of text, but for text that it would leave as it is. */
const text: Handle = (node: Text, parent, state, info) =>
  isPlain(node.value) ? node.value : defaultHandlers.text(node, parent, state, info);

const byLibrary = (blocks: readonly RootContent[]): string =>
  toMarkdown(
    { type: 'root', children: [...blocks] },
    {
      bullet: '-',
      emphasis: '_',
      strong: '*',
      rule: '-',
      listItemIndent: 'one',
      handlers: { text },
      extensions: [gfmToMarkdown({ tablePipeAlign: false, tableCellPadding: true })],
    },
  ).trimEnd();

/**
 * The report as GitHub-flavoured Markdown: tables unpadded, one blank line between blocks, a newline at the end.
 * All escaping of text happens here and in the library behind it, which writes every block that needs any.
 */
export function writeMarkdown(root: Root): string {
  const blocks = withoutLinks(root).children;
  // How a list is written hangs on the list beside it.
  const beside = (i: number): boolean =>
    blocks[i]?.type === 'list' && [i - 1, i + 1].some((j) => blocks[j]?.type === 'list');
  const written: string[] = [];
  let waiting: RootContent[] = [];
  const flush = (): void => {
    if (waiting.length > 0) written.push(byLibrary(waiting));
    waiting = [];
  };
  for (const [i, block] of blocks.entries()) {
    const plain = beside(i) ? null : plainMarkdown(block);
    if (plain === null) waiting.push(block);
    else {
      flush();
      written.push(plain);
    }
  }
  flush();
  return `${written.join('\n\n')}\n\n<!-- ${madeBy} -->\n`;
}
