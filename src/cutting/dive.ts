import type { Bench } from './bench-shape.js';
import { fillBoards } from './fill.js';
import type { Filled } from './greedy.js';
import { shadowPrices, wholePrices } from './shadow-prices.js';
import { makeWeight, type Weight } from './weights.js';

const stepsPerTry = 3000;

/**
 * Tries to pack one choice of boards by following the relaxation: fix the loads it is surest of, search the rest briefly, and go on with
 * what is left. `sureShare` (0..1) is how much of a load the relaxation must use before it is fixed. Null when that leads nowhere, which proves nothing.
 */
export function diveInto(bench: Bench, choice: readonly number[], sureShare: number, outOfTime: () => boolean): Filled[] | null {
  const left = bench.count.slice();
  const boards = choice.slice();
  const fixed: Filled[] = [];
  while (!outOfTime()) {
    const { bench: rest, kinds } = remainder(bench, left);
    if (kinds.length === 0) return fixed;
    const price = boards.map(() => 0);
    const { prices, loads } = shadowPrices(rest, { price, most: boards, penalty: rest.size }, outOfTime);
    const widen = (counts: ArrayLike<number>): number[] => {
      const full = left.map(() => 0);
      kinds.forEach((k, i) => (full[k] = counts[i] as number));
      return full;
    };
    const value = wholePrices(prices);
    const weights: Weight[] = [makeWeight(rest, rest.size)];
    if (value.some((v) => v > 0)) weights.push(makeWeight(rest, value));
    const filling = fillBoards(rest, boards, weights, { steps: stepsPerTry, outOfTime });
    if (filling.verdict === 'fits') return [...fixed, ...filling.loads.map(({ bin, counts }) => ({ bin, counts: widen(counts) }))];
    if (filling.verdict === 'cannot') return null;
    const byShare = [...loads].sort((p, q) => q.share - p.share);
    let taken = 0;
    for (const { bin, counts, share } of byShare) {
      if (taken > 0 && share < sureShare) break;
      const full = widen(counts);
      for (let n = Math.max(1, Math.floor(share + 1 - sureShare)); n > 0; n--) {
        if ((boards[bin] as number) === 0 || full.some((c, k) => c > (left[k] as number))) break;
        full.forEach((c, k) => (left[k] = (left[k] as number) - c));
        boards[bin] = (boards[bin] as number) - 1;
        fixed.push({ bin, counts: full });
        taken++;
      }
    }
    if (taken === 0) return null;
  }
  return null;
}

/** The pieces still to cut as a smaller bench, with the kinds of the full one they stand for. */
function remainder(bench: Bench, left: readonly number[]): { bench: Bench; kinds: number[] } {
  const kinds = left.flatMap((c, k) => (c > 0 ? [k] : []));
  const pick = <T>(list: readonly T[]): T[] => kinds.map((k) => list[k] as T);
  const rest: Bench = { ...bench, size: pick(bench.size), count: pick(left), group: pick(bench.group), setup: pick(bench.setup), members: pick(bench.members) };
  return { bench: rest, kinds };
}
