import type { HasRoom, Placing } from './placing.js';
import type { Option, PlaceProblem } from './problem.js';

/**
 * A placing that fills as many slots from the pile as a quick look finds: slots in the given order, each from the first
 * board in the given order that
 * has room, one piece a board as long as boards last. What finds no board is bought.
 */
export function fillInOrder(
  { options, bought }: PlaceProblem,
  slotOrder: readonly number[],
  boardOrder: readonly number[],
  hasRoom: HasRoom,
  pick: (ways: readonly Option[]) => Option = (ways) => ways[0] as Option,
): Placing {
  const placing = [...bought];
  const onBoard = new Map<number, number[]>();
  for (const i of slotOrder) {
    const ways = options[i] ?? [];
    const takes = (board: number): boolean =>
      ways.some((option) => option.board === board) && hasRoom(board, [...(onBoard.get(board) ?? []), i]);
    const held = (board: number): number => onBoard.get(board)?.length ?? 0;
    const board =
      boardOrder.find((one) => held(one) === 0 && takes(one)) ??
      [...boardOrder].sort((a, b) => held(a) - held(b)).find(takes);
    if (board === undefined) continue;
    onBoard.set(board, [...(onBoard.get(board) ?? []), i]);
    placing[i] = pick(ways.filter((option) => option.board === board));
  }
  return placing;
}

/** How many slots are filled from the pile. */
export const filledOf = (placing: Placing): number => placing.filter(({ board }) => board >= 0).length;

/** Steps after which the search for the fullest placing gives up. */
const most_steps = 20_000;

/**
 * The placing that fills most slots from the pile, longest pieces first into the boards that they fill best. `proven`
 * says that no placing fills more.
 */
export function fullest(
  problem: PlaceProblem,
  hasRoom: HasRoom,
): { readonly placing: Placing; readonly proven: boolean } {
  const { slots, boards, lengths, options, bought } = problem;
  const byLength = slots
    .map((_, i) => i)
    .sort((a, b) => (lengths[b]?.length_mm ?? 0) - (lengths[a]?.length_mm ?? 0) || a - b);
  const shortestFirst = boards
    .map((_, b) => b)
    .sort((a, b) => (boards[a]?.length_mm ?? 0) - (boards[b]?.length_mm ?? 0) || a - b);
  let best = fillInOrder(problem, byLength, shortestFirst, hasRoom);
  const possible = options.filter((own) => own.length > 0).length;
  let filled = filledOf(best);
  let steps = 0;
  const now = [...bought];
  const onBoard = new Map<number, number[]>();
  const visit = (k: number, have: number): void => {
    if (
      filled === possible ||
      steps++ > most_steps ||
      have + byLength.slice(k).filter((i) => (options[i] ?? []).length > 0).length <= filled
    )
      return;
    if (k === byLength.length) {
      best = [...now];
      filled = have;
      return;
    }
    const i = byLength[k] as number;
    const tried = new Set<string>();
    for (const option of options[i] ?? []) {
      const held = onBoard.get(option.board) ?? [];
      const alike = `${problem.kinds[option.board]} ${held.map((s) => lengths[s]?.length_mm).join()}`;
      if (tried.has(alike) || !hasRoom(option.board, [...held, i])) continue;
      tried.add(alike);
      onBoard.set(option.board, [...held, i]);
      now[i] = option;
      visit(k + 1, have + 1);
      onBoard.set(option.board, held);
    }
    now[i] = bought[i] as Option;
    visit(k + 1, have);
  };
  visit(0, 0);
  return { placing: best, proven: filled === possible || steps <= most_steps };
}
