import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { evenGive } from '../../src/base/joint-give.js';
import { addProduct, eulerBernoulli, prepareStretched, secondOrder, smallestFactors, smallestLoadFactors, solveFactored, solvePrepared, timoshenko } from '../../src/frame3d/index.js';
import type { Member, SecondOrder, StretchedFrame, Structure } from '../../src/frame3d/index.js';
import { prepare } from '../../src/frame3d/assemble.js';
import { numberEquations } from '../../src/frame3d/equations.js';
import { geometricStiffness, memberGeometricStiffness } from '../../src/frame3d/geometric-stiffness.js';
import { midTwistPush, midTwistStiffness } from '../../src/frame3d/mid-twist.js';
import { addThreadProduct, buildMembrane, skinProduct } from '../../src/frame3d/membrane.js';
import { inPlaneProblem, outOfPlaneProblem } from '../../src/frame3d/smallest-factors.js';
import { quadStiffness } from '../../src/frame3d/skin-energy.js';
import { partOf } from '../../src/frame3d/profile-matrix.js';
import type { ProfileMatrix } from '../../src/frame3d/profile-matrix.js';
import { symmetricEigen } from '../../src/frame3d/small-eigen.js';
import { meshFrame } from '../../src/solve/frame-mesh.js';
import type { FrameMesh } from '../../src/solve/frame-mesh.js';
import { frameLoads } from '../../src/solve/mesh-statics.js';
import { findStability } from '../../src/solve/analyse-frame.js';
import type { EdgePull, FrameShape } from '../../src/model/frame-shape.js';
import { frameOf } from './frame-shapes.js';
import type { FrameWords } from './frame-shapes.js';

const pull: EdgePull = { x: 0.23, y: 0.14 };

const uneven: FrameWords = {
  width: 1300,
  height: 900,
  w: 38,
  d: 32,
  crossbars: [
    { runs: 'upright', at: 0.37, w: 30, d: 22 },
    { runs: 'level', at: 0.61, w: 25, d: 19 },
  ],
};

function second(shape: FrameShape, at: EdgePull, bar = 6): { mesh: FrameMesh; frame: StretchedFrame; order: SecondOrder } {
  const mesh = meshFrame(shape, [], { bar, crossbar: 3, brace: 2 }, timoshenko);
  const preparation = prepareStretched(mesh.structure, mesh.border, timoshenko);
  if (!preparation.stable) throw new Error('unstable');
  const frame = preparation.stretched;
  const solution = solvePrepared(frame.prepared, frameLoads(shape, mesh, at, [], false));
  return { mesh, frame, order: secondOrder(frame, solution, at) };
}

const dense = (m: ProfileMatrix): Matrix => {
  const full = Matrix.zeros(m.n, m.n);
  for (let i = 0; i < m.n; i++) {
    for (let j = m.first[i]!; j <= i; j++) {
      full.set(i, j, m.values[m.start[i]! + j]!);
      full.set(j, i, m.values[m.start[i]! + j]!);
    }
  }
  return full;
};

describe('a rigid rotation of a frame with its cloth costs nothing', () => {
  const unequal = frameOf({ ...uneven, give: 4, crossbarGive: 6, brace: { leg: 260, w: 38, d: 19 } });
  const shapes: [string, FrameShape][] = [
    ['rigid joints', frameOf(uneven)],
    ['soft joints', frameOf({ ...uneven, give: 4, crossbarGive: 6 })],
    ['soft joints and braces', unequal],
    ['every corner and bar its own', {
      ...unequal,
      corner_give: { 'top-left': evenGive(1), 'top-right': evenGive(0), 'bottom-left': evenGive(7), 'bottom-right': evenGive(40) },
      bars: { ...unequal.bars, top: frameOf({ ...uneven, w: 64, d: 19 }).bars.top, left: frameOf({ ...uneven, w: 20, d: 45 }).bars.top },
      braces: unequal.braces.slice(0, 3),
    }],
    ['joints that give in each way differently, plates and soft brace ends', {
      ...frameOf({ ...uneven, give: { plane: 30, out: 4, twist: 9 }, crossbarGive: { plane: 0, out: 3, twist: 0 }, brace: { leg: 260, w: 38, d: 19 }, braceGive: { plane: 5, out: 9, twist: 2 } }),
      corner_plate_Nmm_per_rad: { 'top-left': 3e6, 'top-right': 4e5, 'bottom-left': 0, 'bottom-right': 9e6 },
    }],
  ];
  it.each(shapes)('%s, about x and about y', (_, shape) => {
    // Three bars of the structure hold z; freed of them every node may turn with the whole.
    const { mesh } = second(shape, pull);
    const preparation = prepareStretched(mesh.structure, mesh.border, timoshenko);
    if (!preparation.stable) throw new Error('unstable');
    const free: Structure = { ...mesh.structure, supports: [{ node: 0, fix: { ux: 0, uy: 0 } }, { node: 1, fix: { uy: 0 } }] };
    const solution = solvePrepared(preparation.stretched.prepared, frameLoads(shape, mesh, pull, [], false));
    const released = prepare(free, timoshenko);
    expect(released.stable).toBe(false);
    const { equations, geometric, membrane } = looseSecondOrder(free, mesh, solution);
    for (const axis of [0, 1]) {
      const x = new Float64Array(equations.count);
      mesh.structure.nodes.forEach(({ x: px, y: py }, n) => {
        x[equations.of[6 * n + 2]!] = axis === 0 ? py : -px;
        x[equations.of[6 * n + 3 + axis]!] = 1;
      });
      const y = new Float64Array(equations.count);
      addProduct(geometric, x, y);
      const frameAlone = Math.max(...y.map(Math.abs));
      skinProduct(membrane, 0)(x, y);
      expect(frameAlone).toBeGreaterThan(1);
      expect(Math.max(...y.map(Math.abs))).toBeLessThan(1e-9 * frameAlone);
    }
  });

  it.each(shapes)('%s, about z, with the threads following', (_, shape) => {
    const { mesh } = second(shape, pull);
    const preparation = prepareStretched(mesh.structure, mesh.border, timoshenko);
    if (!preparation.stable) throw new Error('unstable');
    const free: Structure = { ...mesh.structure, supports: [{ node: 0, fix: { uz: 0 } }] };
    const solution = solvePrepared(preparation.stretched.prepared, frameLoads(shape, mesh, pull, [], false));
    const { equations, geometric } = looseSecondOrder(free, mesh, solution);
    const x = new Float64Array(equations.count);
    mesh.structure.nodes.forEach(({ x: px, y: py }, n) => {
      x[equations.of[6 * n]!] = -py;
      x[equations.of[6 * n + 1]!] = px;
      x[equations.of[6 * n + 5]!] = 1;
    });
    const y = new Float64Array(equations.count);
    addProduct(geometric, x, y);
    const energy = (): number => x.reduce((sum, value, i) => sum + value * y[i]!, 0);
    const frameAlone = energy();
    const { width, height } = mesh.border;
    expect(frameAlone).toBeCloseTo(-(pull.x + pull.y) * width * height, 3);
    addThreadProduct(buildMembrane(mesh.border, pull, equations), 0, x, y);
    expect(Math.max(...y.map(Math.abs))).toBeLessThan(1e-9 * pull.x * width);
    expect(Math.abs(energy())).toBeLessThan(1e-9 * Math.abs(frameAlone));
  });
});

/** Geometric stiffness and membrane of a structure without supports in z, from forces solved with them. */
function looseSecondOrder(free: Structure, mesh: FrameMesh, solution: ReturnType<typeof solvePrepared>) {
  const held = prepare(mesh.structure, timoshenko);
  if (!held.stable) throw new Error('unstable');
  const elements = held.prepared.elements;
  const equations = numberEquations(free, elements.map((e) => e.axes), free.nodes.map((_, n) => n));
  const loose = { ...held.prepared, structure: free, equations };
  return { equations, geometric: geometricStiffness(loose, solution), membrane: buildMembrane(mesh.border, pull, equations) };
}


describe('the pieces of the second order', () => {
  it('a pinned column buckles at π² E I/L², fourth order in the length of its elements', () => {
    const [L, E, Iz, Iy] = [1000, 9000, 21720, 86880];
    const factor = (parts: number): number => {
      const nodes = Array.from({ length: parts + 1 }, (_, n) => ({ id: `${n}`, x: (L * n) / parts, y: 0, z: 0 }));
      const members = Array.from({ length: parts }, (_, n): Member => ({ id: `${n}`, i: n, j: n + 1, E, G: 600, A: 722, Iy, Iz, J: 59604, zref: [0, 0, 1] }));
      const supports = [{ node: 0, fix: { ux: 0, uy: 0, uz: 0, rx: 0 } }, { node: parts, fix: { uy: 0, uz: 0 } }];
      const preparation = prepare({ nodes, members, springs: [], supports }, eulerBernoulli);
      if (!preparation.stable) throw new Error('unstable');
      const { prepared } = preparation;
      const solution = solvePrepared(prepared, { nodes: [{ node: parts, force: [-1, 0, 0], moment: [0, 0, 0] }], members: [] });
      const geometric = geometricStiffness(prepared, solution);
      const found = smallestLoadFactors({
        n: prepared.equations.count,
        solve: (b) => solveFactored(prepared.factors, b),
        addProduct: (x, y) => addProduct(geometric, x, y),
        countBelow: () => 2,
      }, 2);
      expect(found[1]!.factor / found[0]!.factor).toBeGreaterThan(3.9);
      return found[0]!.factor;
    };
    const exact = (Math.PI ** 2 * E * Iz) / L ** 2;
    const [coarse, fine, finer] = [2, 4, 8].map((parts) => factor(parts) / exact - 1) as [number, number, number];
    expect(finer).toBeGreaterThan(0);
    expect(Math.log2(coarse / fine)).toBeGreaterThan(3.7);
    expect(Math.log2(fine / finer)).toBeGreaterThan(3.8);
  });

  it('moments and shears act as their energy says, by direct integration', () => {
    const force = { N: -70, Vy: 13, grown: 21, Mi: 900, Mj: -2300 };
    const L = 180;
    const k = new Float64Array(144);
    memberGeometricStiffness(force, L, k);
    const end = [0.1, 0.3, -0.2, 0.02, -0.01, 0.03, 0.2, -0.4, 0.5, -0.03, 0.015, 0.01];
    const cubic = (f0: number, s0: number, f1: number, s1: number) => (x: number): readonly number[] => {
      const t = x / L;
      return [
        (f0 * (6 * t * t - 6 * t)) / L + s0 * (1 - 4 * t + 3 * t * t) + (f1 * (6 * t - 6 * t * t)) / L + s1 * (3 * t * t - 2 * t),
        (f0 * (12 * t - 6)) / L ** 2 + (s0 * (6 * t - 4)) / L + (f1 * (6 - 12 * t)) / L ** 2 + (s1 * (6 * t - 2)) / L,
      ];
    };
    const v = cubic(end[1]!, end[5]!, end[7]!, end[11]!);
    const w = cubic(end[2]!, -end[4]!, end[8]!, -end[10]!);
    const twistRate = (end[9]! - end[3]!) / L;
    const stretch = (end[6]! - end[0]!) / L;
    const density = (x: number): number => {
      const theta = end[3]! + twistRate * x;
      const M = force.Mi + ((force.Mj - force.Mi) * x) / L + (force.grown * x * (L - x)) / (2 * L);
      const V = force.Vy + force.grown * (x / L - 0.5);
      const [dv] = v(x) as [number];
      const [dw, ddw] = w(x) as [number, number];
      return (force.N / 2) * (dv * dv + dw * dw) - force.Vy * stretch * dv + (V / 2) * theta * dw + (M / 2) * (theta * ddw - dw * twistRate);
    };
    const steps = 2000;
    let energy = 0;
    for (let s = 0; s < steps; s++) energy += (density(((s + 0.5) * L) / steps) * L) / steps;
    let quadratic = 0;
    for (let i = 0; i < 12; i++) for (let j = 0; j < 12; j++) quadratic += 0.5 * end[i]! * k[12 * i + j]! * end[j]!;
    expect(quadratic / energy).toBeCloseTo(1, 5);
  });

  it('a quadrilateral of cloth resists slopes, not shifts', () => {
    const k = quadStiffness(30, 70, { x: 0.2, y: 0.5 });
    const energy = (z: number[]): number => z.reduce((sum, zi, i) => sum + z.reduce((s, zj, j) => s + 0.5 * zi * k[4 * i + j]! * zj, 0), 0);
    expect(energy([3, 3, 3, 3])).toBeCloseTo(0, 12);
    expect(energy([0, 3, 3, 0])).toBeCloseTo(0.5 * 0.2 * (3 / 30) ** 2 * 30 * 70, 12);
    expect(energy([0, 0, 7, 7])).toBeCloseTo(0.5 * 0.5 * (7 / 70) ** 2 * 30 * 70, 12);
    expect(energy([0, 0, 1, 0])).toBeCloseTo(((0.2 * 70) / 30 / 3 + (0.5 * 30) / 70 / 3) / 2, 12);
  });
});

describe('the twist between the nodes of a member', () => {
  const force = { N: 0, Vy: 13, grown: 21, Mi: 900, Mj: 900 - 13 * 180 };
  const L = 180;

  it('is pushed by its moments as their energy says, by direct integration', () => {
    const push = new Float64Array(12);
    midTwistPush(force, L, push);
    const end = [0, 0, -0.2, 0, -0.01, 0, 0, 0, 0.5, 0, 0.015, 0];
    const slope = (t: number): number => ((end[8]! - end[2]!) * (6 * t - 6 * t * t)) / L - end[4]! * (1 - 4 * t + 3 * t * t) - end[10]! * (3 * t * t - 2 * t);
    const steps = 4000;
    let energy = 0;
    for (let n = 0; n < steps; n++) {
      const t = (n + 0.5) / steps;
      const M = force.Mi + (force.Mj - force.Mi) * t + (force.grown * L * t * (1 - t)) / 2;
      const V = force.Vy + force.grown * (t - 0.5);
      const bend = (slope(t + 1e-6) - slope(t - 1e-6)) / (2e-6 * L);
      energy += ((V / 2) * 4 * t * (1 - t) * slope(t) + (M / 2) * (4 * t * (1 - t) * bend - ((4 * (1 - 2 * t)) / L) * slope(t))) * (L / steps);
    }
    expect(push.reduce((sum, c, i) => sum + c * end[i]!, 0) / energy).toBeCloseTo(1, 5);
  });

  it('is not pushed when the member turns rigidly in balance with its forces', () => {
    const push = new Float64Array(12);
    midTwistPush(force, L, push);
    const tilted = [0, 0, 0, 0, -1, 0, 0, 0, L, 0, -1, 0];
    expect(Math.abs(push.reduce((sum, c, i) => sum + c * tilted[i]!, 0))).toBeLessThan(1e-10 * Math.max(...push.map(Math.abs)) * L);
  });

  it('resists with the torsional energy of its parabola', () => {
    const member = { G: 560, J: 59604 } as Member;
    const steps = 1000;
    let energy = 0;
    for (let n = 0; n < steps; n++) energy += 0.5 * 560 * 59604 * ((4 * (1 - (2 * (n + 0.5)) / steps)) / L) ** 2 * (L / steps);
    expect(midTwistStiffness(member, L) / (2 * energy)).toBeCloseTo(1, 5);
  });
});

describe('the smallest load factors', () => {
  const thin: FrameWords = { ...uneven, w: 9, d: 75, crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 60 }] };
  it.each<[string, FrameWords, boolean]>([
    ['rigid joints', uneven, false],
    ['soft joints and braces', { ...uneven, give: 6, crossbarGive: 20, brace: { leg: 200, w: 38, d: 19 } }, false],
    ['bars so thin that they bow in the plane first', thin, true],
  ])('are those of a dense eigenvalue solver, and counting below them agrees: %s', (_, words, plane) => {
    const { frame, order } = second(frameOf(words), pull, 5);
    const { prepared, inPlane, outOfPlane } = frame;
    const oracles = [
      { problem: outOfPlaneProblem(frame, order), half: outOfPlane, twists: order.midTwists.k },
      { problem: inPlaneProblem(frame, order), half: inPlane, twists: new Float64Array(0) },
    ].map(({ problem, half, twists }) => {
      const { n } = problem;
      const B = Matrix.zeros(n, n);
      for (let j = 0; j < n; j++) {
        const [unit, y] = [new Float64Array(n), new Float64Array(n)];
        unit[j] = 1;
        problem.addProduct(unit, y);
        y.forEach((value, i) => B.set(i, j, value));
      }
      expect(B.clone().sub(B.transpose()).norm()).toBeLessThan(1e-9 * B.norm());
      const stiffness = Matrix.zeros(n, n);
      stiffness.setSubMatrix(dense(partOf(half.own, prepared.stiffness)), 0, 0);
      twists.forEach((k, e) => stiffness.set(half.to - half.from + e, half.to - half.from + e, k));
      const K = new EigenvalueDecomposition(stiffness, { assumeSymmetric: true });
      const V = K.eigenvectorMatrix;
      const root = Matrix.diag(K.realEigenvalues.map((v) => 1 / Math.sqrt(v)));
      const standard = root.mmul(V.transpose()).mmul(B).mmul(V).mmul(root).mul(-1);
      const values = new EigenvalueDecomposition(standard.add(standard.transpose()).mul(0.5), { assumeSymmetric: true }).realEigenvalues;
      const oracle = values.filter((v) => v > 0).sort((p, q) => q - p).map((v) => 1 / v);
      for (const [r, factor] of oracle.slice(0, 4).entries()) {
        expect(problem.countBelow(factor * (1 - 1e-5))).toBe(r);
        expect(problem.countBelow(factor * (1 + 1e-5))).toBe(r + 1);
      }
      return oracle;
    });
    const smallest = oracles.flat().sort((p, q) => p - q).slice(0, 3);
    expect(smallest.some((factor) => oracles[1]!.includes(factor))).toBe(plane);
    const found = smallestFactors(frame, order, 3);
    for (let r = 0; r < 3; r++) expect(found[r]!.factor / smallest[r]!).toBeCloseTo(1, 6);
    const again = smallestFactors(frame, order, 3, found[0]!.mode);
    for (let r = 0; r < 3; r++) expect(again[r]!.factor / smallest[r]!).toBeCloseTo(1, 6);
  });

  it('are nothing that the halves of a frame push across: its stiffness keeps to either', () => {
    const { frame, order } = second(frameOf({ ...uneven, give: 6, brace: { leg: 200, w: 38, d: 19 } }), pull);
    const { prepared, inPlane, outOfPlane } = frame;
    const { of } = prepared.equations;
    expect([inPlane.from, inPlane.to, outOfPlane.to]).toEqual([0, outOfPlane.from, prepared.equations.count]);
    for (let m = 0; m < of.length; m++) if (of[m]! >= 0) expect([0, 1, 5].includes(m % 6)).toBe(of[m]! < inPlane.to);
    for (const matrix of [prepared.stiffness, order.geometric])
      for (let i = outOfPlane.from; i < outOfPlane.to; i++) expect(matrix.first[i]).toBeGreaterThanOrEqual(outOfPlane.from);
  });

  const diagonal = (values: readonly number[]) => ({
    n: values.length,
    solve: () => undefined,
    addProduct: (x: Float64Array, y: Float64Array) => values.forEach((v, i) => (y[i]! -= v * x[i]!)),
    countBelow: (factor: number) => values.filter((v) => v > 0 && 1 / v < factor).length,
  });

  it('finds equal factors as often as they occur', () => {
    const values = Array.from({ length: 80 }, (_, i) => (i % 7 === 0 ? -5 - i : 1 / (3 + i)));
    values[11] = 0.8;
    values[40] = 0.8;
    const found = smallestLoadFactors(diagonal(values), 2);
    expect(found.map((f) => f.factor)).toEqual([expect.closeTo(1.25, 8), expect.closeTo(1.25, 8)]);
    values[63] = 0.8;
    expect(smallestLoadFactors(diagonal(values), 3)).toHaveLength(3);
  });

  it('finds none where there is none, and one where there is one', () => {
    expect(smallestLoadFactors(diagonal([-1, -2, -3, 0, 0]), 2)).toEqual([]);
    expect(smallestLoadFactors(diagonal([-1, 0.5, -3, 0]), 2).map((f) => f.factor)).toEqual([expect.closeTo(2, 10)]);
    expect(smallestLoadFactors(diagonal([0, 0, 0]), 2)).toEqual([]);
  });

  it('a square frame with a cross has two equal ways for its crossbars to bow', () => {
    const cross: FrameWords['crossbars'] = [{ runs: 'upright', at: 0.5, w: 30, d: 12 }, { runs: 'level', at: 0.5, w: 30, d: 12 }];
    const found = findStability(frameOf({ width: 1000, height: 1000, w: 45, d: 45, crossbars: cross }), { x: 0.2, y: 0.2 });
    expect(found.mode).toBe('sideways');
    expect(found.mode_words).toMatch(/^crossbar [12] bows out of the plane$/);
    expect(found.second_factor!).toBeGreaterThanOrEqual(found.load_factor!);
  });

  it.each<[string, number, (i: number, j: number) => number]>([
    ['full', 12, (i, j) => Math.sin(1 + i * j + i + j)],
    ['three diagonals', 9, (i, j) => (i === j ? 1 / (i + 1) : i === j + 1 ? 0.1 / (i + 1) : 0)],
    ['equal values, and none off the diagonal', 5, (i, j) => (i === j ? 2 : 0)],
    ['all but one value nought', 7, () => 1],
    ['two blocks', 8, (i, j) => (i < 3 === j < 3 ? Math.cos(i * j + 2 * i) : 0)],
  ])('small symmetric matrices agree with a library: %s', (_name, n, entry) => {
    const rows = Array.from({ length: n }, (_, i) => Float64Array.from({ length: n }, (_, j) => entry(i, j)));
    const { values, vectors } = symmetricEigen(rows, n);
    const full = new Matrix(Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => rows[Math.max(i, j)]![Math.min(i, j)]!)));
    const oracle = new EigenvalueDecomposition(full, { assumeSymmetric: true }).realEigenvalues.sort((p, q) => q - p);
    values.forEach((v, r) => expect(v).toBeCloseTo(oracle[r]!, 10));
    const product = full.mmul(Matrix.columnVector(Array.from(vectors[3]!)));
    vectors[3]!.forEach((x, i) => expect(product.get(i, 0)).toBeCloseTo(values[3]! * x, 10));
  });
});
