import type { ReadyProblem } from './ready-problem.js';
import { fillBoards } from './fill.js';
import { quickCutting, type Filled } from './greedy.js';
import { shadowPrices, wholePrices, type Relaxed } from './shadow-prices.js';
import { makeWeight, type Weight } from './weights.js';

const stepsPerTry = 3000;

/**
 * Tries to pack one choice of boards by following the relaxation: fix the loads it is surest of, search the rest
 * briefly, and go on with
 * what is left. `sureShare` (0..1) is how much of a load the relaxation must use before it is fixed. Null when that
 * leads nowhere, which proves nothing.
 */
export function diveInto(
  bench: ReadyProblem,
  choice: readonly number[],
  sureShare: number,
  outOfTime: () => boolean,
): Filled[] | null {
  const left = bench.count.slice();
  const boards = choice.slice();
  const fixed: Filled[] = [];
  while (!outOfTime()) {
    const { bench: rest, kinds } = remainder(bench, left);
    if (kinds.length === 0) return fixed;
    const price = boards.map(() => 0);
    const { prices, loads } = shadowPrices(rest, { price, most: boards, penalty: rest.size }, outOfTime);
    const widen = widener(kinds, left.length);
    const value = wholePrices(prices);
    const weights: Weight[] = [makeWeight(rest, rest.size)];
    if (value.some((v) => v > 0)) weights.push(makeWeight(rest, value));
    const filling = fillBoards(rest, boards, weights, { steps: stepsPerTry, outOfTime });
    if (filling.verdict === 'fits')
      return [...fixed, ...filling.loads.map(({ bin, counts }) => ({ bin, counts: widen(counts) }))];
    if (filling.verdict === 'cannot') return null;
    const taken = takeSure(
      loads.map((load) => ({ ...load, counts: widen(load.counts) })),
      sureShare,
      left,
      boards,
    );
    if (taken.length === 0) return null;
    fixed.push(...taken);
  }
  return null;
}

/**
 * Follows the relaxation without a choice of boards: the best cutting met when what is not yet fixed is packed quickly.
 * Null when there is none.
 */
export function diveFreely(
  bench: ReadyProblem,
  sureShare: number,
  outOfTime: () => boolean,
  first?: Relaxed,
): Filled[] | null {
  const left = bench.count.slice();
  const boards = bench.bins.map(({ most }) => most);
  const price = bench.bins.map((bin) => bin.price);
  const dear = 2 * (1 + Math.max(...price));
  const fixed: Filled[] = [];
  let best: Filled[] | null = null;
  const cost = (filled: readonly Filled[]): number => filled.reduce((sum, { bin }) => sum + (price[bin] as number), 0);
  while (!outOfTime()) {
    const { bench: rest, kinds } = remainder(
      { ...bench, bins: bench.bins.map((bin, s) => ({ ...bin, most: boards[s] as number })) },
      left,
    );
    const widen = widener(kinds, left.length);
    const quick = kinds.length === 0 ? [] : quickCutting(rest);
    const whole =
      quick === null ? null : [...fixed, ...quick.map(({ bin, counts }) => ({ bin, counts: widen(counts) }))];
    if (whole !== null && (best === null || cost(whole) < cost(best))) best = whole;
    if (kinds.length === 0) break;
    const most = boards.map((n) => (n < bench.pieces ? n : null));
    const { loads } =
      fixed.length === 0 && first !== undefined
        ? first
        : shadowPrices(rest, { price, most, penalty: rest.size.map(() => dear) }, outOfTime);
    const taken = takeSure(
      loads.map((load) => ({ ...load, counts: widen(load.counts) })),
      sureShare,
      left,
      boards,
    );
    if (taken.length === 0) break;
    fixed.push(...taken);
  }
  return best;
}

/** Takes the loads the relaxation is surest of, the surest one in any case, off what is left and off the boards. */
function takeSure(
  loads: readonly { bin: number; counts: number[]; share: number }[],
  sureShare: number,
  left: number[],
  boards: number[],
): Filled[] {
  const taken: Filled[] = [];
  for (const { bin, counts, share } of [...loads].sort((p, q) => q.share - p.share)) {
    if (taken.length > 0 && share < sureShare) break;
    for (let n = Math.max(1, Math.floor(share + 1 - sureShare)); n > 0; n--) {
      if ((boards[bin] as number) === 0 || counts.some((c, k) => c > (left[k] as number))) break;
      counts.forEach((c, k) => (left[k] = (left[k] as number) - c));
      boards[bin] = (boards[bin] as number) - 1;
      taken.push({ bin, counts });
    }
  }
  return taken;
}

/** Counts over the kinds still to cut → counts over all kinds. */
function widener(kinds: readonly number[], length: number): (counts: ArrayLike<number>) => number[] {
  return (counts) => {
    const full = new Array<number>(length).fill(0);
    kinds.forEach((k, i) => (full[k] = counts[i] as number));
    return full;
  };
}

/** The pieces still to cut as a smaller bench, with the kinds of the full one they stand for. */
function remainder(bench: ReadyProblem, left: readonly number[]): { bench: ReadyProblem; kinds: number[] } {
  const kinds = left.flatMap((c, k) => (c > 0 ? [k] : []));
  const pick = <T>(list: readonly T[]): T[] => kinds.map((k) => list[k] as T);
  const rest: ReadyProblem = {
    ...bench,
    size: pick(bench.size),
    count: pick(left),
    group: pick(bench.group),
    setup: pick(bench.setup),
    members: pick(bench.members),
  };
  return { bench: rest, kinds };
}
