import { needAlone, type ReadyProblem, type Bin } from './ready-problem.js';
import { bestLoad } from './knapsack.js';

/** One filled board: kind of board, how many of each kind of piece. */
export interface Filled {
  readonly bin: number;
  readonly counts: readonly number[];
}

/**
 * A quick cutting to begin with, or null when it runs out of boards: board by board, the longest piece left and the
 * fullest load around it,
 * on the board that costs least per length used; then each board is swapped for the cheapest that still holds its load.
 * `only` restricts the boards.
 */
export function quickCutting(bench: ReadyProblem, only: (bin: number) => boolean = () => true): Filled[] | null {
  const left = bench.count.slice();
  const spare = bench.bins.map((bin) => bin.most);
  const filled: Filled[] = [];
  for (;;) {
    const first = left.findIndex((c) => c > 0);
    if (first < 0) return shrink(bench, filled, spare);
    let best: Filled | null = null;
    let bestScore = Infinity;
    bench.bins.forEach((bin, s) => {
      if (!only(s) || (spare[s] as number) <= 0 || needAlone(bench, first) > bin.alone) return;
      const counts = fullestLoad(bench, left, first, bin);
      const used = counts.reduce((sum, c, k) => sum + c * (bench.size[k] as number), 0);
      const score = (bin.price + 1e-9 * bin.size) / used;
      if (score < bestScore) {
        bestScore = score;
        best = { bin: s, counts };
      }
    });
    if (best === null) return null;
    const { bin, counts } = best as Filled;
    filled.push({ bin, counts });
    spare[bin] = (spare[bin] as number) - 1;
    counts.forEach((c, k) => (left[k] = (left[k] as number) - c));
  }
}

/** The fullest load of one board that holds the piece `first`. */
function fullestLoad(bench: ReadyProblem, left: readonly number[], first: number, bin: Bin): number[] {
  if (needAlone(bench, first) > bin.size) return left.map((_, k) => (k === first ? 1 : 0));
  const limit = left.slice();
  limit[first] = (limit[first] as number) - 1;
  const rest = bin.size - needAlone(bench, first);
  const counts = bestLoad(bench, bench.size, rest, limit, 300).counts.slice();
  counts[first] = (counts[first] as number) + 1;
  return counts;
}

/** Length a load takes up, setups included. */
export function loadSize(bench: ReadyProblem, counts: readonly number[]): number {
  const groups = new Set<number>();
  return counts.reduce((sum, c, k) => {
    if (c === 0) return sum;
    const g = bench.group[k] as number;
    const fresh = g >= 0 && !groups.has(g) ? (bench.setup[k] as number) : 0;
    groups.add(g);
    return sum + c * (bench.size[k] as number) + fresh;
  }, 0);
}

function shrink(bench: ReadyProblem, filled: readonly Filled[], spare: number[]): Filled[] {
  return filled.map(({ bin, counts }) => {
    const need = loadSize(bench, counts);
    let best = bin;
    const merit = (s: number): number => (bench.bins[s]?.price as number) + 1e-9 * (bench.bins[s]?.size as number);
    bench.bins.forEach((other, s) => {
      if (
        (spare[s] as number) > 0 &&
        (counts.reduce((sum, c) => sum + c, 0) === 1 ? other.alone : other.size) >= need &&
        merit(s) < merit(best)
      )
        best = s;
    });
    if (best !== bin) {
      spare[best] = (spare[best] as number) - 1;
      spare[bin] = (spare[bin] as number) + 1;
    }
    return { bin: best, counts };
  });
}
