import { onlyAlone, type ReadyProblem, type Bin } from './ready-problem.js';

/**
 * The most a board of some size can carry, with the load that carries it. `exact` is false when the search was cut
 * short: `value` is then only an upper bound.
 */
export interface Load {
  readonly value: number;
  readonly counts: readonly number[];
  readonly exact: boolean;
}

/**
 * Largest Σ value·count over all loads of one board (each kind at most `limit` times), by branch and bound.
 * Any value returned is never below the true one, so it may be used in a proof; with whole values the result is whole.
 */
export function bestLoad(
  bench: ReadyProblem,
  value: readonly number[],
  boardSize: number,
  limit: readonly number[] = bench.count,
  steps = 20_000,
): Load {
  const { size, setup, group } = bench;
  const order = size
    .map((_, i) => i)
    .filter(
      (i) =>
        (value[i] as number) > 0 && (limit[i] as number) > 0 && (size[i] as number) + (setup[i] as number) <= boardSize,
    );
  order.sort(
    (p, q) =>
      (value[q] as number) * (size[p] as number) - (value[p] as number) * (size[q] as number) ||
      (size[q] as number) - (size[p] as number),
  );
  const n = order.length;
  const v = order.map((i) => value[i] as number);
  const s = order.map((i) => size[i] as number);
  const most = order.map((i) => limit[i] as number);
  const counts = new Array<number>(n).fill(0);
  let best = 0;
  let bestCounts: number[] = counts.slice();
  let left = steps;
  const open = new Map<number, number>();
  const whole = v.every(Number.isInteger);
  const round = (x: number): number => (whole ? Math.floor(x * (1 + 1e-13) + 1e-7) : x);
  const ceiling = (k: number, room: number): number => {
    let bound = 0;
    for (let j = k; j < n && room > 0; j++) {
      const take = (s[j] as number) * (most[j] as number);
      if (take >= room) return bound + ((v[j] as number) * room) / (s[j] as number);
      bound += (v[j] as number) * (most[j] as number);
      room -= take;
    }
    return bound;
  };
  const top = round(ceiling(0, boardSize));
  const visit = (k: number, room: number, sum: number): void => {
    if (sum > best) {
      best = sum;
      bestCounts = counts.slice();
    }
    if (k === n || best >= top || left-- <= 0) return;
    if (round(sum + ceiling(k, room)) <= best) return;
    const g = group[order[k] as number] as number;
    const fresh = g >= 0 && (open.get(g) ?? 0) === 0 ? (setup[order[k] as number] as number) : 0;
    const fit = Math.min(most[k] as number, Math.floor((room - fresh) / (s[k] as number)));
    for (let c = Math.max(0, fit); c >= 0; c--) {
      counts[k] = c;
      if (c > 0) open.set(g, (open.get(g) ?? 0) + 1);
      visit(k + 1, c > 0 ? room - fresh - c * (s[k] as number) : room, sum + c * (v[k] as number));
      if (c > 0) open.set(g, (open.get(g) ?? 0) - 1);
      if (left <= 0) break;
    }
    counts[k] = 0;
  };
  visit(0, boardSize, 0);
  const full = new Array<number>(size.length).fill(0);
  bestCounts.forEach((c, k) => (full[order[k] as number] = c));
  const exact = left > 0 || best >= top;
  return { value: exact ? best : top, counts: full, exact };
}

/** The best load of a board, a single piece by itself included. */
export function bestBoardLoad(
  bench: ReadyProblem,
  value: readonly number[],
  bin: Bin,
  limit: readonly number[] = bench.count,
  steps = 20_000,
): Load {
  const load = bestLoad(bench, value, bin.size, limit, steps);
  if (bin.alone === bin.size) return load;
  let best = load;
  value.forEach((v, k) => {
    if (v > best.value && (limit[k] as number) > 0 && onlyAlone(bench, k, bin))
      best = { value: v, counts: value.map((_, i) => (i === k ? 1 : 0)), exact: true };
  });
  return best;
}
