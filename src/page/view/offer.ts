import type { FileShape } from '../../index.js';
import { nodesAt, wordsFor } from '../controls/schema.js';
import type { CompletionContext, CompletionResult } from 'prism-code-editor/autocomplete';

/** What can be offered in a file. */
export interface Offered {
  /** What the kind of file may say. */
  readonly shape: FileShape;
  /** Keys of a part of the shelf. */
  readonly keys: (section: string) => readonly string[];
}

/** Keys of the block one stands in, or what a key may be, from what its kind of file may say. */
export function offer(
  { before, lineBefore, pos, explicit }: Pick<CompletionContext, 'before' | 'lineBefore' | 'pos' | 'explicit'>,
  { shape, keys }: Offered,
): CompletionResult | null {
  const path = placeOf(before);
  if (path === null) return null;
  const nodes = nodesAt(shape, path);
  const value = /:\s+([^\s{},[\]#]*)$/u.exec(lineBefore);
  if (value !== null) {
    const words = [...new Set(nodes.flatMap((node) => wordsFor(node, keys)))];
    return words.length === 0
      ? null
      : { from: pos - (value[1] ?? '').length, options: words.map((label) => ({ label, icon: 'enum' })) };
  }
  const word = /(?:^|[\s{,-])([a-zA-Z-]*)$/u.exec(lineBefore);
  if (word === null || /#/u.test(lineBefore) || (word[1] === '' && !explicit)) return null;
  const next = [
    ...new Set(
      [...nodes, ...nodesAt(shape, [...path, '*'])].flatMap(({ properties }) => Object.keys(properties ?? {})),
    ),
  ];
  return next.length === 0
    ? null
    : {
        from: pos - (word[1] ?? '').length,
        options: next.map((label) => ({ label, insert: `${label}: `, icon: 'property' })),
      };
}

/**
 * The way into the file at the end of a text, told from indents and braces; `*` stands for an entry of a list. Null
 * inside a comment or a quoted text.
 */
export function placeOf(before: string): readonly string[] | null {
  const lines = before.split('\n');
  const last = lines.at(-1) as string;
  if (/(?:^|\s)#/u.test(last)) return null;
  const stack: { readonly indent: number; readonly key: string }[] = [];
  for (const [i, line] of lines.entries()) {
    const found = /^(\s*)(- +)?(?:([\w-]+):)?/u.exec(line);
    if (found === null || (line.trim() === '' && i < lines.length - 1) || line.trim().startsWith('#')) continue;
    const [, space = '', dash = '', key] = found;
    const open = (indent: number): void => {
      while ((stack.at(-1)?.indent ?? -1) >= indent) stack.pop();
    };
    open(space.length);
    if (dash !== '' || /^\s*-\s*$/u.test(line)) stack.push({ indent: space.length, key: '*' });
    if (key !== undefined) {
      open(space.length + dash.length);
      stack.push({ indent: space.length + dash.length, key });
    }
  }
  return [...stack.map(({ key }) => key), ...inBraces(last)];
}

/** The keys opened by braces that are still open at the end of a line, and the key whose value is being written. */
function inBraces(line: string): readonly string[] {
  const open: string[] = [];
  const first = line.indexOf('{');
  if (first < 0) return [];
  let key = '';
  for (const [, name, sign] of line.slice(first + 1).matchAll(/([\w-]+):|([{},])/gu)) {
    if (name !== undefined) key = name;
    else if (sign === '{') {
      open.push(key);
      key = '';
    } else if (sign === '}') {
      open.pop();
      key = '';
    } else key = '';
  }
  return key === '' ? open : [...open, key];
}
