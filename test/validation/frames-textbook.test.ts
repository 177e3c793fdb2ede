/**
 * Frames printed in textbooks, with the units printed there.
 * - W. Weaver Jr., Computer Programs for Structural Analysis, p. 146, problem 8 (kip, inch), as quoted in the pystran tests.
 * - A. J. M. Ferreira, MATLAB Codes for Finite Element Analysis, Example 8.3 (kN, m), as quoted in the Asap.jl tests.
 * - Weaver and Gere's space frame with a node at mid-span (N, m), as quoted in the pystran tests.
 * - D. L. Logan, A First Course in the Finite Element Method, space-frame example (kip, inch): memory, recomputed to every digit.
 * - D. L. Logan, Example 5.1, plane frame (lb, inch): end forces printed, displacements recomputed.
 * - Grid of three members quoting University of Memphis CIVL 7117 chapter 5b, example 1 (N, m).
 * - The right-angled cantilever, closed form w = P b³/(3 E I) + P a³/(3 E I) + P b² a/(G J).
 */
import { describe, expect, it } from 'vitest';
import { eulerBernoulli, solveFrame } from '../../src/frame3d/index.js';
import type { FrameSolution, Member, NodeLoad, Structure, Vector } from '../../src/frame3d/index.js';
import { note } from './recorded.js';

type Elastic = Pick<Member, 'E' | 'G' | 'A' | 'Iy' | 'Iz' | 'J'>;

/** All names are those of the book: nodes and elements numbered from 1. */
function solve(
  nodes: readonly Vector[],
  elements: readonly (readonly [number, number, Vector?])[],
  elastic: Elastic,
  fixed: readonly number[],
  loads: Readonly<Record<number, readonly number[]>>,
  also: Structure['supports'] = [],
): FrameSolution {
  const structure: Structure = {
    nodes: nodes.map(([x, y, z], p) => ({ id: String(p + 1), x, y, z })),
    members: elements.map(([i, j, zref], e) => {
      const [a, b] = [nodes[i - 1]!, nodes[j - 1]!];
      const alongZ = a[0] === b[0] && a[1] === b[1];
      return { id: String(e + 1), i: i - 1, j: j - 1, zref: zref ?? (alongZ ? [1, 0, 0] : [0, 0, 1]), ...elastic };
    }),
    springs: [],
    supports: [...fixed.map((p) => ({ node: p - 1, fix: { ux: 0, uy: 0, uz: 0, rx: 0, ry: 0, rz: 0 } })), ...also],
  };
  const nodeLoads = Object.entries(loads).map(
    ([p, f]): NodeLoad => ({ node: Number(p) - 1, force: [f[0]!, f[1]!, f[2]!], moment: [f[3]!, f[4]!, f[5]!] }),
  );
  const answer = solveFrame(structure, { nodes: nodeLoads, members: [] }, eulerBernoulli);
  if (!answer.stable) throw new Error(answer.freedoms.map((f) => f.words).join());
  return answer.solution;
}

const six = (values: Float64Array, node: number): number[] => Array.from(values.subarray(6 * node - 6, 6 * node));

function expectEach(found: readonly number[], printed: readonly number[], allowed: (printed: number) => number): void {
  printed.forEach((value, d) => note({ theirs: value, ours: found[d]!, deviation: found[d]! - value, tolerance: allowed(value), absolute: true }));
  printed.forEach((value, d) => expect(Math.abs(found[d]! - value), `value ${d + 1}: ${found[d]} for ${value}`).toBeLessThanOrEqual(allowed(value)));
}

describe('textbook frames', () => {
  it("Weaver's space frame", () => {
    const s = solve(
      [[0, 120, 0], [240, 120, 0], [0, 0, 0], [360, 0, 120]],
      [[3, 1], [1, 2], [2, 4]],
      { E: 30000, G: 12000, A: 11, Iy: 56, Iz: 56, J: 83 },
      [3, 4],
      { 1: [2, 0, 0, 0, 0, 0], 2: [0, -1, 0, 0, 0, -120] },
    );
    expectEach(six(s.u, 1), [0.22267, 0.00016, -0.17182, -0.00255, 0.00217, -0.00213], () => 1e-5);
    expectEach(six(s.u, 2), [0.22202, -0.48119, -0.70161, -0.00802, 0.00101, -0.00435], () => 1e-5);
    expectEach(six(s.reactions, 3), [-1.1041, -0.43222, 0.21731, 48.785, -17.973, 96.122], (v) => 1e-3 * Math.abs(v));
    expectEach(six(s.reactions, 4), [-0.89588, 1.4322, -0.21731, 123.08, 47.246, -11.72], (v) => 1e-3 * Math.abs(v));
  });

  it("Ferreira's three bars", () => {
    const s = solve(
      [[0, 0, 0], [3, 0, 0], [0, 0, -3], [0, -4, 0]],
      [[1, 2, [0, 0, 1]], [1, 3, [1, 0, 0]], [1, 4, [0, 0, 1]]],
      { E: 210e6, G: 84e6, A: 0.02, Iy: 1e-4, Iz: 2e-4, J: 5e-5 },
      [2, 3, 4],
      { 1: [-10, 0, 20, 0, 0, 0] },
    );
    expectEach(six(s.u, 1), [-7.05e-6, -7e-8, 1.418e-5, 1.45e-6, 1.75e-6, 1.14e-6], () => 6e-9);
  });

  it('space frame with a node at mid-span', () => {
    const s = solve(
      [[0, 3, 0], [6, 3, 0], [0, 0, 0], [9, 0, 3], [3, 3, 0]],
      [[3, 1], [5, 1], [5, 2], [2, 4]],
      { E: 200e9, G: 80e9, A: 0.01, Iy: 1e-3, Iz: 1e-3, J: 2e-3 },
      [3, 4],
      { 1: [120e3, 0, 0, 0, 0, 0], 5: [0, 0, 240e3, 0, 0, 0], 2: [0, -60e3, 0, 0, 0, -180e3] },
    );
    const first = [-0.000859409726, 5.77635277e-5, 0.00500764459, 0.00239333188, -0.00162316861, 0.000681331291];
    expectEach(six(s.u, 1), first, () => 1e-7);
    expectEach(six(s.u, 2), [-0.00117605, 0.00325316, 0.00525552, 0.00128843, 0.00172094, -0.00077147], () => 1e-7);
  });

  it("Logan's space frame (memory)", () => {
    const s = solve(
      [[100, 0, 0], [0, 0, 0], [100, 0, -100], [100, -100, 0]],
      [[2, 1], [3, 1], [4, 1]],
      { E: 30000, G: 10000, A: 10, Iy: 100, Iz: 100, J: 50 },
      [2, 3, 4],
      { 1: [0, -50, 0, -1000, 0, 0] },
    );
    expectEach(six(s.u, 1), [7.098e-5, -0.014, -0.002352, -0.003996, 1.78e-5, -0.0001033], (v) => 1e-3 * Math.abs(v));
  });

  it("Logan's plane frame, columns and beam of unequal section", () => {
    const base = { E: 30e6, G: 12e6, A: 10, J: 1 };
    const corner: readonly Vector[] = [[0, 0, 0], [0, 120, 0], [120, 120, 0], [120, 0, 0]];
    const member = (i: number, j: number, I: number): Member => ({ id: `${i}`, i, j, zref: [0, 0, 1], ...base, Iy: I, Iz: I });
    const all = { ux: 0, uy: 0, uz: 0, rx: 0, ry: 0, rz: 0 };
    const structure: Structure = {
      nodes: corner.map(([x, y, z], p) => ({ id: String(p + 1), x, y, z })),
      members: [member(0, 1, 200), member(1, 2, 100), member(2, 3, 200)],
      springs: [],
      supports: [{ node: 0, fix: all }, { node: 3, fix: all }],
    };
    const loads = {
      nodes: [
        { node: 1, force: [10000, 0, 0] as const, moment: [0, 0, 0] as const },
        { node: 2, force: [0, 0, 0] as const, moment: [0, 0, 5000] as const },
      ],
      members: [],
    };
    const answer = solveFrame(structure, loads, eulerBernoulli);
    if (!answer.stable) throw new Error('unstable');
    const { u, endForces } = answer.solution;
    const plane = (p: number): number[] => [u[6 * p]!, u[6 * p + 1]!, u[6 * p + 5]!];
    expectEach(plane(1), [0.2114, 0.00148, -0.001526], (v) => 2e-3 * Math.abs(v));
    expectEach(plane(2), [0.2094, -0.00148, -0.001486], (v) => 2e-3 * Math.abs(v));
    const [first, third] = [endForces[0]!, endForces[2]!];
    expectEach([Math.abs(first[0]!), Math.abs(first[1]!)], [3700, 4990], (v) => 3e-3 * v);
    expectEach([Math.abs(first[5]!), Math.abs(first[11]!)], [376000, 223000], (v) => 3e-3 * v);
    expectEach([Math.abs(third[5]!), Math.abs(third[11]!)], [226000, 375000], (v) => 3e-3 * v);
  });

  it('grid of three members', () => {
    const I = 0.0001664925704;
    const s = solve(
      [[6.096, 3.048, 0], [0, 6.096, 0], [0, 0, 0], [6.096, 0, 0]],
      [[1, 2], [1, 3], [1, 4]],
      { E: 206842718400, G: 82737087360, A: 0.01, Iy: I, Iz: I, J: 4.578545686e-5 },
      [2, 3, 4],
      { 1: [0, 0, -444822.16, 0, 0, 0] },
    );
    const [, , w, rx, ry] = six(s.u, 1) as [number, number, number, number, number];
    expect(Math.abs(w / -0.0717536 - 1)).toBeLessThan(1e-5);
    expect(Math.abs(w / 0.0254 / -2.83 - 1)).toBeLessThan(5e-3);
    expectEach([Math.abs(rx), Math.abs(ry)], [0.0295, 0.0169], (v) => 5e-3 * v);
  });

  it('right-angled cantilever, closed form', () => {
    const [a, b, P, E, G, I, J] = [0.6, 0.4, 20, 1e10, 6e8, 2.17202e-8, 5.9604e-8];
    const s = solve([[0, 0, 0], [a, 0, 0], [a, b, 0]], [[1, 2], [2, 3]], { E, G, A: 7.22e-4, Iy: I, Iz: I, J }, [1], { 3: [0, 0, P, 0, 0, 0] });
    const w = (P * b ** 3) / (3 * E * I) + (P * a ** 3) / (3 * E * I) + (P * b * b * a) / (G * J);
    expect(six(s.u, 3)[2]! / w).toBeCloseTo(1, 9);
    expect(Math.abs((1000 * w) / 62.2818 - 1)).toBeLessThan(1e-5);
  });
});
