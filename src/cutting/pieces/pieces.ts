import { barNames, cornerNames } from '../../base/names.js';
import { builtSize, laidSize } from '../../plan/build-up.js';
import type { Plan, PlanCrossbar } from '../../plan/plan.js';
import { shelfIn } from '../../shelf/in-system.js';
import type { Lumber, Shelf } from '../../shelf/shelf.js';
import { formatLength } from '../../base/units-format.js';
import { keyedSizes } from '../../fit/keyed-sizes.js';
import { downToMark, nearestMark, tapeMark_mm, upToMark, upToTape } from '../../base/tape.js';
import { blankTrim_mm } from './blank-trim.js';
import type { Lap, LipPiece, Piece, PieceList } from './piece.js';

/** What all the pieces of one member share. */
interface Member {
  readonly plan: Plan;
  readonly mark_mm: number;
  readonly trim_mm: number;
}

/**
 * The pieces of one frame. Lengths go up to the next mark of the tape, so no joint opens: the face grows by less than a
 * mark.
 * Mitred bars: long point = outside size. Butted bars: left and right run the full height, top and bottom stand between
 * them. Half-lapped bars
 * all run to the outside, and so do keyed ones, whose tongues and slots are cut into square ends. Plies that are glued
 * or screwed are cut as square blanks of one length, built up, then cut as one. Loose side-by-side
 * plies are mitred one by one, the inner ones going down to the mark, so that the outer corners close. Throws on a
 * stock that is not on the shelf.
 */
export function piecesOf(plan: Plan, shop: Shelf): PieceList {
  const shelf = shelfIn(shop, plan.units);
  const mark_mm = tapeMark_mm(plan.units);
  const member: Member = { plan, mark_mm, trim_mm: blankTrim_mm(shelf) };
  const stock = lumberOf(shelf, plan.bars.stock);
  const ply_w_mm = laidSize(stock, plan.bars.lay).w_mm;
  const { w_mm, d_mm } = builtSize(stock, plan.bars.lay, plan.bars.plies, plan.bars.stack);
  const between_mm = plan.corners.cut === 'butt' ? 2 * w_mm : 0;
  const width_mm = upToMark(plan.face.width_mm - between_mm, mark_mm) + between_mm;
  const height_mm = upToMark(plan.face.height_mm, mark_mm);
  const faults: string[] = [];
  const inside = { width_mm: width_mm - 2 * w_mm, height_mm: height_mm - 2 * w_mm };
  if (inside.width_mm <= 0 || inside.height_mm <= 0)
    faults.push('The bars are as wide as the face: there is no opening left between them.');
  const bars = barPieces(member, { ply_w_mm, w_mm, d_mm, width_mm, height_mm });
  const crossbars = plan.crossbars.flatMap((crossbar, i) => crossbarPieces(member, shelf, crossbar, i, w_mm, inside));
  const braces = bracePieces(member, shelf, w_mm);
  const opening = { width_mm: upToMark(inside.width_mm, mark_mm), height_mm: upToMark(inside.height_mm, mark_mm) };
  const bar_mm = (upToMark(plan.face.width_mm, mark_mm) - opening.width_mm) / 2;
  return {
    pieces: [...bars, ...crossbars, ...braces],
    lips: lipPieces(plan),
    frames: plan.count,
    mark_mm,
    w_mm,
    opening,
    bar_mm,
    face: plan.face,
    corner: plan.corners.cut,
    faults,
  };
}

/**
 * The strips of a raised lip: as long as the sides of the face, mitred, whatever the corners of the bars behind them.
 */
export function lipPieces({ bars, face, units }: Plan): readonly LipPiece[] {
  if (bars.lip_mm <= 0) return [];
  return barNames.map((about): LipPiece => ({
    label: `lip ${about.charAt(0).toUpperCase()}`,
    about,
    cut_mm: upToTape(about === 'top' || about === 'bottom' ? face.width_mm : face.height_mm, units),
  }));
}

interface BarSizes {
  readonly ply_w_mm: number;
  readonly w_mm: number;
  readonly d_mm: number;
  readonly width_mm: number;
  readonly height_mm: number;
}

function barPieces(member: Member, sizes: BarSizes): Piece[] {
  const { plan } = member;
  const { cut } = plan.corners;
  return (['top', 'bottom', 'left', 'right'] as const).flatMap((name) => {
    const level = name === 'top' || name === 'bottom';
    const outside_mm = level ? sizes.width_mm : sizes.height_mm;
    const face_mm = level ? plan.face.width_mm : plan.face.height_mm;
    const between = cut === 'butt' && level;
    const exact_mm = between ? face_mm - 2 * sizes.w_mm : face_mm;
    const cut_mm = between ? outside_mm - 2 * sizes.w_mm : outside_mm;
    const letter = name.charAt(0).toUpperCase();
    const laps: Lap[] =
      cut === 'half-lap'
        ? [0, outside_mm - sizes.w_mm].map((from_mm) => ({ from_mm, width_mm: sizes.w_mm, depth_mm: sizes.d_mm / 2 }))
        : [];
    const runs = level ? ('level' as const) : ('upright' as const);
    const base = {
      part: 'bar' as const,
      about: name,
      runs,
      stock: plan.bars.stock,
      lay: plan.bars.lay,
      laps,
      face_up: faceUp(plan.bars.lay, cut === 'mitre'),
      notes: cut === 'keyed' ? [keyedNote(sizes, level, plan)] : lapNotes(laps, level),
    };
    return plies(member, base, letter, plan.bars.plies, {
      exact_mm,
      cut_mm,
      ends: cut === 'mitre' ? 'mitre' : 'square',
      ply_w_mm: sizes.ply_w_mm,
      w_mm: sizes.w_mm,
    });
  });
}

type Shared = Pick<Piece, 'part' | 'about' | 'runs' | 'stock' | 'lay' | 'laps' | 'face_up' | 'notes'>;

interface Length {
  readonly exact_mm: number;
  readonly cut_mm: number;
  readonly ends: 'square' | 'mitre';
  readonly ply_w_mm: number;
  readonly w_mm: number;
}

/** One piece per ply. */
function plies(
  { plan, mark_mm, trim_mm }: Member,
  shared: Shared,
  label: string,
  count: number,
  length: Length,
): Piece[] {
  const { exact_mm, cut_mm, ends, ply_w_mm, w_mm } = length;
  const build = count > 1 && plan.bars.bond !== 'none';
  return Array.from({ length: count }, (_, i): Piece => {
    const own = { ...shared, label: count === 1 ? label : `${label}${i + 1}`, ply: i + 1 };
    if (build) {
      const blank_mm = upToMark(cut_mm + 2 * trim_mm, mark_mm);
      const later = { ends, cut_mm, short_mm: ends === 'mitre' ? cut_mm - 2 * w_mm : cut_mm };
      return {
        ...own,
        ends: 'square',
        across_mm: 0,
        cut_mm: blank_mm,
        short_mm: blank_mm,
        exact_mm,
        later,
        face_up: 'either face',
      };
    }
    if (ends === 'square') return { ...own, ends, across_mm: 0, cut_mm, short_mm: cut_mm, exact_mm, later: null };
    const inward_mm = plan.bars.stack === 'side-by-side' ? 2 * i * ply_w_mm : 0;
    const own_mm = inward_mm === 0 ? cut_mm : downToMark(cut_mm - inward_mm, mark_mm);
    return {
      ...own,
      ends,
      across_mm: ply_w_mm,
      cut_mm: own_mm,
      short_mm: own_mm - 2 * ply_w_mm,
      exact_mm: exact_mm - inward_mm,
      later: null,
    };
  });
}

/**
 * A crossbar stands between the bars with square ends: at most one mark too long, to be planed to a snug fit, never
 * short. Where crossbars cross, both run through, half-lapped.
 */
function crossbarPieces(
  member: Member,
  shelf: Shelf,
  crossbar: PlanCrossbar,
  index: number,
  w_mm: number,
  inside: { width_mm: number; height_mm: number },
): Piece[] {
  const { plan, mark_mm } = member;
  const upright = crossbar.runs === 'upright';
  const keyed = plan.corners.cut === 'keyed';
  /** A tongue reaches to the middle of the bar. */
  const tongues_mm = keyed ? w_mm : 0;
  const clear_mm = (upright ? inside.height_mm : inside.width_mm) + tongues_mm;
  const exact_mm = (upright ? plan.face.height_mm : plan.face.width_mm) - 2 * w_mm + tongues_mm;
  const stock = lumberOf(shelf, crossbar.stock);
  const ply_w_mm = laidSize(stock, crossbar.lay).w_mm;
  const depth_mm = builtSize(stock, crossbar.lay, crossbar.plies, plan.bars.stack).d_mm;
  const laps = plan.crossbars.flatMap((other): Lap[] => {
    if (other.runs === crossbar.runs) return [];
    const across = builtSize(lumberOf(shelf, other.stock), other.lay, other.plies, plan.bars.stack).w_mm;
    const face_mm = upright ? plan.face.height_mm : plan.face.width_mm;
    return [
      {
        from_mm: nearestMark(other.at * face_mm - w_mm + tongues_mm / 2 - across / 2, mark_mm),
        width_mm: across,
        depth_mm: depth_mm / 2,
      },
    ];
  });
  const fit = keyed
    ? `a tongue at each end, ${formatLength(keyedSizes(w_mm, depth_mm).tongue_mm, plan.units)} thick, ${formatLength(w_mm / 2, plan.units)} long, for a slot in the bar; snug, not glued`
    : 'plane to a snug fit between the bars';
  const shared = {
    part: 'crossbar' as const,
    about: `crossbar-${index + 1}`,
    runs: crossbar.runs,
    stock: crossbar.stock,
    lay: crossbar.lay,
    laps,
    face_up: faceUp(crossbar.lay, false),
    notes: [...lapNotes(laps, !upright), fit],
  };
  return plies(member, shared, `C${index + 1}`, crossbar.plies, {
    exact_mm,
    cut_mm: upToMark(clear_mm, mark_mm),
    ends: 'square',
    ply_w_mm,
    w_mm: ply_w_mm,
  });
}

/**
 * Timber braces stand between the bars' inner edges, both ends at 45°. The centre line of a brace meets the bars'
 * centre lines at `leg`, so it meets
 * their inner edges √2 (leg − w) apart; its outer side is longer by its own width, its inner side shorter by as much.
 */
function bracePieces({ plan, mark_mm }: Member, shelf: Shelf, w_mm: number): Piece[] {
  const brace = plan.corners.brace;
  if (brace === null || brace.kind !== 'timber') return [];
  const key = brace.stock ?? plan.bars.stock;
  const ply_w_mm = laidSize(lumberOf(shelf, key), brace.lay).w_mm;
  const exact_mm = Math.SQRT2 * (brace.leg_mm - w_mm) + ply_w_mm;
  const cut_mm = upToMark(exact_mm, mark_mm);
  return cornerNames.map((corner) => ({
    label: corner
      .split('-')
      .map((word) => word.charAt(0).toUpperCase())
      .join(''),
    part: 'brace',
    about: corner,
    runs: 'across',
    ply: 1,
    stock: key,
    lay: brace.lay,
    ends: 'mitre',
    across_mm: ply_w_mm,
    cut_mm,
    short_mm: cut_mm - 2 * ply_w_mm,
    exact_mm,
    later: null,
    laps: [],
    face_up: faceUp(brace.lay, true),
    notes: [],
  }));
}

function faceUp(lay: 'flat' | 'edge', mitre: boolean): string {
  if (!mitre) return 'either face';
  return lay === 'flat' ? 'front face up, board lying flat' : 'front edge up, board standing on edge';
}

function lapNotes(laps: readonly Lap[], level: boolean): readonly string[] {
  if (laps.length === 0) return [];
  return [level ? 'half-laps: cut away the back half' : 'half-laps: cut away the front half'];
}

/** Level bars end in tongues, upright ones in slots. */
function keyedNote({ w_mm, d_mm }: BarSizes, level: boolean, { units }: Plan): string {
  const { tongue_mm, long_mm } = keyedSizes(w_mm, d_mm);
  const sizes = `${formatLength(tongue_mm, units)} ${level ? 'thick' : 'wide'}, ${formatLength(long_mm, units)} ${level ? 'long' : 'deep'}`;
  return `${level ? 'a tongue' : 'a slot'} at each end, ${sizes}, in the middle of the depth; mitred shoulders in front and behind`;
}

function lumberOf(shelf: Shelf, key: string): Lumber {
  const lumber = shelf.lumber[key];
  if (lumber === undefined) throw new Error(`lumber ${key} is not on the shelf`);
  return lumber;
}
