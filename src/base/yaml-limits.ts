/** How much a YAML text may ask of the reader. */
export interface YamlLimits {
  /** Characters. */
  readonly size: number;
  /** Levels of maps and lists inside each other. */
  readonly depth: number;
  /** Nodes after aliases are followed. */
  readonly nodes: number;
  /** Lexical tokens: words, marks, indents and line ends. */
  readonly tokens: number;
}

/** Limits that no plan, shelf or ruleset made by a person comes near. */
export const usualLimits: YamlLimits = { size: 500_000, depth: 24, nodes: 60_000, tokens: 200_000 };

const widestIndent = 200;

/** Thrown by `tokenGuard`, and caught by its caller: the text nests too deep at this offset. */
export class TooDeep extends Error {
  readonly offset: number;

  constructor(offset: number) {
    super(`too deep at ${offset}`);
    this.offset = offset;
  }
}

/** Thrown by `tokenGuard`, and caught by its caller: the text has more tokens than may be read. */
export class TooMany extends Error {}

/**
 * A watch over the lexical tokens of a text, to be shown each in turn before any recursive reader sees it: nesting is
 * judged from open brackets, dashes on one line and columns of indentation. Throws TooDeep where `depth` is passed,
 * TooMany where `tokens` is; levels that indentation alone makes are counted again in the tree.
 */
export function tokenGuard({ depth, tokens }: YamlLimits): (token: string) => void {
  let [offset, flow, dashes, scalarNext, lineStart] = [0, 0, 0, false, true];
  let left = tokens;
  return (token) => {
    left -= 1;
    if (left < 0) throw new TooMany();
    if (token === '\x1f' || token === '\x02' || token === '\x18') {
      scalarNext = token === '\x1f';
      return;
    }
    if (!scalarNext) {
      if (token === '[' || token === '{') flow += 1;
      else if (token === ']' || token === '}') flow = Math.max(0, flow - 1);
      else if (token === '-' || token === '?') dashes += 1;
      if (flow > depth || dashes > depth || (lineStart && token.length > widestIndent && token.startsWith(' ')))
        throw new TooDeep(offset);
    }
    lineStart = token.endsWith('\n') || token.endsWith('\r');
    if (lineStart) dashes = 0;
    scalarNext = false;
    offset += token.length;
  };
}

/**
 * True when the text is no text at all: NUL bytes (UTF-16, pictures, archives), or more than a few characters that
 * could not be decoded.
 */
export function looksBinary(text: string): boolean {
  if (text.includes('\0')) return true;
  return (text.slice(0, 4000).match(/[\ufffd\u0001-\u0008\u000e-\u001f]/g) ?? []).length > 2;
}
