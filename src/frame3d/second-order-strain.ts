import type { Element, Prepared } from './assemble.js';
import { springTerms } from './assemble.js';
import { vectorToGlobal, vectorToLocal } from './element-axes.js';
import { memberGeometricStiffness } from './geometric-stiffness.js';
import { midTwistPush, midTwistStiffness } from './mid-twist.js';
import type { Resultants } from './geometric-stiffness.js';
import { addProduct, dotSegments, solveFactored } from './profile-matrix.js';
import { product12, spreadUnknowns } from './solve.js';

/** Each stress resultant by itself, and the end movement (local: ux, uy or rz at i and j) that it does its work on. */
const works: readonly { readonly force: Resultants; readonly at: readonly (readonly [number, number])[] }[] = [
  {
    force: { N: 1, Vy: 0, grown: 0, Mi: 0, Mj: 0 },
    at: [
      [0, -0.5],
      [6, 0.5],
    ],
  },
  {
    force: { N: 0, Vy: 1, grown: 0, Mi: 0, Mj: 0 },
    at: [
      [1, -0.5],
      [7, 0.5],
    ],
  },
  { force: { N: 0, Vy: 0, grown: 0, Mi: 1, Mj: 0 }, at: [[5, -1]] },
  { force: { N: 0, Vy: 0, grown: 0, Mi: 0, Mj: 1 }, at: [[11, 1]] },
];

/**
 * In-plane end movements that a movement out of the plane makes in a member at the second order: whatever its end
 * forces f,
 * their energy in that movement (`memberGeometricStiffness`) is f times these.
 */
function secondOrderEnds(
  { axes, movements, G }: Element,
  u: Float64Array,
  midTwist: number,
  scratch: Float64Array,
): Float64Array {
  const global = new Float64Array(12);
  const nodal = new Float64Array(12);
  for (let r = 0; r < 12; r++) global[r] = u[movements[r]!]!;
  vectorToLocal(global, axes.R, nodal);
  const ends = G ? product12(G, nodal, false) : nodal;
  const s = new Float64Array(12);
  const push = new Float64Array(12);
  for (const { force, at } of works) {
    memberGeometricStiffness(force, axes.length, scratch);
    let energy = 0;
    for (let i = 0; i < 12; i++) {
      const e = ends[i]!;
      if (e === 0) continue;
      for (let j = 0; j < 12; j++) energy += (e * scratch[i * 12 + j]! * ends[j]!) / 2;
    }
    midTwistPush(force, axes.length, push);
    energy += midTwist * dotSegments(push, 0, ends, 0, 12);
    for (const [row, share] of at) s[row]! += share * energy;
  }
  return s;
}

/**
 * What stiffens a plane frame as it leaves its plane by a mode `x` (on the unknowns) of size y: ½ k y² bends and twists
 * it, E₄ y⁴ is left in its plane.
 */
export interface LargeMovement {
  /** φᵀ K φ. */
  readonly k: number;
  /**
   * In-plane strain energy left once the frame has moved in its plane to suit: one solution on the factors that are
   * there.
   */
  readonly E4: number;
}

/**
 * Elastic energy of a plane frame in the global xy plane that moves out of it by the mode `x` (on the unknowns, and
 * beyond them the parabola of twist of each member, where it has them), second-order strains included:
 * ½ w'² along members,
 * ½ (θ_x w'' − w' θ_x') in bending, ½ θ_x w' in shear, ½ (θ_ix θ_jy − θ_iy θ_jx) at the in-plane spring of a joint.
 * Zero for a rigid movement.
 */
export function largeMovement(prepared: Prepared, x: Float64Array): LargeMovement {
  const { elements, equations, structure, stiffness, factors } = prepared;
  const u = spreadUnknowns(prepared, x);
  const b = new Float64Array(equations.count);
  const scratch = new Float64Array(144);
  const pushed = new Float64Array(12);
  let energy = 0;
  const turnOf = (i: number, j: number): number => (u[6 * i + 3]! * u[6 * j + 4]! - u[6 * i + 4]! * u[6 * j + 3]!) / 2;
  /**
   * Where a joint is rigid about z but gives about x or y, the node behind it turns about z by the second-order amount
   * itself.
   */
  const turned = new Float64Array(structure.nodes.length);
  for (const { i, j, k: spring } of structure.springs) if (spring[5] === Infinity) turned[j] = turnOf(i, j);
  let twisted = 0;
  elements.forEach((element, e) => {
    const midTwist = x[equations.count + e] ?? 0;
    twisted += midTwistStiffness(structure.members[e]!, element.axes.length) * midTwist * midTwist;
    const s = secondOrderEnds(element, u, midTwist, scratch);
    s[5]! += turned[element.movements[0]! / 6]!;
    s[11]! += turned[element.movements[6]! / 6]!;
    const f = product12(element.k, s, false);
    energy += dotSegments(f, 0, s, 0, 12) / 2;
    vectorToGlobal(f, element.axes.R, pushed);
    element.movements.forEach((movement, r) => push(movement, -pushed[r]!));
  });
  for (const { a, b: other, c, k } of springTerms(structure)) {
    if (a % 6 !== 5 || c !== a) continue;
    const [i, j] = [(a - 5) / 6, (other - 5) / 6];
    const turn = turnOf(i, j) + turned[i]! - turned[j]!;
    energy += (k * turn * turn) / 2;
    push(a, -k * turn);
    push(other, k * turn);
  }
  const settled = b.slice();
  solveFactored(factors, settled);
  const bent = new Float64Array(equations.count);
  addProduct(stiffness, x, bent);
  return {
    k: dotSegments(x, 0, bent, 0, bent.length) + twisted,
    E4: energy - dotSegments(b, 0, settled, 0, b.length) / 2,
  };

  function push(movement: number, force: number): void {
    const eq = equations.of[movement]!;
    if (eq >= 0) b[eq]! += force;
  }
}
