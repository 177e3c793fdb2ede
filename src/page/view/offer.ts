import type { Leaf } from '../controls/schema.js';
import type { CompletionContext, CompletionResult } from 'prism-code-editor/autocomplete';

/** What can be offered at a place in a plan. */
export interface Offered {
  readonly leaves: readonly Leaf[];
  /** Keys of a part of the shelf. */
  readonly keys: (section: string) => readonly string[];
}

/** Keys of the block one stands in, or what a key may be, from the schema of plans. */
export function offer({ before, lineBefore, pos, explicit }: Pick<CompletionContext, 'before' | 'lineBefore' | 'pos' | 'explicit'>, { leaves, keys }: Offered): CompletionResult | null {
  const path = placeOf(before);
  if (path === null) return null;
  const inList = path.includes('*');
  const list = inList ? leaves.find(({ type, path: at }) => type === 'list' && at === path.slice(0, path.indexOf('*')).join('.')) : undefined;
  const known = inList ? (list?.items ?? []) : leaves;
  const at = (inList ? path.slice(path.indexOf('*') + 1) : path).join('.');
  const value = /:\s+([^\s{},[\]#]*)$/u.exec(lineBefore);
  if (value !== null) {
    const leaf = known.find((one) => one.path === at);
    const kinds = leaf === undefined ? [] : [...leaf.choices.filter((choice) => choice !== 'set'), ...(leaf.section === null ? [] : keys(leaf.section)), ...leaf.examples];
    return kinds.length === 0 ? null : { from: pos - (value[1] ?? '').length, options: kinds.map((label) => ({ label, icon: 'enum' })) };
  }
  const word = /(?:^|[\s{,-])([a-z-]*)$/u.exec(lineBefore);
  if (word === null || /#/u.test(lineBefore) || (word[1] === '' && !explicit)) return null;
  const start = at === '' ? '' : `${at}.`;
  const next = [...new Set(known.filter((one) => one.path.startsWith(start)).map((one) => one.path.slice(start.length).split('.')[0] as string))];
  return next.length === 0 ? null : { from: pos - (word[1] ?? '').length, options: next.map((label) => ({ label, insert: `${label}: `, icon: 'property' })) };
}

/** The way into the plan at the end of a text, told from indents and braces; `*` stands for an entry of a list. Null inside a comment or a quoted text. */
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
