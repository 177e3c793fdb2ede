import type { Element } from 'hast';
import type { UnitSystem } from '../../base/names.js';
import { formatLength } from '../../base/units-format.js';
import { ink, sheetWidth, softInk, textSize, weight, woodFill } from './drawing-standard.js';
import { textWidth } from './labels.js';
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
/**
 * From one board to the next; more where figures stand under pieces, so that they lie nearer to their own board than to
 * the next title.
 */
const steps = { bare: 58, figuresBelow: 86 } as const;

/** Every board with its pieces, cuts and leftovers, lengths to scale; `name` is the file. */
export function cutBoards(picture: BoardsPicture, name = 'boards.svg'): Picture {
  const longest = Math.max(1, ...picture.boards.map((b) => b.length_mm));
  const scale = (sheetWidth - 2 * left) / longest;
  const below = picture.boards.some((board) => board.pieces.some((piece) => !fitsInside(picture, piece, scale)));
  const step = below ? steps.figuresBelow : steps.bare;
  const content = together(...picture.boards.map((board, i) => boardDrawing(picture, board, scale, 30 + i * step)));
  const height = 30 + picture.boards.length * step + 4;
  const foot: Drawing = drawing({
    labels: ['Lengths to scale, measured along the long side.', 'Hatched: left over or cut away.'].map((text, i) => ({
      text,
      size: textSize.small,
      spots: [{ x: left, y: height - 4 + 15 * i, anchor: 'start' }],
    })),
  });
  return finishPicture(
    { name, title: 'How to cut the boards', alt: describe(picture) },
    height + 26,
    together(content, foot),
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

function boardDrawing({ units }: BoardsPicture, board: Board, scale: number, top: number): Drawing {
  const x = (mm: number): number => left + mm * scale;
  const rest = board.left_mm;
  const marks: Element[] = [
    ...waste(board).flatMap(([from, to]) => hatch(x(from), top, (to - from) * scale, tall, 7, true, softInk)),
    ...board.pieces.map((piece) =>
      outline(outlineOf(piece, x(piece.from_mm), x(piece.to_mm), scale, top), { fill: woodFill }),
    ),
    outline(rectangle(left, top, board.length_mm * scale, tall), { width: weight.thin }),
  ];
  const labels = board.pieces.flatMap((piece): Drawing['labels'] => {
    const long_mm = piece.to_mm - piece.from_mm;
    const middle = x(piece.from_mm + long_mm / 2);
    const figure = formatLength(long_mm, units);
    const both = `${piece.label} ${figure}`;
    if (fitsInside({ units }, piece, scale))
      return [{ text: both, size: textSize.small, spots: [{ x: middle, y: top + tall / 2, anchor: 'middle' }] }];
    return [
      {
        text: piece.label,
        size: textSize.small,
        spots: [
          { x: middle, y: top + tall / 2, anchor: 'middle' },
          { x: middle, y: top + tall + 9, anchor: 'middle' },
        ],
      },
      {
        text: figure,
        size: textSize.small,
        spots: [9, 22, 35].map((below) => ({
          x: middle,
          y: top + tall + below,
          anchor: 'middle' as const,
        })) as unknown as Drawing['labels'][number]['spots'],
      },
    ];
  });
  const restLabel = `${formatLength(rest, units)} over`;
  const restSpots: Drawing['labels'] =
    rest * scale < 2
      ? []
      : [
          {
            text: restLabel,
            size: textSize.small,
            spots: [top - 9, top + tall + 9, top + tall + 22, top + tall + 35].map((y) => ({
              x: x(board.length_mm),
              y,
              anchor: 'end' as const,
            })) as unknown as Drawing['labels'][number]['spots'],
          },
        ];
  return together(
    drawing({ marks, obstacles: [] }),
    drawing({
      labels: [
        {
          text: `${board.label}, ${formatLength(board.length_mm, units)}`,
          heavy: true,
          size: textSize.small,
          spots: [{ x: left, y: top - 9, anchor: 'start' }],
        },
        ...labels,
        ...restSpots,
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
