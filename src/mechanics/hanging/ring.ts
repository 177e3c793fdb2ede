import type { UnitSystem } from '../../base/names.js';
import type { Drill, Hardware } from '../../shelf/shelf.js';
import { combinedUse } from '../fasteners/combined-load.js';
import { screwLateral_N } from '../fasteners/design-load.js';
import { nearestDrill, screwHole_mm } from '../fasteners/lead-hole.js';
import { DURATION } from '../fasteners/load-duration.js';
import { screwWithdrawal_N_per_mm } from '../fasteners/withdrawal.js';

/**
 * Root of a ring's thread, share of its outer diameter (proposal; two thirds in the Wood Handbook, 0.8 in the NDS
 * tables).
 */
const RING_ROOT_SHARE = 0.75;
/** How deep the hole for a ring is drilled, share of its thread, so that the tip still bites (practice). */
const RING_HOLE_SHARE = 0.9;
/** Bending yield of the soft wire rings are made of, MPa (proposal: the lowest row of NDS Table I1). */
const RING_YIELD_MPA = 483;

/** Forces on one ring: out of the wood along its thread, and across it, N. */
export interface RingLoad {
  readonly along_N: number;
  readonly across_N: number;
}

/**
 * Share of a ring screw's strength used under a lasting load: withdrawal of its thread and sideways strength (steel eye
 * on wood) combined by the standard's rule, or the load over its
 * rating where that is worse. `G` is the wood's specific gravity, `wood_mm` the wood there is along the thread (thread
 * beyond it holds nothing).
 * Source: nds-2018, rating: practice.
 */
export function ringUse(ring: Hardware, load: RingLoad, G: number, wood_mm: number): number {
  const bite_mm = Math.min(ring.thread_length_mm, wood_mm);
  const W = DURATION.permanent * screwWithdrawal_N_per_mm(G, ring.thread_diameter_mm) * bite_mm;
  const Z =
    DURATION.permanent *
    screwLateral_N(
      { root_mm: RING_ROOT_SHARE * ring.thread_diameter_mm, yield_MPa: RING_YIELD_MPA },
      { G_side: null, G_main: G, side_mm: ring.thread_diameter_mm, main_mm: bite_mm },
    );
  const rated = ring.rating_N > 0 ? Math.hypot(load.along_N, load.across_N) / ring.rating_N : 0;
  return Math.max(combinedUse(load.along_N, load.across_N, W, Z), rated);
}

/** A hole for a ring screw; `drill` null when every drill on hand is wider. */
export interface RingHole {
  readonly drill: Drill | null;
  readonly depth_mm: number;
}

/**
 * The hole a ring screw wants: the largest drill on hand that leaves its thread wood to pull on, and how deep. Source:
 * as for wood screws that are pulled out.
 */
export function ringHole(
  ring: Hardware,
  G: number,
  wood_mm: number,
  drills: readonly Drill[],
  units: UnitSystem,
): RingHole {
  const screw = { shank_mm: ring.thread_diameter_mm, root_mm: RING_ROOT_SHARE * ring.thread_diameter_mm };
  return {
    drill: nearestDrill(drills, screwHole_mm(screw, G, 'thread', 'withdrawal'), units),
    depth_mm: Math.round(Math.min(RING_HOLE_SHARE * ring.thread_length_mm, wood_mm - 1)),
  };
}
