import type { Place } from '../../base/wording.js';
import { lazily } from '../../base/lazily.js';
import type { Problem } from '../../base/problem.js';
import { nearest } from '../../base/schema-problems.js';
import { limitInWords, ruleInWords } from '../say/in-words.js';
import { usedLimits } from '../say/limits-used.js';
import { checkLimits, checkReadByFacts } from './check-limits.js';
import { ruleProblem } from './rule-problems.js';
import {
  limitsReadByFacts,
  type Change,
  type Layer,
  type Limit,
  type Rule,
  type Ruleset,
  type SwitchedOff,
  type Thresholds,
} from '../ruleset.js';

/** A ruleset laid together, or null when there is nothing to lay; and what only shows once it is. */
export interface Overlaid {
  readonly ruleset: Ruleset | null;
  readonly problems: readonly Problem[];
}

/**
 * Lays files over each other, in the given order: later ones win, by rule id and limit name. The last is the entry
 * file.
 * With `complete` false (some file could not be read in full) missing limits and rules are not complained about. With
 * `sound`, these very files in this order are known to fit each other, and what their limits come to is given.
 */
export function overlay(layers: readonly Layer[], complete = true, sound?: ReadonlyMap<string, Thresholds>): Overlaid {
  const entry = layers.at(-1);
  if (entry === undefined) return { ruleset: null, problems: [] };
  const problems: Problem[] = [];
  const limits = new Map<string, Limit>();
  const rules = new Map<string, Rule | null>();
  const off = new Map<string, SwitchedOff>();
  const history = new Map<string, readonly Change[]>();
  const setBy = new Map<string, { readonly layer: Layer; readonly content: () => string }>();
  const conflicts = new Map<string, Problem>();

  // Most rulesets are never asked what they said before: their words are made when they are.
  const record = (layer: Layer, key: string, say: () => string, place: Place, content = say): void => {
    const before = setBy.get(key);
    const knowing = before === undefined || before.content() === content() || reaches(layer, before.layer.file, layers);
    if (knowing) conflicts.delete(key);
    else
      conflicts.set(
        key,
        ruleProblem(
          'overlay-conflict',
          place,
          { name: key, value: `\`${before.layer.file}\` and \`${layer.file}\`` },
          'warning',
        ),
      );
    setBy.set(key, { layer, content });
    const change: Change = lazily({ said: say }, { file: layer.file, ruleset: layer.name });
    history.set(key, [...(history.get(key) ?? []), change]);
  };

  for (const layer of layers) {
    for (const limit of layer.limits) {
      record(layer, `limit ${limit.name}`, () => limitInWords(limit), limit.place);
      limits.set(limit.name, limit);
    }
    const so_far = new Map(limits);
    for (const rule of layer.rules) {
      const said = (): string => ruleInWords(rule, so_far);
      record(layer, `rule ${rule.id}`, said, rule.place, () => rulePrint(rule));
      rules.set(rule.id, rule);
      off.delete(rule.id);
    }
    for (const one of layer.off) {
      if (complete && !rules.has(one.id))
        problems.push(
          ruleProblem('off-unknown', one.place, { value: one.id, nearest: nearest(one.id, [...rules.keys()]) }),
        );
      record(layer, `rule ${one.id}`, () => `switched off: ${one.reason}`, one.place);
      rules.set(one.id, null);
      off.set(one.id, one);
    }
  }
  const points = new Map<string, number>();
  for (const one of layers.flatMap((layer) => layer.points)) {
    if (complete && !rules.has(one.rule))
      problems.push(
        ruleProblem('points-unknown', one.place, { value: one.rule, nearest: nearest(one.rule, [...rules.keys()]) }),
      );
    points.set(one.rule, one.points);
  }
  const live = [...rules.values()].filter((rule) => rule !== null);
  const thresholds = sound ?? checkedThresholds(live, limits, problems, complete);
  if (complete && live.length === 0)
    problems.push(
      ruleProblem('no-rules', { file: entry.file, path: 'rules', line: 1, column: 1 }, { value: entry.name }),
    );
  if (complete && sound === undefined) {
    const used = [...usedLimits(layers)];
    for (const limit of limits.values()) {
      const meant = used.includes(limit.name) ? undefined : nearest(limit.name, used);
      if (meant !== undefined)
        problems.push(ruleProblem('limit-unused', limit.place, { value: limit.name, nearest: meant }, 'warning'));
    }
  }
  const ruleset: Ruleset = {
    name: entry.name,
    file: entry.file,
    version: entry.version,
    date: entry.date,
    points,
    limits,
    thresholds,
    rules: live,
    off: [...off.values()],
    history,
    layers,
  };
  return { ruleset, problems: [...problems, ...conflicts.values()] };
}

/** What each limit comes to where a rule uses it; adds what does not fit to `problems`. */
function checkedThresholds(
  rules: readonly Rule[],
  limits: ReadonlyMap<string, Limit>,
  problems: Problem[],
  complete: boolean,
): ReadonlyMap<string, Thresholds> {
  const thresholds = new Map<string, Thresholds>();
  for (const rule of rules) checkLimits(rule, limits, thresholds, problems, complete);
  for (const name of limitsReadByFacts) checkReadByFacts(limits.get(name), problems);
  return thresholds;
}

/** Whether a layer builds on a file, directly or through others. */
function reaches(layer: Layer, file: string, layers: readonly Layer[], seen: ReadonlySet<string> = new Set()): boolean {
  return layer.builds_on.some(({ file: name }) => {
    if (name === file) return true;
    const below = layers.find((one) => one.file === name);
    return below !== undefined && !seen.has(name) && reaches(below, file, layers, new Set([...seen, name]));
  });
}

/** A rule's content without its places, so that two sayings of the same can be seen to agree. */
function rulePrint(rule: Rule): string {
  return JSON.stringify(rule, (key, value: unknown) => (key === 'place' ? undefined : value));
}
