/** Width and height of something flat, mm. */
export type Flat = readonly [wide_mm: number, high_mm: number];

/** One piece on a sheet, from the sheet's corner. */
export interface LaidPiece {
  readonly x_mm: number;
  readonly y_mm: number;
  readonly wide_mm: number;
  readonly high_mm: number;
}

const dust_mm = 1e-6;

/**
 * What one area takes of sheets of this size, laid edge to edge from one corner, whichever way takes fewer pieces:
 * whole sheets and cut ones.
 */
export function tilesOf([wide_mm, high_mm]: Flat, [a_mm, b_mm]: Flat): readonly Flat[] {
  const along = (length_mm: number, step_mm: number): number[] => {
    const whole = Math.ceil(length_mm / step_mm - dust_mm) - 1;
    return [...Array.from({ length: whole }, () => step_mm), length_mm - whole * step_mm];
  };
  const laid = (across_mm: number, up_mm: number): readonly Flat[] =>
    along(wide_mm, across_mm).flatMap((wide) => along(high_mm, up_mm).map((high): Flat => [wide, high]));
  const [upright, lying] = [laid(a_mm, b_mm), laid(b_mm, a_mm)];
  return lying.length < upright.length ? lying : upright;
}

/**
 * Pieces cut out of sheets with a knife, in rows across the sheet, each row as high as its first piece, high pieces
 * first, each into the first row with room
 * (first fit by falling height): every cut runs from edge to edge. Pieces may be turned; of the ways tried (all
 * standing, all lying, each as it fills
 * a row best, on the sheet either way) the one that takes fewest sheets. Throws a RangeError for a piece larger than
 * the sheet.
 */
export function cutSheets(pieces: readonly Flat[], [a_mm, b_mm]: Flat): readonly (readonly LaidPiece[])[] {
  const short = ([p, q]: Flat): Flat => [Math.min(p, q), Math.max(p, q)];
  const long = ([p, q]: Flat): Flat => [Math.max(p, q), Math.min(p, q)];
  const ways = (
    [
      [a_mm, b_mm],
      [b_mm, a_mm],
    ] as const
  ).flatMap((sheet) =>
    [short, long].map((turn) =>
      inRows(
        pieces.map((piece) => fitting(turn(piece), sheet)),
        sheet,
      ),
    ),
  );
  return ways.reduce((best, way) => (way.length < best.length ? way : best));
}

/** The piece turned where it would stick out of the sheet. */
function fitting([wide, high]: Flat, [a_mm, b_mm]: Flat): Flat {
  const fits = (p: number, q: number): boolean => p <= a_mm + dust_mm && q <= b_mm + dust_mm;
  if (!fits(wide, high) && !fits(high, wide))
    throw new RangeError(`a piece of ${wide} × ${high} mm is larger than the sheet`);
  return fits(wide, high) ? [wide, high] : [high, wide];
}

/** A sheet as it fills: how much of its height is taken, and its rows from the corner up. */
interface OpenSheet {
  used_mm: number;
  readonly rows: OpenRow[];
  readonly laid: LaidPiece[];
}

interface OpenRow {
  readonly y_mm: number;
  readonly high_mm: number;
  used_mm: number;
}

function inRows(pieces: readonly Flat[], [a_mm, b_mm]: Flat): LaidPiece[][] {
  const sheets: OpenSheet[] = [];
  for (const [wide_mm, high_mm] of [...pieces].sort((p, q) => q[1] - p[1] || q[0] - p[0])) {
    const room = ({ used_mm, high_mm: high }: OpenRow): boolean =>
      used_mm + wide_mm <= a_mm + dust_mm && high_mm <= high + dust_mm;
    const [sheet, row] = openRow(sheets, room) ?? newRow(sheets, high_mm, b_mm);
    sheet.laid.push({ x_mm: row.used_mm, y_mm: row.y_mm, wide_mm, high_mm });
    row.used_mm += wide_mm;
  }
  return sheets.map(({ laid }) => laid);
}

/** The first row with room, of the first sheet that has one. */
function openRow(
  sheets: readonly OpenSheet[],
  room: (row: OpenRow) => boolean,
): readonly [OpenSheet, OpenRow] | undefined {
  for (const sheet of sheets) {
    const row = sheet.rows.find(room);
    if (row !== undefined) return [sheet, row];
  }
  return undefined;
}

/** A new row on the first sheet with room above its last, or on a new sheet. */
function newRow(sheets: OpenSheet[], high_mm: number, b_mm: number): readonly [OpenSheet, OpenRow] {
  const open = sheets.find(({ used_mm }) => used_mm + high_mm <= b_mm + dust_mm);
  const sheet = open ?? { used_mm: 0, rows: [], laid: [] };
  if (open === undefined) sheets.push(sheet);
  const row = { y_mm: sheet.used_mm, high_mm, used_mm: 0 };
  sheet.rows.push(row);
  sheet.used_mm += high_mm;
  return [sheet, row];
}

/**
 * No way of cutting takes fewer sheets than this: by area, and because of pieces larger than half a sheet both ways no
 * two share one.
 */
export function leastSheets(pieces: readonly Flat[], [a_mm, b_mm]: Flat): number {
  const area = pieces.reduce((sum, [wide, high]) => sum + wide * high, 0);
  const large = pieces.filter(([wide, high]) => Math.min(wide, high) > Math.max(a_mm, b_mm) / 2 + dust_mm);
  return Math.max(Math.ceil(area / (a_mm * b_mm) - dust_mm), large.length);
}
