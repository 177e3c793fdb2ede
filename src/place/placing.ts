import type { Option, PlaceProblem } from './problem.js';
import { roomFor, type Room } from './room.js';

/** What every slot takes, in the order of the slots. */
export type Placing = readonly Option[];

/** Means and variances of all measures added up. */
export interface Totals {
  readonly mean: Float64Array;
  readonly variance: Float64Array;
}

/** Adds the effects of a placing up; independent parts, so variances add. */
export function totalsOf({ measures }: PlaceProblem, placing: Placing): Totals {
  const totals = { mean: new Float64Array(measures.length), variance: new Float64Array(measures.length) };
  for (const option of placing) change(totals, option, 1);
  return totals;
}

/** Puts a board's effect in (1) or takes it out (−1). */
export function change({ mean, variance }: Totals, option: Option, by: 1 | -1): void {
  for (let j = 0; j < mean.length; j++) {
    mean[j] = (mean[j] as number) + by * (option.mean[j] as number);
    variance[j] = Math.max(0, (variance[j] as number) + by * (option.variance[j] as number));
  }
}

/** Whether a board has room for the pieces of these slots, remembered for equal boards and equal pieces. */
export type HasRoom = (board: number, slots: readonly number[]) => boolean;

/** Room on the boards of a problem. */
export function roomOn({ lengths, stretches, kinds }: PlaceProblem): HasRoom {
  const known = new Map<string, boolean>();
  const single = stretches.map((all) =>
    all.length === 1 && all[0] !== undefined ? all[0].to_mm - all[0].from_mm : null,
  );
  return (board, slots) => {
    const whole_mm = single[board];
    if (whole_mm !== null && whole_mm !== undefined) {
      let taken_mm = 0;
      let last_mm = 0;
      for (const i of slots) {
        const { length_mm, kerf_mm } = lengths[i] as (typeof lengths)[number];
        taken_mm += length_mm + kerf_mm;
        last_mm = Math.max(last_mm, kerf_mm);
      }
      if (slots.length === 0 || taken_mm - last_mm <= whole_mm) return true;
    }
    const key = `${kinds[board]} ${slots
      .map((i) => lengths[i]?.length_mm)
      .sort()
      .join()}`;
    let answer = known.get(key);
    if (answer === undefined)
      known.set(
        key,
        (answer =
          roomFor(
            stretches[board] ?? [],
            slots.map((i) => lengths[i] as (typeof lengths)[number]),
          ) !== null),
      );
    return answer;
  };
}

/** Slots by the board they are cut from, in the order of the pile; bought boards left out. */
export function slotsByBoard(placing: Placing): ReadonlyMap<number, readonly number[]> {
  const found = new Map<number, number[]>();
  placing.forEach(({ board }, i) => {
    if (board >= 0) found.set(board, [...(found.get(board) ?? []), i]);
  });
  return new Map([...found].sort(([a], [b]) => a - b));
}

/**
 * Where each slot's piece begins on its board, mm from the marked end; null for bought boards. Throws when the pieces
 * do not fit: a bug of the search.
 */
export function layOutPlacing({ lengths, stretches }: PlaceProblem, placing: Placing): readonly (number | null)[] {
  const from = new Array<number | null>(placing.length).fill(null);
  for (const [board, slots] of slotsByBoard(placing)) {
    const room: Room | null = roomFor(
      stretches[board] ?? [],
      slots.map((i) => lengths[i] as (typeof lengths)[number]),
    );
    if (room === null) throw new Error('a board was given more pieces than it holds');
    slots.forEach((i, k) => (from[i] = room[k] as number));
  }
  return from;
}
