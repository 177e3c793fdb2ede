import { evenGive } from '../../src/base/joint-give.js';
import type { BarName, CornerName } from '../../src/base/names.js';
import { barNames, cornerNames } from '../../src/base/names.js';
import type { FrameShape, Section } from '../../src/model/frame-shape.js';
import { solidSection } from '../../src/model/section.js';

/** A frame as files of cases describe it: outside size, one section for all bars, joints by one number, crossbars and braces. */
export interface FrameCase {
  readonly id: string;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly bar: { readonly w_mm: number; readonly d_mm: number };
  readonly E_MPa: number;
  readonly G_MPa: number;
  /** Factor on both bending stiffnesses of the bars. */
  readonly stiff?: number;
  readonly corner_give_widths?: number;
  readonly crossbar_give_widths?: number;
  readonly brace_give_widths?: number;
  readonly crossbars?: readonly { readonly runs: 'upright' | 'level'; readonly at: number; readonly w_mm: number; readonly d_mm: number }[];
  readonly braces?: { readonly leg_mm: number; readonly w_mm: number; readonly d_mm: number };
}

const everyBar = <T>(value: T): Record<BarName, T> => Object.fromEntries(barNames.map((name) => [name, value])) as Record<BarName, T>;
const everyCorner = <T>(value: T): Record<CornerName, T> => Object.fromEntries(cornerNames.map((name) => [name, value])) as Record<CornerName, T>;

/** The shape of a case; the pull acts at the front edge, joints that are not named are rigid. */
export function shapeOf(c: FrameCase): FrameShape {
  const { w_mm, d_mm } = c.bar;
  const plain = solidSection(w_mm, d_mm, c.E_MPa, c.G_MPa);
  const section: Section = { ...plain, I_plane_mm4: plain.I_plane_mm4 * (c.stiff ?? 1), I_out_mm4: plain.I_out_mm4 * (c.stiff ?? 1) };
  const { braces } = c;
  return {
    span_x_mm: c.width_mm - w_mm,
    span_y_mm: c.height_mm - w_mm,
    bars: everyBar(section),
    eccentricity_mm: everyBar(d_mm / 2),
    corner_give: everyCorner(evenGive(c.corner_give_widths ?? 0)),
    corner_plate_Nmm_per_rad: everyCorner(0),
    crossbars: (c.crossbars ?? []).map((bar, i) => ({
      name: `crossbar-${i + 1}`,
      runs: bar.runs,
      at: bar.at,
      section: solidSection(bar.w_mm, bar.d_mm, c.E_MPa, c.G_MPa),
      give: evenGive(c.crossbar_give_widths ?? 0),
    })),
    braces: braces === undefined ? [] : cornerNames.map((corner) => ({
      corner,
      leg_mm: braces.leg_mm,
      section: solidSection(braces.w_mm, braces.d_mm, c.E_MPa, c.G_MPa),
      give: evenGive(c.brace_give_widths ?? 0),
    })),
  };
}
