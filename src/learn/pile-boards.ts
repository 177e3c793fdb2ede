import type { Sheet, SheetBoard } from '../bench-sheet/sheet.js';
import type { PileBoard } from '../pile/pile.js';
import type { Plan } from '../plan/plan.js';
import type { FiledSheet } from './filed-sheet.js';

/** A board of a pile and the file it stands in. */
export interface FiledBoard {
  readonly file: string;
  readonly board: PileBoard;
}

/** A sheet whose boards have their readings, and what should be looked at. */
export interface WithBoards {
  readonly filed: FiledSheet;
  readonly questions: readonly string[];
}

/**
 * A sheet that names its boards by their marks takes what it does not say of them itself: from its plan, where that
 * places the same board there, else the twist from
 * the pile. Twist keeps its hand however a board is turned; which way its bow and crook look depends on how it lies, so
 * those come from sheet or plan alone.
 */
export function withPileBoards(
  { file, sheet }: FiledSheet,
  plan: Plan | undefined,
  piles: readonly FiledBoard[],
): WithBoards {
  const questions: string[] = [];
  const alone: string[] = [];
  const boards = sheet.boards.map((board): SheetBoard => {
    const { mark } = board;
    if (mark === null) return board;
    const placed = plan?.boards.find((one) => one.for === board.for && one.ply === board.ply && one.on?.mark === mark);
    if (placed !== undefined)
      return {
        ...board,
        twist_rad_per_m: board.twist_rad_per_m ?? placed.twist_rad_per_m,
        bow_per_m: board.bow_per_m ?? placed.bow_per_m,
        crook_per_m: board.crook_per_m ?? placed.crook_per_m,
      };
    if (board.twist_rad_per_m !== null) return board;
    const found = piles.filter((one) => one.board.mark === mark);
    const twists = new Set(found.map((one) => one.board.twist_rad_per_m));
    if (found.length === 0) {
      if (board.bow_per_m === null && board.crook_per_m === null) alone.push(mark);
    } else if (twists.size > 1)
      questions.push(
        `${file}: board ${mark} is in more than one pile (${[...new Set(found.map((one) => one.file))].join(', ')}) with different readings, so none of them counts. Which is right?`,
      );
    return { ...board, twist_rad_per_m: twists.size === 1 ? ([...twists][0] ?? null) : null };
  });
  if (alone.length > 0) {
    const which = `${alone.length === 1 ? 'board' : 'boards'} ${alone.join(', ')}`;
    questions.push(
      piles.length === 0
        ? `${file}: it names ${which} of a pile, and no pile was given, so their readings do not count. Put the pile’s file into the folder or name it with --pile.`
        : `${file}: ${which}: in no pile that was given, so nothing of ${alone.length === 1 ? 'it' : 'them'} counts. Is the mark right?`,
    );
  }
  const full: Sheet = { ...sheet, boards };
  return { filed: { file, sheet: full }, questions };
}
