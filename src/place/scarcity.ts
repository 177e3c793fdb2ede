import type { Range } from './ranges.js';

/**
 * What slots must pay in variance because well-read boards do not last for all of them, for one measure. Classes stand
 * in order of what they bring; a slot that
 * does without the first t of them pays at least the step from class t to the next, and as many slots pay it as those t
 * classes have no room for.
 */
export class Scarcity {
  /** Classes in order, least variance first. */
  private readonly order: readonly number[];
  /** Per step and level: what the slots from that level on pay for the step, cheapest first, added up. */
  private readonly paid: readonly (readonly Float64Array[])[];
  /** False where every class brings the same. */
  readonly matters: boolean;

  constructor(
    bounds: readonly (readonly (Range | null)[])[],
    readonly measure: number,
    classes: number,
  ) {
    const brings = (k: number, c: number): number => bounds[k]?.[c]?.least[measure] ?? Infinity;
    const total = (c: number): number => bounds.reduce((sum, _, k) => sum + Math.min(brings(k, c), 1e12), 0);
    this.order = Array.from({ length: classes }, (_, c) => c).sort((a, b) => total(a) - total(b) || a - b);
    // The least that a slot pays with the class in this place of the order or any after it.
    const least = bounds.map((_, k) => {
      const from = this.order.map((c) => brings(k, c));
      for (let t = from.length - 2; t >= 0; t--) from[t] = Math.min(from[t] as number, from[t + 1] as number);
      return from;
    });
    const step = (k: number, t: number): number => {
      const [now, next] = [least[k]?.[t] as number, least[k]?.[t + 1] as number];
      return Number.isFinite(next) ? next - now : Number.isFinite(now) ? 1e12 : 0;
    };
    this.paid = Array.from({ length: classes - 1 }, (_, t) =>
      bounds.map((__, k) =>
        addedUp(
          bounds
            .map((___, i) => i)
            .slice(k)
            .map((i) => step(i, t)),
        ),
      ),
    );
    this.matters = this.paid.some(([all]) => all !== undefined && (all.at(-1) as number) > 1e-12);
  }

  /** What the slots from a level on pay more than the least, the classes having room for so many pieces. */
  extra(k: number, room: readonly number[]): number {
    let sum = 0;
    let held = 0;
    for (let t = 0; t < this.paid.length; t++) {
      held += room[this.order[t] as number] as number;
      const paid = this.paid[t]?.[k];
      if (paid === undefined) return 0;
      const without = Math.min(paid.length - 1, Math.max(0, paid.length - 1 - held));
      sum += paid[without] as number;
    }
    return sum;
  }
}

/** Sums of the smallest ones: of none, of one, of two … */
function addedUp(all: readonly number[]): Float64Array {
  const sums = new Float64Array(all.length + 1);
  [...all].sort((a, b) => a - b).forEach((one, i) => (sums[i + 1] = (sums[i] as number) + one));
  return sums;
}
