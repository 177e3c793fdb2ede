import { formatLength, formatQuantity } from '../base/units-format.js';
import type { UnitSystem } from '../base/names.js';
import type { Fact, FactPath } from '../facts/fact.js';
import type { Audit } from './audit-view.js';
import { userText } from './clean-text.js';
import type { Picture } from './drawings/picture.js';
import type { Block } from './tree.js';

/** One part of the report: its heading, what it says, and the pictures it shows. */
export interface Section {
  readonly title: string;
  readonly blocks: readonly Block[];
  readonly pictures: readonly Picture[];
}

/** An audit with its facts at hand, in the reader's own units. */
export interface Telling {
  readonly audit: Audit;
  readonly units: UnitSystem;
  /** The facts of a path, in order. */
  readonly each: (path: FactPath) => readonly Fact[];
  /** The value of a fact that is a number; of the first element when none is named. Null when unknown or missing. */
  readonly number: (path: FactPath, about?: string) => number | null;
  /** The value of a fact that is a word. */
  readonly word: (path: FactPath, about?: string) => string | null;
  /** The value in words and units; `unknown` when it is. */
  readonly said: (path: FactPath, about?: string) => string;
  /** A length in the reader's units. */
  readonly length: (mm: number) => string;
  /** The same for an amount that may be too small to read off a tape. */
  readonly small: (mm: number) => string;
}

/** Makes the facts of an audit easy to ask for. */
export function telling(audit: Audit): Telling {
  const { units } = audit.plan;
  const byPath = new Map<string, Fact[]>();
  for (const fact of audit.facts) byPath.set(fact.path, [...(byPath.get(fact.path) ?? []), fact]);
  const each = (path: FactPath): readonly Fact[] => byPath.get(path) ?? [];
  const find = (path: FactPath, about?: string): Fact | undefined =>
    about === undefined ? each(path)[0] : each(path).find((fact) => fact.about === about);
  return {
    audit,
    units,
    each,
    number: (path, about) => {
      const value = find(path, about)?.value;
      return typeof value === 'number' && Number.isFinite(value) ? value : null;
    },
    word: (path, about) => {
      const value = find(path, about)?.value;
      return typeof value === 'string' ? value : null;
    },
    said: (path, about) => {
      const fact = find(path, about);
      return fact === undefined
        ? 'unknown'
        : formatQuantity(fact.value, fact.unit, units, userText(audit.shelf.currency, 8));
    },
    length: (mm) => formatLength(mm, units),
    small: (mm) =>
      /^-?0 /u.test(formatLength(mm, units))
        ? `less than ${units === 'metric' ? '0.1 mm' : '1/64 in'}`
        : formatLength(mm, units),
  };
}

/** Whether the plan itself must stop; a stop of the bench sheet comes when the frame is cut already. */
export const mustStop = ({ audit }: Telling): boolean =>
  audit.findings.some(({ verdict, rule }) => verdict === 'stop' && !rule.startsWith('measured/'));

/** What stands where a stopped plan's steps would. */
export const notToTheSaw =
  'This plan must stop, so no saw steps, no board pictures and no order of work are printed: change it first, as “What to change” says. The lists show what it would take.';
