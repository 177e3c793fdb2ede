const words = ['no', 'one', 'two', 'three', 'four'] as const;

/** A count as one says it: in words up to four, in figures beyond. */
export const countInWords = (n: number): string => words[n] ?? String(n);
