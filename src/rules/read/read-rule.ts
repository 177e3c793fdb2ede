import type { Problem } from '../../base/problem.js';
import type { Path, YamlSource } from '../../base/yaml-document.js';
import { nearest } from '../../base/schema-problems.js';
import { formatQuantity } from '../../base/units-format.js';
import { catalogue, catalogueByPath } from '../../facts/catalogue.js';
import type { Element } from '../../facts/fact.js';
import { readCondition, readThreshold } from './read-condition.js';
import { readExamples } from './read-examples.js';
import type { RuleChecks } from './rule-checks.js';
import { ruleProblem } from './rule-problems.js';
import { linesOf, type Advice, type Condition, type Otherwise, type Rule } from '../ruleset.js';
import type { RuleInput } from './ruleset-schema.js';
import { titleOfId } from '../../findings/title.js';
import { placeholdersOf, plainPlaceholders } from '../say/say.js';

/** Reads one rule whose shape the schema has passed; null after reporting what is wrong with it. */
export function readRule(
  input: RuleInput,
  path: Path,
  source: YamlSource,
  checks: RuleChecks,
  found: Problem[],
): Rule | null {
  const before = found.length;
  const each: Element = input.each;
  const applies =
    input.applies === undefined
      ? null
      : readCondition(input.applies, [...path, 'applies'], each, source, checks, found);
  const require = readCondition(input.require, [...path, 'require'], each, source, checks, found);
  const otherwise =
    require === null ? null : readOtherwise(input.otherwise, require, [...path, 'otherwise'], source, found);
  checkSentence(input, each, path, source, found);
  if (input.do.length === 0)
    found.push(ruleProblem('empty-list', source.place([...path, 'do'], 'key'), { name: 'do' }));
  input.cautions?.forEach((id, index) => checks.caution(id, source.place([...path, 'cautions', index]), found));
  checks.source(input.source, source.place([...path, 'source']), found);
  if (input.examples === undefined && checks.examplesRequired)
    found.push(ruleProblem('no-examples', source.place(path)));
  const advice = input.do.map((one, index): Advice =>
    typeof one === 'string'
      ? { say: one, unless: null }
      : {
          say: one.say,
          unless: readCondition(one.unless, [...path, 'do', index, 'unless'], each, source, checks, found),
        },
  );
  const examples =
    input.examples === undefined || require === null
      ? null
      : readExamples(input.examples, require, each, [...path, 'examples'], source, checks, found);
  if (found.length > before || require === null || otherwise === null) return null;
  return {
    id: input.id,
    title: input.title ?? titleOfId(input.id),
    each,
    applies,
    require,
    otherwise,
    say: input.say,
    say_clear: input['say-clear'] ?? null,
    say_stop: input['say-stop'] ?? null,
    say_below_zero: input['say-below-zero'] ?? null,
    do: advice,
    cautions: input.cautions ?? [],
    source: input.source,
    examples,
    place: source.place([...path, 'id']),
  };
}

function readOtherwise(
  input: RuleInput['otherwise'],
  require: Condition,
  path: Path,
  source: YamlSource,
  found: Problem[],
): Otherwise | null {
  if (input === 'by-limit') return { kind: 'by-limit' };
  if (input === 'stop' || input === 'caution') return { kind: 'always', verdict: input };
  const [line, ...more] = linesOf(require);
  const spec = line === undefined ? undefined : catalogueByPath.get(line.fact);
  if (line === undefined || spec === undefined || more.length > 0 || spec.unit === 'word') {
    found.push(ruleProblem('thresholds-of-one-line', source.place(path)));
    return null;
  }
  const stop = readThreshold(input.stop, spec, line.compare, [...path, 'stop'], source, found);
  if (stop === null) return null;
  if (input.caution !== undefined) {
    const caution = readThreshold(input.caution, spec, line.compare, [...path, 'caution'], source, found);
    if (caution !== null && JSON.stringify(caution) !== JSON.stringify(line.against))
      found.push(
        ruleProblem('caution-differs', source.place([...path, 'caution']), {
          value: source.written([...path, 'caution']),
          allowed:
            line.against.kind === 'limit'
              ? `the limit ${line.against.name}`
              : formatQuantity(line.against.value, spec.unit, 'metric'),
        }),
      );
  }
  return { kind: 'stop-beyond', stop };
}

function checkSentence(input: RuleInput, each: Element, path: Path, source: YamlSource, found: Problem[]): void {
  const sayable = catalogue.filter((spec) => spec.each === each || spec.each === 'frame').map((spec) => spec.path);
  const known: readonly string[] = [...plainPlaceholders, ...sayable];
  const said = (['say', 'say-clear', 'say-stop', 'say-below-zero'] as const).flatMap((key) =>
    input[key] === undefined ? [] : [[[...path, key], input[key]] as const],
  );
  for (const [place, sentence] of [
    ...said,
    ...input.do.map((one, index) =>
      typeof one === 'string'
        ? ([[...path, 'do', index], one] as const)
        : ([[...path, 'do', index, 'say'], one.say] as const),
    ),
  ]) {
    for (const name of placeholdersOf(sentence)) {
      if (known.includes(name) || /^limits\.[a-z0-9-]+$/.test(name)) continue;
      found.push(
        ruleProblem('unknown-placeholder', source.place(place), { value: name, nearest: nearest(name, known) }),
      );
    }
  }
}
