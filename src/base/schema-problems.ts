import { distance } from 'fastest-levenshtein';
import type { core } from 'zod/mini';
import { problemCodes, type ProblemCode } from './messages.js';
import { quoted } from './wording.js';
import type { Problem } from './problem.js';
import { series } from './series.js';
import { wantedQuantity, type SchemaFault } from './schema-parts.js';
import type { Path, YamlSource } from './yaml-document.js';

/**
 * The candidate nearest to what was written, when it is near enough to be a slip: a third of its length, at least two
 * letters.
 */
export function nearest(written: string, candidates: readonly string[]): string | undefined {
  const lower = written.toLowerCase().slice(0, 80);
  let best: { readonly name: string; readonly steps: number } | undefined;
  for (const name of candidates) {
    const steps = distance(lower, name.toLowerCase());
    if (best === undefined || steps < best.steps) best = { name, steps };
  }
  return best !== undefined && best.steps <= Math.max(2, Math.floor(best.name.length / 3)) ? best.name : undefined;
}

/** A short list for a message: `a, b or c`, cut after twelve. */
export function listed(names: readonly string[]): string {
  const shown = names.slice(0, 12).map((name) => `\`${name}\``);
  if (names.length > 12) return `${shown.join(', ')} and ${names.length - 12} more`;
  return series(shown, 'or');
}

type Def = {
  readonly type: string;
  readonly shape?: Record<string, core.$ZodType>;
  readonly innerType?: core.$ZodType;
  readonly element?: core.$ZodType;
  readonly valueType?: core.$ZodType;
  readonly options?: readonly core.$ZodType[];
  readonly getter?: () => core.$ZodType;
};
const defOf = (schema: core.$ZodType): Def => schema._zod.def as unknown as Def;

/** Every schema a path can lead to: optional wrappers opened, unions followed on all sides. */
function schemasAt(schema: core.$ZodType, path: Path): core.$ZodType[] {
  const def = defOf(schema);
  if (def.innerType) return schemasAt(def.innerType, path);
  if (def.getter) return schemasAt(def.getter(), path);
  if (def.options) return def.options.flatMap((option) => schemasAt(option, path));
  const [step, ...rest] = path;
  if (step === undefined) return [schema];
  if (def.shape) {
    const inner = Object.hasOwn(def.shape, step) ? def.shape[String(step)] : undefined;
    return inner ? schemasAt(inner, rest) : [];
  }
  const inside = def.element ?? def.valueType;
  return inside ? schemasAt(inside, rest) : [];
}

/** The keys a block at this path may have. */
export const knownKeys = (schema: core.$ZodType, path: Path): string[] =>
  schemasAt(schema, path).flatMap((found) => Object.keys(defOf(found).shape ?? {}));

const kinds: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: '`true` or `false`',
  array: 'a list (lines starting with a dash)',
  object: 'a block of keys',
  record: 'a block of keys',
  null: 'nothing',
};

/** What a schema at a path wants, in words. */
function wants(schema: core.$ZodType, path: Path): string {
  const words = schemasAt(schema, path).map((found) => {
    const def = defOf(found) as Def & {
      readonly values?: readonly unknown[];
      readonly entries?: Record<string, string>;
    };
    if (def.entries) return listed(Object.values(def.entries));
    if (def.values) return listed(def.values.map(String));
    return kinds[def.type] ?? 'another kind of value';
  });
  return [...new Set(words)].join(', or ') || 'another kind of value';
}

/** Tells every zod issue as a problem at its place in the file, all of them, in the order of the file. */
export function schemaProblems(
  schema: core.$ZodType,
  issues: readonly core.$ZodIssue[],
  source: YamlSource,
): Problem[] {
  return issues.flatMap((issue) => issueProblems(schema, issue, [], source));
}

function issueProblems(schema: core.$ZodType, issue: core.$ZodIssue, above: Path, source: YamlSource): Problem[] {
  const path: Path = [...above, ...issue.path.map((step) => (typeof step === 'number' ? step : String(step)))];
  const value = source.written(path);
  const name = String(path.at(-1) ?? 'this');
  const present = valueAt(source.data, path);
  const empty =
    present === null ? [source.problem('left-empty', path, { name, allowed: wants(schema, path) }, 'key')] : null;
  switch (issue.code) {
    case 'unrecognized_keys': {
      const known = knownKeys(schema, path);
      return issue.keys.map((key) =>
        source.problem(
          'unknown-key',
          [...path, key],
          { value: quoted(key), allowed: listed(known), nearest: nearest(key, known) },
          'key',
        ),
      );
    }
    case 'invalid_union':
      return empty ?? unionProblems(schema, issue, path, present, source);
    case 'invalid_type': {
      const quantity = wantedQuantity(issue.message);
      if (present === undefined)
        return [source.problem('missing', path, { name, allowed: quantity ?? wants(schema, path) })];
      if (empty) return empty;
      if (typeof present === 'number' && !Number.isFinite(present))
        return [source.problem('not-finite', path, { value: `\`${value}\`` })];
      if (quantity !== null)
        return [
          source.problem(typeof present === 'number' ? 'no-unit' : 'wrong-kind', path, {
            value: typeof present === 'number' ? value : quoted(`\`${value}\``),
            allowed: quantity,
          }),
        ];
      return [
        source.problem('wrong-kind', path, {
          value: `\`${value}\``,
          allowed: kinds[issue.expected] ?? wants(schema, path),
        }),
      ];
    }
    case 'invalid_value': {
      if (present === undefined)
        return [source.problem('missing', path, { name, allowed: listed(issue.values.map(String)) })];
      if (empty) return empty;
      return [
        source.problem('not-one-of', path, {
          value,
          allowed: listed(issue.values.map(String)),
          nearest: nearest(value, issue.values.map(String)),
        }),
      ];
    }
    case 'too_small':
    case 'too_big': {
      if (issue.origin === 'array')
        return [
          source.problem('too-many', path, {
            value: `${Array.isArray(present) ? present.length : 'too many'} entries`,
            allowed: rangeWords(schema, path),
          }),
        ];
      return [source.problem('out-of-range', path, { value: `\`${value}\``, allowed: rangeWords(schema, path) })];
    }
    case 'custom': {
      const fault = issue.params as unknown as SchemaFault | undefined;
      const code = problemCodes.find((known) => known === fault?.problem) ?? 'wrong-kind';
      return [source.problem(code, path, { value: quotedFor(code, value), name, allowed: fault?.allowed ?? '' })];
    }
    case 'invalid_key':
      return [source.problem('bad-key-name', path, { value: quoted(name) }, 'key')];
    default:
      return [source.problem('wrong-kind', path, { value: `\`${value}\``, allowed: wants(schema, path) })];
  }
}

/** Codes whose wording puts no quotation marks of its own around what was written. */
const bare: ReadonlySet<ProblemCode> = new Set(['out-of-range', 'bad-text', 'turned-range']);
const quotedFor = (code: ProblemCode, value: string): string => (bare.has(code) ? `\`${value}\`` : value);

/** A failed union speaks through the one branch that is of the value's kind; otherwise it says what kinds there are. */
function unionProblems(
  schema: core.$ZodType,
  issue: core.$ZodIssueInvalidUnion,
  path: Path,
  present: unknown,
  source: YamlSource,
): Problem[] {
  const name = String(path.at(-1) ?? 'this');
  if (present === undefined) return [source.problem('missing', path, { name, allowed: wants(schema, path) })];
  const ofItsKind = issue.errors.filter(
    (branch) =>
      !branch.some(
        (inner) => inner.path.length === 0 && (inner.code === 'invalid_type' || inner.code === 'invalid_value'),
      ),
  );
  const [branch, ...others] = ofItsKind;
  if (branch !== undefined && others.length === 0)
    return branch.flatMap((inner) => issueProblems(schema, inner, path, source));
  const quantity = issue.errors
    .flat()
    .map((inner) => wantedQuantity(inner.message ?? ''))
    .find((words) => words !== null);
  if (typeof present === 'number' && quantity)
    return [source.problem('no-unit', path, { value: source.written(path), allowed: quantity })];
  const words = issue.errors
    .flat()
    .flatMap((inner) => (inner.code === 'invalid_value' ? inner.values.map(String) : []));
  const value = source.written(path);
  if (typeof present === 'string' && words.length > 0)
    return [
      source.problem('not-one-of', path, { value, allowed: wants(schema, path), nearest: nearest(value, words) }),
    ];
  return [source.problem('wrong-kind', path, { value: `\`${value}\``, allowed: quantity ?? wants(schema, path) })];
}

/** The limits of numbers and lists at a path, in words. */
function rangeWords(schema: core.$ZodType, path: Path): string {
  for (const found of schemasAt(schema, path)) {
    const checks = ((found._zod.def as { readonly checks?: readonly core.$ZodCheck[] }).checks ?? []).map(
      (check) =>
        check._zod.def as {
          readonly check: string;
          readonly value?: number;
          readonly maximum?: number;
          readonly minimum?: number;
        },
    );
    const least =
      checks.find((check) => check.check === 'greater_than')?.value ??
      checks.find((check) => check.check === 'min_length')?.minimum;
    const most =
      checks.find((check) => check.check === 'less_than')?.value ??
      checks.find((check) => check.check === 'max_length')?.maximum;
    const kind = defOf(found).type === 'array' ? ' entries' : '';
    if (least !== undefined && most !== undefined) return `${least} to ${most}${kind}`;
    if (most !== undefined) return `at most ${most}${kind}`;
    if (least !== undefined) return `at least ${least}${kind}`;
  }
  return 'a number in reach';
}

function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}
