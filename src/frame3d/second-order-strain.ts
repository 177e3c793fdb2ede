import type { Element, Prepared } from './assemble.js';
import { vectorToGlobal, vectorToLocal } from './element-axes.js';
import { shapes } from './geometric-stiffness.js';
import { midTwistStiffness } from './mid-twist.js';
import { addProduct, dotSegments, solveFactored } from './profile-matrix.js';
import { product12, spreadUnknowns, twelves } from './solve.js';

/** Room for one element at a time. */
interface Scratch {
  readonly global: Float64Array;
  readonly nodal: Float64Array;
  readonly s: Float64Array;
  readonly f: Float64Array;
}

/**
 * In-plane end movements that a movement out of the plane makes in a member at the second order: whatever its end
 * forces f, their energy in that movement (`memberGeometricStiffness`, `midTwistPush`) is f times these. Each is the
 * energy of one stress resultant by itself: N and V_y work on the ends' parting, the two moments on their turns.
 */
function secondOrderEnds(
  { axes, G }: Element,
  movements: Int32Array,
  u: Float64Array,
  midTwist: number,
  { global, nodal, s: ends }: Scratch,
): Float64Array {
  const { length: L, R } = axes;
  for (let r = 0; r < 12; r++) global[r] = u[movements[r]!]!;
  vectorToLocal(global, R, nodal);
  const e = G ? product12(G, nodal, false) : nodal;
  const from = e[3]!;
  const grown = e[9]! - from;
  let axial = 0;
  let shear = (-(e[6]! - e[0]!) * (e[7]! - e[1]!)) / L;
  let momentI = 0;
  let momentJ = 0;
  for (const { s, weight, slope, curvature } of shapes) {
    const dip = (slope[0]! * e[2]! + slope[2]! * e[8]!) / L - slope[1]! * e[4]! - slope[3]! * e[10]!;
    const aside = (slope[0]! * e[1]! + slope[2]! * e[7]!) / L + slope[1]! * e[5]! + slope[3]! * e[11]!;
    const bend =
      ((curvature[0]! * e[2]! + curvature[2]! * e[8]!) / L - curvature[1]! * e[4]! - curvature[3]! * e[10]!) / L;
    const twist = from + grown * s + 4 * s * (1 - s) * midTwist;
    const rate = (grown + 4 * (1 - 2 * s) * midTwist) / L;
    const half = (weight * L) / 2;
    axial += half * (dip * dip + aside * aside);
    shear += half * twist * dip;
    const turned = half * (twist * bend - rate * dip);
    momentI += (1 - s) * turned;
    momentJ += s * turned;
  }
  ends.fill(0);
  ends[0] = -axial / 2;
  ends[6] = axial / 2;
  ends[1] = -shear / 2;
  ends[7] = shear / 2;
  ends[5] = -momentI;
  ends[11] = momentJ;
  return ends;
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
  const { elements, equations, springs, structure, stiffness, factors } = prepared;
  const u = spreadUnknowns(prepared, x);
  const b = new Float64Array(equations.count);
  const pushed = new Float64Array(12);
  const [global, nodal, s, f] = twelves(4) as [Float64Array, Float64Array, Float64Array, Float64Array];
  const scratch: Scratch = { global, nodal, s, f };
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
    const movements = equations.movements[e]!;
    const s = secondOrderEnds(element, movements, u, midTwist, scratch);
    s[5]! += turned[movements[0]! / 6]!;
    s[11]! += turned[movements[6]! / 6]!;
    const f = product12(element.k, s, false, scratch.f);
    energy += dotSegments(f, 0, s, 0, 12) / 2;
    vectorToGlobal(f, element.axes.R, pushed);
    for (let r = 0; r < 12; r++) push(movements[r]!, -pushed[r]!);
  });
  for (const { a, b: other, c, k } of springs) {
    if (a % 6 !== 5 || c !== a) continue;
    const i = (a - 5) / 6;
    const j = (other - 5) / 6;
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
