import { expect, test } from 'vitest';
import { sourceKeys } from '../src/cli/load.js';
import { schemaText } from '../src/cli/schema-run.js';
import { fileShape, type EditedKind, type FileShape } from '../src/index.js';

/** Amounts of rules are a reference to one pattern there, which no screen needs. */
const unsaid = (kind: EditedKind, line: string): string => (kind === 'ruleset' ? line.replace(/,"pattern":".*?(?<!\\)"(?=[,}])/gu, '') : line);

type JsonNode = FileShape & { readonly $ref?: string; readonly $defs?: Readonly<Record<string, JsonNode>> };

/** Conditions of rules hold conditions: so deep, and no deeper. */
const deepest = 9;

/** Everything a file may say down to a depth, one line for each place and what may stand there. */
function said(node: FileShape, resolve: (node: FileShape) => FileShape, path = '', depth = 0): readonly string[] {
  const { type, const: only, enum: words, anyOf, properties, additionalProperties, required, items, description, examples, pattern, minimum, maximum } = resolve(node);
  const own = [`${path}: ${JSON.stringify({ type: anyOf === undefined ? type : undefined, only, words, required: [...(required ?? [])].sort(), description, examples, pattern, minimum, maximum })}`];
  if (depth > deepest) return own;
  const into = (inner: FileShape, step: string): readonly string[] => said(inner, resolve, `${path}/${step}`, depth + 1);
  return [
    ...own, ...(anyOf ?? []).flatMap((one, i) => into(one, `or ${i}`)), ...Object.entries(properties ?? {}).flatMap(([key, one]) => into(one, key)),
    ...(typeof additionalProperties === 'object' ? into(additionalProperties, '{}') : []), ...(items === undefined ? [] : into(items, '*')),
  ];
}

test.each(['plan', 'shelf', 'ruleset', 'pile'] as const)('what a screen offers for a %s is what its JSON Schema says', (kind: EditedKind) => {
  const json = JSON.parse(schemaText(kind)) as JsonNode;
  const resolve = (node: JsonNode): JsonNode => {
    const { $ref, ...rest } = node;
    if ($ref !== undefined) return resolve({ ...json.$defs?.[$ref.split('/').at(-1) as string], ...rest });
    // Bare types one of which may stand there.
    return Array.isArray(node.type) ? { ...rest, anyOf: (node.type as readonly string[]).map((type) => ({ type })) } : node;
  };
  const wanted = said(json, resolve).map((line) => unsaid(kind, line));
  expect(wanted.length).toBeGreaterThan(20);
  expect(said(fileShape(kind, [...sourceKeys()]), (node) => node).map((line) => unsaid(kind, line))).toEqual(wanted);
});
