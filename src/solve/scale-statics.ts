import { lazily } from '../base/lazily.js';
import type { CornerName } from '../base/names.js';
import { cornerNames } from '../base/names.js';
import type { BarStatics, CornerStatics, Statics } from '../model/frame-results.js';
import { perBar } from './mesh-shape-lines.js';

/**
 * The linear solution at a pull `ratio` times as hard: every displacement and force in proportion, each by its name;
 * spans and places stay. `ratio` is positive.
 */
export function scaleStatics(statics: Statics, ratio: number): Statics {
  const bar = (b: BarStatics): BarStatics =>
    lazily<BarStatics>({
      inward_bow_mm: () => b.inward_bow_mm * ratio,
      dish_mm: () => b.dish_mm * ratio,
      roll_mrad: () => b.roll_mrad * ratio,
      axial_N: () => b.axial_N * ratio,
      moment_Nmm: () => b.moment_Nmm * ratio,
      forces: () =>
        b.forces.map(({ s, axial_N, plane_Nmm, out_Nmm }) => ({
          s,
          axial_N: axial_N * ratio,
          plane_Nmm: plane_Nmm * ratio,
          out_Nmm: out_Nmm * ratio,
        })),
      bow_line: () => b.bow_line.map(({ s, inward_mm }) => ({ s, inward_mm: inward_mm * ratio })),
    });
  const corner = (c: CornerStatics): CornerStatics => ({
    moment_Nmm: c.moment_Nmm * ratio,
    plate_moment_Nmm: c.plate_moment_Nmm * ratio,
    out_moment_Nmm: c.out_moment_Nmm * ratio,
    torque_Nmm: c.torque_Nmm * ratio,
    axial_N: c.axial_N * ratio,
    shear_N: c.shear_N * ratio,
  });
  return lazily<Statics>({
    bars: () => perBar((name) => bar(statics.bars[name])),
    crossbars: () =>
      statics.crossbars.map(({ name, axial_N, bow_mm, span_mm }) => ({
        name,
        axial_N: axial_N * ratio,
        bow_mm: bow_mm * ratio,
        span_mm,
      })),
    corners: () =>
      Object.fromEntries(cornerNames.map((name) => [name, corner(statics.corners[name])])) as Record<
        CornerName,
        CornerStatics
      >,
    dish_mm: () => statics.dish_mm * ratio,
    racking_mm: () => statics.racking_mm * ratio,
  });
}
