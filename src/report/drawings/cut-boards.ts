import type { Element } from 'xast';
import type { UnitSystem } from '../../base/names.js';
import { formatLength } from '../../base/units-format.js';
import { broken, caption, lineStep } from './caption.js';
import { ink, sheetWidth, softInk, textSize, weight, woodFill } from './drawing-standard.js';
import { textWidth, type Label } from './labels.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from './picture.js';
import { hatch, line, outline, rectangle } from './strokes.js';
import type { Point } from './svg.js';

/**
 * One piece on a board, mm from the board's left end along its long side, and how much shorter each end is on the other
 * side (0 = square).
 */
export interface PieceOnBoard {
  readonly label: string;
  readonly from_mm: number;
  readonly to_mm: number;
  readonly slant_mm: number;
  /** Edge of the board the long side lies on. */
  readonly long_side: 'upper' | 'lower' | 'both';
}

/** Boards to cut, each with its pieces in order from its left end. */
export interface BoardsPicture {
  readonly units: UnitSystem;
  readonly boards: readonly {
    readonly label: string;
    readonly length_mm: number;
    /** Length left at the right end. */
    readonly left_mm: number;
    readonly pieces: readonly PieceOnBoard[];
  }[];
}

const left = 14;
/** Height of a board on the sheet. */
export const tall = 26;
/** From one board to the next where no figure stands below it, and what each row of figures below takes. */
const step = { bare: 58, row: 15 } as const;

/** Every board with its pieces, cuts and leftovers, lengths to scale; `name` is the file. */
export function cutBoards(picture: BoardsPicture, name = 'boards.svg'): Picture {
  const longest = Math.max(1, ...picture.boards.map((b) => b.length_mm));
  const scale = (sheetWidth - 2 * left) / longest;
  let top = 30;
  const drawn = picture.boards.map((board) => {
    const below = figuresBelow(picture, board, scale);
    const made = boardDrawing(picture, board, below, scale, top);
    const rows = Math.max(0, ...below.map(({ row }) => row + 1));
    // The last row lies nearer to its own board than to the next title.
    top += step.bare + step.row * rows + 11 * Math.max(0, rows - 1);
    return made;
  });
  const lines = broken(['Lengths to scale, measured along the long side.', 'Hatched: left over or cut away.']);
  return finishPicture(
    { name, title: 'How to cut the boards', alt: describe(picture) },
    top + lineStep * lines.length,
    together(...drawn, caption(lines, top)),
  );
}

function describe({ boards, units }: BoardsPicture): string {
  const each = boards.map(
    (b) =>
      `${b.label}, ${formatLength(b.length_mm, units)}: ${b.pieces.map((p) => `${p.label} ${formatLength(p.to_mm - p.from_mm, units)}`).join(', ')}; left over ${formatLength(b.left_mm, units)}`,
  );
  return `Boards with the pieces in cutting order from the left end. ${each.join('. ')}.`;
}

type Board = BoardsPicture['boards'][number];

/** Whether name and length of a piece stand inside it. */
function fitsInside(
  { units }: Pick<BoardsPicture, 'units'>,
  { label, from_mm, to_mm, slant_mm }: PieceOnBoard,
  scale: number,
): boolean {
  return (
    textWidth(`${label} ${formatLength(to_mm - from_mm, units)}`, textSize.small) <
    (to_mm - from_mm - 2 * slant_mm) * scale - 4
  );
}

/** A figure that finds no room in its piece: below it, in the first row where it touches no other. */
interface FigureBelow {
  readonly text: string;
  readonly x: number;
  readonly anchor: 'middle' | 'end';
  readonly row: number;
}

/** Figures of the narrow pieces, and what is over where the title leaves no room beside it. */
function figuresBelow({ units }: BoardsPicture, board: Board, scale: number): readonly FigureBelow[] {
  const x = (mm: number): number => left + mm * scale;
  const narrow = board.pieces
    .filter((piece) => !fitsInside({ units }, piece, scale))
    .map(({ from_mm, to_mm }) => ({
      text: formatLength(to_mm - from_mm, units),
      x: x((from_mm + to_mm) / 2),
      anchor: 'middle' as const,
    }));
  const over = overSaid(board, units);
  const beside = textWidth(titleOf(board, units), textSize.small) * 1.07 + textWidth(over, textSize.small) + 6;
  const last = { text: over, x: x(board.length_mm), anchor: 'end' as const };
  const ends: number[] = [];
  return [...narrow, ...(over === '' || beside < board.length_mm * scale ? [] : [last])].map((figure) => {
    const wide = textWidth(figure.text, textSize.small);
    const from = figure.anchor === 'end' ? figure.x - wide : figure.x - wide / 2;
    const free = ends.findIndex((end) => end + 6 < from);
    const row = free === -1 ? ends.length : free;
    ends[row] = from + wide;
    return { ...figure, row };
  });
}

const titleOf = ({ label, length_mm }: Board, units: UnitSystem): string =>
  `${label}, ${formatLength(length_mm, units)}`;

/** Empty where what is over is next to nothing. */
const overSaid = ({ left_mm }: Board, units: UnitSystem): string =>
  left_mm < 2 ? '' : `${formatLength(left_mm, units)} over`;

function boardDrawing(
  { units }: BoardsPicture,
  board: Board,
  below: readonly FigureBelow[],
  scale: number,
  top: number,
): Drawing {
  const x = (mm: number): number => left + mm * scale;
  const marks: Element[] = [
    ...waste(board).flatMap(([from, to]) => hatch(x(from), top, (to - from) * scale, tall, 7, true, softInk)),
    ...board.pieces.map((piece) =>
      outline(outlineOf(piece, x(piece.from_mm), x(piece.to_mm), scale, top), { fill: woodFill }),
    ),
    outline(rectangle(left, top, board.length_mm * scale, tall), { width: weight.thin }),
  ];
  const labels = board.pieces.map((piece): Label => {
    const long_mm = piece.to_mm - piece.from_mm;
    const text = fitsInside({ units }, piece, scale) ? `${piece.label} ${formatLength(long_mm, units)}` : piece.label;
    return {
      text,
      size: textSize.small,
      spots: [{ x: x(piece.from_mm + long_mm / 2), y: top + tall / 2, anchor: 'middle' }],
    };
  });
  const over = overSaid(board, units);
  const restLabels: readonly Label[] =
    over === '' || below.some(({ text }) => text === over)
      ? []
      : [{ text: over, size: textSize.small, spots: [{ x: x(board.length_mm), y: top - 9, anchor: 'end' }] }];
  return together(
    drawing({ marks, obstacles: [] }),
    drawing({
      labels: [
        {
          text: titleOf(board, units),
          heavy: true,
          size: textSize.small,
          spots: [{ x: left, y: top - 9, anchor: 'start' }],
        },
        ...labels,
        ...restLabels,
        ...below.map(({ text, x: at, anchor, row }): Label => ({
          text,
          size: textSize.small,
          spots: [{ x: at, y: top + tall + 9 + step.row * row, anchor }],
        })),
      ],
    }),
    drawing({
      marks: [
        line(
          [
            { x: left, y: top },
            { x: left, y: top + tall },
          ],
          { width: weight.edge, colour: ink },
        ),
      ],
    }),
  );
}

/**
 * Stretches that end as waste or leftover: the trimmed end, and what lies right of the last piece. Kerfs and slants
 * stay white.
 */
function waste({ length_mm, pieces }: Board): readonly (readonly [number, number])[] {
  const first = pieces[0]?.from_mm ?? length_mm;
  const last = pieces.at(-1)?.to_mm ?? length_mm;
  return [[0, first] as const, [last, length_mm] as const].filter(([from, to]) => to > from);
}

/** A piece on its board, between two places on the sheet. */
export function outlineOf(
  { slant_mm, long_side }: Pick<PieceOnBoard, 'slant_mm' | 'long_side'>,
  a: number,
  b: number,
  scale: number,
  top: number,
): readonly Point[] {
  const s = slant_mm * scale;
  const [upper, lower] = long_side === 'lower' ? [s, 0] : [0, s];
  return [
    { x: a + upper, y: top },
    { x: b - upper, y: top },
    { x: b - lower, y: top + tall },
    { x: a + lower, y: top + tall },
  ];
}
