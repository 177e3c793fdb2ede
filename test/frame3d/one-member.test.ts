/** One member by itself, its movements and forces given outright: what is made of its matrices is worked out again with whole matrices. */
import { springTerms } from '../../src/frame3d/assemble.js';
import { Matrix, inverse } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { eulerBernoulli, largeMovement, timoshenko } from '../../src/frame3d/index.js';
import type { FrameSolution, Member, Spring, Structure } from '../../src/frame3d/index.js';
import type { Prepared } from '../../src/frame3d/assemble.js';
import { addUniformLoad, condenseReleases, memberStiffness, releasedRows, shearParameters } from '../../src/frame3d/element-stiffness.js';
import { geometricStiffness, memberGeometricStiffness, resultantsOf } from '../../src/frame3d/geometric-stiffness.js';
import { midTwistPush, midTwists, midTwistStiffness } from '../../src/frame3d/mid-twist.js';
import { emptyProfile, factorise } from '../../src/frame3d/profile-matrix.js';
import type { ProfileMatrix } from '../../src/frame3d/profile-matrix.js';

const L = 180;
const member: Member = { id: 'M', i: 0, j: 1, E: 9000, G: 560, A: 722, Iy: 86880, Iz: 21720, J: 59604, zref: [0, 0, 1] };
const [cos, sin] = [Math.cos(0.6), Math.sin(0.6)];
const R = Float64Array.of(cos, sin, 0, -sin, cos, 0, 0, 0, 1);
/** Global components from local ones, both of twelve. */
const turn = Matrix.zeros(12, 12);
for (let b = 0; b < 12; b += 3) for (let r = 0; r < 3; r++) for (let c = 0; c < 3; c++) turn.set(b + c, b + r, R[3 * r + c]!);
const matrix = (list: ArrayLike<number>): Matrix => new Matrix(Array.from({ length: 12 }, (_, i) => Array.from({ length: 12 }, (__, j) => list[12 * i + j]!)));
const column = (list: ArrayLike<number>): Matrix => Matrix.columnVector(Array.from(list));
const close = (found: ArrayLike<number>, expected: readonly number[]): void => {
  expect(found).toHaveLength(expected.length);
  const size = Math.max(...expected.map(Math.abs), 1e-300);
  expected.forEach((value, i) => expect(Math.abs(found[i]! - value) / size, `entry ${i}`).toBeLessThan(1e-11));
};
const someNumbers = (seed: number): Float64Array => Float64Array.from({ length: 12 }, (_, i) => Math.sin(7 * i + seed) + 0.3);
/** A matrix without any symmetry or nought, to carry movements of the nodes to those of the ends. */
const carried = Float64Array.from({ length: 144 }, (_, i) => Math.cos(3 * i + 1) / 3 + (i % 13 === 0 ? 1 : 0));
const full = (m: ProfileMatrix): Matrix => {
  const out = Matrix.zeros(m.n, m.n);
  for (let i = 0; i < m.n; i++) for (let j = m.first[i]!; j <= i; j++) for (const [r, c] of [[i, j], [j, i]] as const) out.set(r, c, m.values[m.start[i]! + j]!);
  return out;
};

/** A member between two nodes that move freely, or some of whose movements are held, with springs and further nodes. */
function alone({ G = null, held = [], springs = [], more = 0, k = memberStiffness(member, L, { y: 0.2, z: 0.3 }), diagonal = (i: number) => 2 + i }: { G?: Float64Array | null; held?: readonly number[]; springs?: readonly Spring[]; more?: number; k?: Float64Array; diagonal?: (i: number) => number }): Prepared {
  let count = 0;
  const of = Int32Array.from({ length: 6 * (2 + more) }, (_, m) => (held.includes(m) ? -1 : count++));
  const stiffness = emptyProfile(new Int32Array(count));
  for (let i = 0; i < count; i++) stiffness.values[stiffness.start[i]! + i] = diagonal(i);
  const nodes = Array.from({ length: 2 + more }, (_, n) => ({ id: `${n}`, x: n, y: 0, z: 0 }));
  const structure: Structure = { nodes, members: [member], springs, supports: [] };
  const element = { axes: { length: L, R }, phi: { y: 0, z: 0 }, k, G };
  return { structure, elements: [element], equations: { count, of, prescribed: new Float64Array(of.length), shared: of, first: new Int32Array(count), groups: [], movements: [Int32Array.from({ length: 12 }, (_, m) => m)], key: [] }, springs: springTerms(structure), stiffness, factors: factorise(stiffness) };
}

describe('a member that lets go of some turns at its ends', () => {
  it.each<[string, NonNullable<Member['releases']>]>([
    ['one', { i: ['ry'] }], ['one at the far end', { j: ['rz'] }], ['both ends, every other way', { i: ['rx', 'rz'], j: ['ry'] }], ['told backwards', { i: ['rz', 'ry'], j: ['rz', 'ry'] }],
  ])('has the stiffness of what is left when they settle, and carries the rest along: %s', (_, releases) => {
    const k = memberStiffness(member, L, shearParameters(member, L, timoshenko));
    const before = matrix(k);
    const rows = releasedRows({ ...member, releases });
    expect(rows).toEqual([...(releases.i ?? []).map((r) => 3 + 'xyz'.indexOf(r.charAt(1))), ...(releases.j ?? []).map((r) => 9 + 'xyz'.indexOf(r.charAt(1)))]);
    const kept = Array.from({ length: 12 }, (_v, r) => r).filter((r) => !rows.includes(r));
    const G = condenseReleases(k, rows);
    const inner = inverse(before.selection([...rows], [...rows])).mmul(before.selection([...rows], kept)).mul(-1);
    const condensed = before.selection(kept, kept).add(before.selection(kept, [...rows]).mmul(inner));
    const [expectedK, expectedG] = [Matrix.zeros(12, 12), Matrix.zeros(12, 12)];
    kept.forEach((r, a) => kept.forEach((c, b) => expectedK.set(r, c, condensed.get(a, b))));
    kept.forEach((c, b) => { expectedG.set(c, c, 1); rows.forEach((r, a) => expectedG.set(r, c, inner.get(a, b))); });
    close(k, expectedK.to1DArray());
    close(G, expectedG.to1DArray());
  });

  it('a turn that nothing resists stays at rest', () => {
    const k = memberStiffness({ ...member, J: 0 }, L, { y: 0, z: 0 });
    const plain = (list: Float64Array): number[] => Array.from(list, (v) => v + 0);
    const before = plain(k);
    const G = condenseReleases(k, [3]);
    expect(plain(k)).toEqual(before);
    expect(plain(G)).toEqual(Array.from({ length: 144 }, (_, i) => (i % 13 === 0 && i !== 39 ? 1 : 0)));
  });
});

describe('a uniform load and moment on a member, fast at both ends', () => {
  it.each([eulerBernoulli, timoshenko])('pushes its ends as a cut at the middle says, by the same stiffness halved, shear %j', (theory) => {
    // Each half pushes the middle node with its own end loads; settled there, what arrives at the ends is what the whole says.
    const load = { member: 0, force: [0.7, -0.4, 0.9], moment: [11, -23, 31] } as const;
    const pushes = (length: number): Float64Array => {
      const f = new Float64Array(12);
      addUniformLoad(load, R, length, shearParameters(member, length, theory), f);
      return f;
    };
    const [whole, half] = [pushes(L), pushes(L / 2)];
    const k = matrix(memberStiffness(member, L / 2, shearParameters(member, L / 2, theory)));
    const [near, far] = [[0, 1, 2, 3, 4, 5], [6, 7, 8, 9, 10, 11]];
    const middle = inverse(k.selection(far, far).add(k.selection(near, near))).mmul(column(near.map((r) => half[r]! + half[r + 6]!)));
    close(whole, [
      ...near.map((r) => half[r]! - k.selection([r], far).mmul(middle).get(0, 0)),
      ...far.map((r) => half[r]! - k.selection([r], near).mmul(middle).get(0, 0)),
    ]);
  });
});

const forces: FrameSolution = { u: new Float64Array(12), reactions: new Float64Array(12), endForces: [Float64Array.from({ length: 12 }, (_, i) => 40 * Math.sin(5 * i + 2))] };

describe('what the forces in a member add', () => {
  const own = new Float64Array(144);
  memberGeometricStiffness(resultantsOf(forces.endForces[0]!), L, own);

  it.each([[null], [carried]])('to the stiffness between its nodes is carried by what its ends are given, and turned: Tᵀ Gᵀ k G T', (G) => {
    const ends = G === null ? Matrix.eye(12) : matrix(G);
    const expected = turn.mmul(ends.transpose()).mmul(matrix(own)).mmul(ends).mmul(turn.transpose());
    close(full(geometricStiffness(alone({ G }), forces)).to1DArray(), expected.to1DArray());
    const [kept, held] = [[0, 2, 3, 4, 6, 8, 9, 10, 11], [1, 5, 7]];
    close(full(geometricStiffness(alone({ G, held }), forces)).to1DArray(), expected.selection(kept, kept).to1DArray());
  });

  it.each([[null], [carried]])('to the push on its twist between them as well; what is held is left out', (G) => {
    const local = new Float64Array(12);
    midTwistPush(resultantsOf(forces.endForces[0]!), L, local);
    const expected = turn.mmul((G === null ? Matrix.eye(12) : matrix(G)).transpose()).mmul(column(local)).to1DArray();
    for (const held of [[], [2, 5, 9]]) {
      const { at, unknowns, pushes, k } = midTwists(alone({ G, held }), forces);
      expect([[...at], [...k]]).toEqual([[0, at[1]], [(16 * 560 * 59604) / (3 * L)]]);
      const free = expected.flatMap((push, m) => (held.includes(m) ? [] : [push]));
      const spread = free.map(() => 0);
      for (let p = 0; p < at[1]!; p++) spread[unknowns[p]!]! += pushes[p]!;
      close(spread, free);
      expect(at[1]).toBe(free.filter((push) => push !== 0).length);
    }
  });
});

describe('a spring that carries a moment about z', () => {
  const k = (z: number): Spring['k'] => [0, 0, 0, 1, 1, z];
  const added = (springs: readonly Spring[], u: readonly number[], endForces = new Float64Array(12)): Matrix =>
    full(geometricStiffness(alone({ springs, more: 2, k: new Float64Array(144) }), { u: Float64Array.from(u), reactions: new Float64Array(24), endForces: [endForces] }));
  const entry = (i: number, j: number, M: number): Matrix => {
    const out = Matrix.zeros(24, 24);
    for (const [a, b, value] of [[6 * i + 3, 6 * j + 4, M / 2], [6 * i + 4, 6 * j + 3, -M / 2]] as const) { out.set(a, b, value); out.set(b, a, value); }
    return out;
  };
  const turned = (list: Readonly<Record<number, number>>): number[] => Array.from({ length: 24 }, (_, m) => (m % 6 === 5 ? (list[Math.floor(m / 6)] ?? 0) : 0));

  it('couples the turns of its nodes by half of it, as much as it is turned', () => {
    const found = added([{ i: 2, j: 3, k: k(50) }, { i: 3, j: 1, k: k(7) }], turned({ 1: 0.2, 2: 0.5, 3: -0.1 }));
    close(found.to1DArray(), entry(2, 3, 50 * 0.6).add(entry(3, 1, 7 * -0.3)).to1DArray());
  });

  it('where it is rigid, by what members and other springs bring to the node behind it', () => {
    const ends = new Float64Array(12);
    ends[5] = 300;
    ends[11] = -700;
    // The member brings 300 to node 0 and −700 to node 1 (about z, whichever way it lies); a spring takes 7 (0.2 + 0.1) on from node 1 to 3.
    // Its own second-order stiffness under these end moments lies between the same turns and is taken off again.
    const springs = [{ i: 2, j: 1, k: k(Infinity) }, { i: 1, j: 3, k: k(7) }, { i: 3, j: 0, k: k(Infinity) }];
    const u = turned({ 1: 0.2, 3: -0.1 });
    const member = added([], u, ends);
    close(added(springs, u, ends).sub(member).to1DArray(), entry(2, 1, -700 + 7 * 0.3).add(entry(1, 3, 7 * 0.3)).add(entry(3, 0, 300)).to1DArray());
    expect(added([{ i: 2, j: 3, k: k(0) }, { i: 2, j: 3, k: k(Infinity) }], turned({ 2: 1 })).norm()).toBe(0);
  });
});

describe('a large movement of one member', () => {
  /** In-plane end movements at the second order: whatever the end forces, their energy in the movement `e` of its ends. */
  const endsOf = (e: Matrix, midTwist: number): Matrix => {
    const energyUnder = (f: Readonly<Record<number, number>>): number => {
      const resultants = resultantsOf(Float64Array.from({ length: 12 }, (_, r) => f[r] ?? 0));
      const [kg, push] = [new Float64Array(144), new Float64Array(12)];
      memberGeometricStiffness(resultants, L, kg);
      midTwistPush(resultants, L, push);
      return e.transpose().mmul(matrix(kg)).mmul(e).get(0, 0) / 2 + midTwist * column(push).transpose().mmul(e).get(0, 0);
    };
    const [axial, shear] = [energyUnder({ 0: -1, 6: 1 }), energyUnder({ 1: -1, 7: 1 })];
    const s = Matrix.zeros(12, 1);
    [[0, -axial / 2], [6, axial / 2], [1, -shear / 2], [7, shear / 2], [5, energyUnder({ 5: 1 })], [11, energyUnder({ 11: 1 })]].forEach(([r, value]) => s.set(r!, 0, value!));
    return s;
  };
  const x = someNumbers(4);
  const midTwist = 0.7;
  const k = matrix(Float64Array.from({ length: 144 }, (_, i) => Math.cos(Math.floor(i / 12) * (i % 12) + 0.5) + (i % 13 === 0 ? 5 : 0)));

  it.each<[string, Float64Array | null]>([['its ends its nodes', null], ['its ends carried along', carried]])('leaves the energy of its second-order strains, less what it saves by moving in its plane: %s', (_, G) => {
    const ends = (G === null ? Matrix.eye(12) : matrix(G)).mmul(turn.transpose()).mmul(column(x));
    const s = endsOf(ends, midTwist);
    const prepared = alone({ G, k: Float64Array.from(k.to1DArray()), held: [1], diagonal: (i) => 3 + i * i });
    const b = turn.mmul(k).mmul(s).to1DArray();
    const free = [0, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11];
    // The movement that is held stays at rest.
    const still = Float64Array.from(free, (m) => x[m]!);
    const atRest = endsOf((G === null ? Matrix.eye(12) : matrix(G)).mmul(turn.transpose()).mmul(column(Array.from(x, (v, m) => (m === 1 ? 0 : v)))), midTwist);
    const pushed = turn.mmul(k).mmul(atRest).to1DArray();
    expect(b).not.toEqual(pushed);
    const saved = free.reduce((sum, m, i) => sum + pushed[m]! ** 2 / (3 + i * i) / 2, 0);
    const found = largeMovement(prepared, Float64Array.of(...still, midTwist));
    expect(found.E4 / (atRest.transpose().mmul(k).mmul(atRest).get(0, 0) / 2 - saved)).toBeCloseTo(1, 10);
    expect(found.k / (free.reduce((sum, m, i) => sum + (3 + i * i) * x[m]! ** 2, 0) + midTwistStiffness(member, L) * midTwist ** 2)).toBeCloseTo(1, 12);
    // Without a twist between its nodes told, there is none.
    expect(largeMovement(prepared, still).k / free.reduce((sum, m, i) => sum + (3 + i * i) * x[m]! ** 2, 0)).toBeCloseTo(1, 12);
  });

  it('a joint that turns about z by half of θ_ix θ_jy − θ_iy θ_jx bends its spring, or, rigid, takes the member along', () => {
    const more = Float64Array.from({ length: 24 }, (_, m) => (m < 12 ? 0 : Math.sin(3 * m) + 0.2));
    const half = (i: number, j: number): number => (more[6 * i + 3]! * more[6 * j + 4]! - more[6 * i + 4]! * more[6 * j + 3]!) / 2;
    const soft: Spring = { i: 3, j: 2, k: [3, 4, 5, 6, 7, 50] };
    const stiff = (i: number) => 90 + i;
    const eased = (push: Readonly<Record<number, number>>): number => Object.entries(push).reduce((sum, [m, f]) => sum + f ** 2 / stiff(Number(m)) / 2, 0);
    const byItself = largeMovement(alone({ springs: [soft], more: 2, k: new Float64Array(144), diagonal: stiff }), more).E4;
    expect(byItself / ((50 * half(3, 2) ** 2) / 2 - eased({ 17: 50 * half(3, 2), 23: 50 * half(3, 2) }))).toBeCloseTo(1, 12);
    // Node 1 hangs rigidly about z on node 3: the member's far end turns by that, and the soft spring between 3 and 1 sees it too.
    more[9] = 0.4;
    more[10] = -0.9;
    const rigid: Spring = { i: 3, j: 1, k: [1, 1, 1, 0, 0, Infinity] };
    const within: Spring = { i: 2, j: 1, k: [0, 0, 0, 0, 0, 80] };
    const s = endsOf(turn.transpose().mmul(column(Array.from(more).slice(0, 12))), 0);
    s.set(11, 0, s.get(11, 0) + half(3, 1));
    const bent = half(2, 1) - half(3, 1);
    const energy = s.transpose().mmul(k).mmul(s).get(0, 0) / 2 + (80 * bent ** 2) / 2;
    const push = turn.mmul(k).mmul(s).mul(-1).to1DArray();
    push[11]! += 80 * bent;
    push[17] = -80 * bent;
    const found = largeMovement(alone({ springs: [rigid, within], more: 2, k: Float64Array.from(k.to1DArray()), diagonal: stiff }), more).E4;
    expect(found / (energy - eased({ ...push }))).toBeCloseTo(1, 10);
  });
});
