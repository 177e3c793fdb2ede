/** An object whose fields are worked out when they are first read, and kept. */
export function lazily<T extends object>(parts: { readonly [K in keyof T]: () => T[K] }): T {
  const made = {} as T;
  for (const key of Object.keys(parts) as (keyof T)[]) {
    const get = (): T[keyof T] => {
      const value = parts[key]();
      Object.defineProperty(made, key, { enumerable: true, value });
      return value;
    };
    Object.defineProperty(made, key, { configurable: true, enumerable: true, get });
  }
  return made;
}

/** The fields of one object as parts of another: each is read when it is asked for there. */
export const fieldsOf = <T extends object>(from: T): { readonly [K in keyof T]: () => T[K] } =>
  Object.fromEntries(Object.keys(from).map((key) => [key, () => from[key as keyof T]])) as {
    readonly [K in keyof T]: () => T[K];
  };
