export { slipModulus_N_per_mm } from './slip-modulus.js';

/** One board of a stack joined by fastenings that slip: breadth along the interface, height across it. */
export interface GammaPart {
  readonly E_MPa: number;
  readonly breadth_mm: number;
  readonly height_mm: number;
}

/** How one interface is fastened: distance between fastenings along the beam, and the slip modulus of each. */
export interface GammaInterface {
  readonly spacing_mm: number;
  readonly K_N_per_mm: number;
}

export interface GammaResult {
  /** Bending stiffness across the interfaces, N·mm². */
  readonly EI_Nmm2: number;
  /** Share of full connection of each part, 0 loose … 1 glued; one part is the reference and has 1. */
  readonly gamma: readonly number[];
  /**
   * Distance of each part's centre from the neutral axis of the whole, mm, counted positive away from the reference
   * part (for the reference part: towards part 1).
   */
  readonly a_mm: readonly number[];
}

/**
 * Connection factor γ = 1/(1 + π² E A s/(K L²)) of a part joined to its neighbour.
 * `area_mm2` is the part's own section, `span_mm` the beam's span.
 * Source: en1995-1-1 Annex B (B.5).
 */
export function gammaFactor(E_MPa: number, area_mm2: number, joint: GammaInterface, span_mm: number): number {
  if (joint.K_N_per_mm <= 0) return 0;
  return 1 / (1 + (Math.PI ** 2 * E_MPa * area_mm2 * joint.spacing_mm) / (joint.K_N_per_mm * span_mm ** 2));
}

/**
 * Effective bending stiffness of two or three boards joined by slipping fastenings, equal or unequal, bending across
 * the interfaces.
 * With two parts the second is the reference (γ = 1); with three, the middle one. `joints` has one entry per interface,
 * in order.
 * Source: en1995-1-1 Annex B (B.1 to B.5). Throws when the number of parts is not 2 or 3 or the joints do not match.
 */
export function gammaStiffness(
  parts: readonly GammaPart[],
  joints: readonly GammaInterface[],
  span_mm: number,
): GammaResult {
  if ((parts.length !== 2 && parts.length !== 3) || joints.length !== parts.length - 1) {
    throw new Error('The gamma method takes two or three parts and one joint fewer.');
  }
  const [p1, p2, p3] = parts as readonly [GammaPart, GammaPart, GammaPart?];
  const [j1, j3] = joints as readonly [GammaInterface, GammaInterface?];
  const area = (p: GammaPart): number => p.breadth_mm * p.height_mm;
  const g1 = gammaFactor(p1.E_MPa, area(p1), j1, span_mm);
  const g3 = p3 && j3 ? gammaFactor(p3.E_MPa, area(p3), j3, span_mm) : 0;
  const EA1 = g1 * p1.E_MPa * area(p1);
  const EA2 = p2.E_MPa * area(p2);
  const EA3 = p3 ? g3 * p3.E_MPa * area(p3) : 0;
  const half12 = (p1.height_mm + p2.height_mm) / 2;
  const half23 = p3 ? (p2.height_mm + p3.height_mm) / 2 : 0;
  const a2 = (EA1 * half12 - EA3 * half23) / (EA1 + EA2 + EA3);
  const a1 = half12 - a2;
  const a3 = half23 + a2;
  const own = parts.reduce((sum, p) => sum + (p.E_MPa * p.breadth_mm * p.height_mm ** 3) / 12, 0);
  const EI = own + EA1 * a1 ** 2 + EA2 * a2 ** 2 + (p3 ? EA3 * a3 ** 2 : 0);
  return p3 ? { EI_Nmm2: EI, gamma: [g1, 1, g3], a_mm: [a1, a2, a3] } : { EI_Nmm2: EI, gamma: [g1, 1], a_mm: [a1, a2] };
}

/** Boards of a stack with the same fastenings in every interface. */
export interface JointedBeam {
  readonly plies: readonly GammaPart[];
  readonly slip_N_per_mm: number;
  readonly spacing_mm: number;
  readonly span_mm: number;
}

/** The gamma method for the same fastenings in every interface, two or three plies. Source: en1995-1-1 Annex B. */
export function jointedBeam(beam: JointedBeam): GammaResult {
  const joint: GammaInterface = { spacing_mm: beam.spacing_mm, K_N_per_mm: beam.slip_N_per_mm };
  return gammaStiffness(
    beam.plies,
    beam.plies.slice(1).map(() => joint),
    beam.span_mm,
  );
}
