import { describe, expect, it } from 'vitest';
import { evenGive } from '../../src/base/joint-give.js';
import { numberEquations } from '../../src/frame3d/equations.js';
import { emptyProfile, factorise } from '../../src/frame3d/profile-matrix.js';
import { springTerms, addElementMatrix, prepare } from '../../src/frame3d/assemble.js';
import { toGlobal } from '../../src/frame3d/element-axes.js';
import { largeMovement, timoshenko } from '../../src/frame3d/index.js';
import { meshFrame } from '../../src/solve/frame-mesh.js';
import { frameOf } from './frame-shapes.js';

const shape = {
  ...frameOf({
    width: 1000, height: 700, w: 38, d: 25, give: { plane: 9, out: 4, twist: 2 }, crossbarGive: 6, braceGive: { plane: 3, out: 8, twist: 5 },
    crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 22 }], brace: { leg: 160, w: 30, d: 19 },
  }),
  corner_plate_Nmm_per_rad: { 'top-left': 4e5, 'top-right': 0, 'bottom-left': 2e6, 'bottom-right': 0 },
};

describe('energy of a large movement out of the plane', () => {
  it.each([['about x', 0.8, 0], ['about y', 0, -1.3], ['about both at once', 0.6, 0.9]] as const)('a rigid turn %s leaves none in the plane', (_, a, b) => {
    const mesh = meshFrame({ ...shape, corner_give: { ...shape.corner_give, 'top-right': evenGive(0), 'bottom-left': { plane: 0, out: 5, twist: 3 } } }, [], { bar: 6, crossbar: 4, brace: 2 }, timoshenko);
    // Freed of what holds z, so that every node may turn with the whole; the plane stays held as before.
    const supports = mesh.structure.supports.map(({ node, fix }) => ({ node, fix: Object.fromEntries(Object.entries(fix).filter(([d]) => d !== 'uz')) }));
    const free = { ...mesh.structure, supports };
    const held = prepare(mesh.structure, timoshenko);
    if (!held.stable) throw new Error('unstable');
    const { elements } = held.prepared;
    const equations = numberEquations(free, elements.map((e) => e.axes), free.nodes.map((_n, n) => n));
    const stiffness = emptyProfile(equations.first);
    const global = new Float64Array(144);
    for (const [e, { k, axes }] of elements.entries()) {
      toGlobal(k, axes.R, global);
      addElementMatrix(stiffness, equations.of, equations.movements[e]!, global);
    }
    for (const { i, j, k } of free.springs) {
      const [p, q] = [equations.of[6 * i + 5]!, equations.of[6 * j + 5]!];
      if (k[5] === Infinity || p < 0 || q < 0 || p === q) continue;
      for (const [r, c, sign] of [[p, p, 1], [q, q, 1], [p, q, -1]] as const) stiffness.values[stiffness.start[Math.max(r, c)]! + Math.min(r, c)]! += sign * k[5];
    }
    const x = new Float64Array(equations.count);
    mesh.structure.nodes.forEach(({ x: px, y: py }, n) => {
      x[equations.of[6 * n + 2]!] = a * py - b * px;
      x[equations.of[6 * n + 3]!] = a;
      x[equations.of[6 * n + 4]!] = b;
    });
    const prepared = { structure: free, elements, equations, springs: springTerms(free), stiffness, factors: factorise(stiffness) };
    const rigid = largeMovement(prepared, x);
    // The same movement with the plane clamped: what the in-plane solution has to take away.
    const clamped = largeMovement({ ...prepared, factors: { ...prepared.factors, inverse: new Float64Array(equations.count) } }, x);
    expect(clamped.E4).toBeGreaterThan(1);
    expect(Math.abs(rigid.E4)).toBeLessThan(1e-9 * clamped.E4);
  });
});
