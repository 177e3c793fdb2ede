import { describe, expect, it } from 'vitest';
import { addProduct, eulerBernoulli, prepare, smallestLoadFactors, solveFactored, solvePrepared } from '../../src/frame3d/index.js';
import type { EndRelease, Support } from '../../src/frame3d/index.js';
import { geometricStiffness } from '../../src/frame3d/geometric-stiffness.js';

const [L, E, angle] = [1300, 9500, 0.6];
const along = [Math.cos(angle), Math.sin(angle)] as const;
const all = { ux: 0, uy: 0, uz: 0, rx: 0, ry: 0, rz: 0 };

/** The two smallest forces under which a column buckles that stands askew in the plane, held fast at its foot; Iz bends in the plane, Iy out of it. */
function buckles({ Iy, Iz, head, releases }: { Iy: number; Iz: number; head: Support['fix']; releases?: EndRelease[] }): readonly number[] {
  const parts = 12;
  const nodes = Array.from({ length: parts + 1 }, (_, n) => ({ id: `${n}`, x: 70 + (along[0] * L * n) / parts, y: -40 + (along[1] * L * n) / parts, z: 15 }));
  const members = Array.from({ length: parts }, (_, n) => ({
    id: `${n}`, i: n, j: n + 1, E, G: 600, A: 700, Iy, Iz, J: 60000, zref: [0, 0, 1] as const,
    ...(releases && n === parts - 1 ? { releases: { j: releases } } : {}),
  }));
  const preparation = prepare({ nodes, members, springs: [], supports: [{ node: 0, fix: all }, { node: parts, fix: head }] }, eulerBernoulli);
  if (!preparation.stable) throw new Error('unstable');
  const { prepared } = preparation;
  const solution = solvePrepared(prepared, { nodes: [{ node: parts, force: [-along[0], -along[1], 0], moment: [0, 0, 0] }], members: [] });
  const geometric = geometricStiffness(prepared, solution);
  return smallestLoadFactors({
    n: prepared.equations.count,
    solve: (b) => solveFactored(prepared.factors, b),
    addProduct: (x, y) => addProduct(geometric, x, y),
    countBelow: () => 2,
  }, 2).map(({ factor }) => factor);
}

/** Euler's forces, as multiples of E I/L²; the propped one is the square of the least root of tan x = x. */
const free = Math.PI ** 2 / 4;
const propped = 4.493409457909064 ** 2;
const [slim, stout] = [21720, 86880 * 30];

describe('columns as their ends are held (Euler; Timoshenko & Gere, Theory of Elastic Stability, from memory)', () => {
  it.each<[string, Parameters<typeof buckles>[0], readonly number[]]>([
    ['free at the head: either way', { Iy: slim, Iz: 1.7 * slim, head: {} }, [free * slim, free * 1.7 * slim]],
    ['kept in place at the head, which may turn', { Iy: slim, Iz: stout, head: { uz: 0 } }, [propped * slim]],
    ['kept from turning as well', { Iy: slim, Iz: stout, head: { uz: 0, rx: 0, ry: 0, rz: 0 } }, [4 * Math.PI ** 2 * slim]],
    ['a head kept from turning that lets go of the column about its own y', { Iy: slim, Iz: stout, head: { uz: 0, rx: 0, ry: 0, rz: 0 }, releases: ['ry'] }, [propped * slim]],
    ['one that slides sideways, and lets go about its own z: a free head', { Iy: stout, Iz: slim, head: { uz: 0, rx: 0, ry: 0, rz: 0 }, releases: ['rz'] }, [free * slim]],
    ['one that slides sideways without letting go', { Iy: stout, Iz: slim, head: { uz: 0, rx: 0, ry: 0, rz: 0 } }, [Math.PI ** 2 * slim]],
  ])('%s', (_, column, expected) => {
    const found = buckles(column);
    for (const [n, EI] of expected.entries()) expect(found[n]! / ((E * EI) / L ** 2)).toBeCloseTo(1, 3);
  });
});
