import type { Equations } from './equations.js';
import { addEntry, emptyProfile, factorise, solveFactored } from './profile-matrix.js';
import type { ProfileFactors } from './profile-matrix.js';

/**
 * A rectangular skin under tension in the xy plane, tied along its edges to nodes of the frame. Inside it moves along z
 * only; in the
 * plane its threads run straight from edge to edge and follow the frame. Grid lines at `xs` and `ys`; `edge(a, b)` is
 * the node at grid point (a, b) on the border.
 */
export interface MembraneGrid {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly edge: (a: number, b: number) => number;
}

/** Tension per length along x and along y. */
export interface Tension {
  readonly x: number;
  readonly y: number;
}

/** A skin ready for use: stiffness between grid points, interior ones eliminated on the fly. */
export interface Membrane {
  /** Interior points, numbered along the shorter direction first so that their band is narrow. */
  readonly interior: number;
  /**
   * Couplings of two points and their stiffness; points ≥ 0 are interior, −1 − eq an unknown of the frame. Diagonal
   * ones once.
   */
  readonly couplings: { readonly p: Int32Array; readonly q: Int32Array; readonly k: Float64Array };
  readonly factors: ProfileFactors;
}

/** Stiffness of one bilinear quadrilateral h × v between its corners (0,0), (1,0), (1,1), (0,1). */
export function quadStiffness(h: number, v: number, tension: Tension): number[] {
  const X = (tension.x * v) / (6 * h);
  const Y = (tension.y * h) / (6 * v);
  const [self, alongX, across, alongY] = [2 * X + 2 * Y, -2 * X + Y, -X - Y, X - 2 * Y];
  return [
    self,
    alongX,
    across,
    alongY,
    alongX,
    self,
    alongY,
    across,
    across,
    alongY,
    self,
    alongX,
    alongY,
    across,
    alongX,
    self,
  ];
}

/** Number of an interior grid point, or -1 on the border. */
export function interiorNumber(grid: MembraneGrid, a: number, b: number): number {
  const [m, n] = [grid.xs.length - 2, grid.ys.length - 2];
  if (a < 1 || b < 1 || a > m || b > n) return -1;
  return m <= n ? (b - 1) * m + a - 1 : (a - 1) * n + b - 1;
}

/**
 * A thread of the skin between two border nodes that lie opposite: it resists their moving apart sideways, in freedom
 * `freedom` (0 = x, 1 = y).
 */
interface Thread {
  readonly from: number;
  readonly to: number;
  readonly freedom: 0 | 1;
  /** Tension it carries over its length. */
  readonly k: number;
}

/** Nodes that threads join, with the freedom across the thread: rows of the grid swing along y, columns along x. */
export function threadEnds(grid: MembraneGrid): readonly Omit<Thread, 'k'>[] {
  const { xs, ys, edge } = grid;
  const rows = ys.map((_, b) => ({ from: edge(0, b), to: edge(xs.length - 1, b), freedom: 1 as const }));
  const columns = xs.map((_, a) => ({ from: edge(a, 0), to: edge(a, ys.length - 1), freedom: 0 as const }));
  return [...rows, ...columns];
}

/**
 * Stiffness of the threads under tension, each carrying its share of the edge: T·share/length on the difference of its
 * ends' sideways movements. Under its own
 * tension a frame may then turn in its plane without cost, as it may turn out of it; without them it would seem to lean
 * over under forces that keep
 * their direction, which cloth does not do.
 */
function threadsUnder(grid: MembraneGrid, tension: Tension): readonly Thread[] {
  const share = (lines: readonly number[], i: number): number =>
    ((lines[i + 1] ?? lines[i]!) - (lines[i - 1] ?? lines[i]!)) / 2;
  const length = (lines: readonly number[]): number => lines.at(-1)! - lines[0]!;
  const { xs, ys } = grid;
  const pulls = [
    ...ys.map((_, b) => (tension.x * share(ys, b)) / length(xs)),
    ...xs.map((_, a) => (tension.y * share(xs, a)) / length(ys)),
  ];
  return threadEnds(grid).map((ends, i) => ({ ...ends, k: pulls[i]! }));
}

/** Builds the skin over a grid. An edge point whose movement is prescribed is held at zero. */
export function buildMembrane(grid: MembraneGrid, tension: Tension, equations: Equations): Membrane {
  const { xs, ys } = grid;
  const columns = xs.length;
  const point = new Int32Array(columns * ys.length);
  const held = -(2 ** 30);
  for (let b = 0; b < ys.length; b++) {
    for (let a = 0; a < columns; a++) {
      const inside = interiorNumber(grid, a, b);
      if (inside >= 0) point[b * columns + a] = inside;
      else {
        const eq = equations.of[6 * grid.edge(a, b) + 2]!;
        point[b * columns + a] = eq >= 0 ? -1 - eq : held;
      }
    }
  }
  const interior = Math.max(0, (columns - 2) * (ys.length - 2));
  const most = 10 * (columns - 1) * (ys.length - 1) + 3 * (columns + ys.length);
  const p = new Int32Array(most);
  const q = new Int32Array(most);
  const k = new Float64Array(most);
  let used = 0;
  const first = new Int32Array(interior);
  for (let i = 0; i < interior; i++) first[i] = i;
  for (let b = 0; b + 1 < ys.length; b++) {
    for (let a = 0; a + 1 < columns; a++) {
      const quad = quadStiffness(xs[a + 1]! - xs[a]!, ys[b + 1]! - ys[b]!, tension);
      const at = b * columns + a;
      const corners = [point[at]!, point[at + 1]!, point[at + columns + 1]!, point[at + columns]!];
      for (let r = 0; r < 4; r++) {
        for (let c = 0; c <= r; c++) {
          const i = corners[r]!;
          const j = corners[c]!;
          if (i === held || j === held) continue;
          p[used] = i;
          q[used] = j;
          k[used++] = quad[r * 4 + c]!;
          if (i >= 0 && j >= 0) {
            const low = i < j ? i : j;
            const high = i < j ? j : i;
            if (low < first[high]!) first[high] = low;
          }
        }
      }
    }
  }
  for (const { from, to, freedom, k: pull } of threadsUnder(grid, tension)) {
    const ends = [equations.of[6 * from + freedom]!, equations.of[6 * to + freedom]!];
    ends.forEach((one, r) => {
      for (let c = 0; c <= r; c++) {
        const other = ends[c]!;
        if (one < 0 || other < 0) continue;
        p[used] = -1 - one;
        q[used] = -1 - other;
        k[used++] = r === c ? pull : -pull;
      }
    });
  }
  const couplings = { p: p.subarray(0, used), q: q.subarray(0, used), k: k.subarray(0, used) };
  const inner = emptyProfile(first);
  for (let c = 0; c < used; c++) if (p[c]! >= 0 && q[c]! >= 0) addEntry(inner, p[c]!, q[c]!, k[c]!);
  return { interior, couplings, factors: factorise(inner) };
}

/** y += K_m x for the skin with its interior condensed out: interior points settle where nothing pushes them. */
export function addMembraneProduct(membrane: Membrane, x: Float64Array, y: Float64Array): void {
  const { interior, couplings, factors } = membrane;
  const { p, q, k } = couplings;
  const z = new Float64Array(interior);
  for (let c = 0; c < k.length; c++) {
    const i = p[c]!;
    const j = q[c]!;
    if (i >= 0 && j < 0) z[i]! -= k[c]! * x[-1 - j]!;
    else if (i < 0 && j >= 0) z[j]! -= k[c]! * x[-1 - i]!;
  }
  solveFactored(factors, z);
  for (let c = 0; c < k.length; c++) {
    const i = p[c]!;
    const j = q[c]!;
    if (i >= 0) {
      if (j < 0) y[-1 - j]! += k[c]! * z[i]!;
      continue;
    }
    y[-1 - i]! += k[c]! * (j >= 0 ? z[j]! : x[-1 - j]!);
    if (j < 0 && j !== i) y[-1 - j]! += k[c]! * x[-1 - i]!;
  }
}
