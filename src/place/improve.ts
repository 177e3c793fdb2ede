import { change, totalsOf, type HasRoom, type Placing, type Totals } from './placing.js';
import type { Option, PlaceProblem } from './problem.js';

/** How good a placing is, smaller better; Infinity where it may not be. */
export type Score = (totals: Totals, placing: Placing) => number;

/** Smaller gains than this are rounding. */
const hair = 1e-12;

/**
 * Makes a placing better by small steps until none helps: another way to lie or another board for one slot, or two
 * slots swapping their boards. Bought
 * boards stay as many as they are: a slot gives one up only to another slot. Returns the better placing and its score.
 */
export function improve(
  problem: PlaceProblem,
  start: Placing,
  hasRoom: HasRoom,
  score: Score,
): { readonly placing: Placing; readonly score: number } {
  const placing = [...start];
  const onBoard = new Map<number, number[]>();
  placing.forEach(({ board }, i) => onBoard.set(board, [...(onBoard.get(board) ?? []), i]));
  const totals = totalsOf(problem, placing);
  let best = score(totals, placing);
  const put = (i: number, option: Option): void => {
    const old = placing[i] as Option;
    change(totals, old, -1);
    change(totals, option, 1);
    if (old.board !== option.board) {
      onBoard.set(
        old.board,
        (onBoard.get(old.board) ?? []).filter((k) => k !== i),
      );
      onBoard.set(option.board, [...(onBoard.get(option.board) ?? []), i]);
    }
    placing[i] = option;
  };
  const roomy = (board: number): boolean => board < 0 || hasRoom(board, onBoard.get(board) ?? []);
  /** Keeps the change when it helps, else takes it back. */
  const settle = (undo: () => void): boolean => {
    const now = score(totals, placing);
    if (now < best - hair * Math.abs(best)) {
      best = now;
      return true;
    }
    undo();
    return false;
  };
  for (let better = true, rounds = 0; better && rounds < 200; rounds++) {
    better = false;
    for (let i = 0; i < placing.length; i++) {
      for (const option of problem.options[i] ?? []) {
        const old = placing[i] as Option;
        if (option === old || old.board < 0) continue;
        put(i, option);
        if (!roomy(option.board)) put(i, old);
        else better = settle(() => put(i, old)) || better;
      }
      for (let k = 0; k < i; k++) better = swap(i, k) || better;
    }
  }
  return { placing, score: score(totalsOf(problem, placing), placing) };

  function swap(i: number, k: number): boolean {
    const a = placing[i] as Option;
    const b = placing[k] as Option;
    if (a.board === b.board) return false;
    let helped = false;
    for (const forI of optionsOf(i, b.board)) {
      for (const forK of optionsOf(k, a.board)) {
        const before = [placing[i] as Option, placing[k] as Option] as const;
        if (before[0] === forI && before[1] === forK) continue;
        put(i, forI);
        put(k, forK);
        const undo = (): void => {
          put(i, before[0]);
          put(k, before[1]);
        };
        if (!roomy(forI.board) || !roomy(forK.board)) undo();
        else helped = settle(undo) || helped;
      }
    }
    return helped;
  }

  function optionsOf(i: number, board: number): readonly Option[] {
    return board < 0
      ? [problem.bought[i] as Option]
      : (problem.options[i] ?? []).filter((option) => option.board === board);
  }
}
