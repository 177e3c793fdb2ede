/** Lines and groups of lines that must all hold, or of which any must hold. Never empty. */
export interface Group<Line> {
  readonly join: 'all' | 'any';
  readonly parts: readonly Tree<Line>[];
}

/** A line, or a group of lines. */
export type Tree<Line> = Line | Group<Line>;

/** Every line, those of groups inside groups too, in the order of the file. */
export const linesIn = <Line extends object>(tree: Tree<Line>): readonly Line[] =>
  'parts' in tree ? (tree as Group<Line>).parts.flatMap((part) => linesIn(part)) : [tree];
