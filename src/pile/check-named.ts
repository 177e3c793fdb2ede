import type { Problem } from '../base/problem.js';
import { nearest } from '../base/schema-problems.js';
import { readQuantity } from '../base/units.js';
import { formatLength } from '../base/units-format.js';
import { readYaml } from '../base/yaml-document.js';
import type { Pile } from './pile.js';
import { soundStretches } from './stretches.js';
import { pileProblem } from './pile-problems.js';

/** A list entry of a plan's `boards:`, as far as it speaks of the pile. */
interface Named {
  readonly board?: unknown;
  readonly from?: unknown;
}

/**
 * What a plan says of boards that the pile does not bear out: a board that is not there, or a place on it that is no
 * sound wood. Such a piece is cut
 * elsewhere, so each is told with its place in the plan. Empty for a text that is no plan: that is told by who reads
 * it.
 */
export function checkNamedBoards(text: string, file: string, pile: Pile): readonly Problem[] {
  const { source } = readYaml(text, file);
  const boards = (source?.data as { readonly boards?: unknown } | null | undefined)?.boards;
  if (source === null || !Array.isArray(boards)) return [];
  const marks = pile.boards.map(({ mark }) => mark);
  return boards.flatMap((entry: Named | null, i): Problem[] => {
    const mark = entry?.board;
    if (typeof mark !== 'string') return [];
    const board = pile.boards.find((one) => one.mark === mark.trim());
    if (board === undefined) {
      const close = nearest(mark, marks);
      return [
        pileProblem(
          'board-not-in-pile',
          source.place(['boards', i, 'board']),
          {
            value: mark,
            name: pile.name,
            allowed: close === undefined ? marks.slice(0, 12).join(', ') : `${close}?`,
          },
          'warning',
        ),
      ];
    }
    const from = typeof entry?.from === 'string' ? readQuantity(entry.from, 'length') : null;
    const at_mm = from?.ok === true ? from.value : 0;
    if (
      board.cut !== null ||
      soundStretches(board).some(({ from_mm, to_mm }) => at_mm >= from_mm - 0.01 && at_mm < to_mm)
    )
      return [];
    return [
      pileProblem(
        'no-sound-wood-there',
        source.place(['boards', i, from === null ? 'board' : 'from']),
        {
          value: formatLength(at_mm, pile.units),
          name: mark,
        },
        'warning',
      ),
    ];
  });
}
