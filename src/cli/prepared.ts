import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Source } from '../base/sources.js';
import type { PreparedLayer, PreparedStack } from '../rules/read/load-ruleset.js';
import type { Shelf } from '../shelf/shelf.js';
import { packageFolder } from './files.js';
import { warn } from './terminal.js';

/**
 * The shipped shelf and rulesets as read when the tool was built; each part counts only for the very same text, whose
 * digest stands beside it.
 */
export interface Prepared {
  readonly shelf: { readonly of: string; readonly value: Shelf };
  readonly sources: { readonly of: string; readonly list: readonly Source[] };
  readonly layers: readonly PreparedLayer[];
  readonly stacks: readonly PreparedStack[];
}

/**
 * SHA-256 of `prepared.json`, put into the program when it is built; there is none where the sources run as they are.
 */
declare const __PREPARED_DIGEST__: string | undefined;
const expected = typeof __PREPARED_DIGEST__ === 'string' ? __PREPARED_DIGEST__ : null;

let kept: Prepared | null | undefined;

/**
 * What was prepared at build time, or null: then everything is read from its text. What was prepared counts only as it
 * was built, to the byte: the program knows its digest, so that no edit of the file can change a verdict.
 */
export function prepared(): Prepared | null {
  if (kept === undefined) kept = expected === null ? null : readPrepared(expected);
  return kept;
}

function readPrepared(digest: string): Prepared | null {
  try {
    const text = readFileSync(join(packageFolder, 'dist', 'prepared.json'));
    if (createHash('sha256').update(text).digest('hex') === digest)
      return JSON.parse(text.toString('latin1')) as Prepared;
  } catch {
    // Missing or unreadable: as good as changed.
  }
  warn(
    'sightdown: dist/prepared.json is not as it was built, so shelf and rules are read anew. `npm run build` makes it again.',
  );
  return null;
}
