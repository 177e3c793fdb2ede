import { barNames, cornerNames, type About } from '../../base/names.js';
import { specOf } from '../../facts/catalogue.js';
import type { Element, Fact, FactSpec } from '../../facts/fact.js';
import type { Unknown } from '../../facts/declare.js';
import type { FactSource } from '../../facts/fact-source.js';

/** A fact as a rule may use it: a finite number or a known word, or the reason why there is none. */
export type Reading = number | string | Unknown;

/** The facts of one plan, ready to be asked for by path and element. */
export interface FactTable {
  /** Every element of the kind, in a fixed order: those that any frame has, and those that the facts mention. */
  readonly elementsOf: (each: Element) => readonly About[];
  /** The fact as seen from an element: frame facts are seen from everywhere, others only from their own element. */
  readonly read: (spec: FactSpec, about: About) => Reading;
}

/** Elements that every plan has: when nothing at all is known of one, its rules are unknown rather than silent. */
const alwaysThere: Readonly<Partial<Record<Element, readonly About[]>>> = {
  bar: barNames,
  corner: cornerNames,
};

/** Kinds of which every plan has exactly one; the facts may call it what they like. */
const oneOfAKind: readonly Element[] = ['cloth', 'cutting'];

/** Makes facts ready for rules. */
export function tabulate(facts: FactSource): FactTable {
  const read = (spec: FactSpec, about: About): Reading =>
    readingOf(facts.at(spec.path, spec.each === 'frame' ? 'frame' : about), spec);
  const elements = (each: Element): readonly About[] => {
    if (each === 'frame') return ['frame'];
    const mentioned = facts.abouts(each);
    if (mentioned.length === 0 && oneOfAKind.includes(each)) return [each];
    const expected =
      each === 'crossbar' ? crossbarNames(read(specOf('frame.crossbars_count'), 'frame')) : (alwaysThere[each] ?? []);
    const all = [...expected];
    for (const about of mentioned) if (!all.includes(about)) all.push(about);
    return all;
  };
  const found = new Map<Element, readonly About[]>();
  return {
    elementsOf: (each) => {
      let known = found.get(each);
      if (known === undefined) found.set(each, (known = elements(each)));
      return known;
    },
    read,
  };
}

function readingOf(fact: Fact | null, spec: FactSpec): Reading {
  if (fact === null) return { unknown: 'It was not computed.' };
  const { value } = fact;
  if (value === null || value === undefined) return { unknown: sentence(fact.reason) };
  if (fact.unit !== spec.unit) return { unknown: `It came in ${fact.unit}, where ${spec.unit} was wanted.` };
  if (spec.unit === 'word') {
    if (typeof value === 'string' && (spec.words === undefined || spec.words.includes(value))) return value;
    return { unknown: 'It came as a word that means nothing here.' };
  }
  if (typeof value !== 'number') return { unknown: 'It came as text where a number was wanted.' };
  if (!Number.isFinite(value)) return { unknown: 'It came out as no finite number.' };
  return value;
}

function sentence(reason: string | undefined): string {
  const text = (reason ?? '').trim();
  if (text === '') return 'No reason was given.';
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

function crossbarNames(count: Reading): readonly About[] {
  if (typeof count !== 'number') return [];
  const most = Math.min(Math.max(Math.floor(count), 0), 1000);
  return Array.from({ length: most }, (_, index) => `crossbar-${index + 1}`);
}
