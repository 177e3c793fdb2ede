/** A noun for so many: `1 box`, `2 boxes`. */
export const plural = (noun: string, n: number): string =>
  n === 1 ? noun : /(?:x|s|ch)$/u.test(noun) ? `${noun}es` : `${noun}s`;

/** All of so many, as one says it: `both`, `all 3`. */
export const allOf = (count: number): string => (count === 2 ? 'both' : `all ${count}`);
