import { remembered } from '../../base/remembered.js';
import { ringDeep_mm } from '../../fit/wire-depth.js';
import type { Model } from '../../model/model.js';
import { ringSpan_mm, wireGeometry } from '../hanging/wire-geometry.js';
import { cornerParts } from './corner-parts.js';
import { crossbarEnds } from './crossbar-ends.js';
import { among, eachOnce, inTheWay, KEEP_BODY_MM, type Obstacle, type Occupant } from './occupant.js';
import { bracesMet, crossbarsMet, type WirePath } from './wire-path.js';

/** Half the room a ring's eye or a strap takes, mm, and how deep its screw may go (proposals). */
const RING_HALF_MM = 10;
const RING_SCREW_MM = 25;
/** Hanging points are moved no lower than this share of the height: below it the piece would tip forward (proposal). */
const LOWEST_SHARE = 0.4;
/** Marks of the tape by which they move, mm. */
const step_mm = { metric: 5, inch: 6.35 } as const;

/** Where the piece hangs. */
export interface HangingPoints {
  /** Below the top edge, where the rings really go. */
  readonly drop_mm: number;
  /** Where the plan has them. */
  readonly planned_mm: number;
  /** What stood there; null when nothing did. */
  readonly moved_off: Obstacle | null;
  /** What the rings or the wire still run against; empty when all is clear. */
  readonly meets: readonly Obstacle[];
}

/** The rings at some drop, as things on the side bars. */
export function ringsAt(model: Model, drop_mm: number): readonly Occupant[] {
  const { plan } = model;
  return (['left', 'right'] as const).map((bar): Occupant => {
    const { w_mm, d_mm } = model.bars[bar].section;
    const along = plan.face.height_mm - drop_mm;
    const back = onBack(model);
    return {
      bar,
      kind: 'ring',
      of: bar,
      along_mm: [along - RING_HALF_MM, along + RING_HALF_MM],
      across_mm: back ? [w_mm / 2 - RING_HALF_MM, w_mm / 2 + RING_HALF_MM] : [-2 * RING_HALF_MM, RING_SCREW_MM],
      deep_mm: back ? [-1, RING_SCREW_MM] : [d_mm / 2 - RING_HALF_MM, d_mm / 2 + RING_HALF_MM],
      keep_mm: KEEP_BODY_MM,
    };
  });
}

/** Whether it hangs on two points of the side bars; a cleat holds the top bar. */
export const hangsOnPoints = (by: Model['plan']['hang']['by']): boolean => by !== 'none' && by !== 'cleat';

/** Whether rings sit on the backs of the side bars. */
const onBack = ({ plan: { hang } }: Model): boolean => hang.from === 'back';

/** How the wire runs when its rings are at some drop; null without a wire that carries. */
export function wirePathAt(model: Model, drop_mm: number): WirePath | null {
  const { plan, bars } = model;
  if (plan.hang.by !== 'wire') return null;
  const { w_mm, d_mm } = bars.left.section;
  const span = ringSpan_mm(plan, w_mm);
  const wire = wireGeometry(span, plan.hang.slack_mm, plan.hang.hooks);
  if (wire === null) return null;
  return {
    ring_x_mm: (plan.face.width_mm - span) / 2,
    ring_drop_mm: drop_mm,
    hook_x_mm: (plan.face.width_mm - wire.hooks_apart_mm) / 2,
    hook_drop_mm: drop_mm - wire.rise_mm,
    ring_deep_mm: ringDeep_mm(plan.hang.from, d_mm),
  };
}

/**
 * Where the hanging points go: as planned, or, where a brace, the end of a crossbar or a plate is in the way of rings
 * or wire, the nearest place that is clear.
 * When none is, they stay, and `meets` says what they run against; so does a crossbar that the wire would have to pass.
 * The same plan on the same model is worked out once.
 */
export const hangingPoints = remembered(find);

function find(model: Model): HangingPoints {
  const { plan } = model;
  const planned_mm = plan.hang.drop_mm;
  const idle = !hangsOnPoints(plan.hang.by);
  const fixed = idle ? [] : [...cornerParts(model), ...crossbarEnds(model).map(allDeep)];
  const blocked = (drop_mm: number): readonly Obstacle[] =>
    eachOnce([...ringsMeet(model, fixed, drop_mm), ...over(model, drop_mm, bracesMet)]);
  const crossed = (drop_mm: number): readonly Obstacle[] => over(model, drop_mm, crossbarsMet);
  const meets = idle ? [] : blocked(planned_mm);
  if (meets.length === 0) return { drop_mm: planned_mm, planned_mm, moved_off: null, meets: crossed(planned_mm) };
  const lowest_mm = LOWEST_SHARE * plan.face.height_mm;
  let best = { drop_mm: planned_mm, meets };
  const step = step_mm[plan.units];
  for (let off = step; off <= lowest_mm && best.meets.length > 0; off += step)
    for (const drop_mm of [planned_mm + off, planned_mm - off]) {
      if (drop_mm > lowest_mm || drop_mm < planned_mm / 2) continue;
      const here = blocked(drop_mm);
      if (here.length < best.meets.length) best = { drop_mm, meets: here };
    }
  const left = meets.find((what) => !among(best.meets, what)) ?? null;
  return {
    drop_mm: best.drop_mm,
    meets: [...best.meets, ...crossed(best.drop_mm)],
    planned_mm,
    moved_off: best.drop_mm === planned_mm ? null : left,
  };
}

const ringsMeet = (model: Model, fixed: readonly Occupant[], drop_mm: number): readonly Obstacle[] =>
  ringsAt(model, drop_mm).flatMap((ring) => fixed.filter((other) => inTheWay(ring, other)));

/** A setback does not decide where a piece hangs, so the end of a crossbar bars the whole depth of the bar. */
const allDeep = (end: Occupant): Occupant =>
  end.kind === 'crossbar' ? { ...end, deep_mm: [-Infinity, Infinity] } : end;

function over(
  model: Model,
  drop_mm: number,
  met: (model: Model, path: WirePath) => readonly Obstacle[],
): readonly Obstacle[] {
  const path = wirePathAt(model, drop_mm);
  return path === null ? [] : met(model, path);
}
