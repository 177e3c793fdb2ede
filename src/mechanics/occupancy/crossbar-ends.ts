import type { BarName } from '../../base/names.js';
import { remembered } from '../../base/remembered.js';
import type { Model } from '../../model/model.js';
import { planCrossbarScrews } from '../fasteners/crossbar-screws.js';
import { KEEP_BODY_MM, shaft, type Occupant, type Span } from './occupant.js';

/**
 * One crossbar as it lies behind the cloth: its middle along the bars it ends at, its width, and where it lies in their
 * depth.
 */
export interface CrossbarLie {
  readonly name: string;
  readonly runs: 'upright' | 'level';
  /** From the left or the bottom outside edge. */
  readonly middle_mm: number;
  readonly w_mm: number;
  /** From the back of the bars (0) to their front. */
  readonly deep_mm: Span;
}

/** Every crossbar of the frame as it lies. A setback counts from the front of the bars. */
export function crossbarsLie(model: Model): readonly CrossbarLie[] {
  const { plan, bars, crossbars } = model;
  return crossbars.map((build, i): CrossbarLie => {
    const { runs, at, setback_mm } = plan.crossbars[i]!;
    const front = bars.top.section.d_mm - setback_mm;
    return {
      name: build.name,
      runs,
      middle_mm: at * (runs === 'upright' ? plan.face.width_mm : plan.face.height_mm),
      w_mm: build.section.w_mm,
      deep_mm: [front - build.section.d_mm, front],
    };
  });
}

/** What the crossbars put on the side bars: their ends and the screws into them. */
export const crossbarEnds = remembered((model: Model): readonly Occupant[] => {
  const screws = planCrossbarScrews(model);
  const w_mm = model.bars.top.section.w_mm;
  return crossbarsLie(model).flatMap((lie) => {
    const ends: readonly BarName[] = lie.runs === 'upright' ? ['top', 'bottom'] : ['left', 'right'];
    const [back, front] = lie.deep_mm;
    const middles =
      screws === null
        ? []
        : front - back < 60
          ? [(back + front) / 2]
          : [back + (front - back) / 4, front - (front - back) / 4];
    const from_outside = screws?.along_grain === true;
    return ends.flatMap((bar): Occupant[] => [
      {
        bar,
        kind: 'crossbar',
        of: lie.name,
        along_mm: [lie.middle_mm - lie.w_mm / 2, lie.middle_mm + lie.w_mm / 2],
        across_mm: [-lie.w_mm, 0],
        deep_mm: lie.deep_mm,
        keep_mm: KEEP_BODY_MM,
      },
      ...(screws === null
        ? []
        : middles.map((deep) =>
            shaft(
              { bar, kind: 'crossbar-screw', of: lie.name },
              screws.shank_mm,
              lie.middle_mm,
              from_outside ? [0, w_mm] : [0, Math.min(w_mm, screws.penetration_mm)],
              deep,
            ),
          )),
    ]);
  });
});
