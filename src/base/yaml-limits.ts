import { Lexer } from 'yaml';

/** How much a YAML text may ask of the reader. */
export interface YamlLimits {
  /** Characters. */
  readonly size: number;
  /** Levels of maps and lists inside each other. */
  readonly depth: number;
  /** Nodes after aliases are followed. */
  readonly nodes: number;
}

/** Limits that no plan, shelf or ruleset made by a person comes near. */
export const usualLimits: YamlLimits = { size: 500_000, depth: 24, nodes: 60_000 };

const widestIndent = 200;

/**
 * How deep the text nests, judged from its tokens alone, before any recursive reader sees it: open brackets, dashes on one line, columns of indentation.
 * Gives the offset where `depth` is passed, or null. An estimate from above is made good by counting the levels again in the tree.
 */
export function tooDeepAt(text: string, depth: number): number | null {
  let offset = 0;
  let flow = 0;
  let dashes = 0;
  let scalarNext = false;
  let lineStart = true;
  for (const token of new Lexer().lex(text)) {
    if (token === '\x1f' || token === '\x02' || token === '\x18') { scalarNext = token === '\x1f'; continue; }
    if (!scalarNext) {
      if (token === '[' || token === '{') flow += 1;
      else if (token === ']' || token === '}') flow = Math.max(0, flow - 1);
      else if (token === '-' || token === '?') dashes += 1;
      if (flow > depth || dashes > depth) return offset;
      if (lineStart && /^ /.test(token) && token.length > widestIndent) return offset;
      lineStart = /[\r\n]$/.test(token);
      if (lineStart) dashes = 0;
    } else {
      lineStart = /[\r\n]$/.test(token);
      if (lineStart) dashes = 0;
    }
    scalarNext = false;
    offset += token.length;
  }
  return null;
}

/** True when the text is no text at all: NUL bytes (UTF-16, pictures, archives), or more than a few characters that could not be decoded. */
export function looksBinary(text: string): boolean {
  if (text.includes('\0')) return true;
  let odd = 0;
  for (const sign of text.slice(0, 4000).matchAll(/[\ufffd\u0001-\u0008\u000e-\u001f]/g)) if (sign.index >= 0) odd += 1;
  return odd > 2;
}
