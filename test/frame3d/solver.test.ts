import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { directions, eulerBernoulli, solveFactored, solveFrame, timoshenko } from '../../src/frame3d/index.js';
import type { FrameNode, Member, Spring, Structure, Support, Vector } from '../../src/frame3d/index.js';
import { prepare } from '../../src/frame3d/assemble.js';

const elastic = { E: 9000, G: 600, A: 722, Iy: 86880, Iz: 21720, J: 59604 };
const all = { ux: 0, uy: 0, uz: 0, rx: 0, ry: 0, rz: 0 };
const still = { nodes: [], members: [] };

const node = (id: string, x: number, y: number, z = 0): FrameNode => ({ id, x, y, z });
const member = (i: number, j: number, extra: Partial<Member> = {}): Member => ({
  id: `M${i}${j}`,
  i,
  j,
  zref: [0, 0, 1],
  ...elastic,
  ...extra,
});
const structure = (nodes: FrameNode[], members: Member[], supports: Support[], springs: Spring[] = []): Structure => ({ nodes, members, supports, springs });
const words = (s: Structure): string[] => {
  const answer = solveFrame(s, still);
  return answer.stable ? [] : answer.freedoms.map((f) => f.words);
};

/** An unsymmetric space frame with a skew member, a soft spring and a settlement. */
const skew = structure(
  [node('A', 0, 0), node('B', 700, 100, 50), node('C', 1100, 900, -200), node('D', 300, 1200, 400), node('B2', 700, 100, 50)],
  [member(0, 1), member(4, 2, { zref: [0.2, 0, 1], Iz: 40000 }), member(2, 3), member(3, 0, { J: 9000 }), member(1, 3, { A: 300 })],
  [{ node: 0, fix: all }, { node: 2, fix: { uz: 1.5, rx: 0.01 } }],
  [{ i: 1, j: 4, k: [Infinity, Infinity, Infinity, 2e5, 3e6, 0] }],
);

describe('the band solver', () => {
  it('gives what a dense solver gives for the same stiffness', () => {
    const preparation = prepare(skew, timoshenko);
    if (!preparation.stable) throw new Error('unstable');
    const { stiffness: K, factors } = preparation.prepared;
    const dense = Matrix.zeros(K.n, K.n);
    for (let i = 0; i < K.n; i++) {
      for (let j = K.first[i]!; j <= i; j++) {
        dense.set(i, j, K.values[K.start[i]! + j]!);
        dense.set(j, i, K.values[K.start[i]! + j]!);
      }
    }
    const b = Float64Array.from({ length: K.n }, (_, i) => Math.sin(3 * i + 1));
    const oracle = solve(dense, Matrix.columnVector(Array.from(b)));
    const x = b.slice();
    solveFactored(factors, x);
    x.forEach((value, i) => expect(value / oracle.get(i, 0)).toBeCloseTo(1, 8));
  });

  it('keeps the band of a long closed ring far below its length, however its nodes are numbered', () => {
    const count = 60;
    const shuffled = Array.from({ length: count }, (_, p) => (p * 23) % count);
    const at = (p: number): FrameNode => node(`N${p}`, 1000 * Math.cos((2 * Math.PI * p) / count), 800 * Math.sin((2 * Math.PI * p) / count));
    const ring = structure(
      Array.from({ length: count }, (_, p) => at(shuffled.indexOf(p))),
      Array.from({ length: count }, (_, p) => member(shuffled[p]!, shuffled[(p + 1) % count]!)),
      [{ node: 0, fix: all }],
    );
    const preparation = prepare(ring, timoshenko);
    if (!preparation.stable) throw new Error('unstable');
    const { stiffness } = preparation.prepared;
    expect(stiffness.values.length / stiffness.n).toBeLessThan(9);
  });
});

describe('statics of any structure', () => {
  const loads = {
    nodes: [{ node: 3, force: [40, -25, 60] as Vector, moment: [900, -300, 200] as Vector }],
    members: [
      { member: 1, force: [0.1, -0.2, 0.05] as Vector, moment: [3, 7, -2] as Vector },
      { member: 4, force: [0, 0, 0.3] as Vector, moment: [0, 0, 0] as Vector },
    ],
  };

  it.each([eulerBernoulli, timoshenko])('reactions balance the loads, shear %j', (theory) => {
    const answer = solveFrame(skew, loads, theory);
    if (!answer.stable) throw new Error('unstable');
    const { reactions } = answer.solution;
    const force = [0, 0, 0];
    const moment = [0, 0, 0];
    const add = (p: Vector, f: readonly number[], m: readonly number[]): void => {
      for (let d = 0; d < 3; d++) {
        const [a, b] = [(d + 1) % 3, (d + 2) % 3];
        force[d]! += f[d]!;
        moment[d]! += m[d]! + p[a]! * f[b]! - p[b]! * f[a]!;
      }
    };
    skew.nodes.forEach(({ x, y, z }, p) => {
      const r = reactions.subarray(6 * p, 6 * p + 6);
      add([x, y, z], [r[0]!, r[1]!, r[2]!], [r[3]!, r[4]!, r[5]!]);
    });
    for (const l of loads.nodes) add([300, 1200, 400], l.force, l.moment);
    for (const l of loads.members) {
      const [a, b] = [skew.nodes[skew.members[l.member]!.i]!, skew.nodes[skew.members[l.member]!.j]!];
      const L = Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
      const times = (v: Vector): number[] => v.map((c) => c * L);
      add([(a.x + b.x) / 2, (a.y + b.y) / 2, (a.z + b.z) / 2], times(l.force), times(l.moment));
    }
    for (let d = 0; d < 3; d++) {
      expect(Math.abs(force[d]!)).toBeLessThan(1e-8 * 100);
      expect(Math.abs(moment[d]!)).toBeLessThan(1e-8 * 1e5);
    }
  });

  it.each([eulerBernoulli, timoshenko])('cutting every member in two changes nothing at the nodes, shear %j', (theory) => {
    const nodes = [...skew.nodes];
    const members: Member[] = [];
    const memberLoads: { member: number; force: Vector; moment: Vector }[] = [];
    skew.members.forEach((m, e) => {
      const [a, b] = [skew.nodes[m.i]!, skew.nodes[m.j]!];
      nodes.push(node(`mid${e}`, a.x + 0.3 * (b.x - a.x), a.y + 0.3 * (b.y - a.y), a.z + 0.3 * (b.z - a.z)));
      for (const l of loads.members) {
        if (l.member === e) for (const half of [members.length, members.length + 1]) memberLoads.push({ ...l, member: half });
      }
      members.push({ ...m, id: `${m.id}a`, j: nodes.length - 1 }, { ...m, id: `${m.id}b`, i: nodes.length - 1 });
    });
    const whole = solveFrame(skew, loads, theory);
    const cut = solveFrame({ ...skew, nodes, members }, { ...loads, members: memberLoads }, theory);
    if (!whole.stable || !cut.stable) throw new Error('unstable');
    whole.solution.u.forEach((u, m) => expect(Math.abs(u - cut.solution.u[m]!)).toBeLessThan(1e-8 * (m % 6 < 3 ? 10 : 0.01)));
  });

  it('a prescribed movement costs the force that would cause it (reciprocity of load and settlement)', () => {
    const fixed: Structure = { ...skew, supports: [{ node: 0, fix: all }] };
    const pushed = solveFrame(fixed, { nodes: [{ node: 3, force: [0, 0, 50], moment: [0, 0, 0] }], members: [] });
    if (!pushed.stable) throw new Error('unstable');
    const uz = pushed.solution.u[6 * 3 + 2]!;
    const moved = solveFrame({ ...skew, supports: [{ node: 0, fix: all }, { node: 3, fix: { uz } }] }, still);
    if (!moved.stable) throw new Error('unstable');
    expect(moved.solution.reactions[6 * 3 + 2]! / 50).toBeCloseTo(1, 9);
    pushed.solution.u.forEach((u, m) => expect(Math.abs(u - moved.solution.u[m]!)).toBeLessThan(1e-9 * 100));
  });

  it('nodes tied by an infinite spring share that movement, and a stiff spring tends to the same', () => {
    const solved = (k: number): Float64Array => {
      const springs: Spring[] = [{ i: 1, j: 4, k: [Infinity, Infinity, Infinity, k, k, k] }];
      const answer = solveFrame({ ...skew, springs }, loads);
      if (!answer.stable) throw new Error('unstable');
      return answer.solution.u;
    };
    const [tied, stiff] = [solved(Infinity), solved(1e12)];
    for (let d = 0; d < 6; d++) expect(tied[6 + d]).toBe(tied[24 + d]);
    tied.forEach((u, m) => expect(Math.abs(u - stiff[m]!)).toBeLessThan(1e-4 * (m % 6 < 3 ? 10 : 0.01)));
  });

  it('a released end carries no moment, and both ends released leave a bar that only pushes and pulls', () => {
    const nodes = [node('A', 0, 0), node('B', 1000, 0), node('C', 1000, 600)];
    const fix: Support[] = [{ node: 0, fix: all }, { node: 2, fix: all }];
    const load = { nodes: [{ node: 1, force: [10, 20, 30] as Vector, moment: [0, 0, 0] as Vector }], members: [{ member: 1, force: [0.2, 0, 0] as Vector, moment: [0, 0, 0] as Vector }] };
    const one = solveFrame(structure(nodes, [member(0, 1), member(1, 2, { releases: { i: ['rz', 'ry'] } })], fix), load);
    if (!one.stable) throw new Error('unstable');
    expect(Math.abs(one.solution.endForces[1]![5]!)).toBeLessThan(1e-9);
    expect(Math.abs(one.solution.endForces[1]![4]!)).toBeLessThan(1e-9);
    expect(Math.abs(one.solution.endForces[1]![11]!)).toBeGreaterThan(1);
    const ends = { i: ['ry', 'rz'], j: ['rx', 'ry', 'rz'] } as const;
    const both = solveFrame(structure(nodes, [member(0, 1), member(1, 2, { releases: ends })], fix), { ...load, members: [] });
    if (!both.stable) throw new Error('unstable');
    const f = both.solution.endForces[1]!;
    [1, 2, 3, 4, 5, 7, 8, 9, 10, 11].forEach((r) => expect(Math.abs(f[r]!)).toBeLessThan(1e-9));
    expect(Math.abs(f[0]!)).toBeGreaterThan(1);
  });
});

describe('an unstable structure is named in words', () => {
  const line = [node('N1', 0, 0), node('N2', 500, 0), node('N3', 900, 0)];

  it('a beam on two supports that nothing keeps from rolling', () => {
    const s = structure(line, [member(0, 1), member(1, 2)], [{ node: 0, fix: { ux: 0, uy: 0, uz: 0 } }, { node: 2, fix: { uy: 0, uz: 0 } }]);
    expect(words(s)).toEqual([expect.stringMatching(/^node "N\d" is free to turn about x$/)]);
  });

  it('a node that no member holds against turning', () => {
    const hinged = [member(0, 1, { releases: { j: ['ry'] } }), member(1, 2, { releases: { i: ['ry'] } })];
    expect(words(structure(line, hinged, [{ node: 0, fix: all }, { node: 2, fix: all }]))).toEqual(['node "N2" is free to turn about y']);
  });

  it('a node nothing is joined to: six freedoms, each once', () => {
    const s = structure([...line, node('far', 3, 4)], [member(0, 1), member(1, 2)], [{ node: 0, fix: all }]);
    expect(new Set(words(s))).toEqual(
      new Set(directions.map((d) => `node "far" is free to ${d[0] === 'u' ? 'move along' : 'turn about'} ${d[1]}`)),
    );
  });

  it('a mechanism moves where its farthest node moves', () => {
    const square = [node('A', 0, 0), node('B', 0, 700), node('C', 900, 700), node('D', 900, 0)];
    const pins = { i: ['rz'], j: ['rz'] } as const;
    const bars = [member(0, 1, { releases: pins }), member(1, 2), member(2, 3, { releases: pins })];
    const flat = { uz: 0, rx: 0, ry: 0 };
    const fix = [{ node: 0, fix: { ...all } }, { node: 3, fix: { ...all } }, { node: 1, fix: flat }, { node: 2, fix: flat }];
    expect(words(structure(square, bars, fix))).toEqual([expect.stringMatching(/^node "[BC]" is free to move along x$/)]);
  });

  it('a structure on no support at all has its six freedoms', () => {
    expect(words(structure(line.slice(0, 2), [member(0, 1)], []))).toHaveLength(6);
  });

  it('input that describes no structure is refused by name', () => {
    const fix: Support[] = [{ node: 0, fix: all }];
    expect(() => solveFrame(structure([node('A', 1, 1), node('B', 1, 1)], [member(0, 1)], fix), still)).toThrow('member "M01" has no length');
    expect(() => solveFrame(structure([node('A', 0, 0), node('B', 0, 0, 5)], [member(0, 1)], fix), still)).toThrow('lies along its zref');
    const twice: Support[] = [...fix, { node: 0, fix: { ux: 1 } }];
    expect(() => solveFrame(structure(line, [member(0, 1)], twice), still)).toThrow('node "N1" is given two different values of ux');
  });
});
