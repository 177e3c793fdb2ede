import type { Place } from '../../base/messages.js';
import type { Problem } from '../../base/problem.js';
import { nearest } from '../../base/schema-problems.js';
import { catalogueByPath } from '../../facts/catalogue.js';
import { limitInWords, ruleInWords } from '../say/in-words.js';
import { limitInInches } from '../in-system.js';
import { usedLimits } from '../say/limits-used.js';
import { thresholdKey, thresholdsOf, wordingOf } from '../quantity.js';
import { ruleProblem } from './rule-problems.js';
import { placeholdersOf } from '../say/say.js';
import {
  limitsReadByFacts,
  linesOf,
  type Against,
  type Change,
  type Layer,
  type Limit,
  type Line,
  type Rule,
  type Ruleset,
  type SwitchedOff,
  type Thresholds,
} from '../ruleset.js';
import { sentencesOf } from '../say/sentences.js';

/** A ruleset laid together, or null when there is nothing to lay; and what only shows once it is. */
export interface Overlaid {
  readonly ruleset: Ruleset | null;
  readonly problems: readonly Problem[];
}

/**
 * Lays files over each other, in the given order: later ones win, by rule id and limit name. The last is the entry
 * file.
 * With `complete` false (some file could not be read in full) missing limits and rules are not complained about.
 */
export function overlay(layers: readonly Layer[], complete = true): Overlaid {
  const entry = layers.at(-1);
  if (entry === undefined) return { ruleset: null, problems: [] };
  const problems: Problem[] = [];
  const limits = new Map<string, Limit>();
  const rules = new Map<string, Rule | null>();
  const off = new Map<string, SwitchedOff>();
  const history = new Map<string, readonly Change[]>();
  const setBy = new Map<string, { readonly layer: Layer; readonly content: string }>();
  const conflicts = new Map<string, Problem>();

  const record = (layer: Layer, key: string, said: string, place: Place, content = said): void => {
    const before = setBy.get(key);
    const knowing = before === undefined || before.content === content || reaches(layer, before.layer.file, layers);
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
    history.set(key, [...(history.get(key) ?? []), { file: layer.file, ruleset: layer.name, said }]);
  };

  for (const layer of layers) {
    for (const limit of layer.limits) {
      record(layer, `limit ${limit.name}`, limitInWords(limit), limit.place);
      limits.set(limit.name, limit);
    }
    for (const rule of layer.rules) {
      record(layer, `rule ${rule.id}`, ruleInWords(rule, limits), rule.place, rulePrint(rule));
      rules.set(rule.id, rule);
      off.delete(rule.id);
    }
    for (const one of layer.off) {
      if (complete && !rules.has(one.id))
        problems.push(
          ruleProblem('off-unknown', one.place, { value: one.id, nearest: nearest(one.id, [...rules.keys()]) }),
        );
      record(layer, `rule ${one.id}`, `switched off: ${one.reason}`, one.place);
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
  const thresholds = new Map<string, Thresholds>();
  for (const rule of live) checkLimits(rule, limits, thresholds, problems, complete);
  for (const name of limitsReadByFacts) checkReadByFacts(limits.get(name), problems);
  if (complete && live.length === 0)
    problems.push(
      ruleProblem('no-rules', { file: entry.file, path: 'rules', line: 1, column: 1 }, { value: entry.name }),
    );
  if (complete) {
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

function checkLimits(
  rule: Rule,
  limits: ReadonlyMap<string, Limit>,
  thresholds: Map<string, Thresholds>,
  problems: Problem[],
  complete: boolean,
): void {
  const names = [...limits.keys()];
  const unknown = (name: string, place: Place): void => {
    if (complete) problems.push(ruleProblem('unknown-limit', place, { value: name, nearest: nearest(name, names) }));
  };
  const resolve = (line: Line, against: Against): Thresholds | null => {
    if (against.kind !== 'limit') return null;
    const limit = limits.get(against.name);
    if (limit === undefined) {
      unknown(against.name, line.place);
      return null;
    }
    const found = fitted(limit, line, rule, problems);
    if (found !== null) thresholds.set(thresholdKey(limit.name, catalogueByPath.get(line.fact)!.unit), found);
    return found;
  };
  const double: Thresholds[] = [];
  for (const line of linesOf(rule.require)) {
    const found = resolve(line, line.against);
    if (found === null || found.value !== null) continue;
    double.push(found);
    if (rule.otherwise.kind !== 'by-limit') problems.push(twoThresholds(line.against, line, rule, limits));
    else
      checkOrder(
        found.stop!,
        found.caution!,
        line,
        problems,
        limits.get((line.against as { readonly name: string }).name)!.place,
      );
  }
  for (const line of [...linesOf(rule.applies), ...rule.do.flatMap(({ unless }) => linesOf(unless))]) {
    const found = resolve(line, line.against);
    if (found !== null && found.value === null) problems.push(twoThresholds(line.against, line, rule, limits));
  }
  const allKnown = linesOf(rule.require).every(({ against }) => against.kind !== 'limit' || limits.has(against.name));
  if (rule.otherwise.kind === 'by-limit' && double.length !== 1 && allKnown) problems.push(oneThreshold(rule, limits));
  if (rule.otherwise.kind === 'stop-beyond') checkStopBeyond(rule, resolve, problems);
  for (const name of sentencesOf(rule).flatMap(placeholdersOf))
    if (name.startsWith('limits.') && !limits.has(name.slice(7))) unknown(name.slice(7), rule.place);
}

/**
 * A limit of two thresholds where one is wanted: told where the limit was written, when another file than the rule's
 * did so.
 */
function twoThresholds(against: Against, line: Line, rule: Rule, limits: ReadonlyMap<string, Limit>): Problem {
  const { name } = against as { readonly name: string };
  const limit = limits.get(name)!;
  if (limit.place.file === rule.place.file) return ruleProblem('two-thresholds', line.place, { value: name });
  return ruleProblem('limit-form', limit.place, {
    value: `${name}: ${limitInWords(limit)}`,
    allowed: 'one `value`',
    name: rule.id,
    nearest: `Write \`${name}: { value: …, source: … }\` with one amount.`,
  });
}

/** A limit of one value where two thresholds are wanted, likewise. */
function oneThreshold(rule: Rule, limits: ReadonlyMap<string, Limit>): Problem {
  const named = linesOf(rule.require).flatMap(({ against }) =>
    against.kind === 'limit' ? [limits.get(against.name)!] : [],
  );
  const changed = named.find((limit) => 'value' in limit.amounts && limit.place.file !== rule.place.file);
  if (changed === undefined) return ruleProblem('one-threshold', rule.place, { value: rule.id });
  return ruleProblem('limit-form', changed.place, {
    value: `${changed.name}: ${limitInWords(changed)}`,
    allowed: 'both `stop` and `caution`',
    name: rule.id,
    nearest: `Write \`${changed.name}: { stop: …, caution: …, source: … }\` with both amounts.`,
  });
}

/** The limits that define a chance are lengths, one number each, whether a rule names them or not. */
function checkReadByFacts(limit: Limit | undefined, problems: Problem[]): void {
  if (limit === undefined) return;
  const found = thresholdsOf(limit, limit.of === null ? 'mm' : catalogueByPath.get(limit.of)!.unit);
  const length = limit.of === null || catalogueByPath.get(limit.of)!.unit === 'mm';
  if (found === null || found.value === null || found.value <= 0 || !length)
    problems.push(
      ruleProblem('limit-misfit', limit.place, {
        value: `${limit.name}: ${limitInWords(limit)}`,
        allowed: 'one length above zero, such as `5 mm`, or a share `of:` a length',
        name: 'the chance it defines',
      }),
    );
}

/** A limit as numbers for the fact of a line; null after reporting that it does not fit. */
function fitted(limit: Limit, line: Line, rule: Rule, problems: Problem[]): Thresholds | null {
  const spec = catalogueByPath.get(line.fact)!;
  if (limit.of !== null) {
    const base = catalogueByPath.get(limit.of)!;
    const comparable = base.unit === spec.unit;
    if (!comparable || (base.each !== rule.each && base.each !== 'frame')) {
      problems.push(
        ruleProblem('of-misfit', limit.place, {
          value: limit.name,
          name: limit.of,
          allowed: `a share of a fact in ${spec.unit} of each ${rule.each} or of the frame, as the rule ${rule.id} uses it on ${line.fact}`,
        }),
      );
      return null;
    }
  }
  const found = thresholdsOf(limit, spec.unit);
  const twin = thresholdsOf(limitInInches(limit), spec.unit);
  const magnitude = spec.signed === true && (line.compare === 'at-most' || line.compare === 'below');
  const negative =
    magnitude &&
    [found, twin].some(
      (one) => one !== null && [one.value, one.stop, one.caution].some((amount) => amount !== null && amount < 0),
    );
  if (found === null || twin === null || negative)
    problems.push(
      ruleProblem('limit-misfit', limit.place, {
        value: `${limit.name}: ${limitInWords(limit)}`,
        allowed: limit.of === null ? wordingOf(spec.unit) : wordingOf('ratio'),
        name: `${line.fact} in the rule ${rule.id}`,
      }),
    );
  return negative ? null : found;
}

function checkStopBeyond(
  rule: Rule,
  resolve: (line: Line, against: Against) => Thresholds | null,
  problems: Problem[],
): void {
  const line = linesOf(rule.require)[0]!;
  if (rule.otherwise.kind !== 'stop-beyond') return;
  const { stop } = rule.otherwise;
  const stopAt = stop.kind === 'limit' ? resolve(line, stop) : { of: null, value: Number(stop.value) };
  const cautionAt =
    line.against.kind === 'limit' ? resolve(line, line.against) : { of: null, value: Number(line.against.value) };
  if (stop.kind === 'limit' && stopAt !== null && stopAt.value === null)
    problems.push(ruleProblem('two-thresholds', line.place, { value: stop.name }));
  if (
    stopAt === null ||
    cautionAt === null ||
    stopAt.of !== cautionAt.of ||
    stopAt.value === null ||
    cautionAt.value === null
  )
    return;
  checkOrder(stopAt.value, cautionAt.value, line, problems, line.place);
}

/** The stop threshold lies beyond the caution threshold, in the direction in which things get worse. */
function checkOrder(stop: number, caution: number, line: Line, problems: Problem[], place: Place): void {
  const growsWorse = line.compare === 'at-most' || line.compare === 'below';
  if (growsWorse ? stop >= caution : stop <= caution) return;
  problems.push(
    ruleProblem('turned-thresholds', place, {
      value: `a stop at ${stop} and a caution at ${caution}`,
      allowed: `a stop ${growsWorse ? 'above' : 'below'} the caution, because \`${line.fact}\` must be ${line.compare} it`,
    }),
  );
}
