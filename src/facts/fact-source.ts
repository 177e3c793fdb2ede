import type { About } from '../base/names.js';
import { lazily } from '../base/lazily.js';
import { once } from '../base/once.js';
import { suppliesOf } from '../cost/supplies.js';
import { allFit, boardsFor, type Boards } from '../cutting/enough-boards.js';
import type { FactSettings, Model, Solution } from '../model/model.js';
import type { Shelf } from '../shelf/shelf.js';
import { catalogueByPath } from './catalogue.js';
import type { Declared, FactGroup, FactInput, FactValue } from './declare.js';
import type { Element, Fact, FactPath, FactUnit } from './fact.js';
import { factGroups } from './groups.js';

/** The facts of one plan, to be asked for by path and element. */
export interface FactSource {
  /** The elements of a kind that there are facts of, in the order of the facts. */
  readonly abouts: (each: Element) => readonly About[];
  /** The fact of a path about an element: unknown where two values are given, null where none is. */
  readonly at: (path: FactPath, about: About) => Fact | null;
  /** Every fact, by subject. */
  readonly all: () => readonly Fact[];
}

/**
 * From what the facts of a plan are worked out: its boards are cut, unless it is known how, and its bill is made, when
 * that is first asked.
 */
export function factInput(
  model: Model,
  solution: Solution,
  settings: FactSettings,
  shop: Shelf,
  known: Boards | null = null,
): FactInput {
  const boards = once(() => known ?? boardsFor([model.plan], shop));
  return lazily(
    {
      cut: () => boards().cut,
      too_long: () => (known === null && allFit([model.plan], shop) ? 0 : boards().cut.too_long.length),
      bought: () => suppliesOf(model, shop, boards()),
    },
    { model, solution, settings },
  );
}

/** One fact of a group: how it is worked out there. */
interface Place {
  readonly path: FactPath;
  readonly declared: Declared;
  readonly group: number;
  /** Which of its group it is. */
  readonly index: number;
  readonly value: (work: unknown) => FactValue;
}

const groups = factGroups as readonly unknown[] as readonly FactGroup<FactPath>[];
const placesOf = groups.map(({ declared, valueOf }, group) =>
  [...declared].map(([path, one], index): Place => ({ path, declared: one, group, index, value: valueOf(path) })),
);
const placeOf: ReadonlyMap<string, Place> = new Map(placesOf.flat().map((place) => [place.path, place]));

/** The facts that a plan has, each worked out when it is first asked for, and kept. */
export function factsOfPlan(input: FactInput): FactSource {
  const elementsOf = rememberedElements(input);
  return {
    abouts: (each) => {
      const found: About[] = [];
      for (let number = 0; number < groups.length; number++)
        if (groups[number]!.each === each) for (const { about } of elementsOf(number)) found.push(about);
      return found;
    },
    at: (path, about) => {
      const place = placeOf.get(path)!;
      let found: Fact | null = null;
      for (const element of elementsOf(place.group)) {
        const fact = element.about === about ? factOf(element, place) : null;
        if (fact !== null) found = agreed(found, fact);
      }
      return found;
    },
    all: once(() => listed(elementsOf, () => true)),
  };
}

/** One element of a group, with the facts that were asked of it so far; null where it has no such fact. */
interface OpenElement {
  readonly about: About;
  readonly work: unknown;
  readonly facts: (Fact | null | undefined)[];
}

/** The elements of a group, by its number. */
type ElementsOf = (group: number) => readonly OpenElement[];

function rememberedElements(input: FactInput): ElementsOf {
  const opened: (readonly OpenElement[] | undefined)[] = [];
  return (group) =>
    (opened[group] ??= groups[group]!.of(input).map(([about, work]): OpenElement => ({ about, work, facts: [] })));
}

function factOf({ about, work, facts }: OpenElement, { path, declared, index, value }: Place): Fact | null {
  const known = facts[index];
  return known === undefined ? (facts[index] = shown(path, about, declared.unit, value(work))) : known;
}

function shown(path: FactPath, about: About, unit: FactUnit, value: FactValue): Fact | null {
  if (value === null) return null;
  return typeof value === 'object'
    ? { path, about, value: null, unit, reason: value.unknown }
    : { path, about, value, unit };
}

/** What is wanted of the catalogue. */
export type Wanted = (declared: Declared, path: FactPath) => boolean;

const listed = (elementsOf: ElementsOf, wanted: Wanted): Fact[] =>
  placesOf.flatMap((places, group) => {
    const asked = places.filter(({ declared, path }) => wanted(declared, path));
    return asked.length === 0
      ? []
      : elementsOf(group).flatMap((element) => asked.flatMap((place) => factOf(element, place) ?? []));
  });

/** The wanted facts that a plan has, by subject; nothing is worked out for the others. */
export const factsWanted = (input: FactInput, wanted: Wanted): Fact[] => listed(rememberedElements(input), wanted);

/** Facts that are there already. */
export function factsGiven(facts: readonly Fact[]): FactSource {
  const known = new Map<About, Map<FactPath, Fact>>();
  const mentioned = new Map<Element, Set<About>>();
  for (const fact of facts) {
    const { path, about } = fact;
    let ofAbout = known.get(about);
    if (ofAbout === undefined) known.set(about, (ofAbout = new Map()));
    ofAbout.set(path, agreed(ofAbout.get(path) ?? null, fact));
    const each = catalogueByPath.get(path)?.each;
    if (each !== undefined) mentioned.set(each, (mentioned.get(each) ?? new Set()).add(about));
  }
  return {
    abouts: (each) => [...(mentioned.get(each) ?? [])],
    at: (path, about) => known.get(about)?.get(path) ?? null,
    all: () => facts,
  };
}

/** A fact that is given again: unknown unless it is the same. */
const agreed = (before: Fact | null, now: Fact): Fact =>
  before === null || (before.value === now.value && before.unit === now.unit && now.value !== null)
    ? now
    : { ...now, value: null, reason: 'It was given twice, with different values.' };
