import type { Group } from './aim.js';
import { BoardClasses } from './board-classes.js';
import type { Option, PlaceProblem } from './problem.js';
import { fromEachOn, rangeOf, type Quick, type Range, type Sums } from './ranges.js';
import { Scarcity } from './scarcity.js';

/** What one board can bring to a slot, and the ways to turn it. */
export interface BoardRange extends Range {
  readonly board: number;
  readonly ways: readonly Quick[];
}

/**
 * What a search looks up at every step: slots in order, their options by class of board, and what the slots still to
 * come can bring at least and at most.
 */
export class SearchTable {
  readonly groups: readonly Group[];
  /** Measures that matter. */
  readonly width: number;
  /** Slots, those on which most hangs first, slots just alike side by side. */
  readonly order: readonly number[];
  readonly classes: BoardClasses;
  /** What each slot may take, by class and board. */
  readonly byBoard: readonly (readonly (readonly BoardRange[])[])[];
  /** Whether all boards of a class bring the same to a slot, so that it does not matter which of them it takes. */
  readonly alike: readonly (readonly boolean[])[];
  /** Whether a slot is just like the one before it in the order, so that their boards may be taken in order. */
  readonly twin: readonly boolean[];
  /** What a class brings to a slot; null where it has nothing for it. */
  readonly bounds: readonly (readonly (Range | null)[])[];
  /** What the slots from a level on bring, each by itself, added up. */
  readonly rest: readonly Range[];
  private readonly active: readonly number[];
  private readonly scarce: readonly Scarcity[];

  constructor(problem: PlaceProblem) {
    this.active = problem.groups.flatMap(({ measures }) => measures);
    this.width = this.active.length;
    const at = new Map(this.active.map((j, k) => [j, k]));
    this.groups = problem.groups.map(({ limit_mm, scale_mm, measures }) => ({
      limit_mm,
      scale_mm,
      measures: measures.map((j) => at.get(j) as number),
    }));
    const all = problem.slots.map((_, i) =>
      distinct([...(problem.options[i] ?? []), problem.bought[i] as Option].map((option) => this.quickOf(option))),
    );
    const swings = all.map((own) =>
      Math.max(0, ...this.active.map((_, j) => span(own.map(({ mean }) => mean[j] as number)))),
    );
    const twins = twinsOf(problem, all);
    this.order = problem.slots
      .map((_, i) => i)
      .sort(
        (a, b) =>
          (swings[twins[b] as number] as number) - (swings[twins[a] as number] as number) ||
          (twins[a] as number) - (twins[b] as number) ||
          a - b,
      );
    this.twin = this.order.map((i, k) => k > 0 && twins[i] === twins[this.order[k - 1] as number]);
    this.classes = new BoardClasses(problem);
    const count = this.classes.count;
    const quick = this.order.map((i) =>
      Array.from({ length: count }, (_, c) =>
        (all[i] as Quick[]).filter(({ option }) => this.classes.classOf(option.board) === c),
      ),
    );
    this.byBoard = quick.map((own) => own.map((one) => boardRanges(one, this.width)));
    this.alike = this.byBoard.map((own) => own.map((one) => one.every((board) => sameRange(board, one[0] as Range))));
    this.bounds = quick.map((own) => own.map((one) => (one.length === 0 ? null : rangeOf(one, this.width))));
    this.rest = fromEachOn(
      quick.map((own) => rangeOf(own.flat(), this.width)),
      this.width,
    );
    this.scarce = this.active.map((_, j) => new Scarcity(this.bounds, j, count)).filter(({ matters }) => matters);
  }

  quickOf(option: Option): Quick {
    const picked = (all: Float64Array): Float64Array => Float64Array.from(this.active, (j) => all[j] as number);
    return { option, mean: picked(option.mean), variance: picked(option.variance) };
  }

  /** Sums with one more board. */
  add(sums: Sums, { mean, variance }: Quick, into: Sums): void {
    for (let j = 0; j < this.width; j++) {
      into.mean[j] = (sums.mean[j] as number) + (mean[j] as number);
      into.variance[j] = (sums.variance[j] as number) + (variance[j] as number);
    }
  }

  /**
   * Adds to the least variances what must come on top because well-read boards do not last for all slots from this
   * level on; `room` is what each class still holds.
   */
  addScarcity(k: number, room: readonly number[], least: Float64Array): void {
    for (const one of this.scarce) least[one.measure] = (least[one.measure] as number) + one.extra(k, room);
  }
}

function boardRanges(options: readonly Quick[], width: number): readonly BoardRange[] {
  const boards = [...new Set(options.map(({ option }) => option.board))];
  return boards.map((board) => {
    const ways = options.filter(({ option }) => option.board === board);
    return { board, ways, ...rangeOf(ways, width) };
  });
}

const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

const alike = (a: Float64Array, b: Float64Array): boolean =>
  a.every((value, j) => Math.abs(value - (b[j] as number)) < 1e-9);

const sameRange = (a: Range, b: Range): boolean =>
  alike(a.low, b.low) && alike(a.high, b.high) && alike(a.least, b.least) && alike(a.most, b.most);

/** Ways of laying one board that come to the same for the measures that matter, once each. */
function distinct(all: readonly Quick[]): Quick[] {
  const kept: Quick[] = [];
  for (const one of all) {
    const others = kept.filter(({ option }) => option.board === one.option.board);
    if (!others.some(({ mean, variance }) => alike(mean, one.mean) && alike(variance, one.variance))) kept.push(one);
  }
  return kept;
}

/** For each slot the first slot that is just like it: the same lengths, the same boards, the same effects. */
function twinsOf(problem: PlaceProblem, all: readonly (readonly Quick[])[]): number[] {
  const same = (a: number, b: number): boolean => {
    const [p, q] = [all[a] as readonly Quick[], all[b] as readonly Quick[]];
    return (
      problem.lengths[a]?.length_mm === problem.lengths[b]?.length_mm &&
      problem.lengths[a]?.kerf_mm === problem.lengths[b]?.kerf_mm &&
      p.length === q.length &&
      p.every(
        (one, k) =>
          one.option.board === q[k]?.option.board &&
          alike(one.mean, q[k]?.mean as Float64Array) &&
          alike(one.variance, q[k]?.variance as Float64Array),
      )
    );
  };
  return problem.slots.map((_, i) => problem.slots.findIndex((__, k) => k <= i && same(k, i)));
}
