import type { FrameNode, Member, Spring, Theory } from '../frame3d/index.js';
import type { JointGive, Section } from '../model/frame-shape.js';

/** One bar, crossbar or brace as a chain of elements, from its left or bottom end. */
export interface MeshMember {
  readonly name: string;
  readonly kind: 'bar' | 'crossbar' | 'brace';
  readonly section: Section;
  /** Nodes along it, its own ends included (behind their joints). */
  readonly nodes: readonly number[];
  /** Fraction of its length at each node. */
  readonly at: readonly number[];
  /** Elements between them, as indices into the structure's members. */
  readonly elements: readonly number[];
  readonly length_mm: number;
  /** Direction cosines of its axis in the plane. */
  readonly along: readonly [number, number];
  /** Bending against shear stiffness, 12 E I/(κ G A), mm², for bending in the plane and out of it; 0 without shear. */
  readonly shear: { readonly plane: number; readonly out: number };
}

/**
 * A joint that gives less than this many bar-widths one way is rigid that way: a stiffer spring would only cost
 * accuracy.
 */
const leastGive = 1e-6;
/** Across a joint that lies askew no single way can be rigid by itself; it gives this much. */
const leastAskew = 1e-3;

/**
 * Stiffness of a joint by its give g: E I/(g w) and G J/(g w) of the member that ends there, which runs along (c, s);
 * shifts are shared.
 */
function joint(i: number, j: number, section: Section, give: JointGive, [c, s]: readonly [number, number]): Spring {
  const stiff = (EI: number, widths: number): number => (widths > leastGive ? EI / (widths * section.w_mm) : Infinity);
  const GJ = section.G_MPa * section.J_mm4;
  const EI_out = section.E_MPa * section.I_out_mm4;
  const plane = stiff(section.E_MPa * section.I_plane_mm4, give.plane);
  const [twist, out] = [stiff(GJ, give.twist), stiff(EI_out, give.out)];
  if (c * s === 0)
    return { i, j, k: [Infinity, Infinity, Infinity, s === 0 ? twist : out, s === 0 ? out : twist, plane] };
  if (twist === Infinity && out === Infinity)
    return { i, j, k: [Infinity, Infinity, Infinity, Infinity, Infinity, plane] };
  const [t, o] = [stiff(GJ, Math.max(give.twist, leastAskew)), stiff(EI_out, Math.max(give.out, leastAskew))];
  return {
    i,
    j,
    k: [Infinity, Infinity, Infinity, t * c * c + o * s * s, t * s * s + o * c * c, plane],
    cross: (t - o) * c * s,
  };
}

/** Collects nodes, members and joints while a frame is laid out. */
export class Layout {
  readonly nodes: FrameNode[] = [];
  readonly members: Member[] = [];
  readonly springs: Spring[] = [];

  constructor(readonly theory: Theory) {}

  node(id: string, x: number, y: number): number {
    this.nodes.push({ id, x, y, z: 0 });
    return this.nodes.length - 1;
  }

  /** The node itself for a rigid joint, otherwise a second node behind the joint. */
  behindJoint(node: number, id: string, section: Section, give: JointGive, along: readonly [number, number]): number {
    if (!(Math.max(give.plane, give.out, give.twist) > leastGive)) return node;
    const { x, y } = this.nodes[node]!;
    const end = this.node(id, x, y);
    this.springs.push(joint(node, end, section, give, along));
    return end;
  }

  /**
   * A plate that holds two member ends to each other in the plane beside their joints, N·mm per radian; nothing between
   * ends that are one.
   */
  plate(i: number, j: number, stiffness: number): number | null {
    if (i === j || stiffness === 0) return null;
    return this.springs.push({ i, j, k: [0, 0, 0, 0, 0, stiffness] }) - 1;
  }

  chain(name: string, kind: MeshMember['kind'], section: Section, nodes: readonly number[]): MeshMember {
    const elements: number[] = [];
    const { A_mm2: A, I_out_mm4: Iy, I_plane_mm4: Iz, J_mm4: J, E_MPa: E, G_MPa: G } = section;
    for (let n = 1; n < nodes.length; n++) {
      elements.push(this.members.length);
      this.members.push({ id: `${name} ${n}`, i: nodes[n - 1]!, j: nodes[n]!, E, G, A, Iy, Iz, J, zref: [0, 0, 1] });
    }
    const a = this.nodes[nodes[0]!]!;
    const b = this.nodes[nodes[nodes.length - 1]!]!;
    const from = ({ x, y }: FrameNode): number => Math.sqrt((x - a.x) * (x - a.x) + (y - a.y) * (y - a.y));
    const length_mm = from(b);
    const at = nodes.map((n) => from(this.nodes[n]!) / length_mm);
    const softness = this.theory.shear ? (12 * E) / (this.theory.kappa * G * A) : 0;
    const along = [(b.x - a.x) / length_mm, (b.y - a.y) / length_mm] as const;
    return {
      name,
      kind,
      section,
      nodes,
      at,
      elements,
      length_mm,
      along,
      shear: { plane: softness * Iz, out: softness * Iy },
    };
  }
}
