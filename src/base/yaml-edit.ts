import {
  isAlias,
  isCollection,
  isMap,
  isScalar,
  isSeq,
  parseDocument,
  stringify,
  type Document,
  type Node,
  type Pair,
  type YAMLMap,
} from 'yaml';
import { keyText } from './yaml-lookup.js';
import { plainYaml } from './plain-yaml.js';
import type { Path } from './yaml-document.js';

/** What can be written at a place: a scalar, a list or a map of them; undefined takes the place away. */
export type YamlValue =
  string | number | boolean | null | undefined | readonly YamlValue[] | { readonly [key: string]: YamlValue };

/**
 * A YAML text with one value changed, added or taken away; comments, order and everything else stay as they were
 * written. A scalar is changed
 * where it stands; blocks on the way are made on one line, as people write them, and go when nothing is left in them.
 * Null where the text
 * cannot be read, or leads there through an alias: then a person has to do it.
 */
export function setInText(text: string, path: Path, value: YamlValue): string | null {
  const doc = parseDocument(text, { ...plainYaml, keepSourceTokens: true });
  if (doc.errors.length > 0 || !isMap(doc.contents) || path.length === 0) return null;
  const inPlace = scalarInPlace(text, doc, path, value);
  if (inPlace !== null) return inPlace;
  try {
    if (!(value === undefined ? take(doc, path) : put(doc, path, value))) return null;
  } catch {
    return null;
  }
  return keepSpacing(text, doc.toString({ lineWidth: 0, flowCollectionPadding: true }));
}

/**
 * The library sets every comment one space behind its line; lines that differ in nothing but that stay as the person
 * wrote them.
 */
export function keepSpacing(before: string, after: string): string {
  const plain = (line: string): string => line.replace(/\s+#/, ' #').trimEnd();
  const written = new Map(before.split(/\r?\n/).map((line) => [plain(line), line]));
  return after
    .split('\n')
    .map((line) => written.get(plain(line)) ?? line)
    .join('\n');
}

/** A scalar that takes the place of another, everything around it untouched; null where that is not what is asked. */
function scalarInPlace(text: string, doc: Document, path: Path, value: YamlValue): string | null {
  if (value === undefined || value === null || typeof value === 'object' || text.includes('\r')) return null;
  const node = walk(doc, path);
  if (
    !isScalar(node) ||
    node.anchor !== undefined ||
    node.tag !== undefined ||
    !node.range ||
    !['PLAIN', 'QUOTE_SINGLE', 'QUOTE_DOUBLE'].includes(node.type ?? '')
  )
    return null;
  const [start, end] = node.range;
  if (start === end) return null;
  return text.slice(0, start) + flowScalar(value) + text.slice(end);
}

/** A scalar as it may stand anywhere, inside braces too. */
const flowScalar = (value: string | number | boolean): string =>
  stringify({ v: value }, { collectionStyle: 'flow', lineWidth: 0, flowCollectionPadding: true })
    .trim()
    .replace(/^\{ v: /u, '')
    .replace(/ \}$/u, '');

/** The node at a path, not looking through aliases; undefined when there is none. */
function walk(doc: Document, path: Path): unknown {
  let node: unknown = doc.contents;
  for (const step of path)
    node = isMap(node) ? pairAt(node, step)?.value : isSeq(node) ? node.items[Number(step)] : undefined;
  return node;
}

const pairAt = (map: YAMLMap, step: string | number): Pair | undefined =>
  map.items.find((pair) => keyText(pair) === String(step));

/** Writes the value, making what is missing on the way. */
function put(doc: Document, path: Path, value: YamlValue): boolean {
  let node: unknown = doc.contents;
  for (const [i, step] of path.entries()) {
    if (isAlias(node)) return false;
    const rest = path.slice(i + 1);
    if (isSeq(node)) {
      if (Number(step) > node.items.length) return false;
      const next = node.items[Number(step)];
      if (rest.length > 0 && (isCollection(next) || isAlias(next))) {
        node = next;
        continue;
      }
      node.items[Number(step)] = made(doc, rest, value);
      return true;
    }
    if (!isMap(node)) return false;
    const pair = pairAt(node, step);
    if (pair === undefined) {
      node.add(doc.createPair(step, made(doc, rest, value)));
      return true;
    }
    if (rest.length > 0 && (isCollection(pair.value) || isAlias(pair.value))) {
      node = pair.value;
      continue;
    }
    if (isAlias(pair.value)) return false;
    const replaced = made(doc, rest, value);
    const { comment, commentBefore } = (pair.value ?? {}) as Partial<Node>;
    if (comment) replaced.comment = comment;
    if (commentBefore) replaced.commentBefore = commentBefore;
    pair.value = replaced;
    return true;
  }
  return false;
}

/** The value under the keys that are still missing: lists as blocks, maps on one line. */
function made(doc: Document, rest: Path, value: YamlValue): Node {
  const [step, ...deeper] = rest;
  if (step === undefined) {
    const long = Array.isArray(value);
    const node = doc.createNode(value, { flow: !long }) as Node;
    if (isSeq(node)) for (const item of node.items) if (isCollection(item)) item.flow = true;
    return node;
  }
  const inner = made(doc, deeper, value);
  if (typeof step === 'number') {
    const list = doc.createNode([]);
    (list.items as unknown[]).push(inner);
    return list;
  }
  const map = doc.createNode({}, { flow: true }) as unknown as YAMLMap;
  map.add(doc.createPair(step, inner));
  return map;
}

/** Takes a value away, and blocks that are left empty; what was noted beside it moves on to what follows. */
function take(doc: Document, path: Path): boolean {
  const parent = walk(doc, path.slice(0, -1));
  const step = path.at(-1) as string | number;
  if (isAlias(parent)) return false;
  if (!isCollection(parent)) return true;
  const at = isMap(parent) ? parent.items.findIndex((pair) => keyText(pair as Pair) === String(step)) : Number(step);
  const gone = parent.items[at] as Pair | Node | undefined;
  if (gone === undefined) return true;
  parent.items.splice(at, 1);
  const notes = notesOf(gone);
  if (parent.items.length === 0 && path.length > 1) {
    if (notes !== '') parent.commentBefore = joined(parent.commentBefore, notes);
    return take(doc, path.slice(0, -1));
  }
  if (notes !== '') noteBefore(doc, parent.items[at] as Pair | Node | undefined, parent, notes);
  return true;
}

const joined = (...notes: readonly (string | null | undefined)[]): string => notes.filter((note) => note).join('\n');

/** Every comment in a part that goes, in order. */
function notesOf(part: unknown): string {
  if (part === null || typeof part !== 'object') return '';
  if ('key' in part) return joined(notesOf((part as Pair).key), notesOf((part as Pair).value));
  const { commentBefore, comment } = part as Node;
  const inner = isCollection(part) ? part.items.map(notesOf) : [];
  return joined(commentBefore, ...inner, comment);
}

function noteBefore(doc: Document, next: Pair | Node | undefined, parent: Node, notes: string): void {
  const target = next !== undefined && 'key' in next ? (next.key as Node | null) : (next ?? null);
  if (target !== null) target.commentBefore = joined(notes, target.commentBefore);
  else if (parent === doc.contents) doc.comment = joined(doc.comment, notes);
  else parent.comment = joined(parent.comment, notes);
}
