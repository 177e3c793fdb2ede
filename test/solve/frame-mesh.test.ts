import { describe, expect, it } from 'vitest';
import { evenGive } from '../../src/base/joint-give.js';
import { eulerBernoulli, timoshenko } from '../../src/frame3d/index.js';
import { meshFrame } from '../../src/solve/frame-mesh.js';
import { meshLines, nearest } from '../../src/solve/mesh-lines.js';
import { findStability, solveInfluence, solveStatics } from '../../src/solve/analyse-frame.js';
import { frameOf } from '../frame3d/frame-shapes.js';

const fineness = { bar: 8, crossbar: 4, brace: 2 };

describe('mesh lines', () => {
  it('pass through every wanted place, evenly between, no step too long', () => {
    const lines = meshLines([0.37, 0.61], 8);
    expect(lines.at[0]).toBe(0);
    expect(lines.at.at(-1)).toBe(1);
    expect(lines.at[lines.indexOf(0.37)]).toBe(0.37);
    expect(lines.at[lines.indexOf(0.61)]).toBe(0.61);
    const steps = lines.at.slice(1).map((s, i) => s - lines.at[i]!);
    expect(Math.max(...steps)).toBeLessThanOrEqual(1 / 8 + 1e-9);
    expect(Math.min(...steps)).toBeGreaterThan(1 / 16);
  });

  it('places nearer than can be told apart share one line, the earlier keeping its place', () => {
    const lines = meshLines([0.5, 0.5 + nearest / 2, 0.5 + 3 * nearest, nearest / 3, 1.2], 4);
    expect(lines.indexOf(0.5)).toBe(lines.indexOf(0.5 + nearest / 2));
    expect(lines.indexOf(0.5)).not.toBe(lines.indexOf(0.5 + 3 * nearest));
    expect(lines.at[lines.indexOf(0.5)]).toBe(0.5);
    expect(lines.indexOf(nearest / 3)).toBe(0);
    expect(lines.indexOf(1.2)).toBe(lines.at.length - 1);
    expect([lines.at[0], lines.at.at(-1)]).toEqual([0, 1]);
    expect(() => lines.indexOf(0.123)).toThrow(RangeError);
  });
});

describe('a frame cut into elements', () => {
  const words = { width: 1300, height: 900, w: 38, d: 32, give: 4, crossbarGive: 6, brace: { leg: 200, w: 38, d: 19 } };
  const crossbars = [
    { runs: 'upright', at: 0.3, w: 30, d: 20 },
    { runs: 'level', at: 0.6, w: 30, d: 20 },
    { runs: 'upright', at: 0.7, w: 30, d: 20 },
  ] as const;
  const mesh = meshFrame(frameOf({ ...words, crossbars }), [], fineness, timoshenko);
  const at = (n: number): { x: number; y: number } => mesh.structure.nodes[n]!;

  it('runs bars from left to right and from bottom to top, over the whole span', () => {
    expect(at(mesh.corners['top-right'])).toMatchObject({ x: 1262, y: 862 });
    expect(mesh.bars.top.along).toEqual([1, 0]);
    expect(mesh.bars.right.along).toEqual([0, 1]);
    for (const bar of Object.values(mesh.bars)) {
      expect(bar.at[0]).toBe(0);
      expect(bar.at.at(-1)).toBeCloseTo(1, 12);
      expect([...bar.at]).toEqual([...bar.at].sort((p, q) => p - q));
      expect(bar.elements).toHaveLength(bar.nodes.length - 1);
    }
  });

  it('has a joint of three rotational springs at every soft end: E I/(g w), G J/(g w) of the member that ends there', () => {
    expect(mesh.structure.springs).toHaveLength(8 + 6);
    const { top, right } = mesh.bars;
    const of = (node: number): readonly number[] => mesh.structure.springs.find((s) => s.j === node)!.k;
    const { E_MPa: E, G_MPa: G, I_out_mm4, I_plane_mm4, J_mm4, w_mm } = top.section;
    const [twist, out, plane] = [(G * J_mm4) / (4 * w_mm), (E * I_out_mm4) / (4 * w_mm), (E * I_plane_mm4) / (4 * w_mm)];
    expect(of(top.nodes[0]!)).toEqual([Infinity, Infinity, Infinity, twist, out, plane].map((k) => (k === Infinity ? k : expect.closeTo(k, 4))));
    expect(of(right.nodes.at(-1)!)).toEqual([Infinity, Infinity, Infinity, out, twist, plane].map((k) => (k === Infinity ? k : expect.closeTo(k, 4))));
    expect(meshFrame(frameOf({ ...words, give: 0, crossbarGive: 0, crossbars }), [], fineness, timoshenko).structure.springs).toHaveLength(0);
  });

  it('crossbars share a node where they cross, and end on the bars', () => {
    const [first, level, second] = mesh.crossbars;
    const shared = (p: readonly number[], q: readonly number[]): number[] => p.filter((n) => q.includes(n));
    expect(shared(first!.nodes, level!.nodes)).toHaveLength(1);
    expect(shared(second!.nodes, level!.nodes)).toHaveLength(1);
    expect(shared(first!.nodes, second!.nodes)).toHaveLength(0);
    const crossing = at(shared(second!.nodes, level!.nodes)[0]!);
    expect(crossing.x).toBeCloseTo(0.7 * 1262, 9);
    expect(crossing.y).toBeCloseTo(0.6 * 862, 9);
    expect(at(level!.nodes.at(-1)!)).toMatchObject({ x: 1262 });
  });

  it('braces run between the bars at their legs', () => {
    const brace = mesh.braces.find((b) => b.name === 'top-right brace')!;
    expect(at(brace.nodes[0]!)).toMatchObject({ x: expect.closeTo(1262 - 200, 9), y: 862 });
    expect(at(brace.nodes.at(-1)!)).toMatchObject({ x: 1262, y: expect.closeTo(862 - 200, 9) });
    expect(mesh.bars.top.nodes).toContain(brace.nodes[0]);
    expect(mesh.bars.right.nodes).toContain(brace.nodes.at(-1));
  });

  it('gives a point force a node of its own', () => {
    const forces = [{ bar: 'left', at: 0.813, Fx: 1, Fy: 0, Fz: 0 }] as const;
    const hung = meshFrame(frameOf({ ...words, crossbars }), forces, fineness, eulerBernoulli);
    expect(hung.structure.nodes[hung.nodeAt('left', 0.813)]).toMatchObject({ x: 0, y: expect.closeTo(0.813 * 862, 9) });
  });

  it.each([
    ['two uprights in one place', [{ runs: 'upright', at: 0.5 }, { runs: 'upright', at: 0.5 }, { runs: 'level', at: 0.5 }], 200],
    ['two uprights a hair apart', [{ runs: 'upright', at: 0.5 }, { runs: 'upright', at: 0.50001 }, { runs: 'level', at: 0.5 }], 200],
    ['an upright where a brace lands', [{ runs: 'upright', at: 200 / 1262 }, { runs: 'level', at: 0.5 }], 200],
    ['an upright a hair beside a brace', [{ runs: 'upright', at: 200 / 1262 + 1e-5 }, { runs: 'level', at: 0.5 }], 200],
    ['braces that meet in the middle of a bar', [{ runs: 'upright', at: 0.5 }], 431],
    ['braces that pass each other', [{ runs: 'upright', at: 0.2 }], 700],
    ['an upright on the corner itself', [{ runs: 'upright', at: 0 }, { runs: 'level', at: 1 }], 200],
    ['braces next to nothing', [{ runs: 'level', at: 0.4 }], 0.01],
  ] as const)('solves %s', (_, places, leg) => {
    const shape = frameOf({ ...words, brace: { leg, w: 38, d: 19 }, crossbars: places.map((p) => ({ ...p, w: 30, d: 20 })) });
    const pull = { x: 0.2, y: 0.2 };
    const statics = solveStatics(shape, pull);
    expect(statics.crossbars).toHaveLength(places.length);
    for (const bar of Object.values(statics.bars)) expect(Number.isFinite(bar.inward_bow_mm + bar.axial_N + bar.dish_mm)).toBe(true);
    expect(findStability(shape, pull).load_factor).toBeGreaterThan(1);
    expect(solveInfluence(shape, pull)).toHaveLength(3 * (4 + places.length));
  });

  it('two crossbars a hair apart answer as two in one place', () => {
    const factor = (at: number): number =>
      findStability(frameOf({ ...words, crossbars: [{ runs: 'upright', at: 0.4, w: 30, d: 20 }, { runs: 'upright', at, w: 30, d: 20 }] }), { x: 0.2, y: 0.2 }).load_factor!;
    expect(factor(0.4 + 1e-4) / factor(0.4)).toBeCloseTo(1, 6);
    expect(factor(0.4 + 1e-3) / factor(0.4)).toBeCloseTo(1, 2);
  });

  it('refuses what is no frame', () => {
    const good = frameOf({ ...words, crossbars });
    const tests: [Partial<typeof good>, RegExp][] = [
      [{ span_x_mm: 0 }, /positive, finite/],
      [{ span_y_mm: Infinity }, /positive, finite/],
      [{ bars: { ...good.bars, top: { ...good.bars.top, J_mm4: NaN } } }, /positive, finite/],
      [{ corner_give: { ...good.corner_give, 'top-left': evenGive(-1) } }, /give of a joint/],
      [{ crossbars: [{ ...good.crossbars[0]!, at: NaN }] }, /needs a place/],
      [{ braces: [{ ...good.braces[0]!, leg_mm: 862 }] }, /brace leg/],
    ];
    for (const [part, message] of tests) expect(() => solveStatics({ ...good, ...part }, { x: 0.2, y: 0.2 })).toThrow(message);
    expect(() => solveStatics(good, { x: NaN, y: 0 })).toThrow(/pull is a finite number/);
    expect(() => findStability(good, { x: 0.1, y: -0.1 })).toThrow(/pull is a finite number/);
  });
});

describe('braces', () => {
  it.each([1, 2, 5])('are cut into as many pieces of one length as is asked, %i of them, from bar to bar', (brace) => {
    const { structure } = meshFrame(frameOf({ width: 1100, height: 700, w: 38, d: 30, brace: { leg: 180, w: 38, d: 19 } }), [], { bar: 4, crossbar: 2, brace }, timoshenko);
    const askew = structure.members.flatMap(({ i, j }) => {
      const [a, b] = [structure.nodes[i]!, structure.nodes[j]!];
      return a.x !== b.x && a.y !== b.y ? [Math.hypot(b.x - a.x, b.y - a.y)] : [];
    });
    expect(askew).toHaveLength(4 * brace);
    const inner = structure.nodes.flatMap(({ id }) => (/^top-left brace \d/u.test(id) ? [id] : []));
    expect(inner).toEqual(Array.from({ length: brace - 1 }, (_, n) => `top-left brace ${n + 1}`));
    askew.forEach((length) => expect(length).toBeCloseTo((180 * Math.SQRT2) / brace, 9));
  });
});
