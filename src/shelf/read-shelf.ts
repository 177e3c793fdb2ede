import { formatProblem } from '../base/file-format.js';
import type { Result } from '../base/problem.js';
import { schemaProblems } from '../base/schema-problems.js';
import { inFileOrder, limitProblems, readYaml } from '../base/yaml-document.js';
import { checkShelf } from './check-shelf.js';
import { fillShelf } from './fill-shelf.js';
import { shelfInputSchema } from './shelf-schema.js';
import type { Shelf } from './shelf.js';

/**
 * Reads a shelf that stands alone, or one laid over `base`: entries add to or replace those of the same key; blocks
 * fill in what they name.
 * With `knownSources` every source key must be one of them. All problems at once, with their places; never throws on
 * any text.
 */
export function readShelf(text: string, file: string, base?: Shelf, knownSources?: ReadonlySet<string>): Result<Shelf> {
  const { source, problems } = readYaml(text, file);
  if (source === null) return { ok: false, problems };
  const wrongFormat = formatProblem(source, 'shelf');
  if (wrongFormat !== null) return { ok: false, problems: limitProblems([...problems, wrongFormat]) };
  const checked = shelfInputSchema().safeParse(source.data);
  if (!checked.success)
    return {
      ok: false,
      problems: limitProblems(
        inFileOrder([...problems, ...schemaProblems(shelfInputSchema(), checked.error.issues, source)]),
      ),
    };
  const all = inFileOrder([...problems, ...checkShelf(checked.data, source, base, knownSources ?? null)]);
  if (all.some(({ severity }) => severity === 'error')) return { ok: false, problems: limitProblems(all) };
  return { ok: true, value: fillShelf(checked.data, base), warnings: all };
}
