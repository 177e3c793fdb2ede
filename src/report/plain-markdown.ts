import type { Link, List, ListItem, PhrasingContent, RootContent, Table, TableRow } from 'mdast';

/** No character that Markdown minds anywhere, nor what some viewers make a link of. */
const isHarmless = (text: string): boolean =>
  /^[^\0-\x1f!#&*<>@[\\\]^_`{|}~\x7f]*$/u.test(text) && !/w\.[-.\w]|:\//iu.test(text);
/** Nothing that Markdown minds at the start of a line, such as a list's mark or `12.`. */
const startsLine = (text: string): boolean =>
  /^[^\0-'*-\-/:-@[-`{-\u00a0]/u.test(text) && !/^\d+(?:\)|\.(?: |$))/u.test(text);

/** Text that reads the same escaped, on a line of its own. Most text of a report is such. */
export const isPlain = (text: string): boolean => startsLine(text) && !text.endsWith(' ') && isHarmless(text);

/** Strong words whose marks nothing beside them can spoil; null where that is not plain to see. */
function emphasised(words: string, before: string, after: string): string | null {
  const inside = isHarmless(words) && /^[A-Za-z\d●▲◆✕](?:.*[A-Za-z\d.:])?$/u.test(words);
  return inside && before.endsWith(' ') && /^[ ,.;:]/u.test(after) ? `**${words}**` : null;
}

/** Words that lead to another part of the report. */
function linked({ url, children }: Link): string | null {
  const [inside] = children;
  return children.length === 1 && inside?.type === 'text' && isHarmless(inside.value) && /^#[\w-]+$/u.test(url)
    ? `[${inside.value}](${url})`
    : null;
}

/** Texts, strong words and links among them, or a picture alone; null when something must be escaped or is another. */
function line(children: readonly PhrasingContent[]): string | null {
  const [only] = children;
  if (children.length === 1 && only?.type === 'image')
    return isPlain(only.alt ?? '') && /^[\w-]+\.svg$/u.test(only.url) ? `![${only.alt}](${only.url})` : null;
  const texts = children.map((child) => (child.type === 'text' ? child.value : ''));
  let written = '';
  for (const [i, child] of children.entries()) {
    if (child.type === 'text') {
      if (!isHarmless(child.value) || (i === 0 && !startsLine(child.value))) return null;
      written += child.value;
    } else if (child.type === 'strong') {
      const [inside] = child.children;
      if (child.children.length > 1 || inside?.type !== 'text') return null;
      const strong = emphasised(inside.value, texts[i - 1] ?? ' ', texts[i + 1] ?? ' ');
      if (strong === null) return null;
      written += strong;
    } else if (child.type === 'link') {
      const link = linked(child);
      if (link === null) return null;
      written += link;
    } else return null;
  }
  return written === '' || written.endsWith(' ') ? null : written;
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
    case 'blockquote': {
      const [only] = block.children;
      const words = block.children.length === 1 && only?.type === 'paragraph' ? line(only.children) : null;
      return words && `> ${words}`;
    }
    case 'list':
      return list(block);
    case 'table':
      return table(block);
    default:
      return null;
  }
}
