import type { Problem } from '../../base/problem.js';
import type { Path, YamlSource } from '../../base/yaml-document.js';
import { listed, nearest } from '../../base/schema-problems.js';
import { catalogueByPath } from '../../facts/catalogue.js';
import type { Element, FactSpec } from '../../facts/fact.js';
import { amountIn, wordingOf } from '../quantity.js';
import type { RuleChecks } from './rule-checks.js';
import { ruleProblem } from './rule-problems.js';
import { linesOf, type Condition, type RuleExamples } from '../ruleset.js';
import type { ExampleInput, RuleInput } from './ruleset-schema.js';

type Values = Readonly<Record<string, number | string>>;

/** Reads a rule's examples into facts by path, in the catalogue's units; null after reporting. */
export function readExamples(
  input: NonNullable<RuleInput['examples']>,
  require: Condition,
  each: Element,
  path: Path,
  source: YamlSource,
  checks: RuleChecks,
  found: Problem[],
): RuleExamples | null {
  const before = found.length;
  const read = (example: ExampleInput, key: string): Values =>
    readValues(example, require, each, [...path, key], source, checks, found);
  const measured = linesOf(require).some((line) => catalogueByPath.get(line.fact)?.unit !== 'word');
  if (input.edge === undefined && measured && checks.examplesRequired)
    found.push(ruleProblem('no-edge', source.place(path)));
  const examples = {
    clear: read(input.clear, 'clear'),
    edge: input.edge === undefined ? null : read(input.edge, 'edge'),
    fails: read(input.fails, 'fails'),
    with: input.with === undefined ? {} : read(input.with, 'with'),
  };
  return found.length > before ? null : examples;
}

function readValues(
  input: ExampleInput,
  require: Condition,
  each: Element,
  path: Path,
  source: YamlSource,
  checks: RuleChecks,
  found: Problem[],
): Values {
  if (typeof input !== 'object') {
    const paths = new Set(linesOf(require).map((line) => line.fact));
    const [only] = paths;
    const spec = only === undefined ? undefined : catalogueByPath.get(only);
    if (spec === undefined || paths.size > 1) {
      found.push(ruleProblem('example-of-several', source.place(path)));
      return {};
    }
    return { [spec.path]: readValue(input, spec, path, source, found) };
  }
  const values = Object.entries(input).map(([name, value]) => {
    const spec = checks.fact(name, each, source.place([...path, name], 'key'), found);
    return [name, spec === null ? 0 : readValue(value, spec, [...path, name], source, found)] as const;
  });
  return Object.fromEntries(values);
}

/** A value of a fact; a bare number beside the fact's own path is in the fact's unit, which its path already names. */
function readValue(
  input: number | string,
  spec: FactSpec,
  path: Path,
  source: YamlSource,
  found: Problem[],
): number | string {
  const place = source.place(path);
  const value = source.written(path);
  if (spec.unit === 'word') {
    const word = String(input);
    if (spec.words !== undefined && !spec.words.includes(word))
      found.push(
        ruleProblem('not-its-word', place, { value, allowed: listed(spec.words), nearest: nearest(word, spec.words) }),
      );
    return word;
  }
  if (typeof input === 'number' && Number.isFinite(input)) return input;
  const amount = amountIn(String(input), spec.unit);
  if (amount === null)
    found.push(ruleProblem('unit-misfit', place, { value, allowed: wordingOf(spec.unit), name: spec.path }));
  return amount ?? 0;
}
