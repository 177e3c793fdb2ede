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

/** What is tied along one edge: two for each node, its shift and its slope along the edge (−1 where it is held). */
interface Edge {
  readonly places: Int32Array;
  /** The slope along x is the negative of the turn about y. */
  readonly slope: 1 | -1;
}

/** Unknowns that a skin ties to each other out of its plane, and where those along each edge stand among them. */
export interface SkinEdges {
  readonly tied: Int32Array;
  readonly bottom: Edge;
  readonly top: Edge;
  readonly left: Edge;
  readonly right: Edge;
}

/** The edges of a skin over a border, `of` being the unknown of each movement. */
export function skinEdges(border: MembraneBorder, of: Int32Array): SkinEdges {
  const tied: number[] = [];
  const placeOf = new Int32Array(of.length).fill(-1);
  const place = (unknown: number): number => {
    if (unknown < 0) return -1;
    if (placeOf[unknown]! < 0) placeOf[unknown] = tied.push(unknown) - 1;
    return placeOf[unknown]!;
  };
  const edge = (nodes: readonly number[], level: boolean): Edge => {
    const places = new Int32Array(2 * nodes.length);
    for (let n = 0; n < nodes.length; n++) {
      places[2 * n] = place(of[6 * nodes[n]! + 2]!);
      places[2 * n + 1] = place(of[6 * nodes[n]! + (level ? 4 : 3)]!);
    }
    return { places, slope: level ? -1 : 1 };
  };
  const [bottom, top] = [edge(border.bottom, true), edge(border.top, true)];
  const [left, right] = [edge(border.left, false), edge(border.right, false)];
  return { tied: Int32Array.from(tied), bottom, top, left, right };
}

/** Builds the skin over a border. A movement that is prescribed is held at zero. */
export function buildMembrane(
  border: MembraneBorder,
  tension: Tension,
  { of }: Pick<Equations, 'of'>,
  edges: SkinEdges = skinEdges(border, of),
): Membrane {
  if (tension.x === 0 && tension.y === 0)
    return { tied: new Int32Array(0), skin: emptyProfile(new Int32Array(0)), threads: [] };
  const skin = emptyProfile(new Int32Array(edges.tied.length));
  addSkin(skin, edges, border, tension);
  const threads = threadsUnder(border, tension).map(({ from, to, freedom, k }) => ({
    from: of[6 * from + freedom]!,
    to: of[6 * to + freedom]!,
    k,
  }));
  return { tied: edges.tied, skin, threads };
}

/** Adds the skin's stiffness between the unknowns that it ties. */
function addSkin(
  skin: ProfileMatrix,
  { bottom, top, left, right }: SkinEdges,
  border: MembraneBorder,
  tension: Tension,
): void {
  const add = (p: number, q: number, value: number): void => {
    if (p >= 0 && q >= 0) addEntry(skin, p, q, value);
  };
  /** Adds the block between two edges, or half of it on an edge itself, where its other half is its mirror image. */
  const addBlock = (one: Edge, other: Edge, block: Float64Array): void => {
    const rows = one.places;
    const columns = other.places;
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
  // Round the skin from its bottom left: the shifts of its corners.
  const [c0, c1] = [bottom.places[0]!, bottom.places[level.count - 2]!];
  const [c2, c3] = [top.places[level.count - 2]!, top.places[0]!];
  for (const { near, far, shares, across, along, pull, aside } of ways) {
    const { own, opposite } = alongEnergy(shares, along, across, pull, aside);
    addBlock(near, near, own);
    addBlock(far, far, own);
    addBlock(near, far, opposite);
    // The flux of the flat twist between the corners does work on what the edge is more than straight.
    const flux = (pull * along) / across;
    // The corners that lie across from the first, and beside it along the near edge.
    const [facing, next] = near === left ? [c1, c3] : [c3, c1];
    const addFlux = (edge: Edge, side: number): void => {
      for (let n = 0; n < shares.count; n++) {
        const p = edge.places[n]!;
        const share = side * (n % 2 === 1 ? edge.slope : 1) * flux;
        const falling = share * shares.falling[n]!;
        const rising = share * shares.rising[n]!;
        add(p, c0, p === c0 ? -2 * falling : -falling);
        add(p, facing, p === facing ? 2 * falling : falling);
        add(p, next, p === next ? -2 * rising : -rising);
        add(p, c2, p === c2 ? 2 * rising : rising);
      }
    };
    addFlux(near, -1);
    addFlux(far, 1);
  }
  const meet = adjacentEnergy(upright, level, width, height, tension);
  addBlock(left, bottom, meet.leftBottom);
  addBlock(left, top, meet.leftTop);
  addBlock(right, bottom, meet.rightBottom);
  addBlock(right, top, meet.rightTop);
  const flat = quadStiffness(width, height, tension);
  const round = [c0, c1, c2, c3];
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
