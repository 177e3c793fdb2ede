import { catalogueByPath } from '../../facts/catalogue.js';
import { evaluateRules } from '../evaluate.js';
import { exampleAbout, factsOf } from './examples.js';
import { possible } from './possible.js';
import { thresholdKey } from '../quantity.js';
import { linesOf, type Against, type Line, type Rule, type Ruleset } from '../ruleset.js';

/** Whether some values of the facts make a rule clear, and some make it say that something is wrong. */
export type Speech = 'speaks' | 'never-asked' | 'never-speaks' | 'never-clear';

const mostTries = 400;

/**
 * Tries a rule on values at, below and above every threshold it compares with (and on every word), until it speaks.
 * A rule that stays silent or clear on all of them can never speak, one that is never clear can never be met. Rules
 * with very many facts are tried in part and given the benefit of the doubt.
 */
export async function canSpeak(ruleset: Ruleset, rule: Rule): Promise<Speech> {
  const values = valuesToTry(ruleset, rule);
  const combinations = [...values.values()].reduce((product, list) => product * list.length, 1);
  let asked = false;
  let clear = false;
  let wrong = false;
  for (let index = 0; index < Math.min(combinations, mostTries); index += 1) {
    const { findings } = await evaluateRules(
      { ...ruleset, rules: [rule] },
      factsOf(rule.each, combination(values, index)),
    );
    const finding = findings.find(({ about }) => about === exampleAbout(rule.each));
    wrong ||= finding?.verdict === 'caution' || finding?.verdict === 'stop';
    clear ||= finding?.verdict === 'clear';
    if (clear && wrong) return 'speaks';
    asked ||= finding !== undefined;
  }
  if (combinations > mostTries) return 'speaks';
  return !asked ? 'never-asked' : wrong ? 'never-clear' : 'never-speaks';
}

function combination(
  values: ReadonlyMap<string, readonly (number | string)[]>,
  index: number,
): Readonly<Record<string, number | string>> {
  let rest = index;
  return Object.fromEntries(
    [...values].map(([path, list]) => {
      const value = list[rest % list.length]!;
      rest = Math.floor(rest / list.length);
      return [path, value];
    }),
  );
}

/**
 * Per fact: its words, or numbers around every threshold; facts that limits are shares of stand at one number, so that
 * thresholds stand still.
 */
function valuesToTry(ruleset: Ruleset, rule: Rule): ReadonlyMap<string, readonly (number | string)[]> {
  const values = new Map<string, readonly (number | string)[]>();
  const lines = [...linesOf(rule.require), ...linesOf(rule.applies)];
  for (const line of lines) {
    const spec = catalogueByPath.get(line.fact)!;
    const against = rule.otherwise.kind === 'stop-beyond' ? [line.against, rule.otherwise.stop] : [line.against];
    const around =
      spec.unit === 'word'
        ? (spec.words ?? [String((line.against as { readonly value: string }).value), anotherWord])
        : against
            .flatMap((one) => thresholdsNear(ruleset, line, one))
            .flatMap((at) => [at - step(at), at, at + step(at)])
            .concat(0, most);
    values.set(line.fact, [
      ...new Set([...(values.get(line.fact) ?? []), ...around.filter((value) => possible(value, spec))]),
    ]);
  }
  for (const path of basesOf(ruleset, lines)) if (!values.has(path)) values.set(path, [base]);
  return values;
}

/** A word that no file uses, for facts that may be any word. */
const anotherWord = 'something else';
const base = 1000;
/** Larger than any threshold, so that bounds that are shares of other facts are passed too. */
const most = 1e9;
const step = (at: number): number => Math.max(Math.abs(at) * 0.01, 1e-6);

function thresholdsNear(ruleset: Ruleset, line: Line, against: Against): readonly number[] {
  if (against.kind === 'number') return [against.value];
  if (against.kind === 'word') return [];
  const thresholds = ruleset.thresholds.get(thresholdKey(against.name, catalogueByPath.get(line.fact)!.unit));
  const scale = thresholds?.of == null ? 1 : base;
  return [thresholds?.value, thresholds?.stop, thresholds?.caution].flatMap((amount) =>
    amount == null ? [] : [amount * scale],
  );
}

function basesOf(ruleset: Ruleset, lines: readonly Line[]): readonly string[] {
  return lines.flatMap((line) => {
    const of = line.against.kind === 'limit' ? ruleset.limits.get(line.against.name)?.of : null;
    return of == null ? [] : [of];
  });
}
