import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Source } from '../base/sources.js';
import type { PreparedLayer } from '../rules/load-ruleset.js';
import type { Shelf } from '../shelf/shelf.js';
import { packageFolder } from './files.js';

/** The shipped shelf and rulesets as read when the tool was built; each part counts only for the very same text. */
export interface Prepared {
  readonly shelf: { readonly text: string; readonly value: Shelf };
  readonly sources: { readonly text: string; readonly list: readonly Source[] };
  readonly layers: readonly PreparedLayer[];
}

let kept: Prepared | null | undefined;

/** What was prepared at build time, or null when it was not built: then everything is read from its text. */
export function prepared(): Prepared | null {
  if (kept === undefined) {
    try {
      kept = JSON.parse(readFileSync(join(packageFolder, 'dist', 'prepared.json'), 'utf8')) as Prepared;
    } catch {
      kept = null;
    }
  }
  return kept;
}
