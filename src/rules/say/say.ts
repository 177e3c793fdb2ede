import { capital } from '../../base/capital.js';
import { barNames, cornerNames, spokenName, type About, type UnitSystem } from '../../base/names.js';
import { rememberedBy } from '../../base/remembered.js';
import { besideLimit } from '../../base/beside-limit.js';
import { chanceInWords } from '../../base/chance-words.js';
import { timesInWords } from '../../base/times-words.js';
import { formatQuantity, formatShare, type QuantityUnit } from '../../base/units-format.js';
import { catalogueByPath, isFactPath, specOf } from '../../facts/catalogue.js';
import type { FactPath, FactUnit } from '../../facts/fact.js';
import { factInWords, toldUnit } from '../../facts/told.js';
import type { Verdict } from '../../findings/finding.js';
import type { FactTable } from '../judge/fact-table.js';
import { limitValue } from '../limit-value.js';
import { measuredUnits, thresholdsOf } from '../quantity.js';
import type { Compare, Line, Rule, Ruleset } from '../ruleset.js';
import type { PosedLine } from '../judge/settle.js';

/** Placeholders that every sentence may use; besides them any fact path, and `limits.NAME`. */
export const plainPlaceholders = ['about', 'actual', 'limit', 'used'] as const;

/** A share of a limit above this is told as more than it: nothing hangs on how many thousand per cent. */
const most_share = 9.99;

const placeholder = /\{([^{}]*)\}/g;

/**
 * A placeholder; where it is told as so many times a thing, with the word and the thing's first one, where it is one of
 * these.
 */
const hole = /\{([^{}]*)\}(?<times> times(?: (what|the|its)\b)?)?/g;

/** Words as they stand, and the placeholder after them; `times` is the word after `times`, null without that word. */
interface Piece {
  readonly before: string;
  readonly name: string | null;
  readonly times: string | null;
}

/** A sentence cut at its placeholders; the last piece has none. */
const piecesOf = rememberedBy(
  (sentence: string) => sentence,
  (sentence): readonly Piece[] => {
    const pieces: Piece[] = [];
    let from = 0;
    for (const match of sentence.matchAll(hole)) {
      const times = match.groups?.['times'] === undefined ? null : (match[3] ?? '');
      pieces.push({ before: sentence.slice(from, match.index), name: match[1] ?? '', times });
      from = match.index + match[0].length;
    }
    return [...pieces, { before: sentence.slice(from), name: null, times: null }];
  },
  1000,
);

/** The placeholders of a sentence, in order, without braces. */
export function placeholdersOf(sentence: string): readonly string[] {
  return [...sentence.matchAll(placeholder)].map((match) => match[1] ?? '');
}

/** What a sentence needs to be filled in. */
export interface SayContext {
  readonly ruleset: Ruleset;
  readonly table: FactTable;
  readonly units: UnitSystem;
  /** Of costs; empty where none is told. */
  readonly currency: string;
}

/** The rule's sentence, or one of its pieces of advice, with the placeholders filled in, starting with a capital. */
export function say(sentence: string, about: About, line: PosedLine, context: SayContext): string {
  const unit = toldUnit(line.line.fact);
  const fill = (name: string): string => {
    if (name === 'about') return aboutInWords(about);
    if (name === 'actual') return actualInWords(line, unit, context);
    if (name === 'limit') return formatQuantity(line.limit, unit, context.units, context.currency);
    if (name === 'used')
      return line.used === null ? 'an unknown share' : line.used > most_share ? 'over 999 %' : formatShare(line.used);
    if (name.startsWith('limits.')) return limitInWords(name.slice('limits.'.length), about, context);
    if (!isFactPath(name)) return 'an unknown amount';
    const reading = context.table.read(specOf(name), about);
    return typeof reading === 'object'
      ? 'an unknown amount'
      : factInWords(name, reading, context.units, context.currency);
  };
  return capital(
    piecesOf(sentence).reduce((text, { before, name, times }) => {
      const filled = name === null ? '' : fill(name);
      return text + before + (times === null ? filled : timesInWords(filled, times));
    }, ''),
  );
}

/** The sentence of a rule that fits what came of it: clear, stop, below nought, or the one that serves for the rest. */
export function sayVerdict(rule: Rule, verdict: Verdict, about: About, line: PosedLine, context: SayContext): string {
  if (verdict === 'clear') return say(rule.say_clear ?? rule.say, about, line, context);
  if (verdict === 'stop' && rule.say_stop !== null) return say(rule.say_stop, about, line, context);
  if (rule.say_below_zero === null || typeof line.actual !== 'number' || line.actual >= 0)
    return say(rule.say, about, line, context);
  return say(rule.say_below_zero, about, { ...line, actual: -line.actual }, context);
}

/** Why an element could not be judged. */
export function sayUnknown(line: PosedLine, about: About): string {
  const path = line.reason?.path ?? line.line.fact;
  const spec = catalogueByPath.get(path);
  const what = spec === undefined ? path : clause(spec.meaning);
  const why = line.reason?.why ?? '';
  return `${capital(aboutInWords(about))} cannot be judged, because this is not known: ${what}.${why === '' ? '' : ` ${why}`}`;
}

/** How a sentence names facts. */
export type Naming = (fact: FactPath) => string;

/** As rulesets and data have them. */
export const byPath: Naming = (fact) => fact;

/** Why a rule does not apply to an element. */
export function sayWhyNot(
  line: PosedLine,
  { units, currency }: Pick<SayContext, 'units' | 'currency'>,
  named: Naming,
): string {
  const { unit, meaning } = catalogueByPath.get(line.line.fact)!;
  if (line.limit === 'not-asked') return `Only asked when the plan asks ${clause(meaning)}.`;
  if (meaning.startsWith('Whether ') && line.line.compare === 'is' && line.limit === 'yes')
    return `Only asked when ${clause(meaning).slice('whether '.length)}; here that is not so.`;
  return `Only asked when ${lineInWords(line.line, formatQuantity(line.limit, unit, units, currency), named)}; here it is ${formatQuantity(line.actual, unit, units, currency)}.`;
}

const compareWords: Readonly<Record<Compare, string>> = {
  'at-most': 'is at most',
  'at-least': 'is at least',
  above: 'is above',
  below: 'is below',
  is: 'is',
  'is-not': 'is not',
};

/** A line of a rule in words, such as `bar.span_mm is above 300 mm`. */
export function lineInWords(line: Line, threshold: string, named: Naming): string {
  return `${named(line.fact)} ${compareWords[line.compare]} ${threshold}`;
}

/**
 * An element as one would say it in the middle of a sentence: `the left bar`, `the top left corner`, `crossbar 1`, `ply
 * 2 of the top bar`.
 */
export function aboutInWords(about: About): string {
  if ((barNames as readonly string[]).includes(about)) return `the ${about} bar`;
  if ((cornerNames as readonly string[]).includes(about)) return `the ${spokenName(about)} corner`;
  if (/^crossbar-\d+$/.test(about)) return spokenName(about);
  const ply = /^(top|bottom|left|right|crossbar-\d+)-(\d+)$/.exec(about);
  if (ply !== null) return `ply ${ply[2]} of ${aboutInWords(ply[1]!)}`;
  return `the ${about.replaceAll('-', ' ')}`;
}

function actualInWords(line: PosedLine, unit: QuantityUnit, { units, currency }: SayContext): string {
  const { actual, limit } = line;
  const shown = line.ready.sized && typeof actual === 'number' ? Math.abs(actual) : actual;
  if (unit === 'chance' && typeof shown === 'number') return chanceInWords(shown);
  const words = formatQuantity(shown, unit, units, currency);
  if (typeof shown !== 'number' || typeof limit !== 'number') return words;
  return besideLimit(words, formatQuantity(limit, unit, units, currency), shown, limit);
}

function limitInWords(name: string, about: About, { ruleset, table, units, currency }: SayContext): string {
  const of = ruleset.limits.get(name)?.of ?? null;
  const unit = of === null ? unitOfLimit(name, ruleset) : catalogueByPath.get(of)!.unit;
  const amounts = limitValue(
    ruleset,
    name,
    (path) => {
      const reading = table.read(specOf(path), about);
      return typeof reading === 'number' ? reading : null;
    },
    unit,
  );
  return formatQuantity(amounts?.value ?? amounts?.caution ?? null, unit, units, currency);
}

/**
 * The unit a limit is used in: that of the facts it is held against; of none, the first that its amounts can be read
 * in.
 */
function unitOfLimit(name: string, { limits, thresholds }: Ruleset): FactUnit {
  const used = [...thresholds.keys()].find((key) => key.startsWith(`${name} in `));
  if (used !== undefined) return used.slice(name.length + 4) as FactUnit;
  const limit = limits.get(name);
  return measuredUnits.find((unit) => limit !== undefined && thresholdsOf(limit, unit) !== null) ?? 'mm';
}

/** A meaning of the catalogue as a part of a sentence: a small letter first, no full stop last. */
function clause(meaning: string): string {
  const text = meaning.replace(/\.$/u, '');
  return /^[A-Z][a-z]/u.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
