import type { WarpKind } from '../model/frame-results.js';
import type { Bond, Lay, Stack } from '../plan/plan.js';

/** The ways a single board is out of true: twisted along its length, bowed flatwise, crooked edgewise. */
export type BoardWarp = 'twist' | 'bow' | 'crook';

/**
 * One line of the linear map from boards to bar: the bar's warp of a kind = weight × the sum of the boards' warp of
 * `from`.
 */
export interface WarpWeight {
  readonly kind: WarpKind;
  readonly from: BoardWarp;
  /** The same for every ply, the plies being equal. */
  readonly weight: number;
}

/** How the equal boards of a bar lie and hold together. */
export interface PlyStack {
  readonly plies: number;
  readonly lay: Lay;
  readonly stack: Stack;
  readonly bond: Bond;
  /** Torsion constant of one board and of the bar as built. */
  readonly J_ply_mm4: number;
  readonly J_bar_mm4: number;
}

/**
 * Which board warp becomes which bar warp, and how much of it is left, per ply.
 *
 * Lay: on the flat, flatwise bow is out of plane; on edge, flatwise bow is in the plane.
 * Glue: boards held straight while it sets spring back together as one piece. Each leaves its own moment E·I_ply·κ
 * behind and the
 * piece is n³ times as stiff across the glue lines, so Σκ/n³ is left there; the other way each board keeps its share,
 * Σκ/n.
 * Twist: Σ J_ply τ / J_bar.
 * Screws alone hold the plies to one shape but let them slip in time, so they count as loose: Σκ/n both ways. That is
 * the larger
 * of the two answers, and the safe one.
 */
export function warpWeights(bar: PlyStack): readonly WarpWeight[] {
  const n = bar.plies;
  const glued = n > 1 && (bar.bond === 'glue' || bar.bond === 'glue+screws');
  const across = glued ? 1 / n ** 3 : 1 / n;
  const along = 1 / n;
  const outAcross = bar.stack === 'front-to-back';
  return [
    { kind: 'twist', from: 'twist', weight: bar.J_ply_mm4 / bar.J_bar_mm4 },
    { kind: 'out', from: bar.lay === 'flat' ? 'bow' : 'crook', weight: outAcross ? across : along },
    { kind: 'plane', from: bar.lay === 'flat' ? 'crook' : 'bow', weight: outAcross ? along : across },
  ];
}
