import { MM_PER_IN } from './us-units.js';

/** A dowel through a side piece into a main (holding) piece. */
export interface ShearJoint {
  /** Diameter that bends and bears: the shank of a nail, the root of a screw (NDS 12.3.7). */
  readonly diameter_mm: number;
  /** Bearing length in the side and the main piece. */
  readonly side_mm: number;
  readonly main_mm: number;
  readonly side_bearing_MPa: number;
  readonly main_bearing_MPa: number;
  readonly bending_yield_MPa: number;
  /** Largest angle of load to grain in either piece; matters from 1/4 in up. */
  readonly angle_deg?: number;
}

const yieldModes = ['Im', 'Is', 'II', 'IIIm', 'IIIs', 'IV'] as const;
export type YieldMode = (typeof yieldModes)[number];

/**
 * Reduction terms by mode. Up to 0.17 in: 2.2; to 1/4 in: 10 D + 0.5; above: 4, 3.6 or 3.2 by mode, times 1 + 0.25
 * θ/90.
 * Source: nds-2018 Table 12.3.1B.
 */
export function reductionTerm(diameter_mm: number, mode: YieldMode, angle_deg = 0): number {
  const D = diameter_mm / MM_PER_IN;
  if (D <= 0.17) return 2.2;
  if (D < 0.25) return 10 * D + 0.5;
  const K = 1 + 0.25 * (angle_deg / 90);
  return (mode === 'Im' || mode === 'Is' ? 4 : mode === 'II' ? 3.6 : 3.2) * K;
}

/**
 * Design load of one fastening in single shear, N, by each of the six yield modes; the least decides.
 * Im, Is: the wood crushes in one piece; II: the dowel turns stiff; IIIm, IIIs: one hinge; IV: two hinges.
 * Source: nds-2018 Table 12.3.1A (k2 with 1 + 2Re: nds-2018-memory, and required by symmetry of the two pieces).
 * Unit-safe: any consistent N and mm.
 */
export function yieldModes_N(joint: ShearJoint): Readonly<Record<YieldMode, number>> {
  const {
    diameter_mm: D,
    side_mm: ls,
    main_mm: lm,
    side_bearing_MPa: Fes,
    main_bearing_MPa: Fem,
    bending_yield_MPa: Fyb,
    angle_deg = 0,
  } = joint;
  const zero = { Im: 0, Is: 0, II: 0, IIIm: 0, IIIs: 0, IV: 0 };
  if (!(ls > 0) || !(lm > 0)) return zero;
  const Re = Fem / Fes;
  const Rt = lm / ls;
  const k1 = (Math.sqrt(Re + 2 * Re ** 2 * (1 + Rt + Rt ** 2) + Rt ** 2 * Re ** 3) - Re * (1 + Rt)) / (1 + Re);
  const k2 = -1 + Math.sqrt(2 * (1 + Re) + (2 * Fyb * (1 + 2 * Re) * D ** 2) / (3 * Fem * lm ** 2));
  const k3 = -1 + Math.sqrt((2 * (1 + Re)) / Re + (2 * Fyb * (2 + Re) * D ** 2) / (3 * Fem * ls ** 2));
  const Rd = (mode: YieldMode): number => reductionTerm(D, mode, angle_deg);
  return {
    Im: (D * lm * Fem) / Rd('Im'),
    Is: (D * ls * Fes) / Rd('Is'),
    II: (k1 * D * ls * Fes) / Rd('II'),
    IIIm: (k2 * D * lm * Fem) / ((1 + 2 * Re) * Rd('IIIm')),
    IIIs: (k3 * D * ls * Fem) / ((2 + Re) * Rd('IIIs')),
    IV: (D ** 2 / Rd('IV')) * Math.sqrt((2 * Fem * Fyb) / (3 * (1 + Re))),
  };
}

/** Design load in single shear, N, and the mode that decides. */
export function singleShear_N(joint: ShearJoint): { readonly N: number; readonly mode: YieldMode } {
  const modes = yieldModes_N(joint);
  let least: YieldMode = 'Im';
  for (const mode of yieldModes) if (modes[mode] < modes[least]) least = mode;
  return { N: modes[least], mode: least };
}
