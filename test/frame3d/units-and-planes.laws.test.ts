/** What may not matter: the units, the plane a frame lies in, which node comes first. */
import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { directions, prepare, prepareStretched, secondOrder, smallestFactors, solveFrame, solvePrepared, timoshenko } from '../../src/frame3d/index.js';
import type { EndRelease, Loads, Member, MembraneBorder, Structure, Vector } from '../../src/frame3d/index.js';
import { memberAxes, toGlobal, vectorToGlobal, vectorToLocal } from '../../src/frame3d/element-axes.js';
import { addProduct, emptyProfile, factorise, nullVector } from '../../src/frame3d/profile-matrix.js';
import { inPlaneProblem, outOfPlaneProblem } from '../../src/frame3d/smallest-factors.js';
import { symmetricEigen } from '../../src/frame3d/small-eigen.js';
import { meshFrame } from '../../src/solve/frame-mesh.js';
import { frameLoads } from '../../src/solve/mesh-statics.js';
import { evenGive } from '../../src/base/joint-give.js';
import { everyCorner, frameOf } from './frame-shapes.js';

const shape = frameOf({
  width: 1140, height: 720, w: 38, d: 24, give: { plane: 9, out: 4, twist: 2 }, crossbarGive: 6, braceGive: { plane: 3, out: 8, twist: 5 }, plate: 3e5,
  crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 22 }, { runs: 'level', at: 0.6, w: 20, d: 26 }], brace: { leg: 160, w: 30, d: 19 },
});
const pull = { x: 0.23, y: 0.31 };
const mesh = meshFrame(shape, [], { bar: 3, crossbar: 2, brace: 2 }, timoshenko);
const loads = frameLoads(shape, mesh, pull, [], true);

/** The same structure told in units of length `m` and force `f`. */
function inUnits({ nodes, members, springs, supports }: Structure, m: number, f: number): Structure {
  return {
    nodes: nodes.map(({ id, x, y, z }) => ({ id, x: x / m, y: y / m, z: z / m })),
    members: members.map((e) => ({ ...e, E: (e.E * m * m) / f, G: (e.G * m * m) / f, A: e.A / m ** 2, Iy: e.Iy / m ** 4, Iz: e.Iz / m ** 4, J: e.J / m ** 4 })),
    springs: springs.map((s) => ({ ...s, k: s.k.map((k, d) => (d < 3 ? (k * m) / f : k / (f * m))) as unknown as typeof s.k, ...(s.cross === undefined ? {} : { cross: s.cross / (f * m) }) })),
    supports: supports.map(({ node, fix }) => ({ node, fix: Object.fromEntries(Object.entries(fix).map(([d, value]) => [d, d.startsWith('u') ? value / m : value])) })),
  };
}
const loadsIn = (of: Loads, m: number, f: number): Loads => ({
  nodes: of.nodes.map((l) => ({ ...l, force: l.force.map((v) => v / f) as unknown as Vector, moment: l.moment.map((v) => v / (f * m)) as unknown as Vector })),
  members: of.members.map((l) => ({ ...l, force: l.force.map((v) => (v * m) / f) as unknown as Vector, moment: l.moment.map((v) => v / f) as unknown as Vector })),
});

function told(structure: Structure, on: Loads, border: MembraneBorder, tension: { x: number; y: number }) {
  const answer = prepareStretched(structure, border, timoshenko);
  if (!answer.stable) throw new Error('unstable');
  const { stretched } = answer;
  const solution = solvePrepared(stretched.prepared, on);
  const second = secondOrder(stretched, solution, tension);
  return { u: solution.u, reactions: solution.reactions, factors: smallestFactors(stretched, second, 2).map(({ factor }) => factor), count: (share: number) => outOfPlaneProblem(stretched, second).countBelow(share) + inPlaneProblem(stretched, second).countBelow(share) };
}

describe('any consistent units', () => {
  const own = told(mesh.structure, loads, mesh.border, pull);
  it.each([['metres and meganewtons', 1000, 1e6], ['kilometres and giganewtons, where every spring is a small number', 1e6, 1e9], ['hundredths of a millimetre and millinewtons', 0.01, 1e-3]])('%s', (_, m, f) => {
    const { width, height } = mesh.border;
    const other = told(inUnits(mesh.structure, m, f), loadsIn(loads, m, f), { ...mesh.border, width: width / m, height: height / m }, { x: (pull.x * m) / f, y: (pull.y * m) / f });
    const size = (list: Float64Array, turns: boolean): number => Math.max(...list.filter((_v, i) => i % 6 >= 3 === turns).map(Math.abs));
    own.u.forEach((u, i) => expect(Math.abs(other.u[i]! * (i % 6 < 3 ? m : 1) - u)).toBeLessThan(1e-7 * size(own.u, i % 6 >= 3)));
    own.reactions.forEach((r, i) => expect(Math.abs(other.reactions[i]! * f * (i % 6 < 3 ? 1 : m) - r)).toBeLessThan(1e-6 * (1 + size(own.reactions, i % 6 >= 3))));
    own.factors.forEach((factor, i) => expect(other.factors[i]! / factor).toBeCloseTo(1, 7));
    expect([0.999, 1.001].map((share) => other.count(share * other.factors[0]!))).toEqual([0, 1]);
  });
});

describe('a plane frame in any of the three planes', () => {
  it('moves as it did, and without springs its matrix is no larger', () => {
    const plain = frameOf({ width: 1140, height: 720, w: 38, d: 24, give: { plane: 9, out: 4, twist: 2 }, crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 22 }] });
    const { structure } = meshFrame(plain, [], { bar: 2, crossbar: 2, brace: 2 }, timoshenko);
    const rigid = meshFrame({ ...plain, corner_give: everyCorner(evenGive(0)) }, [], { bar: 4, crossbar: 4, brace: 2 }, timoshenko).structure;
    const laid = ([p, q, r]: readonly [number, number, number], of: Structure): Structure => {
      const way = (d: number): number => (d < 3 ? [p, q, r][d]! : 3 + [p, q, r][d - 3]!);
      const turned = (v: Vector): Vector => { const w = [0, 0, 0]; [p, q, r].forEach((axis, own) => (w[axis] = v[own]!)); return w as unknown as Vector; };
      return {
        nodes: of.nodes.map(({ id, x, y, z }) => { const [a, b, c] = turned([x, y, z]); return { id, x: a, y: b, z: c }; }),
        members: of.members.map((e) => ({ ...e, zref: turned(e.zref) })),
        springs: of.springs.map((s) => { const k = [0, 0, 0, 0, 0, 0]; s.k.forEach((v, d) => (k[way(d)] = v)); return { ...s, k: k as unknown as typeof s.k }; }),
        supports: of.supports.map(({ node, fix }) => ({ node, fix: Object.fromEntries(Object.entries(fix).map(([d, v]) => [directions[way(directions.indexOf(d as never))]!, v])) })),
      };
    };
    const solved = ([p, q, r]: readonly [number, number, number]): Float64Array => {
      const way = (d: number): number => (d < 3 ? [p, q, r][d]! : 3 + [p, q, r][d - 3]!);
      const turned = (v: Vector): Vector => { const w = [0, 0, 0]; [p, q, r].forEach((axis, own) => (w[axis] = v[own]!)); return w as unknown as Vector; };
      const answer = solveFrame(laid([p, q, r], structure), { nodes: [{ node: 3, force: turned([3, -2, 4]), moment: turned([50, 20, -30]) }], members: [] });
      if (!answer.stable) throw new Error('unstable');
      return Float64Array.from(answer.solution.u, (_, m) => answer.solution.u[6 * Math.floor(m / 6) + way(m % 6)]!);
    };
    const own = solved([0, 1, 2]);
    const stored = (axes: readonly [number, number, number]): number => {
      const answer = prepare(laid(axes, rigid), timoshenko);
      return answer.stable ? answer.prepared.stiffness.values.length : NaN;
    };
    expect([stored([1, 2, 0]), stored([2, 0, 1])]).toEqual([stored([0, 1, 2]), stored([0, 1, 2])]);
    for (const axes of [[1, 2, 0], [2, 0, 1]] as const) solved(axes).forEach((u, m) => expect(Math.abs(u - own[m]!)).toBeLessThan(1e-9));
  });
});

describe('a member’s own matrix in global axes', () => {
  it.each<[string, readonly [number, number, number], Vector]>([['askew in space', [3, -2, 5], [0.3, 1, -0.2]], ['in the plane of the cloth', [3, -4, 0], [0, 0, 1]], ['in it, seen from behind', [-2, 7, 0], [0, 0, -1]], ['along y', [0, 4, 0], [0, 0, 1]]])('is Tᵀ k T, and its vectors turn with it: %s', (_, [x, y, z], zref) => {
    const { R } = memberAxes([{ id: 'a', x: 0, y: 0, z: 0 }, { id: 'b', x, y, z }], { id: 'M', i: 0, j: 1, E: 1, G: 1, A: 1, Iy: 1, Iz: 1, J: 1, zref });
    const T = Matrix.zeros(12, 12);
    for (let b = 0; b < 12; b += 3) for (let r = 0; r < 3; r++) for (let c = 0; c < 3; c++) T.set(b + r, b + c, R[3 * r + c]!);
    const k = Matrix.zeros(12, 12);
    for (let r = 0; r < 12; r++) for (let c = 0; c <= r; c++) for (const [i, j] of [[r, c], [c, r]] as const) k.set(i, j, Math.sin(5 * r + 3 * c + 1));
    const own = Float64Array.from(k.to1DArray());
    const global = new Float64Array(144);
    toGlobal(own, R, global);
    T.transpose().mmul(k).mmul(T).to1DArray().forEach((value, i) => expect(global[i]).toBeCloseTo(value, 12));
    const v = Float64Array.from({ length: 12 }, (_v, i) => Math.cos(2 * i));
    const [local, back] = [new Float64Array(12), new Float64Array(12)];
    vectorToLocal(v, R, local);
    T.mmul(Matrix.columnVector(Array.from(v))).to1DArray().forEach((value, i) => expect(local[i]).toBeCloseTo(value, 12));
    vectorToGlobal(local, R, back);
    back.forEach((value, i) => expect(value).toBeCloseTo(v[i]!, 12));
  });
});

it('a small symmetric matrix has the same vectors however small or large its numbers are', () => {
  const rows = [[2, 0, 0, 0], [-1, 3, 0, 0], [0.5, 0.7, -1, 0], [0.2, -0.4, 1.1, 0.3]];
  const found = (by: number) => symmetricEigen(rows.map((row) => Float64Array.from(row, (v) => v * by)), 4);
  const own = found(1);
  for (const by of [1e-17, 1e17]) {
    const { values, vectors } = found(by);
    values.forEach((value, r) => {
      expect(value / by).toBeCloseTo(own.values[r]!, 9);
      const sign = Math.sign(vectors[r]!.reduce((sum, v, i) => sum + v * own.vectors[r]![i]!, 0));
      vectors[r]!.forEach((v, i) => expect(sign * v).toBeCloseTo(own.vectors[r]![i]!, 9));
    });
  }
});

describe('a matrix in a narrow band', () => {
  it('stores each row from its first column to the diagonal and nothing more', () => {
    const { values, start } = emptyProfile(Int32Array.of(0, 0, 1, 3, 1));
    expect(values).toHaveLength(1 + 2 + 2 + 1 + 4);
    expect([...start].map((at, i) => at + i)).toEqual([0, 2, 4, 5, 9]);
  });
  it('tells the movement that costs nothing behind a vanished pivot: K x = 0, x of that row 1', () => {
    // Bars of unlike stiffness in a row, turned so that the rigid movement is no vector of ones: K = Σ k (a_i, −a_j)(a_i, −a_j)ᵀ.
    const a = [1, 2, -0.5, 3, 0.7];
    const n = a.length;
    const K = emptyProfile(Int32Array.from({ length: n }, (_, i) => Math.max(0, i - 2)));
    const add = (i: number, j: number, k: number): void => {
      const g = [1 / a[i]!, -1 / a[j]!];
      for (const [p, r] of [i, j].entries()) for (const [q, c] of [i, j].entries()) if (c <= r) K.values[K.start[r]! + c]! += k * g[p]! * g[q]!;
    };
    [[0, 1, 3], [1, 2, 5], [2, 3, 2], [3, 4, 7], [1, 3, 4]].forEach(([i, j, k]) => add(i!, j!, k!));
    const factors = factorise(K);
    expect(factors.vanished).toEqual([n - 1]);
    const x = nullVector(factors, n - 1);
    const y = new Float64Array(n);
    addProduct(K, x, y);
    y.forEach((value) => expect(Math.abs(value)).toBeLessThan(1e-9));
    x.forEach((value, i) => expect(value / (a[i]! / a[n - 1]!)).toBeCloseTo(1, 9));
  });
});

describe('how a structure that nothing holds is free to move', () => {
  const bar = (i: number, j: number, more: Partial<Member> = {}): Member => ({ id: `M${i}${j}`, i, j, E: 9000, G: 600, A: 722, Iy: 86880, Iz: 21720, J: 59604, zref: [0, 0, 1], ...more });
  const words = (structure: Structure): readonly string[] => {
    const answer = solveFrame(structure, { nodes: [], members: [] });
    return answer.stable ? [] : answer.freedoms.map((freedom) => freedom.words);
  };
  const at = (id: string, x: number, y: number, z = 0) => ({ id, x, y, z });
  const hinge = (ways: readonly EndRelease[]) => ({ releases: { i: ways } });
  it.each<[string, EndRelease, string]>([['in the plane', 'rz', 'move along y'], ['out of it', 'ry', 'move along z'], ['about itself', 'rx', 'turn about x']])('a line hinged at a wall swings %s, told by its far end', (_, way, expected) => {
    const line = { nodes: [at('wall', 0, 0), at('near', 300, 0), at('far', 900, 0)], members: [bar(0, 1, hinge([way])), bar(1, 2)], springs: [], supports: [{ node: 0, fix: { ux: 0, uy: 0, uz: 0, rx: 0, ry: 0, rz: 0 } }] };
    const found = words(line);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(new RegExp(`^node "${way === 'rx' ? '(near|far)' : 'far'}" is free to ${expected}$`, 'u'));
  });
  it('turned so that the last node lies nearest the hinge it is still the far one that is told', () => {
    const nodes = [at('far', 900, 0), at('wall', 0, 0), at('near', 300, 0)];
    expect(words({ nodes, members: [bar(1, 2, hinge(['rz'])), bar(2, 0)], springs: [], supports: [{ node: 1, fix: { ux: 0, uy: 0, uz: 0, rx: 0, ry: 0, rz: 0 } }] })).toEqual(['node "far" is free to move along y']);
  });
  it('two bars that hang in two hinges of their own are told apart', () => {
    const nodes = [at('A', 0, 0), at('B', 700, 0), at('C', 0, 500), at('D', 0, 900)];
    const fast = { ux: 0, uy: 0, uz: 0, rx: 0, ry: 0, rz: 0 };
    expect(new Set(words({ nodes, members: [bar(0, 1, hinge(['rz'])), bar(2, 3, hinge(['rz']))], springs: [], supports: [{ node: 0, fix: fast }, { node: 2, fix: fast }] }))).toEqual(new Set(['node "B" is free to move along y', 'node "D" is free to move along x']));
  });
});
