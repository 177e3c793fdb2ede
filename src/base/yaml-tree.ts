import { isAlias, isMap, isScalar, isSeq, type Alias, type Document, type Node, type Pair } from 'yaml';
import type { ProblemCode } from './messages.js';
import type { Details } from './wording.js';
import type { YamlLimits } from './yaml-limits.js';
import { keyText, type YamlLookup } from './yaml-lookup.js';

/** A fault in the tree: code, details and the offset in the text. */
export interface TreeFault {
  readonly code: ProblemCode;
  readonly details: Details;
  readonly offset: number;
  readonly path: readonly (string | number)[];
}

const forbidden: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);
const offsetOf = (node: unknown): number => (node as Node | null)?.range?.[0] ?? 0;

/**
 * The plain data of a YAML document, with every fault found on the way: repeated, forbidden and non-text keys, alias
 * loops and bombs, tags, too many levels.
 * A repeated key keeps its first value; a forbidden key is left out.
 */
export function treeToData(
  doc: Document,
  lookup: YamlLookup,
  limits: YamlLimits,
): { readonly data: unknown; readonly faults: readonly TreeFault[] } {
  const faults: TreeFault[] = [];
  const path: (string | number)[] = [];
  const inside: unknown[] = [];
  let budget = limits.nodes;
  let alias: Alias | null = null;

  const fault = (code: ProblemCode, details: Details, node: unknown): null => {
    faults.push({ code, details, offset: offsetOf(node), path: [...path] });
    return null;
  };

  const child = (step: string | number, node: unknown): unknown => {
    path.push(step);
    const value = visit(node);
    path.pop();
    return value;
  };

  const visit = (node: unknown): unknown => {
    if (budget <= 0) {
      if (budget === 0) {
        const [code, details, part] =
          alias === null
            ? (['too-many-parts', { value: String(limits.nodes) }, node] as const)
            : (['too-many-aliases', {}, alias] as const);
        faults.push({ code, details, offset: offsetOf(part), path: [] });
      }
      budget = -1;
      return null;
    }
    budget -= 1;
    if (isAlias(node)) {
      const target = lookup.target(node);
      const details = { value: `*${node.source}` };
      if (target === undefined) return fault('unknown-alias', details, node);
      if (inside.includes(target)) return fault('alias-loop', details, node);
      const outer = alias;
      alias ??= node;
      const value = visit(target);
      alias = outer;
      return value;
    }
    if (!isScalar(node) && !isMap(node) && !isSeq(node)) return null;
    if (typeof node.tag === 'string' && node.tag !== '') return fault('tag', { value: node.tag.slice(0, 40) }, node);
    if (isScalar(node)) {
      if (typeof node.value === 'number' && /^[-+]?0[xob]/i.test(node.source ?? ''))
        fault('not-decimal', { value: (node.source ?? '').slice(0, 40) }, node);
      return node.value;
    }
    if (inside.length >= limits.depth)
      return fault('too-deep', { value: `More than ${limits.depth}`, allowed: String(limits.depth) }, node);
    inside.push(node);
    const value = isSeq(node) ? node.items.map((item, index) => child(index, item)) : blockOf(node.items as Pair[]);
    inside.pop();
    return value;
  };

  const blockOf = (pairs: readonly Pair[]): Record<string, unknown> => {
    const map: Record<string, unknown> = {};
    for (const pair of pairs) {
      const key = keyText(pair);
      if (key === null) {
        fault('key-not-text', {}, pair.key);
        continue;
      }
      path.push(key);
      if (forbidden.has(key)) fault('forbidden-key', { value: key }, pair.key);
      else if (Object.hasOwn(map, key)) fault('duplicate-key', { value: key.slice(0, 60) }, pair.key);
      else map[key] = visit(pair.value);
      path.pop();
    }
    return map;
  };

  return { data: visit(doc.contents), faults };
}
