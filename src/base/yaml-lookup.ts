import { isAlias, isMap, isScalar, isSeq, type Alias, type Document, type Node, type Pair, type YAMLMap } from 'yaml';

/** The text of a pair's key, or null when it is no plain key. */
export function keyText(pair: Pair): string | null {
  return isScalar(pair.key) && pair.key.value !== null ? String(pair.key.source ?? pair.key.value) : null;
}

/**
 * Finds keys and what aliases stand for, in a document that may hold tens of thousands of either: the library looks
 * through the whole document for each alias and through the whole block for each key, so that a hostile text of a few
 * kilobytes would keep it busy for minutes. Here each is looked up in a table made once.
 */
export class YamlLookup {
  readonly #doc: Document;
  #targets: Map<Alias, Node> | null = null;
  readonly #keys = new WeakMap<YAMLMap, ReadonlyMap<string, Pair>>();

  constructor(doc: Document) {
    this.#doc = doc;
  }

  /** The node that an alias stands for, itself for any other node, undefined for an alias of nothing. */
  target(node: unknown): unknown {
    if (!isAlias(node)) return node;
    if (this.#targets === null) gather(this.#doc.contents, new Map(), (this.#targets = new Map()));
    return this.#targets.get(node);
  }

  /** The first pair of a block with this key. */
  pair(map: YAMLMap, key: string): Pair | undefined {
    let keys = this.#keys.get(map);
    if (keys === undefined) {
      const made = new Map<string, Pair>();
      for (const pair of map.items as readonly Pair[]) {
        const text = keyText(pair);
        if (text !== null && !made.has(text)) made.set(text, pair);
      }
      this.#keys.set(map, (keys = made));
    }
    return keys.get(key);
  }
}

/** In the order of the text: an alias stands for the last node before it that carries its name. */
function gather(node: unknown, named: Map<string, Node>, targets: Map<Alias, Node>): void {
  if (isAlias(node)) {
    const target = named.get(node.source);
    if (target !== undefined) targets.set(node, target);
    return;
  }
  if (isScalar(node) || isMap(node) || isSeq(node)) if (node.anchor !== undefined) named.set(node.anchor, node);
  if (isSeq(node)) for (const item of node.items) gather(item, named, targets);
  if (isMap(node)) {
    for (const { key, value } of node.items as readonly Pair[]) {
      gather(key, named, targets);
      gather(value, named, targets);
    }
  }
}
