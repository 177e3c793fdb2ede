import { onlyAlone, type Bin, type ReadyProblem } from './ready-problem.js';

/** Cells that the length of a board is told in: a tenth of a millimetre on a board of 2.4 m. */
const cells = 24_000;

/**
 * A value that no load of a board exceeds, by going through the kinds once: every size is told in whole cells of the
 * board, rounded down, so that what fits the board fits its cells. `bestLoad` says the same of few kinds exactly; of
 * hundreds it runs out of steps, and what it can promise then is worth little. Whole values give a whole answer.
 */
export function loadCeiling(bench: ReadyProblem, value: readonly number[], bin: Bin): number {
  const cell = Math.max(1, Math.floor(bin.size / cells));
  const room = Math.floor(bin.size / cell);
  /** Most value within so many cells, of the groups gone through so far. */
  let most = new Float64Array(room + 1);
  for (const group of new Set(bench.group)) {
    const kinds = value.flatMap((v, k) => (v > 0 && bench.group[k] === group ? [k] : []));
    if (kinds.length === 0) continue;
    const setup = Math.floor((bench.setup[kinds[0] as number] as number) / cell);
    const within = new Float64Array(room + 1).fill(-Infinity);
    within.set(most.subarray(0, Math.max(0, room + 1 - setup)), Math.min(setup, room + 1));
    for (const k of kinds)
      add(within, Math.floor((bench.size[k] as number) / cell), value[k] as number, bench.count[k]!);
    const before = most;
    most = within.map((one, c) => Math.max(one, before[c] as number));
  }
  const alone = value.map((v, k) => (onlyAlone(bench, k, bin) ? v : 0));
  return Math.max(most[room] as number, ...alone);
}

/**
 * Lets up to `count` pieces of one kind into the cells: bundles of one, two, four … and the rest make any number. Of
 * pieces that take no whole cell all go in.
 */
function add(most: Float64Array, size: number, value: number, count: number): void {
  const room = most.length - 1;
  let left = Math.min(count, Math.floor(room / size));
  for (let bundle = 1; left > 0; bundle *= 2) {
    const n = Math.min(bundle, left);
    left -= n;
    const [wide, worth] = [n * size, n * value];
    for (let c = room; c >= wide; c--) {
      const better = (most[c - wide] as number) + worth;
      if (better > (most[c] as number)) most[c] = better;
    }
  }
}
