import type { Problem } from '../base/problem.js';
import { formatLength } from '../base/units-format.js';
import { readQuantity, readRange } from '../base/units.js';
import type { YamlSource } from '../base/yaml-document.js';
import { unknownNames } from '../plan/check-names.js';
import type { Shelf } from '../shelf/shelf.js';
import type { PileInput } from './pile-schema.js';
import { pileProblem } from './pile-problems.js';

type BoardInput = PileInput['boards'][number];

/**
 * Kinds of board that the shelf does not have; looks at the raw document, so that they show beside any other problem.
 */
export const checkStocks = (source: YamlSource, shelf: Shelf): Problem[] =>
  unknownNames(source, shelf, ['boards', '*', 'stock'], 'lumber');

/**
 * What a pile gets wrong by itself: marks used twice, readings of several boards at once, knots and readings beyond the
 * board.
 */
export function checkPile(input: PileInput, source: YamlSource): Problem[] {
  const seen = new Set<string>();
  return input.boards.flatMap((board, index) => {
    const problems = [...checkCount(board, index, source), ...checkLengths(board, index, source)];
    if (board.mark === undefined) return problems;
    if (seen.has(board.mark))
      problems.push(pileProblem('mark-twice', source.place(['boards', index, 'mark']), { value: board.mark }));
    seen.add(board.mark);
    return problems;
  });
}

const ofOneBoard = ['mark', 'twist', 'bow', 'hollow', 'crook', 'hollow-edge', 'knots'] as const;

function checkCount(board: BoardInput, index: number, source: YamlSource): Problem[] {
  const { count = 1 } = board;
  if (count === 1) return [];
  return ofOneBoard.flatMap((key) =>
    board[key] === undefined
      ? []
      : [
          pileProblem('one-for-several', source.place(['boards', index, key], 'key'), {
            name: key,
            value: String(count),
          }),
        ],
  );
}

function checkLengths(board: BoardInput, index: number, source: YamlSource): Problem[] {
  const length = readQuantity(board.length, 'length');
  if (!length.ok) return [];
  const said = formatLength(length.value, length.system ?? 'metric');
  const beyond = (mm: number): boolean => mm > length.value + 0.01;
  const knots = (board.knots ?? []).flatMap((knot, i) => {
    const reading = readRange(knot, 'length');
    return reading !== null && beyond(reading.high)
      ? [
          pileProblem('knot-beyond-board', source.place(['boards', index, 'knots', i]), {
            value: source.written(['boards', index, 'knots', i]),
            allowed: said,
          }),
        ]
      : [];
  });
  const over = [
    { path: ['boards', index, 'over'], text: board.over },
    { path: ['boards', index, 'twist', 'over'], text: typeof board.twist === 'object' ? board.twist.over : undefined },
  ].flatMap(({ path, text }) => {
    const reading = text === undefined ? null : readQuantity(text, 'length');
    return reading?.ok === true && beyond(reading.value)
      ? [
          pileProblem(
            'over-beyond-board',
            source.place(path),
            { value: source.written(path), allowed: said },
            'warning',
          ),
        ]
      : [];
  });
  return [...knots, ...over];
}
