/** What a frame is made of, for the solver: points, members, springs, supports and loads, in any consistent units. */

/** Three components along the global axes x, y, z. */
export type Vector = readonly [number, number, number];

/** The six ways a node can move: three shifts, then three rotations about the global axes (right-handed). */
export const directions = ['ux', 'uy', 'uz', 'rx', 'ry', 'rz'] as const;
export type Direction = (typeof directions)[number];

/** A point where members meet. `id` is only used to speak of it. */
export interface FrameNode {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Local rotations that a member end does not pass on. */
export type EndRelease = 'rx' | 'ry' | 'rz';

/**
 * A straight bar of constant section from node `i` to node `j` (indices into the nodes).
 *
 * Local x runs from i to j, local y = zref × x, local z = x × y.
 * `Iz` bends along local y, `Iy` along local z, `J` is the torsion constant.
 */
export interface Member {
  readonly id: string;
  readonly i: number;
  readonly j: number;
  readonly E: number;
  readonly G: number;
  readonly A: number;
  readonly Iy: number;
  readonly Iz: number;
  readonly J: number;
  readonly zref: Vector;
  readonly releases?: { readonly i?: readonly EndRelease[]; readonly j?: readonly EndRelease[] };
}

/**
 * A spring of no length between two nodes, one stiffness per global direction in the order of `directions`.
 * `Infinity` makes the two nodes share that movement exactly; 0 leaves it free. `cross` couples turning about x with
 * turning about y, for a spring whose own axes lie askew in the plane (there `k` of both is finite and k₃ k₄ > cross²).
 */
export interface Spring {
  readonly i: number;
  readonly j: number;
  readonly k: readonly [number, number, number, number, number, number];
  readonly cross?: number;
}

/** Movements of one node that are given: 0 for a fixed support, otherwise a settlement or an imposed rotation. */
export interface Support {
  readonly node: number;
  readonly fix: Readonly<Partial<Record<Direction, number>>>;
}

export interface Structure {
  readonly nodes: readonly FrameNode[];
  readonly members: readonly Member[];
  readonly springs: readonly Spring[];
  readonly supports: readonly Support[];
}

/** Force and moment on a node, global axes. */
export interface NodeLoad {
  readonly node: number;
  readonly force: Vector;
  readonly moment: Vector;
}

/** Uniform force and moment per length over a whole member, global axes. */
export interface MemberLoad {
  readonly member: number;
  readonly force: Vector;
  readonly moment: Vector;
}

export interface Loads {
  readonly nodes: readonly NodeLoad[];
  readonly members: readonly MemberLoad[];
}

/** How members deform: with shear (Timoshenko, shear coefficient `kappa`) or without (Euler–Bernoulli). */
export interface Theory {
  readonly shear: boolean;
  readonly kappa: number;
}

/** Timoshenko members of rectangular section. */
export const timoshenko: Theory = { shear: true, kappa: 5 / 6 };

/** Members that do not deform in shear. */
export const eulerBernoulli: Theory = { shear: false, kappa: 5 / 6 };
