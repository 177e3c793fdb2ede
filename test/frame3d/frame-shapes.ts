import { evenGive, type JointGive } from '../../src/base/joint-give.js';
import { barNames, cornerNames } from '../../src/base/names.js';
import type { BarName, CornerName } from '../../src/base/names.js';
import type { CrossbarShape, FrameShape, Section } from '../../src/model/frame-shape.js';
import { solidSection } from '../../src/model/section.js';

/** A frame in few words, for tests: outside size, one bar section, and what is added. */
export interface FrameWords {
  readonly width: number;
  readonly height: number;
  readonly w: number;
  readonly d: number;
  readonly E?: number;
  readonly G?: number;
  readonly give?: number | JointGive;
  readonly crossbarGive?: number | JointGive;
  readonly braceGive?: number | JointGive;
  /** In-plane stiffness of a plate at every corner, N·mm per radian. */
  readonly plate?: number;
  readonly crossbars?: readonly { readonly runs: CrossbarShape['runs']; readonly at: number; readonly w: number; readonly d: number }[];
  readonly brace?: { readonly leg: number; readonly w: number; readonly d: number } | undefined;
  /** Factor on both bending stiffnesses of the side bars. */
  readonly stiff?: number;
}

export const everyBar = <T>(value: T): Record<BarName, T> => Object.fromEntries(barNames.map((b) => [b, value])) as Record<BarName, T>;
export const everyCorner = <T>(value: T): Record<CornerName, T> =>
  Object.fromEntries(cornerNames.map((c) => [c, value])) as Record<CornerName, T>;

const giveOf = (give: number | JointGive = 0): JointGive => (typeof give === 'number' ? evenGive(give) : give);

/** The shape for a frame in words; the pull acts at the front edge. */
export function frameOf(words: FrameWords): FrameShape {
  const { width, height, w, d, E = 9000, G = 562.5, stiff = 1 } = words;
  const plain = solidSection(w, d, E, G);
  const section: Section = { ...plain, I_plane_mm4: plain.I_plane_mm4 * stiff, I_out_mm4: plain.I_out_mm4 * stiff };
  const { brace } = words;
  return {
    span_x_mm: width - w,
    span_y_mm: height - w,
    bars: everyBar(section),
    eccentricity_mm: everyBar(d / 2),
    corner_give: everyCorner(giveOf(words.give)),
    corner_plate_Nmm_per_rad: everyCorner(words.plate ?? 0),
    crossbars: (words.crossbars ?? []).map((c, i) => ({
      name: `crossbar-${i + 1}`,
      runs: c.runs,
      at: c.at,
      section: solidSection(c.w, c.d, E, G),
      give: giveOf(words.crossbarGive),
    })),
    braces: brace ? cornerNames.map((corner) => ({ corner, leg_mm: brace.leg, section: solidSection(brace.w, brace.d, E, G), give: giveOf(words.braceGive) })) : [],
  };
}

/** The same frame seen in a mirror beside it: left becomes right. */
export function mirrored(shape: FrameShape): FrameShape {
  const side = (corner: CornerName): CornerName =>
    (corner.endsWith('left') ? corner.replace('left', 'right') : corner.replace('right', 'left')) as CornerName;
  const { bars, eccentricity_mm: e } = shape;
  const swapped = <T>(record: Readonly<Record<CornerName, T>>) => Object.fromEntries(cornerNames.map((c) => [c, record[side(c)]])) as Record<CornerName, T>;
  return {
    ...shape,
    bars: { ...bars, left: bars.right, right: bars.left },
    eccentricity_mm: { ...e, left: e.right, right: e.left },
    corner_give: swapped(shape.corner_give),
    corner_plate_Nmm_per_rad: swapped(shape.corner_plate_Nmm_per_rad),
    crossbars: shape.crossbars.map((c) => (c.runs === 'upright' ? { ...c, at: 1 - c.at } : c)),
    braces: shape.braces.map((b) => ({ ...b, corner: side(b.corner) })),
  };
}
