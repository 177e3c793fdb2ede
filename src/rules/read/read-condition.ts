import type { Problem } from '../../base/problem.js';
import type { Path, YamlSource } from '../../base/yaml-document.js';
import { listed, nearest } from '../../base/schema-problems.js';
import type { Element, FactSpec } from '../../facts/fact.js';
import { amountIn, wordingOf } from '../quantity.js';
import type { RuleChecks } from './rule-checks.js';
import { ruleProblem } from './rule-problems.js';
import { compares, type Against, type Compare, type Condition, type Line } from '../ruleset.js';
import type { ConditionInput, LineInput, ThresholdInput } from './ruleset-schema.js';

/** How many groups may stand inside each other: nobody reads more. */
const mostGroups = 4;

/** Reads a line, or a group of lines and groups; null after reporting what is wrong with it. */
export function readCondition(
  input: ConditionInput,
  path: Path,
  each: Element,
  source: YamlSource,
  checks: RuleChecks,
  found: Problem[],
): Condition | null {
  const read = readPart(input, path, 1, { each, source, checks, found });
  return read === null || 'parts' in read ? read : { join: 'all', parts: [read] };
}

interface Reading {
  readonly each: Element;
  readonly source: YamlSource;
  readonly checks: RuleChecks;
  readonly found: Problem[];
}

function readPart(input: ConditionInput, path: Path, depth: number, reading: Reading): Line | Condition | null {
  const { each, source, checks, found } = reading;
  const join = 'any' in input ? 'any' : 'all' in input ? 'all' : null;
  if (join === null) return readLine(input as LineInput, path, each, source, checks, found);
  const group = (input as Readonly<Record<string, readonly ConditionInput[]>>)[join]!;
  const wrong = group.length === 0 ? 'empty-group' : depth > mostGroups ? 'deep-group' : null;
  if (wrong !== null) {
    found.push(ruleProblem(wrong, source.place([...path, join], 'key'), { name: join, allowed: String(mostGroups) }));
    return null;
  }
  const parts = group.map((part, index) => readPart(part, [...path, join, index], depth + 1, reading));
  return parts.every((part) => part !== null) ? { join, parts } : null;
}

function readLine(
  input: LineInput,
  path: Path,
  each: Element,
  source: YamlSource,
  checks: RuleChecks,
  found: Problem[],
): Line | null {
  const spec = checks.fact(input.fact, each, source.place([...path, 'fact']), found);
  const said = compares.filter((compare) => input[compare] !== undefined);
  const [compare, ...others] = said;
  if (compare === undefined || others.length > 0) {
    const place = source.place(path);
    found.push(
      compare === undefined
        ? ruleProblem('no-comparison', place, { value: input.fact })
        : ruleProblem('several-comparisons', place, { value: input.fact, name: listed(said) }),
    );
    return null;
  }
  const at = [...path, compare];
  if (spec === null) return null;
  const against = readThreshold(input[compare]!, spec, compare, at, source, found);
  return against === null ? null : { fact: spec.path, compare, against, place: source.place(at) };
}

/**
 * Reads what a fact is compared with; null after reporting. Limits by name are looked up later, when all files are laid
 * together.
 */
export function readThreshold(
  input: ThresholdInput,
  spec: FactSpec,
  compare: Compare,
  path: Path,
  source: YamlSource,
  found: Problem[],
): Against | null {
  const place = source.place(path);
  const value = source.written(path);
  const named = compare === 'is' || compare === 'is-not';
  if (spec.unit === 'word') {
    if (!named) found.push(ruleProblem('word-measured', place, { name: compare, value: spec.path }));
    else if (typeof input !== 'string' || (spec.words !== undefined && !spec.words.includes(input)))
      found.push(
        ruleProblem('not-its-word', place, {
          value,
          allowed: spec.words === undefined ? 'a key of the shelf' : listed(spec.words),
          nearest: nearest(value, spec.words ?? []),
        }),
      );
    else return { kind: 'word', value: input };
    return null;
  }
  if (named && spec.unit !== 'count') {
    found.push(ruleProblem('number-named', place, { name: compare, value: spec.path }));
    return null;
  }
  if (typeof input === 'object') return { kind: 'limit', name: input.limit };
  const amount = amountIn(String(input), spec.unit);
  if (amount === null || !Number.isFinite(amount))
    found.push(ruleProblem('unit-misfit', place, { value, allowed: wordingOf(spec.unit), name: spec.path }));
  else if (amount < 0 && spec.signed === true && (compare === 'at-most' || compare === 'below'))
    found.push(ruleProblem('never-met', place, { name: compare, value: spec.path }));
  else return { kind: 'number', value: amount };
  return null;
}
