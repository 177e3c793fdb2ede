import type { Problem } from './problem.js';

/** Where a problem stands in a file. */
export interface Place {
  readonly file: string;
  readonly path: string;
  readonly line: number;
  readonly column: number;
  readonly excerpt?: string;
}

/** What a wording may be told; all of it text made for people. */
export interface Details {
  /** What the user wrote, or what is at fault. */
  readonly value?: string;
  /** The name of the thing spoken of: a key, a unit, a shelf section. */
  readonly name?: string;
  /** What would be right. */
  readonly allowed?: string;
  /** The nearest thing that exists. */
  readonly nearest?: string | undefined;
}

/** How a problem is told: what was found, what is allowed, what to do next. */
export interface Wording {
  readonly found: string;
  readonly allowed: string;
  readonly hint: string;
}

/** Tells problems in the words of a table, each at its place; what one is about goes by its key, unless it is named. */
export const worder =
  <Code extends string, D extends { readonly name?: string }>(
    wordings: Readonly<Record<Code, (details: D) => Wording>>,
  ) =>
  (code: Code, place: Place, details?: D, severity: Problem['severity'] = 'error'): Problem => ({
    code,
    severity,
    ...place,
    ...wordings[code]({ name: place.path.split('.').at(-1) ?? '', ...details } as D),
  });

/** How a block of this name is written, for those who put one value in its place. */
const blocks: Readonly<Record<string, string>> = {
  face: 'face: { width: 900 mm, height: 650 mm }',
  bars: 'bars: { stock: strip-19x38, lay: flat }',
  crossbars: 'crossbars: [ { runs: upright, at: 1/2 } ]',
  corners: 'corners: { cut: mitre, glue: pva }',
  brace: 'brace: { kind: timber, leg: 200 mm }',
  nails: 'nails: { use: brad-18ga-25, each: 1 }',
  cloth: 'cloth: { use: cotton-duck-340 }',
  ground: 'ground: { coats: 2 }',
  lumber: 'lumber: { chosen: plain, moisture: 12 % }',
  room: 'room: { humidity: 35..60 % }',
  hang: 'hang: { by: two-hooks }',
  spend: 'spend: { limit: 60 }',
  door: 'door: { width: 760 mm, height: 1980 mm }',
  diagonals: 'diagonals: [ 1110 mm, 1112 mm ]',
  push: 'push: { weight: 500 g, sag: 12 mm }',
};

/** What to write where a value is of another kind. */
export function kindHint({ name, allowed = '', value = '' }: Details): string {
  const block = Object.hasOwn(blocks, name ?? '') ? blocks[name ?? ''] : undefined;
  if (block !== undefined) return `Write it like this: \`${block}\`.`;
  if (allowed === 'a text') return 'Put it in quotes, or begin it with a letter.';
  if (allowed === 'a number' && /\d/u.test(value)) return 'Write the number alone.';
  if (allowed === 'a whole number') return 'Write a whole number, such as 2.';
  if (allowed.startsWith('a list')) return 'Put it in square brackets, or begin its line with a dash.';
  if (allowed.startsWith('`true`')) return 'Write `true` or `false`, without quotation marks.';
  if (allowed.includes('a block of keys'))
    return `Write its parts in braces, as in \`${name ?? 'key'}: { key: value, key: value }\`.`;
  return example(allowed, name);
}

/** What to write, taken from what is allowed: the first of the words in backticks. */
export function example(allowed: string, name: string | undefined): string {
  const first = /`([^`]+)`/u.exec(allowed)?.[1];
  if (first === undefined) return `Write ${allowed === '' ? 'another value' : allowed} here.`;
  return /^[\w.-]+$/u.test(first) && name !== undefined && /^[a-z-]+$/u.test(name)
    ? `Write one of these, for example \`${name}: ${first}\`.`
    : `Write for example \`${first}\`.`;
}

/** What to do about a key nobody knows: often a comma or a colon went astray. */
export function keyHint({ value = '', nearest }: Details): string {
  if (/^\d/u.test(value)) return 'A comma ends a value: write a point for the decimals, 47.5 and not 47,5.';
  if (/^[a-z][a-z-]*:\S/u.test(value)) return 'Put a space after the colon.';
  return orNearest(nearest, `Write one of the keys that are allowed here, or delete \`${value}\`: nothing reads it.`);
}

const separate =
  'Give each key a line of its own, indented like its neighbours, or put all of them into braces with commas between: `face: { width: 900 mm, height: 650 mm }`.';

/** What a YAML reader finds wrong, by how its message begins, in words for people who do not know YAML. */
const yamlFaults: readonly (readonly [begins: RegExp, found: string, hint: string])[] = [
  [/^Flow map in block/u, 'a `{` further up that is still open', 'Close it with `}` where its last value ends.'],
  [/^Flow sequence in block/u, 'a `[` further up that is still open', 'Close it with `]` where its last value ends.'],
  [
    /^Block collections are not allowed/u,
    'two keys with no comma between them',
    'Inside braces put a comma after each value.',
  ],
  [
    /^Missing closing/u,
    'a quotation mark further up that is never closed',
    'Close it, or leave the quotation marks out.',
  ],
  [/^Nested mappings|^Implicit keys/u, 'a key where none can stand', `${separate} A key ends in a colon.`],
  [/^All mapping items must/u, 'a line that is not indented like its neighbours', separate],
  [
    /^Unexpected .*"[}\]]"/u,
    'a closing bracket that nothing opened',
    'Delete this bracket, or write the one that opens it further up.',
  ],
];

/** What is wrong with a text that is no YAML. */
export function yamlFault(message: string): Wording {
  const known = yamlFaults.find(([begins]) => begins.test(message));
  return {
    found: known?.[1] ?? message,
    allowed: 'well-formed YAML',
    hint: known?.[2] ?? 'Check colons, quotes, brackets and indentation here and on the line above.',
  };
}

/** The name that was meant, where one is near; else what to do otherwise. */
export const orNearest = (nearest: string | undefined, otherwise: string): string =>
  nearest === undefined ? otherwise : `Did you mean \`${nearest}\`?`;

/** What a user wrote, safe to print: one line, at most 60 characters, control characters shown as `?`. */
export function quoted(value: unknown): string {
  const text =
    typeof value === 'string'
      ? value
      : value === undefined
        ? 'nothing'
        : Array.isArray(value)
          ? 'a list'
          : typeof value === 'object' && value !== null
            ? 'a block'
            : String(value);
  const line = text.replace(/\s+/g, ' ').replace(/[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/g, '?');
  return line.length > 60 ? `${line.slice(0, 57)}...` : line;
}
