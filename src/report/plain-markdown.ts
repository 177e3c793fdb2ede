import type { List, ListItem, PhrasingContent, RootContent, Table, TableRow } from 'mdast';

/**
 * Text that reads the same escaped: no character that Markdown minds anywhere, none at its start or end that it minds
 * there. Most text of a report is such.
 */
export const isPlain = (text: string): boolean =>
  /^[^\0-/:-@[-`{-\u00a0][^\0-\x1f!#&*<>@[\\\]^_`{|}~\x7f]*$/u.test(text) &&
  !/ $|^\d+(?:\)|\.(?: |$))|w\.[-.\w]|:\//iu.test(text);

/** One text alone, or one text alone that is strong; null when it must be escaped, or when there is more. */
function line(children: readonly PhrasingContent[]): string | null {
  const [only] = children;
  if (only === undefined || children.length > 1) return null;
  if (only.type === 'text') return isPlain(only.value) ? only.value : null;
  if (only.type === 'image')
    return isPlain(only.alt ?? '') && /^[\w-]+\.svg$/u.test(only.url) ? `![${only.alt}](${only.url})` : null;
  return null;
}

/** All of them, or null when one is missing. */
const all = (lines: readonly (string | null)[]): readonly string[] | null =>
  lines.every((one) => one !== null) ? lines : null;

function item({ children }: ListItem): string | null {
  const [only] = children;
  return children.length === 1 && only?.type === 'paragraph' ? line(only.children) : null;
}

function list({ ordered, start, children }: List): string | null {
  const items = all(children.map(item));
  return items?.map((words, i) => `${ordered === true ? `${(start ?? 1) + i}.` : '-'} ${words}`).join('\n') ?? null;
}

function row({ children }: TableRow): string | null {
  const cells = all(children.map((cell) => (cell.children.length === 0 ? '' : line(cell.children))));
  return cells && `${cells.map((words) => (words === '' ? '| ' : `| ${words} `)).join('')}|`;
}

function table({ align, children }: Table): string | null {
  const rows = all(children.map(row));
  if (rows === null) return null;
  const marks = (align ?? []).map((one) => (one === 'right' ? '-:' : '-'));
  return [rows[0], `| ${marks.join(' | ')} |`, ...rows.slice(1)].join('\n');
}

/**
 * A block of a report as Markdown when all its texts are such as need no escaping, which most are; else null: then the
 * library, which asks fifty patterns of each text, has to write it. What is written here is what it would write.
 */
export function plainMarkdown(block: RootContent): string | null {
  switch (block.type) {
    case 'heading': {
      const words = line(block.children);
      return words && `${'#'.repeat(block.depth)} ${words}`;
    }
    case 'paragraph':
      return line(block.children);
    case 'list':
      return list(block);
    case 'table':
      return table(block);
    default:
      return null;
  }
}
