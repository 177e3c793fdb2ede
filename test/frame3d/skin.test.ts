/** The skin of a frame against what it should be: closed forms, and a fine grid of bilinear quadrilaterals with its inside eliminated. */
import { describe, expect, it } from 'vitest';
import type { Equations } from '../../src/frame3d/equations.js';
import { buildMembrane, skinProduct } from '../../src/frame3d/membrane.js';
import type { MembraneBorder } from '../../src/frame3d/membrane-border.js';
import { addEntry, emptyProfile, factorise, solveFactored } from '../../src/frame3d/profile-matrix.js';
import { quadStiffness } from '../../src/frame3d/skin-energy.js';
import type { Tension } from '../../src/frame3d/skin-energy.js';

type Shape = (x: number, y: number) => number;
const [width, height] = [900, 520];

/** A border of nodes unevenly spaced, every bar with end nodes of its own that share the shift of their corner. */
function borderWith(parts: number): { border: MembraneBorder; equations: Equations; at: (node: number) => readonly [number, number] } {
  const uneven = (count: number): number[] => Array.from({ length: count + 1 }, (_, n) => n / count + 0.15 / count * Math.sin((2 * Math.PI * n) / count));
  const [along_x, along_y] = [uneven(parts), uneven(parts + 1)];
  const points: (readonly [number, number])[] = [];
  const nodes = (of: readonly (readonly [number, number])[]): number[] => of.map((point) => points.push(point) - 1);
  const border = {
    width, height, along_x, along_y,
    bottom: nodes(along_x.map((s) => [s * width, 0])), top: nodes(along_x.map((s) => [s * width, height])),
    left: nodes(along_y.map((s) => [0, s * height])), right: nodes(along_y.map((s) => [width, s * height])),
  };
  const of = new Int32Array(6 * points.length).fill(-1);
  let count = 0;
  const shifts = new Map<string, number>();
  points.forEach(([x, y], node) => {
    const key = `${x.toFixed(6)} ${y.toFixed(6)}`;
    const shift = shifts.get(key) ?? count++;
    shifts.set(key, shift);
    of[6 * node + 2] = shift;
    of[6 * node + 3] = count++;
    of[6 * node + 4] = count++;
  });
  return { border, equations: { count, of } as Equations, at: (node) => points[node]! };
}

/** Energy of the skin whose border takes this shape, with its slopes. */
function energyOf(shape: Shape, tension: Tension, parts: number): number {
  const { border, equations, at } = borderWith(parts);
  const x = new Float64Array(equations.count);
  const step = 1e-3;
  for (const node of [...border.bottom, ...border.top, ...border.left, ...border.right]) {
    const [px, py] = at(node);
    x[equations.of[6 * node + 2]!] = shape(px, py);
    x[equations.of[6 * node + 3]!] = (shape(px, py + step) - shape(px, py - step)) / (2 * step);
    x[equations.of[6 * node + 4]!] = -(shape(px + step, py) - shape(px - step, py)) / (2 * step);
  }
  const y = new Float64Array(equations.count);
  skinProduct(buildMembrane(border, tension, equations), 0)(x, y);
  return x.reduce((sum, value, i) => sum + (value * y[i]!) / 2, 0);
}

/** The same by a grid of `parts` × `parts` quadrilaterals whose inside settles. */
function gridEnergy(shape: Shape, tension: Tension, parts: number): number {
  const inner = parts - 1;
  const number = (a: number, b: number): number => (a > 0 && b > 0 && a < parts && b < parts ? (b - 1) * inner + a - 1 : -1);
  const value = (a: number, b: number): number => shape((a * width) / parts, (b * height) / parts);
  const first = Int32Array.from({ length: inner * inner }, (_, i) => Math.max(0, i - inner - 1));
  const matrix = emptyProfile(first);
  const z = new Float64Array(inner * inner);
  let outside = 0;
  const quad = quadStiffness(width / parts, height / parts, tension);
  for (let b = 0; b < parts; b++) {
    for (let a = 0; a < parts; a++) {
      const corners = [[a, b], [a + 1, b], [a + 1, b + 1], [a, b + 1]] as const;
      corners.forEach(([ar, br], r) => corners.forEach(([ac, bc], c) => {
        const [i, j, k] = [number(ar, br), number(ac, bc), quad[4 * r + c]!];
        if (i >= 0 && j >= 0) {
          if (j <= i) addEntry(matrix, i, j, k);
        } else if (i >= 0) z[i]! -= k * value(ac, bc);
        else if (j < 0) outside += (k * value(ar, br) * value(ac, bc)) / 2;
      }));
    }
  }
  const load = z.slice();
  solveFactored(factorise(matrix), z);
  return outside - load.reduce((sum, f, i) => sum + (f * z[i]!) / 2, 0);
}

const wavy: Shape = (x, y) => 3 * Math.sin((2.1 * x) / width + 0.3) * Math.cos((1.7 * y) / height) + (4 * x * y * y) / (width * height * height) - (2 * x * x) / width ** 2;

describe('the skin inside its border', () => {
  it.each([
    ['even pull', { x: 0.2, y: 0.2 }],
    ['uneven pull', { x: 0.31, y: 0.07 }],
    ['hardly any pull one way', { x: 0.002, y: 0.3 }],
  ])('has the energy of a fine grid, extrapolated: %s', (_, tension) => {
    const fine = (4 * gridEnergy(wavy, tension, 48) - gridEnergy(wavy, tension, 24)) / 3;
    const coarse = Math.abs(energyOf(wavy, tension, 4) / fine - 1);
    const finer = Math.abs(energyOf(wavy, tension, 8) / fine - 1);
    expect(coarse).toBeLessThan(2e-3);
    expect(finer).toBeLessThan(4e-4);
  });

  it('resists a wave of one edge as the closed form says', () => {
    const tension = { x: 0.12, y: 0.31 };
    const wave: Shape = (x, y) => (y < 1e-2 ? Math.sin((2 * Math.PI * x) / width) : 0);
    const k = ((2 * Math.PI) / width) * Math.sqrt(tension.x / tension.y);
    const exact = ((tension.y * k) / Math.tanh(k * height)) * (width / 4);
    expect(energyOf(wave, tension, 12) / exact).toBeCloseTo(1, 2);
  });

  it('is threads alone where it pulls one way only', () => {
    const shape: Shape = (x, y) => (x > width / 2 ? (3 * y * y) / height ** 2 : y / height);
    // ½ T/a ∫ (3 s² − s)² ds · b on the upright edges, which no other edge touches then.
    expect(energyOf(shape, { x: 0.4, y: 0 }, 8) / ((0.5 * 0.4 * height * (9 / 5 - 6 / 4 + 1 / 3)) / width)).toBeCloseTo(1, 4);
  });

  it('is nothing without pull, and linear in it', () => {
    expect(energyOf(wavy, { x: 0, y: 0 }, 3)).toBe(0);
    expect(energyOf(wavy, { x: 0.6, y: 0.3 }, 3) / energyOf(wavy, { x: 0.2, y: 0.1 }, 3)).toBeCloseTo(3, 10);
  });

  it('costs a tilted plane and a flat twist exactly what they cost, however few nodes', () => {
    const tension = { x: 0.23, y: 0.11 };
    const plane: Shape = (x, y) => 5 + 0.02 * x - 0.03 * y;
    expect(energyOf(plane, tension, 1) / (0.5 * width * height * (tension.x * 0.02 ** 2 + tension.y * 0.03 ** 2))).toBeCloseTo(1, 9);
    const twist: Shape = (x, y) => 1e-4 * x * y;
    const exact = 0.5 * 1e-8 * ((tension.x * width * height ** 3) / 3 + (tension.y * height * width ** 3) / 3);
    for (const parts of [1, 5]) expect(energyOf(twist, tension, parts) / exact).toBeCloseTo(1, 7);
  });
});
