/** Where the hands are and how the lift goes, in cm and degrees. */
export interface Lift {
  /** Hands in front of the ankles. */
  readonly H_cm: number;
  /** Hands above the floor at the start. */
  readonly V_cm: number;
  /** Height lifted. */
  readonly D_cm: number;
  /** Twist of the body. */
  readonly A_deg: number;
  /** Multipliers for how often, and for the grip. */
  readonly FM: number;
  readonly CM: number;
}

/**
 * Recommended weight limit of one person, kg: 23 · HM · VM · DM · AM · FM · CM, each multiplier held between 0 and 1.
 * Source: niosh-94-110.
 */
export function recommendedLift_kg(lift: Lift): number {
  const held = (x: number): number => Math.min(1, Math.max(0, x));
  const HM = lift.H_cm > 63 ? 0 : held(25 / lift.H_cm);
  const VM = lift.V_cm > 175 ? 0 : held(1 - 0.003 * Math.abs(lift.V_cm - 75));
  const DM = lift.D_cm > 175 ? 0 : held(0.82 + 4.5 / Math.max(25, lift.D_cm));
  const AM = lift.A_deg > 135 ? 0 : held(1 - 0.0032 * lift.A_deg);
  return 23 * HM * VM * DM * AM * lift.FM * lift.CM;
}

/**
 * A picture lifted to the wall: held 40 cm in front, from 90 cm to 150 cm, no twist, now and then, with a fair grip
 * (proposal; the equation is NIOSH's).
 */
export const PICTURE_LIFT: Lift = { H_cm: 40, V_cm: 90, D_cm: 60, A_deg: 0, FM: 1, CM: 0.95 };

/** Wider or taller than this one person does not reach around both edges, mm (proposal). */
const ONE_PERSON_REACH_MM = 1500;

/**
 * How many people should lift a finished piece: by the recommended weight limit (two people carry twice), and at least
 * two when one cannot reach around it.
 */
export function peopleToLift(mass_kg: number, width_mm: number, height_mm: number): number {
  const byWeight = Math.max(1, Math.ceil(mass_kg / recommendedLift_kg(PICTURE_LIFT) - 1e-9));
  const byReach =
    Math.min(width_mm, height_mm) > ONE_PERSON_REACH_MM || Math.max(width_mm, height_mm) > 1.5 * ONE_PERSON_REACH_MM
      ? 2
      : 1;
  return Math.max(byWeight, byReach);
}

/**
 * Whether a flat frame goes upright through a door, standing on one of its edges and never tilted: one side must pass
 * under the head and the depth through the width.
 * `door` null = not asked.
 */
export function fitsDoor(
  width_mm: number,
  height_mm: number,
  depth_mm: number,
  door: { readonly width_mm: number; readonly height_mm: number } | null,
): 'yes' | 'no' | 'not-asked' {
  if (door === null) return 'not-asked';
  return Math.min(width_mm, height_mm) <= door.height_mm && depth_mm <= door.width_mm ? 'yes' : 'no';
}
