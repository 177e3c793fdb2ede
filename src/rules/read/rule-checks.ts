import type { Place } from '../../base/wording.js';
import type { Problem } from '../../base/problem.js';
import { listed, nearest } from '../../base/schema-problems.js';
import { catalogue, catalogueByPath } from '../../facts/catalogue.js';
import type { Element, FactPath, FactSpec } from '../../facts/fact.js';
import { cautions, cautionsById } from '../../findings/cautions.js';
import { ruleProblem } from './rule-problems.js';

/** Facts of the frame that are split by cause instead of having one value; rules cannot ask for them. */
const splitByCause: ReadonlySet<string> = new Set(['warp.cause_share']);

/** Sources that need no entry in the list: they say that there is no published one. */
const ownSources: readonly string[] = ['practice', 'proposal', 'measured', 'physics'];

/** The checks of single words in a ruleset against what exists: facts, sources, cautions. Each reports into `found`. */
export interface RuleChecks {
  readonly examplesRequired: boolean;
  /** The fact, when it exists and each `each` can see it; null after reporting. */
  readonly fact: (path: string, each: Element, place: Place, found: Problem[]) => FactSpec | null;
  /** The fact that a limit is a share of; null after reporting why it cannot be. */
  readonly limitBase: (path: string, place: Place, found: Problem[]) => FactPath | null;
  readonly source: (key: string, place: Place, found: Problem[]) => void;
  readonly caution: (id: string, place: Place, found: Problem[]) => void;
}

/** A fact of the catalogue; null, with its problem, where there is none of this name. */
function knownFact(path: string, place: Place, found: Problem[]): FactSpec | null {
  const spec = catalogueByPath.get(path);
  if (spec !== undefined) return spec;
  const paths = catalogue.map((entry) => entry.path);
  found.push(ruleProblem('unknown-fact', place, { value: path, nearest: nearest(path, paths) }));
  return null;
}

/** The checks, given the keys of the list of sources; without it any readable key will do. */
export function ruleChecks(sources: ReadonlySet<string> | null, examplesRequired: boolean): RuleChecks {
  const known = sources === null ? null : new Set([...sources, ...ownSources]);
  return {
    examplesRequired,
    fact: (path, each, place, found) => {
      const spec = knownFact(path, place, found);
      if (spec === null) return null;
      if (splitByCause.has(path)) found.push(ruleProblem('fact-by-cause', place, { value: path }));
      else if (spec.each !== each && spec.each !== 'frame')
        found.push(ruleProblem('fact-of-another', place, { value: path, name: spec.each, allowed: each }));
      else return spec;
      return null;
    },
    limitBase: (path, place, found) => {
      const spec = knownFact(path, place, found);
      if (spec === null) return null;
      if (spec.unit === 'word' || splitByCause.has(path))
        found.push(
          ruleProblem('of-misfit', place, { value: path, name: 'a word', allowed: 'a share of a measured fact' }),
        );
      else return spec.path;
      return null;
    },
    source: (key, place, found) => {
      const trimmed = key.trim();
      if (trimmed !== '' && (known === null ? /^[A-Za-z0-9][A-Za-z0-9.-]{0,59}$/.test(trimmed) : known.has(key)))
        return;
      found.push(
        ruleProblem('unknown-rule-source', place, { value: key, nearest: nearest(key, [...(known ?? ownSources)]) }),
      );
    },
    caution: (id, place, found) => {
      if (cautionsById.has(id)) return;
      const ids = cautions.map((caution) => caution.id);
      found.push(ruleProblem('unknown-caution', place, { value: id, allowed: listed(ids), nearest: nearest(id, ids) }));
    },
  };
}
