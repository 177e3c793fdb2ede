import { makeReady, type ReadyProblem } from './ready-problem.js';
import { better, choicesBetween, makeChoice, within, type Choice } from './choices.js';
import { diveFreely, diveInto } from './dive.js';
import { fillBoards } from './fill.js';
import { quickCutting, type Filled } from './greedy.js';
import { checkProblem, type CutProblem, type CutResult } from './problem.js';
import { shadowPrices, wholePrices } from './shadow-prices.js';
import { costBound, makeWeight, meets, plainWeights, type Weight } from './weights.js';

const firstSteps = 2000;
const stepsGrow = 8;
const mostChoices = 20_000;
/** Steps in listing choices in the first round. */
const firstLooks = 20_000;
/**
 * Undecided choices in the first round after which the walk starts over with better weights and more patience; doubled
 * every round.
 */
const mostOpen = 8;
const searchWeights = 5;
/** How sure the relaxation must be of a load before it is fixed, for the dives of each round. */
const freeShares = [0.9, 0.6];
const sureShares = [[], [0.75, 0.9], [0.5]];

/**
 * The least-cost choice of boards, ties by least waste, then fewest boards. Choices of boards are walked in that order;
 * those that fail a
 * necessary condition are skipped, the rest are packed by a depth-first search, with more patience each round, until
 * one fits and every
 * better one is refuted, or the time is up: then the best cutting known comes with an honest bound. Throws a RangeError
 * on numbers that are not whole.
 */
export function cutBoards(problem: CutProblem): CutResult {
  checkProblem(problem);
  const bench = makeReady(problem);
  const tooLong = problem.items.flatMap(({ length, count, group }, i) => {
    const need = length + (group === undefined ? 0 : (problem.setups?.[group] as number));
    return count > 0 && !problem.stock.some((s) => (s.alone ?? s.length) >= need && s.available !== 0) ? [i] : [];
  });
  if (tooLong.length > 0) return { ok: false, reason: 'too-long', items: tooLong };
  if (bench.pieces === 0)
    return { ok: true, boards: [], cost: 0, waste: 0, proven: true, tiesProven: true, bound: 0, gap: 0 };
  return new Search(problem, bench).run();
}

/** One run of the search: what is known so far. */
class Search {
  private readonly end: number;
  private weights: Weight[];
  /** The weights found by shadow prices, latest first; the packing search leans on them. */
  private sharp: Weight[] = [];
  private refuted: Choice[] = [];
  private readonly relaxed = new Set<string>();
  private best: { choice: Choice; filled: readonly Filled[] } | null = null;
  private bound = 0;
  private readonly highestCost: number;

  constructor(
    private readonly problem: CutProblem,
    private readonly bench: ReadyProblem,
  ) {
    this.end = problem.now() + problem.timeLimit_ms;
    this.weights = plainWeights(bench);
    this.highestCost = bench.bins.reduce((sum, bin) => sum + bin.price * bin.most, 0);
    const tries = [
      quickCutting(bench),
      ...bench.bins.map((_, s) => quickCutting(bench, (t) => t === s || (bench.bins[t]?.price as number) === 0)),
    ];
    for (const filled of tries) if (filled !== null) this.offer(filled);
  }

  private readonly outOfTime = (): boolean => this.problem.now() >= this.end;

  /** Whether the best cutting is as cheap as any can be. */
  private closed(): boolean {
    return this.best !== null && this.bound >= this.best.choice.cost;
  }

  private offer(filled: readonly Filled[]): void {
    const boards = this.bench.bins.map((_, s) => filled.filter(({ bin }) => bin === s).length);
    const choice = makeChoice(this.bench, boards);
    if (this.best === null || better(choice, this.best.choice) < 0) this.best = { choice, filled };
  }

  run(): CutResult {
    this.bound = Math.max(0, ...this.weights.map((w) => costBound(this.bench, w)));
    if (this.bound === Infinity) return { ok: false, reason: 'not-enough' };
    let settled: 'all' | 'cost' | 'open' = 'open';
    for (let round = 0, steps = firstSteps; settled !== 'all'; round++, steps *= stepsGrow) {
      if (round === 1) {
        this.sharpen(
          this.bench.bins.map(({ price }) => price),
          this.bench.bins.map(({ most }) => (most < this.bench.pieces ? most : null)),
          this.dearPenalty(),
        );
        for (const sure of freeShares) {
          const filled = this.closed() ? null : diveFreely(this.bench, sure, this.outOfTime);
          if (filled !== null) this.offer(filled);
        }
      }
      settled = this.walk(round, steps);
      if (this.outOfTime()) break;
    }
    return this.finish(settled);
  }

  /**
   * Walks the choices in order of merit once. `all`: the best is proven, ties too; `cost`: its cost is; `open`: some
   * cheaper choice is undecided.
   */
  private walk(round: number, steps: number): 'all' | 'cost' | 'open' {
    let low = this.bound;
    let width = Math.max(1, Math.ceil(low * 0.002));
    let firstOpen: number | null = null;
    let open = 0;
    for (;;) {
      const limit = this.best?.choice.cost ?? this.highestCost;
      if (low > limit) break;
      const high = Math.min(low + width - 1, limit);
      let looks = 0;
      const mostLooks = firstLooks * stepsGrow ** round;
      const choices = choicesBetween(
        this.bench,
        this.weights,
        low,
        high,
        mostChoices,
        () => ++looks > mostLooks || (looks % 512 === 0 && this.outOfTime()),
      );
      if (choices === null) {
        if (width > 1 && round > 0 && !this.outOfTime()) {
          width = Math.max(1, Math.floor(width / 8));
          continue;
        }
        firstOpen ??= low;
        break;
      }
      for (const choice of choices) {
        if (this.best !== null && better(choice, this.best.choice) >= 0) break;
        if (this.try(choice, round, steps) !== 'ran-out') continue;
        firstOpen ??= choice.cost;
        open++;
        if (open >= mostOpen << round || this.outOfTime()) break;
      }
      if (open >= mostOpen << round || this.outOfTime()) {
        firstOpen ??= high < limit ? high + 1 : limit;
        break;
      }
      low = high + 1;
      if (choices.length < 200) width *= 2;
    }
    const cost = this.best?.choice.cost ?? Infinity;
    this.bound = Math.max(this.bound, Math.min(firstOpen ?? cost, cost));
    if (firstOpen === null) return 'all';
    return this.bound >= cost ? 'cost' : 'open';
  }

  /** Packs one choice, or refutes it. A choice that fits becomes the best. */
  private try(choice: Choice, round: number, steps: number): 'fits' | 'cannot' | 'ran-out' {
    const fails = (): boolean =>
      this.weights.some((w) => !meets(w, choice.boards)) || this.refuted.some((r) => within(this.bench, choice, r));
    if (fails()) return 'cannot';
    if (round > 1) {
      const key = choice.boards.join();
      if (!this.relaxed.has(key)) {
        this.relaxed.add(key);
        this.sharpen(
          choice.boards.map(() => 0),
          choice.boards,
          this.bench.size,
        );
        if (fails()) return 'cannot';
      }
    }
    for (const sure of sureShares[round] ?? []) {
      const filled = diveInto(this.bench, choice.boards, sure, this.outOfTime);
      if (filled === null) continue;
      this.offer(filled);
      return 'fits';
    }
    const weights = [this.weights[0] as Weight, ...this.sharp.slice(0, searchWeights)];
    const filling = fillBoards(this.bench, choice.boards, weights, { steps, outOfTime: this.outOfTime });
    if (filling.verdict === 'fits')
      this.offer(filling.loads.map(({ bin, counts }) => ({ bin, counts: Array.from(counts) })));
    if (filling.verdict === 'cannot')
      this.refuted = [...this.refuted.filter((r) => !within(this.bench, r, choice)), choice];
    return filling.verdict;
  }

  /** Adds the weight that the relaxation's shadow prices suggest. */
  private sharpen(price: readonly number[], most: readonly (number | null)[], penalty: readonly number[]): void {
    const { prices } = shadowPrices(this.bench, { price, most, penalty }, this.outOfTime);
    const value = wholePrices(prices);
    if (value.every((v) => v === 0)) return;
    const weight = makeWeight(this.bench, value);
    this.weights.push(weight);
    this.sharp.unshift(weight);
    this.bound = Math.max(this.bound, Math.min(costBound(this.bench, weight), this.best?.choice.cost ?? Infinity));
  }

  /** A penalty per piece no cutting would pay: dearer than a board of the dearest kind. */
  private dearPenalty(): number[] {
    const top = 1 + Math.max(...this.bench.bins.map((bin) => bin.price));
    return this.bench.size.map(() => 2 * top);
  }

  private finish(settled: 'all' | 'cost' | 'open'): CutResult {
    if (this.best === null) return { ok: false, reason: settled === 'all' ? 'not-enough' : 'undecided' };
    const { choice, filled } = this.best;
    const proven = settled !== 'open';
    const members = this.bench.members.map((list) => list.slice());
    const boards = filled.map(({ bin, counts }) => ({
      stock: this.bench.bins[bin]?.stock as number,
      pieces: counts.flatMap((c, k) => (members[k] as number[]).splice(0, c)),
    }));
    const cut = this.problem.items.reduce((sum, item) => sum + item.length * item.count, 0);
    const bound = proven ? choice.cost : Math.min(this.bound, choice.cost);
    return {
      ok: true,
      boards,
      cost: choice.cost,
      waste: choice.length - cut,
      proven,
      tiesProven: settled === 'all',
      bound,
      gap: proven ? 0 : (choice.cost - bound) / choice.cost,
    };
  }
}
