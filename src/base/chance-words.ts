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

/** The words, whether they speak of one frame or of several, and the same of times that something happens. */
function told(chance: number): { readonly words: string; readonly one: boolean; readonly times: string } {
  if (!Number.isFinite(chance)) return { words: 'unknown', one: false, times: 'an unknown number of times' };
  if (chance < 1 / 1500) return { words: 'fewer than 1 in 1000', one: true, times: 'less than 1 time in 1000' };
  if (chance > 0.97) return { words: 'nearly all', one: false, times: 'nearly always' };
  const distance = ([several, of]: (typeof rounded)[number]): number => Math.abs(Math.log((chance * of) / several));
  const [several, of] = rounded.reduce((best, entry) => (distance(entry) < distance(best) ? entry : best));
  const one = several === 1;
  return { words: `about ${several} in ${of}`, one, times: `${several} ${one ? 'time' : 'times'} in ${of}` };
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

/** The same of something that happens now and then: `1 time in 6`, `less than 1 time in 1000`. */
export const chanceTimes = (chance: number): string => told(chance).times;
