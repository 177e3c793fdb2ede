import type { FileShape } from '../../index.js';

/** One thing a plan can say, and what it may be. */
export interface Leaf {
  /** Dotted place, such as `bars.lay`. */
  readonly path: string;
  /** `whether` is a block that may be `none` instead; `list` holds entries of leaves. */
  readonly type: 'text' | 'number' | 'whole' | 'choice' | 'key' | 'whether' | 'list';
  readonly choices: readonly string[];
  /** Part of the shelf that a key names. */
  readonly section: string | null;
  readonly description: string;
  readonly examples: readonly string[];
  /** What a text must look like to be worth reading. */
  readonly pattern: RegExp | null;
  readonly least: number | null;
  readonly most: number | null;
  readonly required: boolean;
  /** Whether a bare number may stand there as well as a text. */
  readonly numberToo: boolean;
  /** Block above that may say `none`; null when there is none. */
  readonly offAt: string | null;
  readonly items: readonly Leaf[];
}

/**
 * Everything that may stand at a place in a file, every variant by itself. A list is stepped into by `*`, or by a key
 * of its entries at once.
 */
export function nodesAt(shape: FileShape, path: readonly string[]): readonly FileShape[] {
  const variants = ({ anyOf, ...node }: FileShape): readonly FileShape[] =>
    anyOf === undefined
      ? [node]
      : anyOf.flatMap((one) =>
          variants({ ...(node.description === undefined ? {} : { description: node.description }), ...one }),
        );
  const into = (node: FileShape, key: string): readonly FileShape[] => {
    if (node.items !== undefined)
      return key === '*' ? variants(node.items) : variants(node.items).flatMap((one) => into(one, key));
    const own =
      node.properties?.[key] ?? (typeof node.additionalProperties === 'object' ? node.additionalProperties : undefined);
    return own === undefined ? [] : variants(own);
  };
  return path.reduce<readonly FileShape[]>((nodes, key) => nodes.flatMap((node) => into(node, key)), variants(shape));
}

/** The part of the shelf whose keys a text names, and whether it may be none; null when it names none. */
const sectionOf = (description: string): { readonly section: string | null; readonly orNone: boolean } | null => {
  const key = /^Key of the (\w+) on the shelf(, or none)?/u.exec(description);
  return key === null ? null : { section: sections[key[1] ?? ''] ?? null, orNone: key[2] !== undefined };
};

/** What may be written at a place: words, keys of the shelf, examples. */
export function wordsFor(
  { enum: words, const: only, examples, description = '' }: FileShape,
  keys: (section: string) => readonly string[],
): readonly string[] {
  const key = sectionOf(description);
  return [
    ...(words ?? []),
    ...(typeof only === 'string' || typeof only === 'number' ? [String(only)] : []),
    ...(key === null ? [] : [...(key.orNone ? ['none'] : []), ...(key.section === null ? [] : keys(key.section))]),
    ...(examples ?? []).map(String),
  ];
}

const sections: Readonly<Record<string, string>> = {
  lumber: 'lumber',
  glue: 'glues',
  nail: 'nails',
  screw: 'screws',
  cloth: 'cloths',
  ground: 'grounds',
};

/** Everything a plan can say, in the order of its schema: new keys turn up by themselves. */
export function leavesOf(shape: FileShape): readonly Leaf[] {
  const walk = (node: FileShape, path: string, required: boolean, offAt: string | null): readonly Leaf[] => {
    if (node.anyOf !== undefined) return union(node.anyOf, node, path, required, offAt);
    if (node.properties !== undefined)
      return Object.entries(node.properties).flatMap(([key, child]) =>
        walk(child, path === '' ? key : `${path}.${key}`, required && node.required?.includes(key) === true, offAt),
      );
    if (node.const !== undefined && node.type !== 'string') return [];
    const leaf = base(node, path, required, offAt);
    if (node.type === 'array') return [{ ...leaf, type: 'list', items: walk(node.items ?? {}, '', false, null) }];
    return [leaf];
  };
  const union = (
    variants: readonly FileShape[],
    whole: FileShape,
    path: string,
    required: boolean,
    offAt: string | null,
  ): readonly Leaf[] => {
    const block = variants.find(({ properties }) => properties !== undefined);
    const plain = variants.filter(
      ({ properties, anyOf, const: only }) => properties === undefined && anyOf === undefined && only !== 'none',
    );
    const nested = variants
      .filter(({ anyOf }) => anyOf !== undefined)
      .flatMap((variant) => walk(variant, path, required, offAt));
    const none = variants.some(({ const: only }) => only === 'none');
    const inside = block === undefined ? [] : walk(block, path, false, none ? path : offAt);
    const kind = inside.find((leaf) => leaf.path === `${path}.kind` && leaf.type === 'choice');
    const text = plain.find(({ type }) => type === 'string') ?? plain[0];
    return [
      ...(text === undefined
        ? []
        : [
            {
              ...base({ ...text, description: whole.description ?? text.description ?? '' }, path, required, offAt),
              numberToo: plain.some(({ type }) => type === 'number'),
            },
          ]),
      ...nested,
      ...(none && kind === undefined
        ? [{ ...base(whole, path, false, offAt), type: 'whether' as const, choices: ['set', 'none'] }]
        : []),
      ...inside.map((leaf) => (none && leaf === kind ? { ...leaf, choices: ['none', ...leaf.choices] } : leaf)),
    ];
  };
  const seen = new Set<string>();
  return walk(shape, '', true, null).filter(({ path }) => !seen.has(path) && seen.add(path));
}

function base(node: FileShape, path: string, required: boolean, offAt: string | null): Leaf {
  const description = node.description ?? '';
  const key = sectionOf(description);
  return {
    path,
    required,
    offAt,
    description,
    items: [],
    numberToo: false,
    type:
      key !== null
        ? 'key'
        : node.enum !== undefined
          ? 'choice'
          : node.type === 'integer'
            ? 'whole'
            : node.type === 'number'
              ? 'number'
              : 'text',
    choices: node.enum ?? (key?.orNone === true ? ['none'] : []),
    section: key?.section ?? null,
    examples: node.examples ?? [],
    pattern: node.pattern === undefined ? null : new RegExp(node.pattern),
    least: node.minimum ?? null,
    most: node.maximum ?? null,
  };
}
