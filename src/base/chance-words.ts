const roundCounts = [
  2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200, 300, 500, 1000,
] as const;

/** Shares that people say of more than one: `about 2 in 5`. */
const severalOf: readonly (readonly [several: number, of: number])[] = [
  [2, 5],
  [3, 5],
  [2, 3],
  [3, 4],
  [4, 5],
  [9, 10],
];

const rounded: readonly (readonly [several: number, of: number])[] = [
  ...roundCounts.map((n) => [1, n] as const),
  ...severalOf,
];

/** The words, and whether they speak of one frame or of several. */
function told(chance: number): { readonly words: string; readonly one: boolean } {
  if (!Number.isFinite(chance)) return { words: 'unknown', one: false };
  if (chance < 1 / 1500) return { words: 'fewer than 1 in 1000', one: true };
  if (chance > 0.97) return { words: 'nearly all', one: false };
  const distance = ([several, of]: (typeof rounded)[number]): number => Math.abs(Math.log((chance * of) / several));
  const [several, of] = rounded.reduce((best, entry) => (distance(entry) < distance(best) ? entry : best));
  return { words: `about ${several} in ${of}`, one: several === 1 };
}

/**
 * A chance 0..1 as people say it: `about 1 in 6`, `about 2 in 3`, `fewer than 1 in 1000`, `nearly all`. Each can stand
 * before *frames*. Compared by ratio, so small chances round fairly.
 */
export const chanceInWords = (chance: number): string => told(chance).words;

/** The same as the beginning of a sentence of how many go somewhere: `about 1 in 6 goes`, `nearly all go`. */
export function chanceGoes(chance: number): string {
  const { words, one } = told(chance);
  return `${words} ${one ? 'goes' : 'go'}`;
}
