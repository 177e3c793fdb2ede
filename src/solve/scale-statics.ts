import type { BarName, CornerName } from '../base/names.js';
import { barNames, cornerNames } from '../base/names.js';
import type { BarStatics, CornerStatics, Statics } from '../model/frame-results.js';

/** The linear solution at a pull `ratio` times as hard: every displacement and force in proportion. `ratio` is positive. */
export function scaleStatics(statics: Statics, ratio: number): Statics {
  const bar = (b: BarStatics): BarStatics => ({
    ...scaled(b, ratio),
    forces: b.forces.map(({ s, axial_N, plane_Nmm, out_Nmm }) => ({ s, axial_N: axial_N * ratio, plane_Nmm: plane_Nmm * ratio, out_Nmm: out_Nmm * ratio })),
    bow_line: b.bow_line.map(({ s, inward_mm }) => ({ s, inward_mm: inward_mm * ratio })),
  });
  return {
    bars: Object.fromEntries(barNames.map((name) => [name, bar(statics.bars[name])])) as Record<BarName, BarStatics>,
    crossbars: statics.crossbars.map((c) => ({ ...c, axial_N: c.axial_N * ratio, bow_mm: c.bow_mm * ratio })),
    corners: Object.fromEntries(cornerNames.map((name) => [name, scaled(statics.corners[name], ratio)])) as Record<CornerName, CornerStatics>,
    dish_mm: statics.dish_mm * ratio,
    diagonal_difference_mm: statics.diagonal_difference_mm * ratio,
  };
}

/** A record with its numbers scaled and everything else as it is. */
function scaled<T extends object>(record: T, ratio: number): T {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, typeof value === 'number' ? value * ratio : value])) as T;
}
