/** Something wrong with what a person wrote. Problems are data: collected, all shown at once, never thrown. */
export interface Problem {
  /** Stable id in kebab-case, such as `unknown-key`. */
  readonly code: string;
  readonly severity: 'error' | 'warning';
  /** File as the user named it. */
  readonly file: string;
  /** Dotted place inside the document, such as `bars.plies`; empty for the whole document. */
  readonly path: string;
  /** 1-based; 0 when there is no place to point at. */
  readonly line: number;
  readonly column: number;
  /** What was found, in the user's own words (shortened when long). */
  readonly found: string;
  /** What would have been right. */
  readonly allowed: string;
  /** What to do next. */
  readonly hint: string;
  /** The offending source line, for the caret line on a terminal. */
  readonly excerpt?: string;
}

/** Either a finished value or every problem that stood in its way. Warnings travel with a value. */
export type Result<T> =
  | { readonly ok: true; readonly value: T; readonly warnings: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** An error about a file as a whole, or about `path` in it: there is no line to point at. */
export const fileProblem = (
  file: string,
  code: string,
  found: string,
  allowed: string,
  hint: string,
  path = '',
): Problem => ({ code, severity: 'error', file, path, line: 0, column: 0, found, allowed, hint });
