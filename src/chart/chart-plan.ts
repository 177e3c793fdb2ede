import type { UnitSystem } from '../base/names.js';
import { fillPlan } from '../plan/fill-plan.js';
import type { PlanInput } from '../plan/plan-schema.js';
import type { Bond, Lay, Plan } from '../plan/plan.js';
import { settlePlan } from '../plan/settle-plan.js';
import type { Shelf } from '../shelf/shelf.js';
import { objections } from '../suggest/objections.js';

/** One way to build a frame, as a row and column of the chart name it. */
export interface ChartBuild {
  readonly stock: string;
  readonly lay: Lay;
  readonly plies: 1 | 2;
  readonly crossbars: 0 | 1 | 2;
  readonly braced: boolean;
}

/** Width over height. */
export const shapes = { square: 1, oblong: 3 / 2 } as const;
export type Shape = keyof typeof shapes;

/** Height of a frame of this shape and width, mm. */
export const heightOf = (shape: Shape, width_mm: number): number => width_mm / shapes[shape];

/**
 * The plan of a chart entry: every default of the plan reader, two plies side by side, glued and screwed or where no
 * screw fits only glued, one crossbar across the long way and the second
 * crossing it, boards of the bars' stock; crossbars lie as the bars do where they fit, else flat. Null where the reader
 * would object, such as to a frame without an opening.
 */
export function chartPlan(
  build: ChartBuild,
  shape: Shape,
  width_mm: number,
  shelf: Shelf,
  units: UnitSystem = 'metric',
): Plan | null {
  const lays = build.crossbars > 0 && build.lay === 'edge' ? (['edge', 'flat'] as const) : [build.lay];
  const bonds = build.plies > 1 ? (['glue+screws', 'glue'] as const) : (['none'] as const);
  for (const bond of bonds)
    for (const lay of lays) {
      const plan = settlePlan(fillPlan(inputOf(build, shape, width_mm, lay, bond, units)), shelf);
      if (objections(plan, shelf).length === 0) return plan;
    }
  return null;
}

function inputOf(
  { stock, lay, plies, crossbars, braced }: ChartBuild,
  shape: Shape,
  width_mm: number,
  crossbarLay: Lay,
  bond: Bond,
  units: UnitSystem,
): PlanInput {
  const written = (length_mm: number): string => (units === 'inch' ? `${length_mm / 25.4} in` : `${length_mm} mm`);
  const across = [
    { runs: 'upright' as const, lay: crossbarLay },
    { runs: 'level' as const, lay: crossbarLay },
  ].slice(0, crossbars);
  return {
    plan: 1,
    name: 'Chart',
    face: { width: written(width_mm), height: written(heightOf(shape, width_mm)) },
    bars: { stock, lay, ...(plies === 1 ? {} : { plies, bond, pairing: 'opposed' as const }) },
    ...(across.length === 0 ? {} : { crossbars: across }),
    ...(braced ? { corners: { brace: { kind: 'timber' as const } } } : {}),
  };
}
