/** How a free movement is told, from movements that are given outright: one row of factors for each. */
import { describe, expect, it } from 'vitest';
import type { Equations } from '../../src/frame3d/equations.js';
import { freedomsOf } from '../../src/frame3d/freedoms.js';
import { emptyProfile } from '../../src/frame3d/profile-matrix.js';
import type { FrameNode, Structure } from '../../src/frame3d/index.js';

type Point = readonly [number, number, number];
/** Movements by node and direction, `{ B: { ry: 0.5 } }`. */
type Way = Readonly<Record<string, Readonly<Record<string, number>>>>;
const directions = ['ux', 'uy', 'uz', 'rx', 'ry', 'rz'];

/** Told of points named A, B, C … that move so, all without resistance at once. */
function told(points: readonly Point[], ways: readonly Way[], held: readonly number[] = []): string[] {
  const nodes = points.map(([x, y, z], n): FrameNode => ({ id: 'ABCDE'[n]!, x, y, z }));
  let count = 0;
  const of = Int32Array.from({ length: 6 * nodes.length }, (_, m) => (held.includes(m) ? -1 : count++));
  // Rows of their own after those of the movements, so that no movement stands for its own row.
  const n = count + ways.length;
  const rows = emptyProfile(new Int32Array(n));
  ways.forEach((way, w) => {
    for (const [id, moves] of Object.entries(way)) {
      for (const [direction, amount] of Object.entries(moves)) {
        const m = 6 * nodes.findIndex((node) => node.id === id) + directions.indexOf(direction);
        rows.values[rows.start[count + w]! + of[m]!] = -amount;
      }
    }
  });
  const structure: Structure = { nodes, members: [], springs: [], supports: [] };
  const factors = { ...rows, inverse: new Float64Array(n), vanished: ways.map((_, w) => count + w), negative: 0 };
  return freedomsOf(structure, { of } as Equations, factors).map(({ words, node, way, axis }) => {
    expect(words).toBe(`node "${node}" is free to ${way === 'move' ? 'move along' : 'turn about'} ${axis}`);
    return `${node} ${way}s ${axis}`;
  });
}

const one: readonly Point[] = [[3, 4, 5]];
const some: readonly Point[] = [[1, 2, 2], [3, 5, 8], [0, 2, 2]];

describe('a free movement', () => {
  it.each(['ux', 'uy', 'uz', 'rx', 'ry', 'rz'])('of one node along or about each axis: %s', (direction) => {
    expect(told(some, [{ B: { [direction]: -0.4 } }])).toEqual([`B ${direction.startsWith('u') ? 'moves' : 'turns'} ${direction.charAt(1)}`]);
  });

  it('is told by the node that moves most, the first of equal ones', () => {
    expect(told(some, [{ A: { ux: 0.3 }, B: { uy: -0.9 }, C: { uz: 0.8 } }])).toEqual(['B moves y']);
    expect(told(some, [{ A: { ux: 0.9 }, B: { uy: -0.9 }, C: { uz: 0.8 } }])).toEqual(['A moves x']);
    expect(told(some, [{ A: { ux: 1 }, B: { uy: 1 + 1e-6 } }])).toEqual(['A moves x']);
    expect(told(some, [{ A: { ux: 1 }, B: { uy: 1 + 2e-6 } }])).toEqual(['B moves y']);
    expect(told(some, [{ A: { rx: 0.3 }, B: { ry: -0.9 }, C: { rz: 0.8 } }])).toEqual(['B turns y']);
  });

  it('is a shift where there is one, however much more turns', () => {
    expect(told(some, [{ A: { rx: 1, rz: 9 }, C: { uz: 0.02 } }])).toEqual(['C moves z']);
    expect(told(some, [{ A: { ry: 1 }, B: { ux: -1e-5 } }])).toEqual(['B moves x']);
  });

  it.each<[string, readonly Point[], number]>([
    ['far apart: by the distance from the first node to the farthest, √(2² + 3² + 6²)', some, 7],
    ['the farthest told first', [[1, 2, 2], [0, 2, 2], [3, 5, 8]], 7],
    ['close together, as in kilometres', [[0.5, 0.5, 0.5], [0.52, 0.53, 0.56], [0.5, 0.5, 0.51]], 0.07],
    ['a single one: by a length of one', one, 1],
    ['all in one place', [one[0]!, one[0]!], 1],
  ])('a shift below a millionth of the turn is rounding, nodes %s', (_, points, size) => {
    expect(told(points, [{ A: { ry: 0.5, ux: 0.5e-6 * size * 1.01 } }])).toEqual(['A moves x']);
    expect(told(points, [{ A: { ry: 0.5, ux: 0.5e-6 * size * 0.99 } }])).toEqual(['A turns y']);
  });

  it('several are told apart: what was told is not told again while there is another', () => {
    const both = { A: { uy: 1 }, B: { uy: 0.5 } };
    expect(told(some, [both, both])).toEqual(['A moves y', 'B moves y']);
    expect(told(some, [{ A: { rx: 1 } }, { A: { rx: 1 }, B: { rx: 0.2 } }])).toEqual(['A turns x', 'B turns x']);
    expect(told(some, [{ C: { ux: 1 } }, { C: { ux: 1 } }])).toEqual(['C moves x', 'C moves x']);
    // The second has no shift but one that was told: it is that once more rather than the turn beside it, which moves less.
    expect(told(some, [{ A: { uy: 1 } }, { A: { uy: 1 }, B: { rx: 0.4 } }])).toEqual(['A moves y', 'A moves y']);
  });

  it('what is held does not move, and a way without movement is none', () => {
    expect(told(some, [{ B: { ux: 0.7 }, C: { uz: 0.2 } }], [0, 1, 2, 3, 4, 5])).toEqual(['B moves x']);
    expect(told(some, [{}])).toEqual([]);
  });
});
