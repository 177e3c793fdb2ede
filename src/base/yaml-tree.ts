import { isAlias, isMap, isScalar, isSeq, type Document, type Node, type Pair } from 'yaml';
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
  let budget = limits.nodes;
  let spent = false;
  let alias: { readonly offset: number } | null = null;

  const visit = (node: unknown, path: readonly (string | number)[], inside: readonly unknown[]): unknown => {
    if (spent) return null;
    budget -= 1;
    if (budget < 0) {
      spent = true;
      faults.push(
        alias === null
          ? { code: 'too-many-parts', details: { value: String(limits.nodes) }, offset: offsetOf(node), path: [] }
          : { code: 'too-many-aliases', details: {}, offset: alias.offset, path: [] },
      );
      return null;
    }
    if (isAlias(node)) {
      const target = lookup.target(node);
      const name = `*${node.source}`;
      if (target === undefined) {
        faults.push({ code: 'unknown-alias', details: { value: name }, offset: offsetOf(node), path });
        return null;
      }
      if (inside.includes(target)) {
        faults.push({ code: 'alias-loop', details: { value: name }, offset: offsetOf(node), path });
        return null;
      }
      const outer = alias;
      alias ??= { offset: offsetOf(node) };
      const value = visit(target, path, inside);
      alias = outer;
      return value;
    }
    if (!isScalar(node) && !isMap(node) && !isSeq(node)) return null;
    if (typeof node.tag === 'string' && node.tag !== '') {
      faults.push({ code: 'tag', details: { value: node.tag.slice(0, 40) }, offset: offsetOf(node), path });
      return null;
    }
    if (isScalar(node)) {
      const odd = typeof node.value === 'number' && /^[-+]?0[xob]/i.test(node.source ?? '');
      if (odd)
        faults.push({
          code: 'not-decimal',
          details: { value: (node.source ?? '').slice(0, 40) },
          offset: offsetOf(node),
          path,
        });
      return node.value;
    }
    if (inside.length >= limits.depth) {
      faults.push({
        code: 'too-deep',
        details: { value: `More than ${limits.depth}`, allowed: String(limits.depth) },
        offset: offsetOf(node),
        path,
      });
      return null;
    }
    const deeper = [...inside, node];
    if (isSeq(node)) return node.items.map((item, index) => visit(item, [...path, index], deeper));
    const seen = new Set<string>();
    const map: Record<string, unknown> = {};
    for (const pair of node.items) {
      const key = keyText(pair as Pair);
      const offset = offsetOf(pair.key);
      if (key === null) {
        faults.push({ code: 'key-not-text', details: {}, offset, path });
        continue;
      }
      if (forbidden.has(key)) {
        faults.push({ code: 'forbidden-key', details: { value: key }, offset, path: [...path, key] });
        continue;
      }
      if (seen.has(key)) {
        faults.push({ code: 'duplicate-key', details: { value: key.slice(0, 60) }, offset, path: [...path, key] });
        continue;
      }
      seen.add(key);
      map[key] = visit(pair.value, [...path, key], deeper);
    }
    return map;
  };

  return { data: visit(doc.contents, [], []), faults };
}
