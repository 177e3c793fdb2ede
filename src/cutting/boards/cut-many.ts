import { diveFreely } from './dive.js';
import { quickCutting, type Filled } from './greedy.js';
import { loadCeiling } from './load-ceiling.js';
import { cutBoards } from './pack.js';
import { checkProblem, type CutBoard, type CutProblem, type CutResult } from './problem.js';
import { makeReady, type ReadyProblem } from './ready-problem.js';
import { shadowPrices, wholePrices } from './shadow-prices.js';
import { costBound, makeWeight, weightOf } from './weights.js';

/** Up to so many kinds of pieces, and so many pieces, are searched as one. */
const mostKinds = 60;
const mostPieces = 3000;
/** How sure the relaxation must be of a load before it is fixed, of the two tries of a portion. */
const sureShares = [0.9, 0.6];

/**
 * Like `cutBoards`, but its work grows no faster than the number of kinds: where there are too many to search at once
 * they are dealt into portions, long and short ones into each, which are cut one after the other by following the
 * relaxation; each may take the time of a search. One kind of a length counts once, however many pieces are of it. The
 * bound is one of all pieces together, so the gap is honest; what is known already is not searched anew.
 */
export function cutMany(problem: CutProblem): CutResult {
  checkProblem(problem);
  const bench = makeReady(problem);
  const many = bench.size.length > mostKinds || bench.pieces > mostPieces;
  const { known } = problem;
  if (!many) {
    const found = cutBoards(problem);
    return known === undefined || (found.ok && found.cost <= costOf(known, problem))
      ? found
      : finished(problem, bench, known, [], found.ok ? found.bound : 0);
  }
  if (!bench.size.every((_, k) => bench.bins.some((bin) => fitsOn(bench, k, bin)))) return cutBoards(problem);
  const cut = known === undefined ? cutPortions(problem, bench) : { boards: known, prices: [] };
  return cut === null
    ? { ok: false, reason: lengthBound(bench) === Infinity ? 'not-enough' : 'undecided' }
    : finished(problem, bench, cut.boards, cut.prices, 0);
}

const fitsOn = ({ size, setup }: ReadyProblem, kind: number, bin: ReadyProblem['bins'][number]): boolean =>
  (size[kind] as number) + (setup[kind] as number) <= bin.alone;

const lengthBound = (bench: ReadyProblem): number => costBound(bench, makeWeight(bench, bench.size));

const costOf = (boards: readonly CutBoard[], { stock }: CutProblem): number =>
  boards.reduce((sum, board) => sum + (stock[board.stock]?.price as number), 0);

/** The portions of a bench: kind 1, 1 + n, 1 + 2n … to the first of n, so that each has a mixture of lengths. */
function portionsOf({ size }: ReadyProblem): readonly (readonly number[])[] {
  const n = Math.ceil(size.length / mostKinds);
  return Array.from({ length: n }, (_, portion) => size.flatMap((__, k) => (k % n === portion ? [k] : [])));
}

/**
 * Cuts portion by portion; with what each piece is worth to the whole by the relaxations. Null where boards run out.
 */
function cutPortions(
  problem: CutProblem,
  bench: ReadyProblem,
): { readonly boards: readonly CutBoard[]; readonly prices: readonly number[] } | null {
  const spare = bench.bins.map(({ most }) => most);
  const lengthOf = (kinds: readonly number[]): number =>
    kinds.reduce((sum, k) => sum + (bench.size[k] as number) * (bench.count[k] as number), 0);
  const members = bench.members.map((list) => list.slice());
  const prices = bench.size.map(() => 0);
  const boards: CutBoard[] = [];
  let left_length = lengthOf(bench.size.map((_, k) => k));
  for (const kinds of portionsOf(bench)) {
    // Boards that are few are dealt out by length of wood; where that share does not do, a portion may take all.
    const length = lengthOf(kinds);
    const share = spare.map((n) => Math.ceil((n * length) / left_length));
    const dealt = bench.bins.map(({ most }, s) => (most < bench.pieces ? (share[s] as number) : (spare[s] as number)));
    const found = cutPortion(problem, bench, kinds, dealt) ?? cutPortion(problem, bench, kinds, spare);
    if (found === null) return null;
    left_length -= length;
    kinds.forEach((k, i) => (prices[k] = found.prices[i] as number));
    for (const { bin, counts } of found.filled) {
      if ((bench.bins[bin]?.most as number) < bench.pieces) spare[bin] = (spare[bin] as number) - 1;
      const pieces = kinds.flatMap((k, i) => (members[k] as number[]).splice(0, counts[i] as number));
      boards.push({ stock: bench.bins[bin]?.stock as number, pieces });
    }
  }
  return { boards, prices };
}

/** One portion on so many boards of each kind at most; null when none of the tries came out with them. */
function cutPortion(
  { now, timeLimit_ms }: CutProblem,
  bench: ReadyProblem,
  kinds: readonly number[],
  most: readonly number[],
): { readonly filled: readonly Filled[]; readonly prices: readonly number[] } | null {
  const end = now() + timeLimit_ms;
  const outOfTime = (): boolean => now() >= end;
  const portion = portionOf(bench, kinds, most);
  const price = portion.bins.map((bin) => bin.price);
  const first = shadowPrices(
    portion,
    {
      price,
      most: most.map((n) => (n < bench.pieces ? n : null)),
      penalty: kinds.map(() => 2 * (1 + Math.max(...price))),
    },
    outOfTime,
  );
  const cost = (filled: readonly Filled[]): number => filled.reduce((sum, { bin }) => sum + (price[bin] as number), 0);
  const tries = [quickCutting(portion), ...sureShares.map((sure) => diveFreely(portion, sure, outOfTime, first))];
  const filled = tries
    .filter((one) => one !== null)
    .reduce<readonly Filled[] | null>((best, one) => (best === null || cost(one) < cost(best) ? one : best), null);
  return filled === null ? null : { filled, prices: first.prices };
}

function portionOf(bench: ReadyProblem, kinds: readonly number[], most: readonly number[]): ReadyProblem {
  const pick = <T>(list: readonly T[]): T[] => kinds.map((k) => list[k] as T);
  return {
    size: pick(bench.size),
    count: pick(bench.count),
    group: pick(bench.group),
    setup: pick(bench.setup),
    members: pick(bench.members),
    bins: bench.bins.map((bin, s) => ({ ...bin, most: most[s] as number })),
    pieces: bench.pieces,
  };
}

/** A cutting with the best bound that length, and what the pieces are worth, allow for all of them together. */
function finished(
  problem: CutProblem,
  bench: ReadyProblem,
  boards: readonly CutBoard[],
  prices: readonly number[],
  bound_so_far: number,
): CutResult {
  const cost = costOf(boards, problem);
  const bounds = (prices.length === 0 ? [] : [prices, evened(bench, prices)]).map((some) => {
    const value = wholePrices(some);
    return costBound(
      bench,
      weightOf(bench, value, (bin) => loadCeiling(bench, value, bin)),
    );
  });
  const bound = Math.min(cost, Math.max(bound_so_far, lengthBound(bench), ...bounds));
  const bought = boards.reduce((sum, { stock }) => sum + (problem.stock[stock]?.length as number), 0);
  const cut = problem.items.reduce((sum, item) => sum + item.length * item.count, 0);
  const proven = bound >= cost;
  return {
    ok: true,
    boards,
    cost,
    waste: bought - cut,
    proven,
    tiesProven: false,
    bound,
    gap: proven ? 0 : (cost - bound) / cost,
  };
}

/** Neighbours that what a length is worth is evened over, to either side. */
const neighbours = 8;

/**
 * Prices evened among pieces of nearly one length that nest alike: each portion found its own, and a board that mixes
 * the dearest of all would be worth more than it costs, which weakens the bound.
 */
function evened({ size, group }: ReadyProblem, prices: readonly number[]): readonly number[] {
  const even = prices.slice();
  for (const one of new Set(group)) {
    const kinds = size.flatMap((_, k) => (group[k] === one ? [k] : []));
    kinds.forEach((k, at) => {
      const near = kinds.slice(Math.max(0, at - neighbours), at + neighbours + 1);
      const worth = near.reduce((sum, j) => sum + (prices[j] as number) / (size[j] as number), 0) / near.length;
      even[k] = worth * (size[k] as number);
    });
  }
  return even;
}
