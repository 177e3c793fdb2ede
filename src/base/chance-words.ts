const roundCounts = [2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200, 300, 500, 1000] as const;

/** A chance 0..1 as people say it: `about 1 in 6`, `about 2 in 3`, `fewer than 1 in 1000`, `nearly all`. Each can stand before *frames*. Compared by ratio, so small chances round fairly. */
export function chanceInWords(chance: number): string {
  if (!Number.isFinite(chance)) return 'unknown';
  if (chance < 1 / 1500) return 'fewer than 1 in 1000';
  if (chance > 0.97) return 'nearly all';
  const likely: readonly (readonly [number, string])[] = [
    [0.6, 'about 3 in 5'],
    [2 / 3, 'about 2 in 3'],
    [0.75, 'about 3 in 4'],
    [0.8, 'about 4 in 5'],
    [0.9, 'about 9 in 10'],
  ];
  const all = [...roundCounts.map((n) => [1 / n, `about 1 in ${n}`] as const), [0.4, 'about 2 in 5'] as const, ...likely];
  const distance = (value: number): number => Math.abs(Math.log(chance / value));
  return all.reduce((best, entry) => (distance(entry[0]) < distance(best[0]) ? entry : best))[1];
}
