import { onlyAlone, type ReadyProblem, type Bin } from './ready-problem.js';
import type { Weight } from './weights.js';

/** One way to load a board: how many of each kind, and how much of each weight's spare it uses up. */
export interface Pattern {
  readonly bin: number;
  readonly counts: Uint16Array;
  /** Sort key: smaller is tried first. */
  readonly loss: number;
}

/** What is left to cut at a point of the search. */
export interface Remaining {
  readonly counts: Uint16Array;
  /** Spare of every weight: what the boards left can carry beyond what is left to cut. */
  readonly spare: readonly number[];
}

/**
 * Every load of board kind `bin` that holds the longest piece left (`first`), leaves no room for another piece left,
 * stays within the
 * spare of every weight, and is not beaten by a load that swaps one or two of its pieces for a longer one left over.
 * A piece too long for the board unless it lies alone makes a load by itself.
 * Swapping argument: in any finished cutting the longer piece lies on another board, where the shorter ones fit in its
 * place, so the better load can be had instead
 * (two for one not when the longer piece may lie alone on a board that has no room for two).
 */
export function patternsWith(
  bench: ReadyProblem,
  first: number,
  bin: number,
  rest: Remaining,
  weights: readonly Weight[],
  tick: () => boolean,
): Pattern[] {
  const { size, setup, group } = bench;
  const kinds = size.length;
  const board = bench.bins[bin] as Bin;
  const room = board.size;
  const start = (size[first] as number) + (setup[first] as number);
  if (start > room && start > board.alone) return [];
  const tail = new Float64Array(kinds + 1);
  for (let k = kinds - 1; k >= first; k--)
    tail[k] = (tail[k + 1] as number) + (size[k] as number) * (rest.counts[k] as number);
  const chosen = new Uint16Array(kinds);
  const present = new Map<number, number>();
  const found: Pattern[] = [];
  const least = weights.map((w, i) => (w.capacity[bin] as number) - (rest.spare[i] as number));
  const carried = weights.map(() => new Float64Array(kinds + 1));
  let stop = false;

  const finish = (left: number): void => {
    if (!full(left)) return;
    let loss = 0;
    for (let w = 0; w < weights.length; w++) {
      const { value, capacity } = weights[w] as Weight;
      let lost = capacity[bin] as number;
      for (let k = first; k < kinds; k++) lost -= (chosen[k] as number) * (value[k] as number);
      if (lost > (rest.spare[w] as number)) return;
      loss += w === 0 ? 1e-3 * (lost / room) : Math.max(0, lost) / Math.max(1, capacity[bin] as number);
    }
    if (left >= 0 && beaten(bench, chosen, rest.counts, first, left)) return;
    found.push({ bin, counts: chosen.slice(), loss });
  };
  const full = (left: number): boolean => {
    for (let k = kinds - 1; k >= first; k--) {
      if ((rest.counts[k] as number) === (chosen[k] as number)) continue;
      const g = group[k] as number;
      if ((size[k] as number) + (g >= 0 && !present.get(g) ? (setup[k] as number) : 0) <= left) return false;
    }
    return true;
  };
  const visit = (from: number, left: number, filled: number): void => {
    if (stop || (stop = tick())) return;
    let k = from;
    while (k < kinds && ((rest.counts[k] as number) === 0 || (size[k] as number) > left)) k++;
    if (filled + Math.min(left, tail[k] as number) < (least[0] as number)) return;
    if (k === kinds) return finish(left);
    for (let w = 1; w < weights.length; w++) {
      const sums = carried[w] as Float64Array;
      const sum = (sums[k] = sums[from] as number);
      if ((sum + ((weights[w] as Weight).rate[k] as number) * left) * (1 + 1e-12) < (least[w] as number)) return;
    }
    const g = group[k] as number;
    const fresh = g >= 0 && !present.get(g) ? (setup[k] as number) : 0;
    const s = size[k] as number;
    const fewest = k === first ? 1 : 0;
    for (
      let c = Math.max(fewest, Math.min(rest.counts[k] as number, Math.floor((left - fresh) / s)));
      c >= fewest;
      c--
    ) {
      chosen[k] = c;
      if (c > 0) present.set(g, (present.get(g) ?? 0) + 1);
      for (let w = 1; w < weights.length; w++) {
        const sums = carried[w] as Float64Array;
        sums[k + 1] = (sums[k] as number) + c * ((weights[w] as Weight).value[k] as number);
      }
      visit(k + 1, c > 0 ? left - fresh - c * s : left, filled + c * s);
      if (c > 0) present.set(g, (present.get(g) ?? 0) - 1);
      if (stop) break;
    }
    chosen[k] = 0;
  };
  if (start <= room) visit(first, room, 0);
  else {
    chosen[first] = 1;
    finish(-1);
  }
  return found;
}

/** Whether a longer piece left over could take the place of one piece, or of two, of the same group in the load. */
function beaten(bench: ReadyProblem, chosen: Uint16Array, counts: Uint16Array, first: number, left: number): boolean {
  const { size, group } = bench;
  const kinds = size.length;
  for (let q = first; q < kinds; q++) {
    if ((counts[q] as number) <= (chosen[q] as number)) continue;
    const long = size[q] as number;
    const lone = bench.bins.some((board) => onlyAlone(bench, q, board));
    for (let j = kinds - 1; j > q; j--) {
      if ((chosen[j] as number) === 0 || group[j] !== group[q]) continue;
      const short = size[j] as number;
      if (short < long && long - short <= left) return true;
      for (let i = j; i > q && !lone; i--) {
        if ((chosen[i] as number) < (i === j ? 2 : 1) || group[i] !== group[q]) continue;
        const both = short + (size[i] as number);
        if (both <= long && long - both <= left) return true;
      }
    }
  }
  return false;
}
