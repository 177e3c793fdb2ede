import type { Place } from '../../base/wording.js';
import type { Problem } from '../../base/problem.js';
import { besideLimit } from '../../base/beside-limit.js';
import { nearest } from '../../base/schema-problems.js';
import { formatQuantity } from '../../base/units-format.js';
import { catalogueByPath } from '../../facts/catalogue.js';
import { limitInWords } from '../say/in-words.js';
import { limitInInches } from '../in-system.js';
import { thresholdKey, thresholdsOf, wordingOf } from '../quantity.js';
import { ruleProblem } from './rule-problems.js';
import { placeholdersOf } from '../say/say.js';
import { linesOf, type Against, type Limit, type Line, type Rule, type Thresholds } from '../ruleset.js';
import { sentencesOf } from '../say/sentences.js';

/**
 * Checks that every limit a rule names is there and fits the rule's facts, and that its thresholds lie in the right
 * order; adds what is wrong to `problems`, and what each limit comes to in the unit of its fact to `thresholds`.
 */
export function checkLimits(
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
        found.of,
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
export function checkReadByFacts(limit: Limit | undefined, problems: Problem[]): void {
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
  checkOrder(stopAt.value, cautionAt.value, stopAt.of, line, problems, line.place);
}

/** The stop threshold lies beyond the caution threshold, in the direction in which things get worse. */
function checkOrder(
  stop: number,
  caution: number,
  of: string | null,
  line: Line,
  problems: Problem[],
  place: Place,
): void {
  const growsWorse = line.compare === 'at-most' || line.compare === 'below';
  if (growsWorse ? stop >= caution : stop <= caution) return;
  const unit = of === null ? catalogueByPath.get(line.fact)!.unit : 'ratio';
  const [stopWords, cautionWords] = [stop, caution].map((amount) => formatQuantity(amount, unit, 'metric'));
  const share = of === null ? '' : ` of ${of}`;
  problems.push(
    ruleProblem('turned-thresholds', place, {
      value: `a stop at ${besideLimit(stopWords!, cautionWords!, stop, caution)}${share} and a caution at ${cautionWords}${share}`,
      allowed: `a stop ${growsWorse ? 'above' : 'below'} the caution, because \`${line.fact}\` must be ${line.compare} it`,
    }),
  );
}
