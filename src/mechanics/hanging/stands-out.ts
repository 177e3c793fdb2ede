import type { Model } from '../../model/model.js';
import { ANGLE_MM } from '../../model/brace-layout.js';
import { gussets } from '../bench/pick-supply.js';
import { crossbarsLie } from '../occupancy/crossbar-ends.js';
import type { Obstacle, Span } from '../occupancy/occupant.js';

/** What stands out farthest behind the backs of the bars and so meets the wall first. */
export interface StandsOut {
  readonly what: Obstacle;
  readonly out_mm: number;
  /** Where it lies up the height of the frame, from its bottom edge, mm. */
  readonly up_mm: readonly Span[];
}

/** Less than this nobody sees, mm. */
const LEAST_MM = 0.5;

/** Crossbars, gussets or angles that stand out behind the bars. */
function allThatStandsOut(model: Model): readonly StandsOut[] {
  const {
    plan: {
      face: { height_mm },
    },
    plate,
    bars,
  } = model;
  const parts: readonly StandsOut[] = [
    ...crossbarsLie(model).map(({ name, runs, middle_mm, w_mm, deep_mm }): StandsOut => ({
      what: { kind: 'whole-crossbar', of: name },
      out_mm: -deep_mm[0],
      up_mm: [
        runs === 'level'
          ? [middle_mm - w_mm / 2, middle_mm + w_mm / 2]
          : [bars.bottom.section.w_mm, height_mm - bars.top.section.w_mm],
      ],
    })),
    ...(plate === null
      ? []
      : [
          {
            what: { kind: plate.kind === 'ply-gusset' ? 'all-gussets' : 'all-angles', of: 'frame' } as const,
            out_mm: plateThickness_mm(model),
            up_mm: [
              [0, plate.leg_mm],
              [height_mm - plate.leg_mm, height_mm],
            ] as const,
          },
        ]),
  ];
  return parts.filter(({ out_mm }) => out_mm > LEAST_MM);
}

/** The crossbar, gussets or angles that stand out farthest behind the bars; null when all is flush or farther in. */
export const standsOut = (model: Model): StandsOut | null =>
  allThatStandsOut(model).reduce<StandsOut | null>(
    (most, part) => (most === null || part.out_mm > most.out_mm ? part : most),
    null,
  );

/**
 * How far up from the bottom edge, as a share of the height, something still holds that edge off the wall (proposal):
 * what lies higher lets it swing in.
 */
const LOW_SHARE = 0.25;

/** How far what stands out behind the bars holds their lower edge off the wall, mm; 0 where nothing does. */
export function bottomOut_mm(model: Model): number {
  const low = allThatStandsOut(model).filter(({ up_mm }) =>
    up_mm.some(([from]) => from < LOW_SHARE * model.plan.face.height_mm),
  );
  return Math.max(0, ...low.map(({ out_mm }) => out_mm));
}

const plateThickness_mm = (model: Model): number =>
  gussets(model)?.thickness_mm ?? model.plate?.angle?.thickness_mm ?? ANGLE_MM;
