import { MM_PER_IN, MPA_PER_PSI } from '../fasteners/us-units.js';

/** Clamps stand 8 to 12 in apart and 1.5 to 2 in from the ends; the middle of both is taken. Source: glue-guide. */
export const CLAMP_PITCH_MM = 10 * MM_PER_IN;
export const CLAMP_FROM_END_MM = 1.75 * MM_PER_IN;

/** Clamps for one blank at one go. */
export function clampsFor(length_mm: number): number {
  const run = length_mm - 2 * CLAMP_FROM_END_MM;
  return run <= 0 ? 1 : Math.ceil(run / CLAMP_PITCH_MM - 1e-9) + 1;
}

/**
 * Clamp pressure by density class, MPa: softwood (G up to 0.5) 100–150 psi, medium (to 0.6) 150–200, dense 200–300.
 * Source: glue-guide; class limits proposal.
 */
export function clampPressure_MPa(G: number): { readonly low: number; readonly high: number } {
  const [low, high] = G <= 0.5 ? [100, 150] : G <= 0.6 ? [150, 200] : [200, 300];
  return { low: low * MPA_PER_PSI, high: high * MPA_PER_PSI };
}

/** What makers ask of the clamps of one glue-up, and what hands can give. */
export interface ClampForce {
  /** Force at each clamp that the asked pressure comes to, N. */
  readonly low_N: number;
  readonly high_N: number;
  /** What a clamp tightened by hand gives, N: the shelf's `clamp-force`. */
  readonly by_hand_N: number;
  /** Clamps that would reach the low pressure, and whether those set do. */
  readonly clamps_needed: number;
  readonly in_reach: boolean;
}

/**
 * Force at each of `clamps` clamps over a glued face of `area_mm2`: pressure × area shared among them. Plies one behind
 * the other share one force. Source: physics.
 */
export function clampForce(
  area_mm2: number,
  clamps: number,
  pressure: { readonly low: number; readonly high: number },
  by_hand_N: number,
): ClampForce {
  const clamps_needed = Math.max(1, Math.ceil((pressure.low * area_mm2) / by_hand_N - 1e-9));
  return {
    low_N: (pressure.low * area_mm2) / clamps,
    high_N: (pressure.high * area_mm2) / clamps,
    by_hand_N,
    clamps_needed,
    in_reach: clamps >= clamps_needed,
  };
}
