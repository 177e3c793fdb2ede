import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Whole numbers below a limit from a seed, the same on every machine. */
export function drawer(seed: number): (below: number) => number {
  const generator = xoroshiro128plus(seed | 0);
  for (let i = 0; i < 64; i++) generator.next();
  return (below) => Math.floor((((generator.next() >>> 0) + 0.5) / 2 ** 32) * below);
}

/** Shuffles by swapping each entry with one not yet passed. */
export function shuffled<T>(list: readonly T[], below: (limit: number) => number): T[] {
  const all = [...list];
  for (let i = all.length - 1; i > 0; i--) {
    const k = below(i + 1);
    [all[i], all[k]] = [all[k] as T, all[i] as T];
  }
  return all;
}
