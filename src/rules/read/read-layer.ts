import { dayNumber } from '../../base/days.js';
import type { Place } from '../../base/wording.js';
import type { Problem } from '../../base/problem.js';
import { limitProblems, readYaml, type Path, type YamlSource } from '../../base/yaml-document.js';
import { schemaProblems } from '../../base/schema-problems.js';
import { followBestBranch } from './best-branch.js';
import { isAmount } from '../quantity.js';
import { readRule } from './read-rule.js';
import type { RuleChecks } from './rule-checks.js';
import { ruleProblem } from './rule-problems.js';
import type { Layer, Limit, LimitAmounts, Points, Rule, SwitchedOff } from '../ruleset.js';
import {
  rulesetInputSchema,
  type LimitInput,
  type RuleInput,
  type RulesetInput,
  type SwitchedOffInput,
} from './ruleset-schema.js';

/** A file read on its own: what could be used of it, and everything that is wrong with it. */
export interface ReadLayer {
  /** Null when nothing of the file can be used. */
  readonly layer: Layer | null;
  readonly problems: readonly Problem[];
}

const mostEntries = 500;
const readableId = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*(?:\/[a-z0-9]+(?:-[a-z0-9]+)*)*$/;
const readableName = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;

/** Reads one ruleset file. What is broken is reported and left out, so that the rest can be checked as well. */
export function readLayer(text: string, file: string, checks: RuleChecks): ReadLayer {
  const { source, problems } = readYaml(text, file);
  if (source === null) return { layer: null, problems: problems.map(inRulesetWords) };
  const found: Problem[] = [...problems];
  const shape = shapeProblems(source);
  if (shape.fatal) return { layer: null, problems: limitProblems([...found, ...shape.problems]) };
  found.push(...shape.problems);
  const input = source.data as Partial<RulesetInput>;
  const usable = (path: Path): boolean => !shape.broken.has(pieceOf(path));
  const limits = readLimits(usable(['limits']) ? (input.limits ?? {}) : {}, source, usable, checks, found);
  const { rules, off } = readRules(usable(['rules']) ? (input.rules ?? []) : [], source, usable, checks, found);
  const below = usable(['builds-on']) ? (input['builds-on'] ?? []) : [];
  const builds_on = below.map((written, index) => ({
    written,
    file: rulesetFile(written),
    place: source.place(['builds-on', index]),
  }));
  const points = usable(['points']) ? readPoints(input.points ?? {}, source) : [];
  const name = usable(['name']) ? (input.name ?? file) : file;
  const version = usable(['version']) && input.version !== undefined ? String(input.version) : null;
  const date = usable(['date']) ? readDate(input.date, source, found) : null;
  const layer: Layer = { file, name, version, date, builds_on, limits, rules, off, points };
  return { layer, problems: limitProblems(found) };
}

function readPoints(input: Readonly<Record<string, number>>, source: YamlSource): readonly Points[] {
  return Object.entries(input)
    .slice(0, mostEntries)
    .map(([rule, points]) => ({ rule, points, place: source.place(['points', rule], 'key') }));
}

/** A day as `2026-09-01`; null, after reporting, when there is no such day. */
function readDate(date: string | undefined, source: YamlSource, found: Problem[]): string | null {
  if (date === undefined) return null;
  if (dayNumber(date) !== null) return date;
  found.push(ruleProblem('not-a-day', source.place(['date']), { value: source.written(['date']) }));
  return null;
}

/** `baseline` is short for `baseline.yaml`. */
export function rulesetFile(name: string): string {
  return /\.ya?ml$/.test(name) ? name : `${name}.yaml`;
}

/** The part of the file that a path belongs to: one limit, one rule, or a key of the top. */
function pieceOf(path: Path): string {
  const [top, entry] = path;
  return (top === 'limits' || top === 'rules') && entry !== undefined ? `${top} ${entry}` : String(top ?? '');
}

function shapeProblems(source: YamlSource): {
  readonly fatal: boolean;
  readonly broken: ReadonlySet<string>;
  readonly problems: readonly Problem[];
} {
  const { data } = source;
  const fatal = (problem: Problem) => ({ fatal: true, broken: new Set<string>(), problems: [problem] });
  if (typeof data !== 'object' || data === null || Array.isArray(data))
    return fatal(source.problem('not-a-map', [], { name: 'ruleset', value: source.written([]) }));
  const format = Object.hasOwn(data, 'ruleset') ? (data as { readonly ruleset: unknown }).ruleset : undefined;
  if (typeof format === 'number' && Number.isInteger(format) && format > 1)
    return fatal(source.problem('later-format', ['ruleset'], { name: 'ruleset', value: String(format) }));
  if (format === undefined)
    return fatal(source.problem('not-this-format', [], { name: 'ruleset', value: 'a file without `ruleset: 1`' }));
  const checked = rulesetInputSchema().safeParse(data);
  if (checked.success) return { fatal: false, broken: new Set(), problems: [] };
  const issues = followBestBranch(checked.error.issues);
  const problems = schemaProblems(rulesetInputSchema(), issues, source).map((problem) => plainer(problem, source));
  return { fatal: false, broken: new Set(issues.map((issue) => pieceOf(issue.path as Path))), problems };
}

const placeOf = ({ file, path, line, column, excerpt }: Problem): Place => ({
  file,
  path,
  line,
  column,
  ...(excerpt === undefined ? {} : { excerpt }),
});

/** What is wrong with the text itself, where the usual advice is about plans. */
function inRulesetWords(problem: Problem): Problem {
  return problem.code === 'empty-file' ? ruleProblem('empty-ruleset', placeOf(problem)) : problem;
}

/**
 * Slips that the schema can only call wrong: an amount alone where a limit is wanted, a rule switched off without a
 * reason.
 */
function plainer(problem: Problem, source: YamlSource): Problem {
  const [, limit] = /^limits\.([\w-]+)$/u.exec(problem.path) ?? [];
  if (limit !== undefined && problem.code === 'wrong-kind')
    return ruleProblem('bare-limit', placeOf(problem), { value: source.written(['limits', limit]), name: limit });
  if (!/^rules\[\d+\]\.off$/u.test(problem.path) || !['bad-text', 'left-empty'].includes(problem.code)) return problem;
  const [written] = /^`(.*)`$/u.exec(problem.found)?.slice(1) ?? [''];
  return (written ?? '').trim() === '' || problem.code === 'left-empty'
    ? ruleProblem('thin-reason', placeOf(problem), { value: '', allowed: String(leastWords) })
    : problem;
}

function readLimits(
  inputs: Readonly<Record<string, LimitInput>>,
  source: YamlSource,
  usable: (path: Path) => boolean,
  checks: RuleChecks,
  found: Problem[],
): readonly Limit[] {
  const limits: Limit[] = [];
  for (const [name, input] of Object.entries(inputs).slice(0, mostEntries)) {
    const path: Path = ['limits', name];
    if (!usable(path)) continue;
    const place = source.place(path, 'key');
    if (!readableName.test(name) || name.length > 60) found.push(ruleProblem('bad-limit-name', place, { value: name }));
    const before = found.length;
    checks.source(input.source, source.place([...path, 'source']), found);
    const of = input.of === undefined ? null : checks.limitBase(input.of, source.place([...path, 'of']), found);
    for (const [key, text] of Object.entries(amountsOf(input)))
      if (!isAmount(text)) found.push(ruleProblem('not-an-amount', source.place([...path, key]), { value: text }));
    const inches = inchesOf(input);
    for (const text of Object.values(inches ?? {}))
      if (!isAmount(text)) found.push(ruleProblem('not-an-amount', source.place([...path, 'inches']), { value: text }));
    if (found.length === before)
      limits.push({ name, amounts: amountsOf(input), inches, of, source: input.source, place });
  }
  tooMany(Object.keys(inputs).length, ['limits'], source, found);
  return limits;
}

function inchesOf(input: LimitInput): LimitAmounts | null {
  if ('value' in input) return input.inches === undefined ? null : { value: String(input.inches) };
  return input.inches === undefined ? null : { stop: String(input.inches.stop), caution: String(input.inches.caution) };
}

function amountsOf(input: LimitInput): LimitAmounts {
  return 'value' in input
    ? { value: String(input.value) }
    : { stop: String(input.stop), caution: String(input.caution) };
}

function readRules(
  inputs: readonly (RuleInput | SwitchedOffInput)[],
  source: YamlSource,
  usable: (path: Path) => boolean,
  checks: RuleChecks,
  found: Problem[],
): { readonly rules: readonly Rule[]; readonly off: readonly SwitchedOff[] } {
  const rules: Rule[] = [];
  const off: SwitchedOff[] = [];
  const seen = new Set<string>();
  inputs.slice(0, mostEntries).forEach((input, index) => {
    const path: Path = ['rules', index];
    if (!usable(path)) return;
    const idPlace = source.place([...path, 'id']);
    if (!readableId.test(input.id) || input.id.length > 60)
      found.push(ruleProblem('bad-rule-id', idPlace, { value: input.id }));
    if (seen.has(input.id)) found.push(ruleProblem('duplicate-rule', idPlace, { value: input.id }));
    seen.add(input.id);
    if ('off' in input) {
      if (wordsIn(input.off) < leastWords)
        found.push(
          ruleProblem('thin-reason', source.place([...path, 'off']), { value: input.off, allowed: String(leastWords) }),
        );
      off.push({ id: input.id, reason: input.off.trim(), place: idPlace });
      return;
    }
    const rule = readRule(input, path, source, checks, found);
    if (rule !== null) rules.push(rule);
  });
  tooMany(inputs.length, ['rules'], source, found);
  return { rules, off };
}

/** A reason of fewer words gives nobody a reason. */
const leastWords = 3;
const wordsIn = (text: string): number => (text.match(/[\p{L}\p{N}][\p{L}\p{N}\p{M}'’-]*/gu) ?? []).length;

function tooMany(count: number, path: Path, source: YamlSource, found: Problem[]): void {
  if (count > mostEntries)
    found.push(
      ruleProblem('too-many-rules', source.place(path, 'key'), { value: count, allowed: String(mostEntries) }),
    );
}
