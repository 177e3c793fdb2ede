import { barNames, cornerNames, type About } from '../../base/names.js';
import { catalogueByPath } from '../../facts/catalogue.js';
import type { Element, Fact } from '../../facts/fact.js';
import type { Verdict } from '../../findings/finding.js';
import { evaluateRules } from '../evaluate.js';
import { overlay } from '../read/overlay.js';
import type { Rule, Ruleset } from '../ruleset.js';

/** What came of one example of a rule. `silent` when the rule did not apply, which shows nothing. */
export interface ExampleOutcome {
  readonly rule: string;
  readonly example: 'clear' | 'edge' | 'fails';
  readonly verdict: Verdict | 'silent';
  readonly wanted: 'clear' | 'not clear';
  readonly ok: boolean;
  /** What the rule said, or why it was silent. */
  readonly say: string;
}

/**
 * Tries a rule's examples, with the limits that its own file saw: a limit changed by a later file must not
 * turn the examples of an older rule wrong.
 */
export async function runExamples(ruleset: Ruleset, id: string): Promise<readonly ExampleOutcome[]> {
  const rule = ruleset.rules.find((one) => one.id === id);
  if (rule === undefined || rule.examples === null) return [];
  const then = asSeenFrom(ruleset, rule);
  const outcomes: ExampleOutcome[] = [];
  for (const example of ['clear', 'edge', 'fails'] as const) {
    const values = rule.examples[example];
    if (values === null) continue;
    const { findings, silent } = await evaluateRules(
      { ...then, rules: [rule] },
      factsOf(rule.each, { ...rule.examples.with, ...values }),
    );
    const about = exampleAbout(rule.each);
    const finding = findings.find((one) => one.about === about);
    const verdict = finding?.verdict ?? 'silent';
    const wanted = example === 'fails' ? 'not clear' : 'clear';
    const ok = wanted === 'clear' ? verdict === 'clear' : verdict === 'caution' || verdict === 'stop';
    outcomes.push({
      rule: id,
      example,
      verdict,
      wanted,
      ok,
      say: finding?.say ?? silent.find((one) => one.about === about)?.why ?? '',
    });
  }
  return outcomes;
}

/** Which examples of a rule come out as they say under the limits in force, whatever file set those. */
export async function examplesThatHold(ruleset: Ruleset, id: string): Promise<ReadonlySet<ExampleOutcome['example']>> {
  const rule = ruleset.rules.find((one) => one.id === id);
  const outcomes =
    rule === undefined
      ? []
      : await runExamples(
          {
            ...ruleset,
            layers: [
              {
                ...ruleset.layers.at(-1)!,
                rules: [...ruleset.rules],
                limits: [...ruleset.limits.values()],
                off: [],
                points: [],
              },
            ],
          },
          id,
        );
  return new Set(
    rule === undefined ? ['clear', 'edge', 'fails'] : outcomes.filter(({ ok }) => ok).map(({ example }) => example),
  );
}

/** The ruleset as it stood when the rule's own file had been laid. */
function asSeenFrom(ruleset: Ruleset, rule: Rule): Ruleset {
  const last = ruleset.layers.findLastIndex(({ rules }) => rules.includes(rule));
  return overlay(ruleset.layers.slice(0, last + 1)).ruleset ?? ruleset;
}

/** The element that examples of a kind are tried on. */
export function exampleAbout(each: Element): About {
  if (each === 'bar') return barNames[0];
  if (each === 'corner') return cornerNames[0];
  if (each === 'crossbar') return 'crossbar-1';
  if (each === 'fastening') return 'ply-screws';
  return each === 'board' ? 'top-1' : each;
}

/** Values by path as facts of the example's element and of the frame. */
export function factsOf(each: Element, values: Readonly<Record<string, number | string>>): readonly Fact[] {
  return Object.entries(values).flatMap(([path, value]) => {
    const spec = catalogueByPath.get(path);
    return spec === undefined
      ? []
      : [{ path: spec.path, about: spec.each === 'frame' ? 'frame' : exampleAbout(each), value, unit: spec.unit }];
  });
}
