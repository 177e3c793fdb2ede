/** The skin's parts one by one: shapes of an edge by integration, products on any numbering, both halves of a frame and its tangent. */
import { describe, expect, it } from 'vitest';
import { prepareStretched, secondOrder, solvePrepared, tangentOf, timoshenko } from '../../src/frame3d/index.js';
import { edgeShares } from '../../src/frame3d/edge-shares.js';
import { addThreadProduct, buildMembrane, skinEdges, skinProduct } from '../../src/frame3d/membrane.js';
import type { Membrane } from '../../src/frame3d/membrane.js';
import { addEntry, addProduct, dotSegments, emptyProfile, factorise, partOf, rowsOf, solveFactored } from '../../src/frame3d/profile-matrix.js';
import { threadsUnder } from '../../src/frame3d/threads.js';
import { meshFrame } from '../../src/solve/frame-mesh.js';
import { frameLoads } from '../../src/solve/mesh-statics.js';
import { frameOf } from './frame-shapes.js';

/** ∫₀¹ f ds by Gauss’ five points on many pieces. */
function integral(f: (s: number) => number): number {
  const [a, b] = [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3];
  const [wa, wb] = [(322 + 13 * Math.sqrt(70)) / 900, (322 - 13 * Math.sqrt(70)) / 900];
  let sum = 0;
  const pieces = 200;
  for (let p = 0; p < pieces; p++) for (const [x, w] of [[0, 128 / 225], [a, wa], [-a, wa], [b, wb], [-b, wb]] as const) sum += (w / 2) * f((p + (1 + x) / 2) / pieces);
  return sum / pieces;
}

describe('the shape of an edge', () => {
  const [at, length, terms] = [[0, 0.2, 0.65, 1], 400, 7];
  /** Cubic between nodes, one of the numbers of the nodes being 1. */
  const shape = (c: number) => (s: number): number => {
    let e = 0;
    while (e + 2 < at.length && s > at[e + 1]!) e++;
    const part = at[e + 1]! - at[e]!;
    const [t, h] = [(s - at[e]!) / part, part * length];
    const own = [1 - 3 * t * t + 2 * t ** 3, h * (t - 2 * t * t + t ** 3), 3 * t * t - 2 * t ** 3, h * (t ** 3 - t * t)];
    return own[c - 2 * e] ?? 0;
  };
  const shares = edgeShares(at, length, terms);

  it.each(Array.from({ length: 8 }, (_, c) => [c]))('per unit of number %i: its sines and its moments are integrals of what is more than straight', (c) => {
    const straight = (s: number): number => (c === 0 ? 1 - s : c === 6 ? s : 0);
    const bulge = (s: number): number => shape(c)(s) - straight(s);
    expect([shares.count, shares.terms]).toEqual([8, terms]);
    for (let n = 1; n <= terms; n++) expect(shares.sines[(n - 1) * 8 + c]! / length).toBeCloseTo((2 * integral((s) => bulge(s) * Math.sin(n * Math.PI * s))) / length, 8);
    expect(shares.falling[c]! / length).toBeCloseTo(integral((s) => (1 - s) * bulge(s)) / length, 8);
    expect(shares.rising[c]! / length).toBeCloseTo(integral((s) => s * bulge(s)) / length, 8);
  });
});

describe('what skin and threads push, on unknowns numbered from any one', () => {
  it('threads: by the difference of their ends, one of them perhaps held', () => {
    const membrane = { threads: [{ from: 3, to: 5, k: 2 }, { from: 4, to: -1, k: 7 }, { from: -1, to: 3, k: 11 }, { from: -1, to: -1, k: 100 }] } as unknown as Membrane;
    const y = Float64Array.of(0.5, 0, 0);
    addThreadProduct(membrane, 3, Float64Array.of(10, 30, 17), y);
    expect([...y]).toEqual([0.5 + 2 * (10 - 17) + 11 * 10, 7 * 30, -2 * (10 - 17)]);
    const whole = Float64Array.of(0, 0);
    addThreadProduct({ threads: [{ from: 0, to: 1, k: 3 }, { from: 1, to: -1, k: 5 }, { from: -1, to: 0, k: 9 }] } as unknown as Membrane, 0, Float64Array.of(4, 6), whole);
    expect([...whole]).toEqual([3 * (4 - 6) + 9 * 4, -3 * (4 - 6) + 5 * 6]);
  });

  it('skin: by its matrix between what it ties, in its own order', () => {
    const skin = emptyProfile(new Int32Array(2));
    for (const [i, j, value] of [[0, 0, 2], [1, 0, 3], [1, 1, 5]] as const) addEntry(skin, i, j, value);
    const y = Float64Array.of(1, 1, 1);
    skinProduct({ tied: Int32Array.of(6, 4), skin, threads: [] }, 4)(Float64Array.of(10, 99, 20), y);
    expect([...y]).toEqual([1 + 3 * 20 + 5 * 10, 1, 1 + 2 * 20 + 3 * 10]);
  });

  it('a thread carries the pull of its share of the edge over its length, half a share at the ends', () => {
    const border = { width: 900, height: 500, along_x: [0, 0.3, 1], along_y: [0, 0.6, 1], bottom: [1, 2, 3], top: [4, 5, 6], left: [7, 8, 9], right: [10, 11, 12] };
    expect(threadsUnder(border, { x: 0.2, y: 0.3 })).toEqual([
      ...[[7, 10, 0.3], [8, 11, 0.5], [9, 12, 0.2]].map(([from, to, share]) => ({ from, to, freedom: 1, k: expect.closeTo((0.2 * share! * 500) / 900, 12) })),
      ...[[1, 4, 0.15], [2, 5, 0.5], [3, 6, 0.35]].map(([from, to, share]) => ({ from, to, freedom: 0, k: expect.closeTo((0.3 * share! * 900) / 500, 12) })),
    ]);
  });
});

describe('a matrix by rows', () => {
  const n = 5;
  const matrix = emptyProfile(Int32Array.of(0, 0, 2, 2, 2));
  for (const [i, j, v] of [[0, 0, 4], [1, 0, -1], [1, 1, 5], [2, 2, 6], [3, 2, 1.5], [3, 3, 7], [4, 2, -2], [4, 3, 0.5], [4, 4, 8]] as const) addEntry(matrix, i, j, v);

  it('adds an entry told either way round, and multiplies from the upper half as from the lower', () => {
    addEntry(matrix, 3, 4, 0.25);
    addEntry(matrix, 4, 3, -0.25);
    const y = Float64Array.of(100, 0, 0, 0, 0);
    addProduct(matrix, Float64Array.of(1, 2, 3, 4, 5), y);
    expect([...y]).toEqual([100 + 4 - 2, -1 + 10, 18 + 6 - 10, 4.5 + 28 + 2.5, -6 + 2 + 40]);
  });

  it('a part that nothing ties to those before stands for itself', () => {
    const part = partOf(rowsOf(matrix, 2, 5), matrix);
    const y = new Float64Array(3);
    addProduct(part, Float64Array.of(3, 4, 5), y);
    expect([part.n, ...y]).toEqual([3, 14, 35, 36]);
    const factors = factorise(part);
    expect([factors.negative, factors.vanished]).toEqual([0, []]);
    const b = y.slice();
    // The factors hold the values of the whole; only those of the part are its own.
    solveFactored(factors, b);
    [3, 4, 5].forEach((value, i) => expect(b[i]).toBeCloseTo(value, 12));
  });

  it('counts negative pivots, and leaves the matrix alone unless it may be overwritten', () => {
    const before = [...matrix.values];
    const turned = emptyProfile(matrix.first);
    turned.values.set(matrix.values.map((v) => -v));
    expect([factorise(matrix).negative, factorise(turned).negative]).toEqual([0, n]);
    expect([...matrix.values]).toEqual(before);
    factorise(turned, true);
    expect([...turned.values]).not.toEqual(before.map((v) => -v));
    const saddle = emptyProfile(Int32Array.of(0, 0));
    for (const [i, j, v] of [[0, 0, 1], [1, 0, 2], [1, 1, 1]] as const) addEntry(saddle, i, j, v);
    expect(factorise(saddle).negative).toBe(1);
    // A millionth of its diagonal is left of this pivot, a ten-billionth of a thousandth of the next.
    const worn = (left: number) => { const m = emptyProfile(Int32Array.of(0, 0)); [[0, 0, 1], [1, 0, 1], [1, 1, 1 + left]].forEach(([i, j, v]) => addEntry(m, i!, j!, v!)); return factorise(m).vanished; };
    expect([worn(1e-6), worn(3e-12), worn(3e-13)]).toEqual([[], [], [1]]);
  });

  it('factors rows that begin anywhere, two columns of which are taken at once: what it solves is what was multiplied', () => {
    // Row starts that rise and fall, rows of nothing but their diagonal among them, of an even and an odd number of rows.
    for (const n of [1, 2, 3, 11, 24]) for (let seed = 0; seed < 20; seed++) {
      const draw = (i: number): number => (Math.sin(12.9898 * i + 78.233 * seed + n) * 43758.5453) % 1;
      const rows = emptyProfile(Int32Array.from({ length: n }, (_, i) => Math.max(0, i - Math.floor(Math.abs(draw(i)) * 9))));
      for (let i = 0; i < n; i++) for (let j = rows.first[i]!; j <= i; j++) addEntry(rows, i, j, i === j ? 9 + i : draw(40 * i + j));
      const x = Float64Array.from({ length: n }, (_, i) => 1 + draw(7 * i));
      const b = new Float64Array(n);
      addProduct(rows, x, b);
      solveFactored(factorise(rows), b);
      b.forEach((value, i) => expect(value).toBeCloseTo(x[i]!, 12));
    }
  });

  it('sums products of stretches of any length from any place', () => {
    const [a, b] = [Float64Array.of(9, 1, 2, 3, 4, 5), Float64Array.of(8, 8, 10, 20, 30, 40, 50)];
    expect([0, 1, 2, 3, 4, 5].map((count) => dotSegments(a, 1, b, 2, count))).toEqual([0, 10, 50, 140, 300, 550]);
  });
});

describe('both halves of a frame with its skin', () => {
  const shape = frameOf({ width: 1000, height: 700, w: 38, d: 25, give: { plane: 9, out: 4, twist: 2 }, crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 22 }] });
  const mesh = meshFrame(shape, [], { bar: 3, crossbar: 2, brace: 2 }, timoshenko);
  const answer = prepareStretched(mesh.structure, mesh.border, timoshenko);
  if (!answer.stable) throw new Error('unstable');
  const { stretched } = answer;
  const { equations, stiffness } = stretched.prepared;
  const pull = { x: 0.02, y: 0.03 };
  const second = secondOrder(stretched, solvePrepared(stretched.prepared, frameLoads(shape, mesh, pull, [], false)), pull);

  it('number every unknown once, the plane’s own first, and out of it those that the skin ties last', () => {
    const { inPlane, outOfPlane } = stretched;
    expect([inPlane.from, inPlane.to, outOfPlane.to]).toEqual([0, outOfPlane.from, equations.count]);
    for (const { place, from, to } of [inPlane, outOfPlane]) expect([...place].sort((a, b) => a - b)).toEqual(Array.from({ length: to - from }, (_, i) => i));
    equations.of.forEach((unknown, m) => { if (unknown >= 0) expect(unknown < inPlane.to).toBe([0, 1, 5].includes(m % 6)); });
    const tied = [...skinEdges(mesh.border, equations.of).tied];
    const places = tied.map((unknown) => outOfPlane.place[unknown - outOfPlane.from]!);
    expect(Math.min(...places)).toBe(outOfPlane.to - outOfPlane.from - tied.length);
    // What lies inside stands before every turn of a node along the border.
    const border = new Set([mesh.border.bottom, mesh.border.top, mesh.border.left, mesh.border.right].flat());
    const at = (keep: (node: number) => boolean) => Array.from(equations.of).flatMap((unknown, m) => (unknown >= outOfPlane.from && keep(Math.floor(m / 6)) && !tied.includes(unknown) ? [outOfPlane.place[unknown - outOfPlane.from]!] : []));
    const outer = at((node) => border.has(node));
    const inner = at((node) => !border.has(node)).filter((place) => !outer.includes(place));
    expect(Math.max(...inner)).toBeLessThan(Math.min(...outer));
  });

  it('under its pull a push moves it as K + K_g + K_m say, by residual; and it stands where that is positive', () => {
    const tangent = tangentOf(stretched, second);
    expect(tangent.stands).toBe(true);
    for (const half of [stretched.inPlane, stretched.outOfPlane]) {
      const b = Float64Array.from({ length: equations.count }, (_, i) => (i >= half.from && i < half.to ? Math.sin(3 * i + 1) : 0));
      const x = b.slice();
      tangent.solve(x);
      const y = new Float64Array(equations.count);
      addProduct(stiffness, x, y);
      addProduct(second.geometric, x, y);
      skinProduct(second.membrane, 0)(x, y);
      addThreadProduct(second.membrane, 0, x, y);
      // The twist between nodes settles by itself: c (push · x)/k less.
      const { at, unknowns, pushes, k } = second.midTwists;
      k.forEach((stiff, e) => {
        let moved = 0;
        for (let p = at[e]!; p < at[e + 1]!; p++) moved += pushes[p]! * x[unknowns[p]!]!;
        for (let p = at[e]!; p < at[e + 1]!; p++) y[unknowns[p]!]! -= (pushes[p]! * moved) / stiff;
      });
      y.forEach((value, i) => expect(Math.abs(value - b[i]!)).toBeLessThan(1e-10));
    }
    const far = secondOrder(stretched, solvePrepared(stretched.prepared, frameLoads(shape, mesh, { x: 40, y: 60 }, [], false)), { x: 40, y: 60 });
    expect([tangentOf(stretched, far).stands, tangentOf(stretched, null).stands]).toEqual([false, true]);
    const alone = Float64Array.from({ length: equations.count }, (_, i) => Math.cos(i));
    const pushed = alone.slice();
    tangentOf(stretched, null).solve(pushed);
    const back = new Float64Array(equations.count);
    addProduct(stiffness, pushed, back);
    back.forEach((value, i) => expect(Math.abs(value - alone[i]!)).toBeLessThan(1e-6));
  });

  it('moves as far under a push in its plane, whichever of two sides its threads are counted from', () => {
    const { bottom, top, left, right } = mesh.border;
    const border = { ...mesh.border, bottom: top, top: bottom, left: right, right: left };
    const turned = prepareStretched(mesh.structure, border, timoshenko);
    if (!turned.stable) throw new Error('unstable');
    const other = secondOrder(turned.stretched, solvePrepared(turned.stretched.prepared, frameLoads(shape, mesh, pull, [], false)), pull);
    // The unknown that comes first is the second end of a thread, and the first end when they change places.
    const ends = ({ membrane }: typeof second) => membrane.threads.filter(({ from, to }) => from === 0 || to === 0);
    expect([ends(second)[0]?.to, ends(other)[0]?.from]).toEqual([0, 0]);
    const [one, two] = [0, 0].map(() => Float64Array.from({ length: equations.count }, (_, i) => (i < stretched.inPlane.to ? Math.sin(3 * i + 1) : 0)));
    tangentOf(stretched, second).solve(one!);
    tangentOf(turned.stretched, other).solve(two!);
    one!.forEach((value, i) => expect(Math.abs(two![i]! - value)).toBeLessThan(1e-9));
  });

  it('carry the skin of their own border and pull, whatever skins were asked for before', () => {
    const solution = solvePrepared(stretched.prepared, frameLoads(shape, mesh, pull, [], false));
    const { border } = stretched;
    const moved = (at: readonly number[]): number[] => at.map((s, n) => (n === 1 ? s * 1.01 : s));
    const borders = [border, { ...border, width: 1001 }, { ...border, height: 701 }, { ...border, along_x: moved(border.along_x) }, { ...border, along_y: moved(border.along_y) }];
    const pulls = [pull, { x: 0.021, y: 0.03 }, { x: 0.02, y: 0.031 }];
    const asked = [...borders.map((one) => [one, pull] as const), ...pulls.map((one) => [border, one] as const)];
    for (const [one, tension] of [...asked, ...asked.toReversed()]) {
      for (let again = 0; again < 2; again++) expect(secondOrder({ ...stretched, border: one }, solution, tension).membrane).toEqual(buildMembrane(one, tension, equations));
    }
  });

  it('carry the threads of the nodes of their own border, where another ties the same unknowns out of the plane', () => {
    const at = [[0, 0], [600, 0], [0, 400], [600, 400], [600, 400]];
    const nodes = at.map(([x, y], n) => ({ id: `${n}`, x: x!, y: y!, z: 0 }));
    const members = [[0, 1], [1, 3], [2, 3], [0, 2]].map(([i, j], n) => ({ id: `${n}`, i: i!, j: j!, E: 9000, G: 600, A: 722, Iy: 86880, Iz: 21720, J: 59604, zref: [0, 0, 1] as const }));
    // The fifth node turns with the fourth and stays level with it, but may slide from it in the plane.
    const springs = [{ i: 3, j: 4, k: [5, 6, Infinity, Infinity, Infinity, Infinity] as const }];
    const structure = { nodes, members, springs, supports: [{ node: 0, fix: { ux: 0, uy: 0, uz: 0 } }, { node: 1, fix: { uy: 0, uz: 0 } }, { node: 2, fix: { uz: 0 } }] };
    const size = { width: 600, height: 400, along_x: [0, 1], along_y: [0, 1] };
    const over = (corner: number) => ({ ...size, bottom: [0, 1], top: [2, corner], left: [0, 2], right: [1, corner] });
    for (const border of [over(3), over(4), over(3)]) {
      const made = prepareStretched(structure, border, timoshenko);
      if (!made.stable) throw new Error('unstable');
      const { prepared } = made.stretched;
      const { membrane } = secondOrder(made.stretched, solvePrepared(prepared, { nodes: [], members: [] }), pull);
      expect(membrane).toEqual(buildMembrane(border, pull, prepared.equations));
    }
  });

  it('a frame that does not lie in the plane of its skin is refused', () => {
    const nodes = mesh.structure.nodes.map((node) => ({ ...node, z: 0.1 * node.x }));
    expect(() => prepareStretched({ ...mesh.structure, nodes }, mesh.border, timoshenko)).toThrow(RangeError);
  });
});
