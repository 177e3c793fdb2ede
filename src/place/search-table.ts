import type { Group } from './aim.js';
import type { Option, PlaceProblem } from './problem.js';

/** One option with its effects on the measures that matter, close together. */
export interface Quick {
  readonly option: Option;
  readonly mean: Float64Array;
  readonly variance: Float64Array;
  /** Order number among the slot's options, and among the ways to lie its board. */
  readonly rank: number;
  readonly way: number;
}

interface Sums {
  readonly mean: Float64Array;
  readonly variance: Float64Array;
}

/** What a search looks up at every step: slots in order, their options, and what the slots still to come can bring at least and at most. */
export class SearchTable {
  readonly groups: readonly Group[];
  /** Measures that matter. */
  readonly width: number;
  /** Slots, those on which most hangs first, slots just alike side by side. */
  readonly order: readonly number[];
  readonly quick: readonly (readonly Quick[])[];
  /** Whether a slot is just like the one before it in the order, so that their boards may be taken in order. */
  readonly twin: readonly boolean[];
  readonly low: readonly Float64Array[];
  readonly high: readonly Float64Array[];
  readonly least: readonly Float64Array[];
  readonly most: readonly Float64Array[];
  private readonly active: readonly number[];
  private readonly scarce: readonly Scarcity[];
  private readonly shortest_mm: readonly number[];

  constructor(private readonly problem: PlaceProblem) {
    this.active = problem.groups.flatMap(({ measures }) => measures);
    this.width = this.active.length;
    const at = new Map(this.active.map((j, k) => [j, k]));
    this.groups = problem.groups.map(({ limit_mm, scale_mm, measures }) => ({ limit_mm, scale_mm, measures: measures.map((j) => at.get(j) as number) }));
    const all = problem.slots.map((_, i) => distinct([...(problem.options[i] ?? []), problem.bought[i] as Option].map((option) => this.quickOf(option))));
    const swings = all.map((own) => Math.max(0, ...this.active.map((_, j) => span(own.map(({ mean }) => mean[j] as number)))));
    const twins = twinsOf(problem, all);
    this.order = problem.slots.map((_, i) => i).sort((a, b) => (swings[twins[b] as number] as number) - (swings[twins[a] as number] as number) || (twins[a] as number) - (twins[b] as number) || a - b);
    this.quick = this.order.map((i) => all[i] as Quick[]);
    this.twin = this.order.map((i, k) => k > 0 && twins[i] === twins[this.order[k - 1] as number]);
    this.low = suffixes(this.quick, this.width, Math.min, ({ mean }) => mean);
    this.high = suffixes(this.quick, this.width, Math.max, ({ mean }) => mean);
    this.least = suffixes(this.quick, this.width, Math.min, ({ variance }) => variance);
    this.most = suffixes(this.quick, this.width, Math.max, ({ variance }) => variance);
    this.shortest_mm = this.order.map((_, k) => Math.min(...this.order.slice(k).map((i) => problem.lengths[i]?.length_mm ?? Infinity)));
    this.scarce = this.groups.flatMap(({ measures }) => measures.map((j) => new Scarcity(this.quick, j, problem.boards.length))).filter(({ matters }) => matters);
  }

  quickOf(option: Option): Quick {
    const picked = (all: Float64Array): Float64Array => Float64Array.from(this.active, (j) => all[j] as number);
    return { option, mean: picked(option.mean), variance: picked(option.variance), rank: 0, way: 0 };
  }

  /** Sums with one more board. */
  add(sums: Sums, { mean, variance }: Quick, into: Sums): void {
    for (let j = 0; j < this.width; j++) {
      into.mean[j] = (sums.mean[j] as number) + (mean[j] as number);
      into.variance[j] = (sums.variance[j] as number) + (variance[j] as number);
    }
  }

  /** Adds to the least variances what must come on top because well-read boards do not last for all slots from this level on. */
  addScarcity(k: number, onBoard: readonly (readonly number[])[], least: Float64Array): void {
    const shortest_mm = this.shortest_mm[k];
    if (shortest_mm === undefined || this.scarce.length === 0) return;
    const holds = this.problem.boards.map(({ length_mm }, b) => {
      const taken_mm = (onBoard[b] ?? []).reduce((sum, i) => sum + (this.problem.lengths[i]?.length_mm ?? 0), 0);
      return Math.max(0, Math.floor((length_mm - taken_mm + 0.01) / shortest_mm));
    });
    for (const one of this.scarce) least[one.measure] = (least[one.measure] as number) + one.extra(k, holds);
  }
}

/** For one measure: which boards bring little variance to every slot, and what it costs to do without them. */
class Scarcity {
  private readonly good: readonly number[];
  /** False when every board is as good. */
  readonly matters: boolean;
  /** Per level: what the slots from there on pay at least without a good board, cheapest first, added up. */
  private readonly paid: readonly (readonly number[])[];

  constructor(quick: readonly (readonly Quick[])[], readonly measure: number, boards: number) {
    const least = quick.map((own) => Math.min(...own.map(({ variance }) => variance[measure] as number)));
    const isGood = (b: number): boolean => quick.some((own, k) => own.some(({ option, variance }) => option.board === b && (variance[measure] as number) <= (least[k] as number) * 1.5 + 1e-12));
    this.good = Array.from({ length: boards }, (_, b) => b).filter(isGood);
    this.matters = this.good.length < boards;
    const good = new Set(this.good);
    const extra = quick.map((own, k) => Math.max(0, Math.min(...own.filter(({ option }) => !good.has(option.board)).map(({ variance }) => variance[measure] as number), Infinity) - (least[k] as number)));
    this.paid = quick.map((_, k) => extra.slice(k).sort((a, b) => a - b).reduce<number[]>((sums, one) => [...sums, (sums.at(-1) as number) + one], [0]));
  }

  /** What the slots from a level on pay more than the least, the good boards holding so many pieces. */
  extra(k: number, holds: readonly number[]): number {
    const paid = this.paid[k] as readonly number[];
    const good = this.good.reduce((sum, b) => sum + (holds[b] as number), 0);
    const without = Math.max(0, paid.length - 1 - good);
    return paid[without] as number;
  }
}

const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

const alike = (a: Float64Array, b: Float64Array): boolean => a.every((value, j) => Math.abs(value - (b[j] as number)) < 1e-9);

/** Ways of laying one board that come to the same for the measures that matter, once each; ranks follow the boards. */
function distinct(all: readonly Quick[]): Quick[] {
  const kept: Quick[] = [];
  for (const one of all) {
    const others = kept.filter(({ option }) => option.board === one.option.board);
    if (!others.some(({ mean, variance }) => alike(mean, one.mean) && alike(variance, one.variance))) kept.push({ ...one, rank: kept.length, way: others.length });
  }
  return kept;
}

/** For each slot the first slot that is just like it: the same lengths, the same boards, the same effects. */
function twinsOf(problem: PlaceProblem, all: readonly (readonly Quick[])[]): number[] {
  const same = (a: number, b: number): boolean => {
    const [p, q] = [all[a] as readonly Quick[], all[b] as readonly Quick[]];
    return problem.lengths[a]?.length_mm === problem.lengths[b]?.length_mm && problem.lengths[a]?.kerf_mm === problem.lengths[b]?.kerf_mm && p.length === q.length
      && p.every((one, k) => one.option.board === q[k]?.option.board && alike(one.mean, q[k]?.mean as Float64Array) && alike(one.variance, q[k]?.variance as Float64Array));
  };
  return problem.slots.map((_, i) => problem.slots.findIndex((__, k) => k <= i && same(k, i)));
}

/** From each slot on: the extremes of what is left, each slot by itself, added up. */
function suffixes(quick: readonly (readonly Quick[])[], width: number, pick: (a: number, b: number) => number, of: (one: Quick) => Float64Array): Float64Array[] {
  const all = [new Float64Array(width)];
  for (let k = quick.length - 1; k >= 0; k--) {
    const below = all[0] as Float64Array;
    all.unshift(below.map((sum, j) => sum + (quick[k] as readonly Quick[]).map((one) => of(one)[j] as number).reduce((a, b) => pick(a, b))));
  }
  return all;
}
