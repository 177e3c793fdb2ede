import { fillableWidths, leastLength_mm } from './bounds.js';
import { lengthOf, liesOf, type PlacedCloth, type RollPiece } from './piece.js';
import { searchRoll, type OpenPiece } from './search.js';
import { packInRows, type LaidPiece, type ShelfRule } from './shelves.js';
import { packAlongSkyline } from './skyline.js';

/** Several cloths on one roll. */
export interface RollLayout {
  readonly roll_mm: number;
  /** Length to cut off the roll, mm. */
  readonly length_mm: number;
  readonly placed: readonly PlacedCloth[];
  /** True when no shorter layout exists. */
  readonly proven: boolean;
  /** No layout can be shorter than this, mm. */
  readonly least_mm: number;
  /** Share of the cut-off length that ends as cloth for frames. */
  readonly used_share: number;
  /** Pieces wider than the roll, by name: cloth is never joined, so they are left out. */
  readonly too_wide: readonly string[];
}

/** Up to this many pieces the search ends by itself in practice; more get a shorter try. */
const exactUpTo = 10;
const stepsWhenFew = 800_000;
const stepsWhenMany = 60_000;
/** The search keeps its set of laid pieces in the bits of one number. */
const searchedUpTo = 30;

/**
 * Lays cloths on a roll so that the least length is cut off, the long threads kept along the roll except for pieces
 * that may turn.
 * Never longer than laying them in rows, longest first; proven shortest where it says so. Throws RangeError for a size
 * that is not above zero.
 */
export function packRoll(pieces: readonly RollPiece[], roll_mm: number): RollLayout {
  for (const size of [roll_mm, ...pieces.flatMap((p) => [p.along_mm, p.across_mm])]) {
    if (!(size > 0 && Number.isFinite(size))) throw new RangeError(`sizes on a roll must be above zero, found ${size}`);
  }
  const all = pieces.map((piece): OpenPiece => ({ piece, lies: liesOf(piece, roll_mm) }));
  const open = all.filter((p) => p.lies.length > 0);
  const too_wide = all.filter((p) => p.lies.length === 0).map((p) => p.piece.name);
  if (open.length === 0)
    return { roll_mm, length_mm: 0, placed: [], proven: true, least_mm: 0, used_share: 0, too_wide };

  const quick = shortest([...rowLayouts(open, roll_mm), ...skylineLayouts(open, roll_mm)]);
  const waiting = open.map((p) => p.lies);
  const bound_mm =
    equalLength_mm(open, roll_mm) ??
    leastLength_mm([{ y: 0, used: 0 }], waiting, fillableWidths(waiting, roll_mm), roll_mm);
  const search =
    bound_mm >= lengthOf(quick) - 1e-6 || open.length > searchedUpTo
      ? { placed: null, finished: bound_mm >= lengthOf(quick) - 1e-6 }
      : searchRoll(open, roll_mm, lengthOf(quick), open.length <= exactUpTo ? stepsWhenFew : stepsWhenMany);
  const placed = search.placed ?? quick;
  const length_mm = lengthOf(placed);
  const cloth_mm2 = open.reduce((sum, { piece }) => sum + piece.along_mm * piece.across_mm, 0);
  return {
    roll_mm,
    length_mm,
    placed: inReadingOrder(placed),
    proven: search.finished,
    least_mm: search.finished ? length_mm : Math.min(bound_mm, length_mm),
    used_share: cloth_mm2 / (roll_mm * length_mm),
    too_wide,
  };
}

/**
 * Least length for pieces that are all alike and may lie one way only: full rows. Lines drawn every `along` cross each
 * piece once, and no line crosses
 * more than fit abreast, so no layout is shorter. Null when the pieces differ.
 */
function equalLength_mm(open: readonly OpenPiece[], roll_mm: number): number | null {
  const [lie] = open[0]?.lies ?? [];
  if (
    lie === undefined ||
    open.some(({ lies }) => lies.length !== 1 || lies[0]?.across !== lie.across || lies[0].along !== lie.along)
  )
    return null;
  return Math.ceil(open.length / Math.floor(roll_mm / lie.across)) * lie.along;
}

function rowLayouts(open: readonly OpenPiece[], roll_mm: number): PlacedCloth[][] {
  const rules: readonly ShelfRule[] = ['next', 'first', 'best'];
  return waysToLay(open).flatMap((laid) => rules.map((rule) => packInRows(laid, roll_mm, rule)));
}

/** All as given, all short along the roll, all narrow across it. */
function waysToLay(open: readonly OpenPiece[]): LaidPiece[][] {
  const by = (measure: (across: number, along: number) => number): LaidPiece[] =>
    open.map(({ piece, lies }) => ({
      piece,
      lie: lies.reduce((p, q) => (measure(q.across, q.along) < measure(p.across, p.along) ? q : p)),
    }));
  return [by(() => 0), by((_, along) => along), by((across) => across)];
}

function skylineLayouts(open: readonly OpenPiece[], roll_mm: number): PlacedCloth[][] {
  const orders: readonly ((p: RollPiece) => number)[] = [
    (p) => p.along_mm,
    (p) => p.across_mm,
    (p) => p.along_mm * p.across_mm,
    (p) => Math.max(p.along_mm, p.across_mm),
  ];
  return orders.map((size) =>
    packAlongSkyline(
      [...open].sort((p, q) => size(q.piece) - size(p.piece)),
      roll_mm,
    ),
  );
}

function shortest(layouts: readonly PlacedCloth[][]): PlacedCloth[] {
  return layouts.reduce((best, next) => (lengthOf(next) < lengthOf(best) - 1e-9 ? next : best));
}

function inReadingOrder(placed: readonly PlacedCloth[]): PlacedCloth[] {
  return [...placed].sort((p, q) => p.y_mm - q.y_mm || p.x_mm - q.x_mm);
}
