import { Composer, isMap, isNode, isScalar, isSeq, Lexer, LineCounter, Parser, YAMLParseError } from 'yaml';
import type { CST, Document } from 'yaml';
import { problemAt, type ProblemCode } from './messages.js';
import type { Place } from './wording.js';
import { quoted, type Details } from './wording.js';
import { plainYaml } from './plain-yaml.js';
import type { Problem } from './problem.js';
import { looksBinary, tokenGuard, TooDeep, TooMany, usualLimits, type YamlLimits } from './yaml-limits.js';
import { YamlLookup } from './yaml-lookup.js';
import { treeToData } from './yaml-tree.js';

/** A way into a document: keys and list indices. */
export type Path = readonly (string | number)[];

/** A YAML text that was read, able to say where each of its parts stands. */
export interface YamlSource {
  readonly file: string;
  /** Maps, lists, texts, numbers, booleans and null; no aliases, no repeated keys. */
  readonly data: unknown;
  /** Where the value (or the key) at a path stands; the nearest enclosing part when there is none. */
  place(path: Path, which?: 'value' | 'key'): Place;
  /** What the user wrote at a path, shortened to one line. */
  written(path: Path): string;
  /** A worded problem at a path. */
  problem(code: ProblemCode, path: Path, details?: Details, which?: 'value' | 'key'): Problem;
  /** The same as a warning. */
  warning(code: ProblemCode, path: Path, details?: Details): Problem;
}

/** `crossbars[0].at`: a path as one reads it. */
export const pathText = (path: Path): string =>
  path.reduce<string>(
    (text, step) =>
      typeof step === 'number' ? `${text}[${step}]` : text === '' ? quoted(step) : `${text}.${quoted(step)}`,
    '',
  );

/** Problems in the order of the file. */
export const inFileOrder = (problems: readonly Problem[]): readonly Problem[] =>
  [...problems].sort((a, b) => a.line - b.line || a.column - b.column);

const mostProblems = 40;

/** The first forty problems, none of them twice, and a count of the rest: all at once, but no flood. */
export function limitProblems(problems: readonly Problem[]): readonly Problem[] {
  const seen = new Set<string>();
  const distinct = problems.filter(({ code, path, line, column, found }) => {
    const mark = `${code} ${path} ${line}:${column} ${found}`;
    return !seen.has(mark) && seen.add(mark);
  });
  const [first] = distinct;
  if (distinct.length <= mostProblems || first === undefined) return distinct;
  const place: Place = { file: first.file, path: '', line: 0, column: 0 };
  return [
    ...distinct.slice(0, mostProblems),
    problemAt('more-problems', place, { value: String(distinct.length - mostProblems) }),
  ];
}

const longestExcerpt = 2000;

function locator(text: string, file: string, lines: LineCounter): (offset: number, path: Path) => Place {
  return (offset, path) => {
    const { line, col } = lines.linePos(Math.min(Math.max(offset, 0), text.length));
    if (line === 0) return { file, path: pathText(path), line: 1, column: 1 };
    const start = lines.lineStarts[line - 1] ?? 0;
    if (col > longestExcerpt) return { file, path: pathText(path), line, column: col };
    const end = text.indexOf('\n', start);
    const excerpt = text.slice(start, Math.min(end < 0 ? text.length : end, start + longestExcerpt)).replace(/\r$/, '');
    return { file, path: pathText(path), line, column: col, excerpt };
  };
}

/**
 * Offset of the value or key at a path, walking through aliases; the nearest enclosing part when the path leads
 * nowhere.
 */
function offsetAt(doc: Document, lookup: YamlLookup, path: Path, which: 'value' | 'key'): number {
  let node: unknown = doc.contents;
  let best = isNode(node) ? (node.range?.[0] ?? 0) : 0;
  let keyOffset = best;
  for (const step of path) {
    node = lookup.target(node);
    if (isMap(node)) {
      const pair = lookup.pair(node, String(step));
      if (pair === undefined) return best;
      keyOffset = isNode(pair.key) ? (pair.key.range?.[0] ?? best) : best;
      node = pair.value;
      const empty = node === null || (isScalar(node) && node.value === null && !node.source);
      best = !empty && isNode(node) ? (node.range?.[0] ?? keyOffset) : keyOffset;
    } else if (isSeq(node)) {
      node = node.items[Number(step)];
      if (!isNode(node)) return best;
      best = node.range?.[0] ?? best;
      keyOffset = best;
    } else return best;
  }
  return which === 'key' ? keyOffset : best;
}

function writtenAt(doc: Document, lookup: YamlLookup, text: string, path: Path): string {
  let node: unknown = doc.contents;
  for (const step of path) {
    node = lookup.target(node);
    if (isMap(node)) node = lookup.pair(node, String(step))?.value;
    else node = isSeq(node) ? node.items[Number(step)] : undefined;
  }
  node = lookup.target(node);
  if (isScalar(node))
    return node.value === null
      ? 'nothing'
      : quoted(node.type === 'PLAIN' && node.range ? text.slice(node.range[0], node.range[1]) : node.value);
  return isMap(node) ? 'a block of keys' : isSeq(node) ? 'a list' : 'nothing';
}

/**
 * Reads a YAML text without trusting it: size, binary content, nesting, aliases, tags, special and repeated keys are
 * all checked, and nothing throws.
 * `source` is null when the text cannot be used at all; otherwise it can be checked further even when there are
 * problems, so that all show at once.
 */
export function readYaml(
  text: string,
  file: string,
  limits: YamlLimits = usualLimits,
): { readonly source: YamlSource | null; readonly problems: readonly Problem[] } {
  const nowhere: Place = { file, path: '', line: 0, column: 0 };
  const refuse = (...problems: Problem[]): { readonly source: null; readonly problems: readonly Problem[] } => ({
    source: null,
    problems: limitProblems(problems),
  });
  if (text.length > limits.size)
    return refuse(
      problemAt('too-large', nowhere, {
        value: `${Math.round(text.length / 1000)} kB`,
        allowed: `${Math.round(limits.size / 1000)} kB`,
      }),
    );
  if (looksBinary(text)) return refuse(problemAt('not-text', nowhere));
  const body = text.replace(/^\ufeff/, '');
  if (body.trim() === '') return refuse(problemAt('empty-file', { ...nowhere, line: 1, column: 1 }));
  const lines = new LineCounter();
  const locate = locator(body, file, lines);
  try {
    const doc = parseGuarded(body, lines, limits);
    const syntax = [...doc.errors, ...doc.warnings].map((error) =>
      syntaxProblem(error.code, error.message, locate(error.pos[0], [])),
    );
    if (doc.errors.length > 0) return refuse(...syntax);
    const lookup = new YamlLookup(doc);
    const { data, faults } = treeToData(doc, lookup, limits);
    const problems = [
      ...syntax.filter((problem) => problem.code !== 'tag'),
      ...(doc.directives.yaml.version === '1.1'
        ? [problemAt('yaml-version', locate(body.search(/^%YAML/mu), []), { value: '%YAML 1.1' })]
        : []),
      ...faults.map((fault) => problemAt(fault.code, locate(fault.offset, fault.path), fault.details)),
    ];
    if (data === null && problems.length === 0)
      return refuse(problemAt('empty-file', { ...nowhere, line: 1, column: 1 }));
    const place = (path: Path, which: 'value' | 'key' = 'value'): Place =>
      locate(offsetAt(doc, lookup, path, which), path);
    const source: YamlSource = {
      file,
      data,
      place,
      written: (path) => writtenAt(doc, lookup, body, path),
      problem: (code, path, details, which) => problemAt(code, place(path, which), details),
      warning: (code, path, details) => problemAt(code, place(path), details, 'warning'),
    };
    return { source, problems };
  } catch (error) {
    if (error instanceof TooDeep)
      return refuse(
        problemAt('too-deep', locate(error.offset, []), {
          value: `More than ${limits.depth}`,
          allowed: String(limits.depth),
        }),
      );
    if (error instanceof TooMany) return refuse(problemAt('too-many-words', nowhere, { value: String(limits.tokens) }));
    if (error instanceof RangeError)
      return refuse(
        problemAt('too-deep', nowhere, { value: 'More levels than can be followed', allowed: String(limits.depth) }),
      );
    throw error;
  }
}

/**
 * The library's document of a text, with the nesting watched while it is cut into tokens. Throws TooDeep and TooMany.
 */
function parseGuarded(text: string, lines: LineCounter, limits: YamlLimits): Document.Parsed {
  const parser = new Parser(lines.addNewLine);
  const tokens: CST.Token[] = [];
  lines.addNewLine(0);
  const guard = tokenGuard(limits);
  for (const lexeme of new Lexer().lex(text)) {
    guard(lexeme);
    for (const token of parser.next(lexeme)) tokens.push(token);
  }
  tokens.push(...parser.end());
  const [doc, second] = new Composer({ ...plainYaml, uniqueKeys: false, prettyErrors: false }).compose(
    tokens,
    true,
    text.length,
  );
  if (doc === undefined) throw new Error('an empty text should have been refused before');
  if (second !== undefined)
    doc.errors.push(
      new YAMLParseError([second.range[0], second.range[0] + 1], 'MULTIPLE_DOCS', 'more than one document'),
    );
  return doc;
}

/** The library's own errors, in this project's words where a person is likely to meet them. */
function syntaxProblem(code: string, message: string, place: Place): Problem {
  if (code === 'TAB_AS_INDENT' || (/\btab/i.test(message) && /indent/i.test(message)))
    return problemAt('tab-indent', place);
  if (code === 'MULTIPLE_DOCS') return problemAt('several-documents', place);
  if (code === 'TAG_RESOLVE_FAILED') return problemAt('tag', place, { value: quoted(message) });
  if (code === 'RESOURCE_EXHAUSTION') return problemAt('too-many-aliases', place);
  return problemAt('bad-yaml', place, { value: quoted(message.split('\n')[0]?.replace(/[.:]\s*$/, '') ?? message) });
}
