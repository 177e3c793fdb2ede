import { HOOK_STANDOFF_MM, ringDeep_mm } from '../../fit/wire-depth.js';
import type { Model } from '../../model/model.js';
import { shelfNumber } from '../../shelf/shelf-number.js';
import type { Hardware } from '../../shelf/shelf.js';
import { CLEAT_SCREWS, cleatPlaces, type CleatPlaces } from './cleat.js';
import { hangingPoints, type HangingPoints } from '../occupancy/hanging-points.js';
import { centreOfGravity_mm } from './centre-of-gravity.js';
import { GRAVITY_N_PER_KG } from '../../base/gravity.js';
import { lean, type Lean } from './lean.js';
import { bottomOut_mm } from './stands-out.js';
import { pickRated, pickRing } from './pick-hardware.js';
import { ringUse, type RingLoad } from './ring.js';
import { wireForces, type WireForces } from './wire-forces.js';
import { ringSpan_mm, wireGeometry, type WireGeometry } from './wire-geometry.js';

/** Everything known of the hanging piece, for facts, pictures and the hanging page. */
export interface HangingState {
  readonly by: 'wire' | 'two-hooks' | 'd-rings' | 'cleat';
  /** Where it hangs, moved where something was in the way. */
  readonly points: HangingPoints;
  readonly weight_N: number;
  /** Null for two hooks, and for a wire that cannot carry because it has no slack. */
  readonly wire: WireGeometry | null;
  readonly forces: WireForces | null;
  /** Null when the hook would sit at the bottom edge or lower. */
  readonly lean: Lean | null;
  /** Hook or hooks below the top edge; negative when hook and wire show above the frame. */
  readonly hook_below_top_mm: number | null;
  /** How many hooks, or pairs of strips, are bought and fixed to the wall. */
  readonly hook_pieces: number;
  /** Strips under the top bar; null unless it hangs by a cleat. */
  readonly cleat: CleatPlaces | null;
  /** What is screwed into the wood: ring, strap or the strips. Null when the shelf has none. */
  readonly held_by: Hardware | null;
  /** Hooks that carry: of three or more on one wire only the outer two do. */
  readonly hooks_count: number;
  /** Load on one hook, pull-out from the wall included, N. */
  readonly hook_N: number | null;
  readonly ring_load: RingLoad | null;
  readonly ring_use: number | null;
  /** Wood in line with the ring's thread. */
  readonly ring_wood_mm: number;
  readonly picked: { readonly hook: Hardware | null; readonly wire: Hardware | null; readonly ring: Hardware | null };
}

/**
 * The hanging piece: wire shape and forces, lean, hooks, rings and the hardware picked from the shelf. Null when the
 * plan says it does not hang.
 * Rings sit `drop` below the top edge: on the inner faces of the side bars half way through their depth, or in the
 * middle of their backs.
 */
export function hangingState(model: Model): HangingState | null {
  const { plan, shelf } = model;
  const { hang } = plan;
  if (hang.by === 'none') return null;
  if (hang.by === 'cleat') return byCleat(model);
  const { w_mm, d_mm } = model.bars.left.section;
  const weight_N = model.weight.total_kg * GRAVITY_N_PER_KG;
  const byWire = hang.by === 'wire';
  const inside = hang.from === 'inside';
  const points = hangingPoints(model);
  const hooks_count = byWire ? Math.min(2, Math.max(1, hang.hooks)) : 2;
  const wire = byWire ? wireGeometry(ringSpan_mm(plan, w_mm), hang.slack_mm, hang.hooks) : null;
  const forces = wire ? wireForces(weight_N, wire.angle_deg, hang.hooks) : null;
  const rise_mm = wire?.rise_mm ?? 0;
  const leaning = lean({
    height_mm: plan.face.height_mm,
    rings_below_top_mm: points.drop_mm,
    rise_mm,
    standoff_mm: Math.max(0, HOOK_STANDOFF_MM - ringDeep_mm(hang.from, d_mm)),
    out_mm: bottomOut_mm(model),
    cg_mm: centreOfGravity_mm(model),
    weight_N,
  });
  const carried = (byWire ? forces : { lift_N: weight_N / 2, inward_N: 0, hook_N: weight_N / 2 }) ?? null;
  const pull = leaning?.pull_out_N ?? null;
  const ring_load: RingLoad | null =
    carried === null || pull === null
      ? null
      : inside && byWire
        ? { along_N: carried.inward_N, across_N: Math.hypot(carried.lift_N, pull / 2) }
        : inside
          ? { along_N: 0, across_N: Math.hypot(carried.lift_N, pull / 2) }
          : { along_N: pull / 2, across_N: Math.hypot(carried.lift_N, carried.inward_N) };
  const G = model.bars.left.stock.species.specific_gravity;
  const ring_wood_mm = inside ? w_mm : d_mm;
  const ring = ring_load ? pickRing(shelf, ring_load, G, ring_wood_mm, hang.by === 'd-rings' ? 'strap' : 'ring') : null;
  const hook_N = carried === null || pull === null ? null : Math.hypot(carried.hook_N, pull / hooks_count);
  return {
    by: hang.by,
    points,
    weight_N,
    wire,
    forces,
    lean: leaning,
    hook_below_top_mm: byWire && wire === null ? null : points.drop_mm - rise_mm,
    hooks_count,
    hook_pieces: byWire ? hang.hooks : 2,
    cleat: null,
    held_by: ring,
    hook_N,
    ring_load,
    ring_use: ring && ring_load ? ringUse(ring, ring_load, G, ring_wood_mm) : null,
    ring_wood_mm,
    picked: {
      hook: hook_N === null ? null : pickRated(shelf, 'hook', hook_N, shelfNumber(shelf, 'hook-factor')),
      wire: forces ? pickRated(shelf, 'wire', forces.tension_N, shelfNumber(shelf, 'wire-factor')) : null,
      ring,
    },
  };
}

/**
 * By bevelled strips under the top bar, flush with its back: the wall strip carries the weight, nothing draws the side
 * bars inward, and the frame lies flat. The strips share
 * the weight and the pull-out among their screws; of two pairs each carries half.
 */
function byCleat(model: Model): HangingState {
  const { plan, shelf, bars } = model;
  const { w_mm } = bars.top.section;
  const weight_N = model.weight.total_kg * GRAVITY_N_PER_KG;
  const cleat = cleatPlaces(model);
  const pairs = cleat.middles_mm.length;
  const leaning = lean({
    height_mm: plan.face.height_mm,
    rings_below_top_mm: w_mm,
    rise_mm: 0,
    standoff_mm: 0,
    out_mm: bottomOut_mm(model),
    cg_mm: centreOfGravity_mm(model),
    weight_N,
  });
  const pull_N = leaning?.pull_out_N ?? null;
  const hook_N = pull_N === null ? null : Math.hypot(weight_N, pull_N) / pairs;
  const picked = hook_N === null ? null : pickRated(shelf, 'cleat', hook_N, shelfNumber(shelf, 'hook-factor'));
  const screws = pairs * CLEAT_SCREWS;
  // driven up into the inner face of the top bar: the weight goes across the screws, what tips the frame forward as
  // well
  const ring_load: RingLoad | null =
    pull_N === null ? null : { along_N: 0, across_N: Math.hypot(weight_N, pull_N) / screws };
  return {
    by: 'cleat',
    weight_N,
    wire: null,
    forces: null,
    lean: leaning,
    hook_below_top_mm: w_mm + cleat.high_mm,
    hooks_count: pairs,
    hook_pieces: pairs,
    cleat,
    hook_N,
    ring_load,
    points: { drop_mm: w_mm, planned_mm: w_mm, moved_off: null, meets: cleat.meets },
    ring_use: picked && ring_load ? ringUse(picked, ring_load, bars.top.stock.species.specific_gravity, w_mm) : null,
    ring_wood_mm: w_mm,
    held_by: picked,
    picked: { hook: picked, wire: null, ring: null },
  };
}
