import type { Equations } from './equations.js';
import type { MembraneBorder } from './membrane-border.js';
import { edgeShares } from './edge-shares.js';
import { adjacentEnergy, alongEnergy, quadStiffness } from './skin-energy.js';
import type { Tension } from './skin-energy.js';
import { threadsUnder } from './threads.js';

/** A skin ready for use: what it adds to the stiffness, between unknowns of the frame, diagonal entries once. */
export interface Membrane {
  readonly p: Int32Array;
  readonly q: Int32Array;
  readonly k: Float64Array;
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
  if (tension.x === 0 && tension.y === 0) return { p: new Int32Array(0), q: new Int32Array(0), k: new Float64Array(0) };
  const place = new Int32Array(equations.count).fill(-1);
  const tied = borderUnknowns(border, of);
  tied.forEach((unknown, n) => (place[unknown] = n));
  const size = tied.length;
  const dense = new Float64Array(size * size);
  const { bottom, top, left, right } = edgesOf(border, of);
  const at = (edge: Edge, n: number): number => (edge.unknowns[n]! < 0 ? -1 : place[edge.unknowns[n]!]!);
  const add = (p: number, q: number, value: number): void => {
    if (p >= 0 && q >= 0) dense[p >= q ? p * size + q : q * size + p]! += value;
  };
  /** Adds the block between two edges, or half of it on an edge itself, where its other half is its mirror image. */
  const addBlock = (one: Edge, other: Edge, block: Float64Array): void => {
    const [rows, columns] = [one.unknowns.length, other.unknowns.length];
    for (let r = 0; r < rows; r++) {
      const p = at(one, r);
      if (p < 0) continue;
      const sign = r % 2 === 1 ? one.slope : 1;
      for (let c = 0; c < (one === other ? r + 1 : columns); c++) {
        const q = at(other, c);
        // Where two edges share an unknown its entry stands for both halves.
        const twice = p === q && one !== other ? 2 : 1;
        add(p, q, twice * sign * (c % 2 === 1 ? other.slope : 1) * block[r * columns + c]!);
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
  const corners = [at(bottom, 0), at(top, 0), at(top, level.count - 2), at(bottom, level.count - 2)];
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
        const p = at(edge, n);
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
  return withThreads(border, tension, of, tied, dense);
}

/** The skin's entries and those of its threads, as one list. */
function withThreads(
  border: MembraneBorder,
  tension: Tension,
  of: Int32Array,
  tied: readonly number[],
  dense: Float64Array,
): Membrane {
  const size = tied.length;
  const threads = threadsUnder(border, tension);
  const most = (size * (size + 1)) / 2 + 3 * threads.length;
  const [p, q, k] = [new Int32Array(most), new Int32Array(most), new Float64Array(most)];
  let used = 0;
  const couple = (one: number, other: number, value: number): void => {
    p[used] = one;
    q[used] = other;
    k[used++] = value;
  };
  for (let r = 0; r < size; r++) for (let c = 0; c <= r; c++) couple(tied[r]!, tied[c]!, dense[r * size + c]!);
  for (const { from, to, freedom, k: pull } of threads) {
    const [one, other] = [of[6 * from + freedom]!, of[6 * to + freedom]!];
    if (one >= 0) couple(one, one, pull);
    if (other >= 0) couple(other, other, pull);
    if (one >= 0 && other >= 0) couple(one, other, -pull);
  }
  return { p: p.subarray(0, used), q: q.subarray(0, used), k: k.subarray(0, used) };
}

/** y += K_m x. */
export function addMembraneProduct({ p, q, k }: Membrane, x: Float64Array, y: Float64Array): void {
  for (let c = 0; c < k.length; c++) {
    const [i, j, value] = [p[c]!, q[c]!, k[c]!];
    y[i]! += value * x[j]!;
    if (i !== j) y[j]! += value * x[i]!;
  }
}
