/** Springs and settlements in closed form: every way a node can move, with the given end of the spring first and last. */
import { describe, expect, it } from 'vitest';
import { directions, eulerBernoulli, solveFrame } from '../../src/frame3d/index.js';
import type { Member, Spring, Structure, Support } from '../../src/frame3d/index.js';

const L = 640;
const bar: Member = { id: 'M', i: 0, j: 1, E: 8000, G: 500, A: 300, Iy: 9000, Iz: 16000, J: 14000, zref: [0, 0, 1] };
const all = { ux: 0, uy: 0, uz: 0, rx: 0, ry: 0, rz: 0 };
const still = { nodes: [], members: [] };
/** What the free end of the bar, held fast at the other, resists each way with, when it may do nothing else. */
const own = [
  (bar.E * bar.A) / L, (12 * bar.E * bar.Iz) / L ** 3, (12 * bar.E * bar.Iy) / L ** 3,
  (bar.G * bar.J) / L, (4 * bar.E * bar.Iy) / L, (4 * bar.E * bar.Iz) / L,
] as const;

/** A bar from a wall, its end tied by a soft spring to a node that is moved by `given`. */
function tied(d: number, k: number, given: number, springFirst: boolean): { readonly moved: number; readonly reaction: number; readonly wall: number } {
  const stiffness = Array.from({ length: 6 }, (_, at) => (at === d ? k : 0)) as unknown as Spring['k'];
  const held = Object.fromEntries(directions.filter((_, at) => at !== d).map((direction) => [direction, 0]));
  const supports: Support[] = [{ node: 0, fix: all }, { node: 1, fix: held }, { node: 2, fix: { ...all, [directions[d]!]: given } }];
  const structure: Structure = {
    nodes: [{ id: 'wall', x: 0, y: 0, z: 0 }, { id: 'end', x: L, y: 0, z: 0 }, { id: 'far', x: L, y: 0, z: 0 }],
    members: [bar],
    springs: [{ ...(springFirst ? { i: 2, j: 1 } : { i: 1, j: 2 }), k: stiffness }],
    supports,
  };
  const answer = solveFrame(structure, still, eulerBernoulli);
  if (!answer.stable) throw new Error('unstable');
  const { u, reactions } = answer.solution;
  return { moved: u[6 + d]!, reaction: reactions[12 + d]!, wall: reactions[d]! };
}

describe.each(directions.map((direction, d) => [direction, d] as const))('a spring to a node that settles along %s', (_, d) => {
  it.each([true, false])('takes the bar along as two springs in a row do (its given end first: %s)', (first) => {
    const given = d < 3 ? 1.7 : 0.012;
    const k = 0.6 * own[d]!;
    const { moved, reaction, wall } = tied(d, k, given, first);
    expect(moved / ((given * k) / (k + own[d]!))).toBeCloseTo(1, 10);
    expect(reaction / ((given * k * own[d]!) / (k + own[d]!))).toBeCloseTo(1, 10);
    // A turn about y or z arrives at the wall by half (the carry-over of a beam); all else whole.
    expect(wall / -reaction).toBeCloseTo(d === 4 || d === 5 ? -0.5 : 1, 10);
  });
});

it('a settlement of a shared movement is that of both nodes, and its reaction stands at the node that is held', () => {
  const structure: Structure = {
    nodes: [{ id: 'wall', x: 0, y: 0, z: 0 }, { id: 'end', x: L, y: 0, z: 0 }, { id: 'far', x: L, y: 0, z: 0 }],
    members: [bar],
    springs: [{ i: 1, j: 2, k: [Infinity, Infinity, Infinity, Infinity, Infinity, Infinity] }],
    supports: [{ node: 0, fix: all }, { node: 2, fix: { uy: 2 } }],
  };
  const answer = solveFrame(structure, { nodes: [{ node: 1, force: [5, 0, 0], moment: [0, 0, 0] }, { node: 2, force: [7, 0, 0], moment: [0, 0, 0] }], members: [] }, eulerBernoulli);
  if (!answer.stable) throw new Error('unstable');
  const { u, reactions } = answer.solution;
  expect([u[6 + 1], u[12 + 1]]).toEqual([2, 2]);
  expect(u[6]! / ((12 * L) / (bar.E * bar.A))).toBeCloseTo(1, 10);
  expect(reactions[12 + 1]! / ((2 * 3 * bar.E * bar.Iz) / L ** 3)).toBeCloseTo(1, 10);
  expect(reactions[6 + 1]).toBe(0);
});
