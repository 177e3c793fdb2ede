import type { Equations } from './equations.js';
import type { MembraneBorder } from './membrane-border.js';
import { edgeShares } from './edge-shares.js';
import { addEntry, addProduct, emptyProfile } from './profile-matrix.js';
import type { ProfileMatrix } from './profile-matrix.js';
import { adjacentEnergy, alongEnergy, quadStiffness } from './skin-energy.js';
import type { Tension } from './skin-energy.js';
import { threadsUnder } from './threads.js';
import type { Thread } from './threads.js';

/** A skin ready for use: what it adds to the stiffness, between unknowns of the frame. */
export interface Membrane {
  /** Unknowns that it ties to each other out of its plane, and its full stiffness between them in this order. */
  readonly tied: Int32Array;
  readonly skin: ProfileMatrix;
  /** Its threads in the plane, between unknowns (−1 where held). */
  readonly threads: readonly Pick<Thread, 'from' | 'to' | 'k'>[];
}

/** Sines along an edge for each of its elements: more change no load factor in its fifth digit. */
const sines_per_element = 2;

/** The unknowns along one edge: two for each node, its shift and its slope along the edge (−1 where it is held). */
interface Edge {
  readonly unknowns: Int32Array;
  /** The slope along x is the negative of the turn about y. */
  readonly slope: 1 | -1;
}

function edgeOf(nodes: readonly number[], level: boolean, of: Int32Array): Edge {
  const unknowns = new Int32Array(2 * nodes.length);
  nodes.forEach((node, n) => {
    unknowns[2 * n] = of[6 * node + 2]!;
    unknowns[2 * n + 1] = of[6 * node + (level ? 4 : 3)]!;
  });
  return { unknowns, slope: level ? -1 : 1 };
}

const edgesOf = (border: MembraneBorder, of: Int32Array) => ({
  bottom: edgeOf(border.bottom, true, of),
  top: edgeOf(border.top, true, of),
  left: edgeOf(border.left, false, of),
  right: edgeOf(border.right, false, of),
});

/** Unknowns that the skin ties to each other out of its plane, each once. */
export function borderUnknowns(border: MembraneBorder, of: Int32Array): number[] {
  const all = Object.values(edgesOf(border, of)).flatMap(({ unknowns }) => [...unknowns]);
  return [...new Set(all.filter((unknown) => unknown >= 0))];
}

/** Builds the skin over a border. A movement that is prescribed is held at zero. */
export function buildMembrane(border: MembraneBorder, tension: Tension, equations: Equations): Membrane {
  const { of } = equations;
  const slack = tension.x === 0 && tension.y === 0;
  const tied = Int32Array.from(slack ? [] : borderUnknowns(border, of));
  const skin = emptyProfile(new Int32Array(tied.length));
  if (!slack) addSkin(skin, tied, border, tension, equations);
  const threads = threadsUnder(border, tension).map(({ from, to, freedom, k }) => ({
    from: of[6 * from + freedom]!,
    to: of[6 * to + freedom]!,
    k,
  }));
  return { tied, skin, threads: slack ? [] : threads };
}

/** Adds the skin's stiffness between the unknowns that it ties. */
function addSkin(
  skin: ProfileMatrix,
  tied: Int32Array,
  border: MembraneBorder,
  tension: Tension,
  { count, of }: Equations,
): void {
  const place = new Int32Array(count).fill(-1);
  for (let n = 0; n < tied.length; n++) place[tied[n]!] = n;
  const { bottom, top, left, right } = edgesOf(
    border,
    of.map((unknown) => (unknown < 0 ? -1 : place[unknown]!)),
  );
  const add = (p: number, q: number, value: number): void => {
    if (p >= 0 && q >= 0) addEntry(skin, p, q, value);
  };
  /** Adds the block between two edges, or half of it on an edge itself, where its other half is its mirror image. */
  const addBlock = (one: Edge, other: Edge, block: Float64Array): void => {
    const [rows, columns] = [one.unknowns, other.unknowns];
    const { start, values } = skin;
    for (let r = 0; r < rows.length; r++) {
      const p = rows[r]!;
      if (p < 0) continue;
      const even = r % 2 === 1 ? one.slope : 1;
      const odd = even * other.slope;
      const last = one === other ? r + 1 : columns.length;
      for (let c = 0, at = r * columns.length; c < last; c++, at++) {
        const q = columns[c]!;
        if (q < 0) continue;
        const value = (c % 2 === 1 ? odd : even) * block[at]!;
        // Where two edges share an unknown its entry stands for both halves.
        if (p === q && one !== other) values[start[p]! + q]! += 2 * value;
        else if (p >= q) values[start[p]! + q]! += value;
        else values[start[q]! + p]! += value;
      }
    }
  };
  const { width, height, along_x, along_y } = border;
  const level = edgeShares(along_x, width, sines_per_element * (along_x.length - 1));
  const upright = edgeShares(along_y, height, sines_per_element * (along_y.length - 1));
  const ways = [
    { near: left, far: right, shares: upright, across: width, along: height, pull: tension.x, aside: tension.y },
    { near: bottom, far: top, shares: level, across: height, along: width, pull: tension.y, aside: tension.x },
  ];
  const corners = [
    bottom.unknowns[0]!,
    top.unknowns[0]!,
    top.unknowns[level.count - 2]!,
    bottom.unknowns[level.count - 2]!,
  ];
  for (const [w, { near, far, shares, across, along, pull, aside }] of ways.entries()) {
    const { own, opposite } = alongEnergy(shares, along, across, pull, aside);
    addBlock(near, near, own);
    addBlock(far, far, own);
    addBlock(near, far, opposite);
    // The flux of the flat twist between the corners does work on what the edge is more than straight.
    const flux = (pull * along) / across;
    const pairs =
      w === 0
        ? [
            [corners[0]!, corners[3]!],
            [corners[1]!, corners[2]!],
          ]
        : [
            [corners[0]!, corners[1]!],
            [corners[3]!, corners[2]!],
          ];
    for (const [edge, side] of [
      [near, -1],
      [far, 1],
    ] as const) {
      for (let n = 0; n < shares.count; n++) {
        const p = edge.unknowns[n]!;
        const sign = side * (n % 2 === 1 ? edge.slope : 1) * flux;
        for (const [e, moments] of [shares.falling, shares.rising].entries()) {
          const [from, to] = pairs[e]!;
          const value = sign * moments[n]!;
          add(p, from!, p === from ? -2 * value : -value);
          add(p, to!, p === to ? 2 * value : value);
        }
      }
    }
  }
  const meet = adjacentEnergy(upright, level, width, height, tension);
  addBlock(left, bottom, meet.leftBottom);
  addBlock(left, top, meet.leftTop);
  addBlock(right, bottom, meet.rightBottom);
  addBlock(right, top, meet.rightTop);
  const flat = quadStiffness(width, height, tension);
  const round = [corners[0]!, corners[3]!, corners[2]!, corners[1]!];
  for (let r = 0; r < 4; r++) for (let c = 0; c <= r; c++) add(round[r]!, round[c]!, flat[4 * r + c]!);
}

/** y += K_m x out of the plane, the unknowns of either numbered from `from`. */
export function skinProduct({ tied, skin }: Membrane, from: number): (x: Float64Array, y: Float64Array) => void {
  const border = new Float64Array(tied.length);
  const pushed = new Float64Array(tied.length);
  return (x, y) => {
    for (let n = 0; n < tied.length; n++) border[n] = x[tied[n]! - from]!;
    pushed.fill(0);
    addProduct(skin, border, pushed);
    for (let n = 0; n < tied.length; n++) y[tied[n]! - from]! += pushed[n]!;
  };
}

/** y += K_m x in the plane, the unknowns of either numbered from `from`. */
export function addThreadProduct({ threads }: Membrane, from: number, x: Float64Array, y: Float64Array): void {
  for (const { from: one, to: other, k } of threads) {
    const push = k * ((one < 0 ? 0 : x[one - from]!) - (other < 0 ? 0 : x[other - from]!));
    if (one >= 0) y[one - from]! += push;
    if (other >= 0) y[other - from]! -= push;
  }
}
