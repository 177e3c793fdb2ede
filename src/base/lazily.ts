/** How fields are worked out, by their names; in place of that, what they were found to be. */
type Works = Record<string, (() => unknown) | { readonly value: unknown }>;

/** What a class stands on that adds a private field to an object that is there already. */
const There = function (of: object): object {
  return of;
} as unknown as new (of: object) => object;

/** How the lazy fields of an object are worked out, kept with it where nobody lists or copies it. */
class Lazy extends There {
  readonly #works: Works;

  constructor(of: object, works: Works) {
    super(of);
    this.#works = works;
  }

  static read(of: Lazy, key: string): unknown {
    const works = of.#works;
    const work = works[key]!;
    if (typeof work !== 'function') return work.value;
    const value = work();
    works[key] = { value };
    return value;
  }
}

/**
 * One getter for each name of a field. An object whose getters are its own functions has a hidden class of its own as
 * well, and all that they reach lives as long as that, which is far longer than the object.
 */
const getters = new Map<string, PropertyDescriptor>();

function getterOf(key: string): PropertyDescriptor {
  let getter = getters.get(key);
  if (getter === undefined) {
    const get = function (this: Lazy): unknown {
      return Lazy.read(this, key);
    };
    getters.set(key, (getter = { enumerable: true, configurable: true, get }));
  }
  return getter;
}

/** Fields that are worked out when they are first read, and kept. */
type Parts<T> = { readonly [K in keyof T]: () => T[K] };

/**
 * An object with such fields; beside them those of `known`, which becomes that object, as `parts` becomes the place
 * where they are kept: what a field was made from is let go then. What is known later may be defined in their place.
 */
export function lazily<T extends object>(parts: Parts<T>): T;
export function lazily<T extends object, U extends object>(parts: Parts<T>, known: U): T & U;
export function lazily(parts: Works, known: object = {}): object {
  new Lazy(known, parts);
  for (const key in parts) Object.defineProperty(known, key, getterOf(key));
  return known;
}

/** The fields of one object as parts of another: each is read when it is asked for there. */
export const fieldsOf = <T extends object>(from: T): Parts<T> =>
  Object.fromEntries(Object.keys(from).map((key) => [key, () => from[key as keyof T]])) as Parts<T>;
