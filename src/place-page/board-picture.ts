import type { Element } from 'xast';
import type { UnitSystem } from '../base/names.js';
import { formatLength } from '../base/units-format.js';
import { endOf, inOrder, offCutsOf } from '../place/off-cuts.js';
import type { Place, PlacedPile } from '../place/result.js';
import { broken, caption, lineStep } from '../report/drawings/caption.js';
import { outlineOf, tall, type PieceOnBoard } from '../report/drawings/cut-boards.js';
import { sheetWidth, softInk, textSize, weight, woodFill } from '../report/drawings/drawing-standard.js';
import { textWidth, type Label, type Spot } from '../report/drawings/labels.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from '../report/drawings/picture.js';
import { arrow, hatch, line, outline, rectangle } from '../report/drawings/strokes.js';
import { markOf } from './chalk.js';
import { longSideOf, ringed } from './lie-words.js';

/** Boards on one picture. */
const perPicture = 6;

/**
 * Left margin, from one board to the next, room above the first, and from one row of figures to the next, in sheet
 * units.
 */
const left = 18;
const step = 130;
const first = 52;
const row = 15;
/** From a board up to its title, above two rows of figures. */
const titleAbove = 40;

interface OneBoard {
  readonly board: Place['board'];
  readonly places: readonly Place[];
}

interface Sheet {
  readonly units: UnitSystem;
  /** Sheet units per mm along the boards. */
  readonly scale: number;
}

/**
 * The boards that are cut, each seen with its marked face up and its marked end on the left: the stroke, what to
 * measure, what falls away and what is bad.
 */
export function pileBoardPictures({ frames }: Pick<PlacedPile, 'frames'>, units: UnitSystem): readonly Picture[] {
  const places = frames.flatMap((frame) => frame.places);
  const boards = [...new Set(places.map(({ board }) => board))].map((board): OneBoard => ({
    board,
    places: inOrder(places.filter((place) => place.board === board)),
  }));
  return Array.from({ length: Math.ceil(boards.length / perPicture) }, (_, i) =>
    onePicture(
      boards.slice(i * perPicture, (i + 1) * perPicture),
      units,
      i === 0 ? 'place-boards.svg' : `place-boards-${i + 1}.svg`,
    ),
  );
}

function onePicture(boards: readonly OneBoard[], units: UnitSystem, name: string): Picture {
  const scale = (sheetWidth - left - 14) / Math.max(1, ...boards.map(({ board }) => board.length_mm));
  const places = boards.flatMap((one) => one.places);
  const onEdge = places.some((place) => longSideOf(place) !== null && place.slot.piece.lay === 'edge');
  const foot = broken([
    'Letter up, stroke on your left. Thick: the marked edge.',
    ...(places.some((place) => longSideOf(place) !== null)
      ? ['Figures at a piece run from the stroke, along its long side.']
      : ['Figures at a piece run from the stroke.']),
    ...(onEdge ? ['Bars on edge slant through the thickness, not seen here.'] : []),
    'Lengths to scale; widths and angles are not.',
    `Hatched: cut away or left over.${boards.some(({ board }) => board.knots.length > 0) ? ' Dark: a bad place.' : ''}`,
  ]);
  const bottom = first + boards.length * step - titleAbove;
  return finishPicture(
    { name, title: 'Where to saw the boards', alt: describe(boards, units) },
    bottom + lineStep * foot.length - 2,
    together(caption(foot, bottom), ...boards.map((one, i) => boardDrawing(one, { units, scale }, first + i * step))),
  );
}

function describe(boards: readonly OneBoard[], units: UnitSystem): string {
  const mm = (length: number): string => formatLength(length, units);
  const each = boards.map(({ board, places }) => {
    const pieces = places.map((place) => `${ringed(place.slot.tag)} from ${mm(place.from_mm)} to ${mm(endOf(place))}`);
    const bad = board.knots.map(({ from_mm, to_mm }) => `bad place ${mm(from_mm)} to ${mm(to_mm)}`);
    const rests = offCutsOf(board, places).map(
      ({ from_mm, to_mm }) => `${mm(to_mm - from_mm)} falls off from ${mm(from_mm)} on`,
    );
    return `Board ${markOf(board)}, ${mm(board.length_mm)}: ${[...pieces, ...bad, ...rests].join('; ')}`;
  });
  return `The boards with letter up and stroke on the left, and the pieces on them. ${each.join('. ')}.`;
}

function boardDrawing({ board, places }: OneBoard, { units, scale }: Sheet, top: number): Drawing {
  const x = (mm: number): number => left + mm * scale;
  const bottom = top + tall;
  const long = board.length_mm * scale;
  const bad = board.knots.map(({ from_mm, to_mm }) =>
    outline(rectangle(x(from_mm), top, (Math.min(to_mm, board.length_mm) - from_mm) * scale, tall), {
      width: weight.thin,
      fill: softInk,
      colour: softInk,
    }),
  );
  const title = `Board ${markOf(board)}, ${formatLength(board.length_mm, units)}${board.cut === null ? '' : ', cut already'}`;
  const rows = [bottom + 11, bottom + 11 + row];
  return together(
    drawing({
      marks: [
        ...hatch(left, top, long, tall, 7, true, softInk),
        ...bad,
        ...places.map((place) =>
          outline(outlineOf(shapeOf(place), x(place.from_mm), x(endOf(place)), scale, top), { fill: woodFill }),
        ),
        outline(rectangle(left, top, long, tall), { width: weight.thin }),
        line(
          [
            { x: left, y: top },
            { x: left + long, y: top },
          ],
          { width: weight.bold },
        ),
        line(
          [
            { x: left - 5, y: top - 4 },
            { x: left - 5, y: bottom + 4 },
          ],
          { width: weight.bold },
        ),
        ...places.flatMap((place) => pieceArrow(place, x, top, { units, scale })),
      ],
      labels: [
        { text: title, heavy: true, size: textSize.small, spots: [{ x: left, y: top - titleAbove, anchor: 'start' }] },
        ...places.flatMap((place) => pieceLabels(place, x, top, { units, scale })),
        ...(board.cut === null ? places.flatMap((place) => measures(place, x, top, units)) : []),
        {
          text: 'stroke',
          size: textSize.small,
          spots: rows.map((y) => ({ x: 3, y, anchor: 'start' })) as unknown as Label['spots'],
        },
        {
          text: 'marked edge',
          size: textSize.small,
          spots: [
            { x: left + long, y: top - 9, anchor: 'end' },
            { x: left + long + 6, y: top - 3, anchor: 'start' },
            { x: sheetWidth - 14, y: top - titleAbove, anchor: 'end' },
          ],
        },
        ...restLabels({ board, places }, x, top, units),
      ],
    }),
  );
}

/** How a piece shows from above: a mitre through the thickness is not seen. */
function shapeOf(place: Place): Pick<PieceOnBoard, 'slant_mm' | 'long_side'> {
  const long = longSideOf(place);
  if (long === null || place.slot.piece.lay === 'edge') return { slant_mm: 0, long_side: 'both' };
  return { slant_mm: place.slot.piece.across_mm, long_side: long === 'marked' ? 'upper' : 'lower' };
}

type Along = (mm: number) => number;

const middleOf = (place: Place, x: Along): number => (x(place.from_mm) + x(endOf(place))) / 2;
const nameOf = (place: Place, units: UnitSystem): string =>
  `${ringed(place.slot.tag)} ${formatLength(place.slot.piece.cut_mm, units)}`;
const shortOf = (place: Place, scale: number): number =>
  (place.slot.piece.cut_mm - 2 * shapeOf(place).slant_mm) * scale;
const namedInside = (place: Place, { units, scale }: Sheet): boolean =>
  textWidth(nameOf(place, units), textSize.small) < shortOf(place, scale) - 4;

/** Name and length of a piece inside it, or the name alone. */
function pieceLabels(place: Place, x: Along, top: number, sheet: Sheet): readonly Label[] {
  const text = namedInside(place, sheet) ? nameOf(place, sheet.units) : ringed(place.slot.tag);
  return [
    {
      text,
      heavy: true,
      size: textSize.small,
      spots: [{ x: middleOf(place, x), y: top + tall / 2, anchor: 'middle' }],
    },
  ];
}

/** The arrow to the marked end, where there is room for it beside the name. */
function pieceArrow(place: Place, x: Along, top: number, sheet: Sheet): readonly Element[] {
  const name = textWidth(nameOf(place, sheet.units), textSize.small) * 1.07;
  const room = (shortOf(place, sheet.scale) - name) / 2;
  if (!namedInside(place, sheet) || room < 22) return [];
  const from = middleOf(place, x) - name / 2 - 4;
  return arrow({ x: from, y: top + tall / 2 }, { x: from - Math.min(22, room - 8), y: top + tall / 2 }, weight.thin);
}

/** Where a piece begins and ends, at its long side: above the board where that is the marked edge, else below. */
function measures(place: Place, x: Along, top: number, units: UnitSystem): readonly Label[] {
  const above = longSideOf(place) === 'marked' && place.slot.piece.lay === 'flat';
  const rows = above ? [top - 9, top - 9 - row] : [top + tall + 11, top + tall + 11 + row];
  const at = (mm: number, anchor: Spot['anchor']): Label => ({
    text: formatLength(mm, units).replace(/ mm$/u, ''),
    size: textSize.small,
    spots: rows.map((y) => ({ x: x(mm) + (anchor === 'start' ? 2 : -2), y, anchor })) as unknown as Label['spots'],
  });
  const [begin, end] = [at(place.from_mm, 'start'), at(endOf(place), 'end')];
  const wide = [begin, end].reduce((sum, { text }) => sum + textWidth(text, textSize.small), 12);
  return wide < x(endOf(place)) - x(place.from_mm) ? [begin, end] : [begin];
}

/** What falls off, in it where there is room, and where the bad places are. */
function restLabels({ board, places }: OneBoard, x: Along, top: number, units: UnitSystem): readonly Label[] {
  const rows = [top + tall + 11, top + tall + 11 + row, top + tall + 11 + 2 * row];
  const below = (middle: number): readonly Spot[] =>
    rows.flatMap((y) => [
      { x: middle, y, anchor: 'middle' as const },
      { x: middle, y, anchor: 'start' as const },
      { x: middle, y, anchor: 'end' as const },
    ]);
  const rests = offCutsOf(board, places)
    .filter(({ sound }) => sound.length > 0)
    .map(({ from_mm, to_mm }): Label => {
      const text = formatLength(to_mm - from_mm, units);
      const middle = (x(from_mm) + x(to_mm)) / 2;
      const inside = textWidth(text, textSize.small) < x(to_mm) - x(from_mm);
      const spots = [
        ...(inside ? [{ x: middle, y: top + tall / 2, anchor: 'middle' as const }] : []),
        ...below(middle),
      ];
      return {
        text: inside ? text : `${text} falls off`,
        size: textSize.small,
        spots: spots as unknown as Label['spots'],
      };
    });
  const bad = board.knots.map(({ from_mm, to_mm }): Label => ({
    text: `bad ${formatLength(from_mm, units).replace(/ mm$/u, '')} to ${formatLength(to_mm, units)}`,
    size: textSize.small,
    spots: below((x(from_mm) + x(to_mm)) / 2) as unknown as Label['spots'],
  }));
  return [...bad, ...rests];
}
