import type { Prepared } from './assemble.js';
import { vectorToGlobal } from './element-axes.js';
import { outOfPlane, resultantsAt, resultantsOf, shapes } from './geometric-stiffness.js';
import type { Resultants } from './geometric-stiffness.js';
import { product12 } from './solve.js';
import type { FrameSolution } from './solve.js';
import type { Member } from './structure.js';

/**
 * Between its nodes a member under moment twists by more than a straight line: by a parabola 4 s (1 − s) b besides. Of
 * member e, what its b is pushed by, from `at[e]` to `at[e + 1]`: these unknowns, b per unit of each and the other way;
 * and its own torsional stiffness 16 G J/(3 L).
 */
export interface MidTwists {
  readonly at: Int32Array;
  readonly unknowns: Int32Array;
  readonly pushes: Float64Array;
  readonly k: Float64Array;
}

/** Adds to `c` (local, twelve) what the energy of `memberGeometricStiffness` says of θ_x = 4 s (1 − s) with w. */
export function midTwistPush(force: Resultants, L: number, c: Float64Array): void {
  c.fill(0);
  for (const { s, weight, slope, curvature } of shapes) {
    const bulge = 4 * s * (1 - s);
    const rate = (4 * (1 - 2 * s)) / L;
    const { V, M } = resultantsAt(force, L, s);
    for (let a = 0; a < 4; a++) {
      const sign = a % 2 === 0 ? 1 / L : -1;
      const dip = sign * slope[a]!;
      const bend = (sign * curvature[a]!) / L;
      c[outOfPlane[a]!]! += ((V / 2) * bulge * dip + (M / 2) * (bulge * bend - rate * dip)) * weight * L;
    }
  }
}

/** Torsional stiffness of a member against its parabola of twist. */
export const midTwistStiffness = ({ G, J }: Member, L: number): number => (16 * G * J) / (3 * L);

/** The parabolas of twist of all members under the forces of a linear solution. */
export function midTwists({ elements, equations, structure }: Prepared, solution: FrameSolution): MidTwists {
  const at = new Int32Array(elements.length + 1);
  const unknowns = new Int32Array(12 * elements.length);
  const pushes = new Float64Array(12 * elements.length);
  const k = new Float64Array(elements.length);
  const local = new Float64Array(12);
  const global = new Float64Array(12);
  let used = 0;
  elements.forEach(({ axes, G }, e) => {
    k[e] = midTwistStiffness(structure.members[e]!, axes.length);
    midTwistPush(resultantsOf(solution.endForces[e]!), axes.length, local);
    vectorToGlobal(G ? product12(G, local, true) : local, axes.R, global);
    for (let r = 0; r < 12; r++) {
      const unknown = equations.of[equations.movements[e]![r]!]!;
      if (unknown < 0 || global[r] === 0) continue;
      unknowns[used] = unknown;
      pushes[used++] = global[r]!;
    }
    at[e + 1] = used;
  });
  return { at, unknowns, pushes, k };
}
