/** Whether everything is tried (`npm run test:long`, in CI) or a sample of it (`npm test`, which a newcomer waits for). */
export const everything = process.env['TEST_EFFORT'] === 'everything';

/** How many cases a law draws: all of them in the long run, an eighth in `npm test`, or as large a `share` as the law needs to bite. */
export const runs = (all: number, share = 1 / 8): number => (everything ? all : Math.max(1, Math.ceil(all * share)));

/** All of a list in the long run; every so-manieth of it, from the first on, in `npm test`. */
export const sampleOf = <T>(all: readonly T[], every: number): readonly T[] => (everything ? all : all.filter((_, i) => i % every === 0));
