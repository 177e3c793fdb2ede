import type { About } from '../base/names.js';
import { lazily } from '../base/lazily.js';
import { once } from '../base/once.js';
import { suppliesOf } from '../cost/supplies.js';
import { allFit, boardsFor, type Boards } from '../cutting/enough-boards.js';
import type { FactSettings, Model, Solution } from '../model/model.js';
import type { Shelf } from '../shelf/shelf.js';
import { catalogueByPath } from './catalogue.js';
import type { Declared, FactElement, FactGroup, FactInput, FoundFact } from './declare.js';
import type { Element, Fact, FactPath } from './fact.js';
import { factGroups } from './groups.js';

/** The facts of one plan, to be asked for by path and element. */
export interface FactSource {
  /** The elements of a kind that there are facts of, in the order of the facts. */
  readonly abouts: (each: Element) => readonly About[];
  /** The facts of a path about an element: usually one. */
  readonly at: (path: FactPath, about: About) => readonly Fact[];
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

type AnyGroup = FactGroup<FactPath>;

const groups = factGroups as readonly unknown[] as readonly AnyGroup[];
const groupOf: ReadonlyMap<string, AnyGroup> = new Map(
  groups.flatMap((group) => [...group.declared.keys()].map((path) => [path, group] as const)),
);

/** One element of a group, with what was asked of it so far; null where it has no such fact. */
interface OpenElement {
  readonly about: About;
  readonly fact: (path: FactPath) => Fact | null;
}

/** The facts that a plan has, each worked out when it is first asked for, and kept. */
export function factsOfPlan(input: FactInput): FactSource {
  const opened = new Map<AnyGroup, readonly OpenElement[]>();
  const elementsOf = (group: AnyGroup): readonly OpenElement[] => {
    let known = opened.get(group);
    if (known === undefined) opened.set(group, (known = group.elements(input).map((one) => openElement(group, one))));
    return known;
  };
  return {
    abouts: (each) =>
      groups.filter((group) => group.each === each).flatMap((group) => elementsOf(group).map(({ about }) => about)),
    at: (path, about) => {
      const group = groupOf.get(path);
      const found: Fact[] = [];
      if (group === undefined) return found;
      for (const element of elementsOf(group)) {
        const fact = element.about === about ? element.fact(path) : null;
        if (fact !== null) found.push(fact);
      }
      return found;
    },
    all: once(() =>
      groups.flatMap((group) => {
        const paths = [...group.declared.keys()];
        return elementsOf(group).flatMap(({ fact }) => paths.flatMap((path) => fact(path) ?? []));
      }),
    ),
  };
}

function openElement(group: AnyGroup, { about, value }: FactElement<FactPath>): OpenElement {
  const known = new Map<FactPath, Fact | null>();
  const fact = (path: FactPath): Fact | null => {
    const before = known.get(path);
    if (before !== undefined) return before;
    const found = value(path);
    const told = found === null ? null : shown({ path, about, unit: group.declared.get(path)!.unit, value: found });
    known.set(path, told);
    return told;
  };
  return { about, fact };
}

function shown({ path, about, unit, value }: FoundFact<FactPath>): Fact {
  return typeof value === 'object'
    ? { path, about, value: null, unit, reason: value.unknown }
    : { path, about, value, unit };
}

/** What is wanted of the catalogue. */
export type Wanted = (declared: Declared, path: FactPath) => boolean;

/** The wanted facts that a plan has, by subject; nothing is worked out for the others. */
export const factsWanted = (input: FactInput, wanted: Wanted): Fact[] =>
  groups.flatMap((group) => group.values(input, (path, declared) => wanted(declared, path)).map(shown));

/** Facts that are there already. Those of unknown paths are left out. */
export function factsGiven(facts: readonly Fact[]): FactSource {
  const at = new Map<string, Fact[]>();
  const abouts = new Map<Element, Set<About>>();
  for (const fact of facts) {
    const spec = catalogueByPath.get(fact.path);
    if (spec === undefined) continue;
    const key = keyOf(fact.path, fact.about);
    const before = at.get(key);
    if (before === undefined) at.set(key, [fact]);
    else before.push(fact);
    abouts.set(spec.each, (abouts.get(spec.each) ?? new Set()).add(fact.about));
  }
  return {
    abouts: (each) => [...(abouts.get(each) ?? [])],
    at: (path, about) => at.get(keyOf(path, about)) ?? [],
    all: () => facts,
  };
}

const keyOf = (path: string, about: About): string => `${path}@${about}`;
