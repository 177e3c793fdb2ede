import { once } from './once.js';

/** Where an object keeps how its lazy fields are worked out, out of sight. */
const works = Symbol('works');
type Lazy = { [works]?: Record<string, () => unknown> };

/**
 * One getter for each name of a field. An object whose getters are its own functions has a hidden class of its own as
 * well, and all that they reach lives as long as that, which is far longer than the object.
 */
const getters = new Map<string, (this: Lazy) => unknown>();

function getterOf(key: string): (this: Lazy) => unknown {
  let getter = getters.get(key);
  if (getter === undefined) {
    getter = function (this: Lazy): unknown {
      return this[works]![key]!();
    };
    getters.set(key, getter);
  }
  return getter;
}

/** Fields that are worked out when they are first read, and kept. */
type Parts<T> = { readonly [K in keyof T]: () => T[K] };

/**
 * An object with such fields; beside them those of `known`, which becomes that object. What is known later may be defined
 * in their place.
 */
export function lazily<T extends object>(parts: Parts<T>): T;
export function lazily<T extends object, U extends object>(parts: Parts<T>, known: U): T & U;
export function lazily(parts: Parts<Record<string, unknown>>, known: object = {}): object {
  const own: Record<string, () => unknown> = {};
  Object.defineProperty(known, works, { value: own });
  for (const key in parts) {
    own[key] = once(parts[key]!);
    Object.defineProperty(known, key, { enumerable: true, configurable: true, get: getterOf(key) });
  }
  return known;
}

/** The fields of one object as parts of another: each is read when it is asked for there. */
export const fieldsOf = <T extends object>(from: T): Parts<T> =>
  Object.fromEntries(Object.keys(from).map((key) => [key, () => from[key as keyof T]])) as Parts<T>;
