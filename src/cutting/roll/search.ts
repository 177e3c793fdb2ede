import { placeAcross } from './across.js';
import {
  fillableLengths,
  fillableWidths,
  leastLength_mm,
  usableOf,
  type Fillable,
  type Level,
  type Waiting,
} from './bounds.js';
import { place, type Lie, type PlacedCloth, type RollPiece } from './piece.js';

/** A piece to search with: at most thirty of them. */
export interface OpenPiece {
  readonly piece: RollPiece;
  readonly lies: readonly Lie[];
}

export interface RollSearch {
  /** The best layout found that is shorter than the one given, or null when there is none or none was found. */
  readonly placed: readonly PlacedCloth[] | null;
  /** True when the search ended by itself: then nothing shorter exists. */
  readonly finished: boolean;
}

/** Improvements smaller than this are not worth another layout, mm. */
const grain_mm = 1e-6;
/** Strips put down while looking for places across the roll of one way of starting. */
const acrossSteps = 20_000;

/** A piece that starts at `from` along the roll. */
interface Started {
  readonly index: number;
  readonly lie: Lie;
  readonly from: number;
  readonly to: number;
}

/** What is known of a set of waiting pieces, whatever lies before them. */
interface Rest {
  readonly indices: readonly number[];
  readonly waiting: Waiting;
  readonly widths: Fillable;
}

/**
 * Looks for the shortest layout below a known length, in two stages. First where along the roll each piece starts: at
 * its cut end, or where another piece
 * ends (a layout pushed together always looks so), never more side by side than the roll is wide. Then whether the
 * pieces find places across the roll.
 * Turns back where the waiting area cannot end below the best so far, and where the same state has failed before for
 * want of length alone. The largest piece
 * stays nearer the cut end, a layout turned end for end being the same. Stops after `steps` states and trials (a count,
 * not a time: the same in every run).
 */
export function searchRoll(pieces: readonly OpenPiece[], roll_mm: number, known_mm: number, steps: number): RollSearch {
  const order = [...pieces].sort((p, q) => area(q) - area(p));
  const allLengths = fillableLengths(
    order.map((p) => p.lies),
    known_mm,
  );
  const rests = new Map<number, Rest>();
  const dead = new Set<string>();
  let limit_mm = usableOf(allLengths, known_mm - grain_mm);
  let best: readonly PlacedCloth[] | null = null;
  let left = steps;
  let sure = true;

  const restOf = (mask: number): Rest => {
    const known = rests.get(mask);
    if (known !== undefined) return known;
    const indices = order.flatMap((_, i) => (mask & (1 << i) ? [] : [i]));
    const waiting = indices.map((i) => (order[i] as OpenPiece).lies);
    const rest = { indices, waiting, widths: fillableWidths(waiting, roll_mm) };
    rests.set(mask, rest);
    return rest;
  };

  const tryAcross = (started: readonly Started[]): void => {
    const across = placeAcross(
      started.map(({ from, to, lie }) => ({ from, to, across: lie.across })),
      roll_mm,
      acrossSteps,
    );
    left -= across.steps;
    if (!across.finished) sure = false;
    if (across.places === null) return;
    best = started.map(({ index, lie, from }, i) =>
      place((order[index] as OpenPiece).piece, lie, across.places?.[i] as number, from),
    );
    limit_mm = usableOf(allLengths, Math.max(...started.map((s) => s.to)) - grain_mm);
  };

  /**
   * All finishes with further starts at `now` of pieces from `first` on, or later. True when a finish reached the
   * second stage.
   */
  const descend = (started: readonly Started[], mask: number, now: number, first: number): boolean => {
    if (started.length === order.length) {
      if (Math.max(...started.map((s) => s.to)) <= limit_mm + grain_mm) tryAcross(started);
      return true;
    }
    if (left-- <= 0) return true;
    const running = started.filter((s) => s.to > now + 1e-9).sort((p, q) => p.to - q.to);
    const levels = levelsOf(running, now);
    const { indices, waiting, widths } = restOf(mask);
    if (leastLength_mm(levels, waiting, widths, roll_mm) > limit_mm + grain_mm) return false;
    const key = `${mask}|${now}|${first}|${running.map((s) => `${s.to},${s.lie.across}`).join(';')}`;
    if (dead.has(key)) return false;
    let reached = false;
    const tried = new Set<string>();
    for (const index of indices) {
      if (index < first) continue;
      for (const lie of (order[index] as OpenPiece).lies) {
        const size = `${lie.across}x${lie.along}`;
        const to = now + lie.along;
        // the largest piece is kept to the near half, so an equal one is not the same as it
        if (index > 0 && tried.has(size)) continue;
        if (index > 0) tried.add(size);
        if ((levels[0] as Level).used + lie.across > roll_mm + 1e-9 || to > limit_mm + grain_mm) continue;
        if (index === 0 && now + to > limit_mm + grain_mm) continue;
        if (descend([...started, { index, lie, from: now, to }], mask | (1 << index), now, index + 1)) reached = true;
      }
    }
    const soonest = running[0];
    if (soonest !== undefined && descend(started, mask, soonest.to, 0)) reached = true;
    if (!reached) dead.add(key);
    return reached;
  };
  if (limit_mm > 0) descend([], 0, 0, 0);
  return { placed: best, finished: left > 0 && sure };
}

/** Width taken at each level from now on by pieces already started, which end one after the other. */
function levelsOf(running: readonly Started[], now: number): Level[] {
  let used = running.reduce((sum, s) => sum + s.lie.across, 0);
  const levels: Level[] = [{ y: now, used }];
  for (const s of running) {
    used -= s.lie.across;
    levels.push({ y: s.to, used });
  }
  return levels;
}

function area(open: OpenPiece): number {
  return open.piece.across_mm * open.piece.along_mm;
}
