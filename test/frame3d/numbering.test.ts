/** How unknowns are numbered and what ties them: an order of points on graphs that can be seen through, and the groups of each kind of spring. */
import { describe, expect, it, vi } from 'vitest';
import { eulerBernoulli, prepare, solvePrepared, timoshenko } from '../../src/frame3d/index.js';
import type { Member, Prepared, Spring, Structure } from '../../src/frame3d/index.js';
import { numberEquations } from '../../src/frame3d/equations.js';
import { graphOf, narrowOrder } from '../../src/frame3d/ordering.js';

type Edges = readonly (readonly [number, number])[];
const orderOf = (count: number, edges: Edges): number[] => narrowOrder(graphOf(count, edges.flat()));
const neighbours = (edges: Edges, p: number): number[] => edges.flatMap(([a, b]) => (a === p ? [b] : b === p ? [a] : []));

/** Steps from a point to every other that it is joined to. */
function steps(count: number, edges: Edges, from: number): number[] {
  const away = new Array<number>(count).fill(Infinity);
  away[from] = 0;
  for (let round = 0; round < count; round++) for (const [a, b] of edges) {
    away[b] = Math.min(away[b]!, away[a]! + 1);
    away[a] = Math.min(away[a]!, away[b]! + 1);
  }
  return away;
}

describe('an order of points that keeps neighbours close', () => {
  it('is the line itself, from the end that is found last', () => {
    const line = [7, 2, 9, 0, 4, 1, 8, 3, 6, 5];
    const edges = line.slice(1).map((p, i) => [line[i]!, p] as const);
    expect([line, line.toReversed()]).toContainEqual(orderOf(10, edges));
  });

  it('sweeps from a point as far out as any: level by level, children of earlier points first, of one point those with fewest neighbours first', () => {
    // A tree of long and short arms, its points numbered without sense.
    const edges: Edges = [[5, 11], [11, 2], [2, 8], [8, 0], [11, 6], [6, 13], [13, 3], [3, 10], [10, 1], [6, 9], [9, 4], [9, 7], [13, 12], [12, 14], [12, 15], [12, 16], [13, 17]];
    const count = 18;
    const order = orderOf(count, edges).toReversed();
    expect(order.toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
    const far = (p: number): number => Math.max(...steps(count, edges, p));
    expect(far(order[0]!)).toBe(Math.max(...order.map(far)));
    const place = (p: number): number => order.indexOf(p);
    const parent = (p: number): number => Math.min(...neighbours(edges, p).map(place));
    const degree = (p: number): number => neighbours(edges, p).length;
    for (let i = 2; i < count; i++) {
      const [before, now] = [order[i - 1]!, order[i]!];
      expect(parent(before)).toBeLessThanOrEqual(parent(now));
      if (parent(before) === parent(now)) expect(degree(before)).toBeLessThanOrEqual(degree(now));
    }
  });

  it('takes one part after the other, points by themselves too', () => {
    const edges: Edges = [[6, 1], [1, 4], [5, 2], [2, 0]];
    const order = orderOf(8, edges);
    expect(order).toEqual([7, 3, ...order.slice(2, 5), ...order.slice(5)]);
    expect([[6, 1, 4], [4, 1, 6]]).toContainEqual(order.slice(2, 5));
    expect([[5, 2, 0], [0, 2, 5]]).toContainEqual(order.slice(5));
    expect([orderOf(0, []), orderOf(1, [])]).toEqual([[], [0]]);
  });
});

const bar = (i: number, j: number, more: Partial<Member> = {}): Member => ({ id: `M${i}${j}`, i, j, E: 9000, G: 600, A: 722, Iy: 86880, Iz: 21720, J: 59604, zref: [0, 0, 1], ...more });
const all = { ux: 0, uy: 0, uz: 0, rx: 0, ry: 0, rz: 0 };
const points = [[0, 0], [700, 60], [700, 60], [900, 800]].map(([x, y], n) => ({ id: `N${n}`, x: x!, y: y!, z: 0 }));
const withSpring = (k: Spring['k'], more: Partial<Structure> = {}): Structure => ({ nodes: points, members: [bar(0, 1), bar(2, 3)], springs: [{ i: 1, j: 2, k }], supports: [{ node: 0, fix: all }, { node: 3, fix: all }], ...more });

describe('what a spring ties', () => {
  const turns = [[9, 10, 15, 16]];
  it.each<[string, Spring['k'], number[][]]>([
    ['nothing that is not there', [0, 0, 0, 0, 0, 0], []],
    ['each shift to itself', [0.5, 0, 0, 0, 0, 0], [[6, 12]]], ['along y', [0, 0.5, 0, 0, 0, 0], [[7, 13]]], ['along z', [0, 0, 0.5, 0, 0, 0], [[8, 14]]],
    ['a turn about x to those about x and y', [0, 0, 0, 0.5, 0, 0], turns], ['about y', [0, 0, 0, 0, 0.5, 0], turns],
    ['a turn about z to itself, and under load to those about x and y', [0, 0, 0, 0, 0, 0.5], [[11, 17], ...turns]],
  ])('%s', (_, k, expected) => {
    // Two posts that act on nothing else: their own four groups come first.
    const post = (i: number) => bar(i, i + 2);
    const nodes = [0, 1, 2, 3].map((n) => ({ id: `${n}`, x: n % 2, y: n < 2 ? 0 : 50, z: 0 }));
    const members = [{ ...post(0) }, { ...post(1) }];
    const axes = members.map(() => ({ length: 50, R: Float64Array.of(0, 1, 0, -1, 0, 0, 0, 0, 1) }));
    const { groups } = numberEquations({ nodes, members, springs: [{ i: 1, j: 2, k }], supports: [] }, axes, [0, 1, 2, 3]);
    expect(groups).toHaveLength(4 + expected.length);
    const movement = (unknown: number): number => numberEquations({ nodes, members, springs: [{ i: 1, j: 2, k }], supports: [] }, axes, [0, 1, 2, 3]).of.indexOf(unknown);
    expect(groups.slice(4).map((group) => group.map(movement))).toEqual(expected);
  });
});

describe('structures prepared one after the other', () => {
  type Prepare = typeof prepare;
  const ready = (structure: Structure, by: Prepare = prepare): Prepared => {
    const answer = by(structure, timoshenko);
    if (!answer.stable) throw new Error('unstable');
    return answer.prepared;
  };
  /** As a program does that has prepared nothing before. */
  const afresh = async (structure: Structure): Promise<Prepared> => {
    vi.resetModules();
    return ready(structure, (await import('../../src/frame3d/assemble.js')).prepare);
  };
  const moved = (prepared: Prepared): number[] => [...solvePrepared(prepared, { nodes: [{ node: 2, force: [3, -4, 5], moment: [100, 200, -300] }], members: [] }).u];
  const soft: Spring['k'] = [40, 50, 60, 7e5, 8e5, 9e5];
  const apart = (at: (point: (typeof points)[number], n: number) => object): Structure => withSpring(soft, { nodes: points.map((point, n) => ({ ...point, ...at(point, n) })) });

  it.each<[string, Structure]>([
    ['springs of another stiffness', withSpring([4, 500, 66, 7e6, 8e4, 1e5])],
    ['a node elsewhere', apart((p, n) => (n === 3 ? { y: 801 } : p))],
    ['another section', withSpring(soft, { members: [bar(0, 1), bar(2, 3, { Iz: 30000 })] })],
    ['nodes of other names', apart((_, n) => ({ id: `M${n}` }))],
  ])('share their numbering, and move as made from scratch: %s', async (_, other) => {
    const before = ready(withSpring(soft));
    const now = ready(other);
    expect(now.equations).toBe(before.equations);
    expect(moved(now)).toEqual(moved(await afresh(other)));
  });

  const free = { node: 3, fix: { ux: 0, uy: 0, uz: 0, rx: 0, ry: 0 } };
  it.each<[string, Structure]>([
    ['a spring that is there now', withSpring([40, 50, 60, 7e5, 8e5, 0])],
    ['a spring that is rigid now', withSpring([Infinity, 50, 60, 7e5, 8e5, 9e5])],
    ['another support', withSpring(soft, { supports: [{ node: 0, fix: all }, free] })],
    ['the same movement of another node held', withSpring(soft, { supports: [{ node: 1, fix: all }, { node: 3, fix: all }] })],
    ['a support that settles', withSpring(soft, { supports: [{ node: 0, fix: all }, { node: 3, fix: { ...all, uy: 2 } }] })],
    ['members between others', withSpring(soft, { members: [bar(0, 2), bar(1, 3)] })],
    ['a member out of the plane of the others', apart((p, n) => (n === 3 ? { z: 90 } : p))],
    ['springs between others', { ...withSpring(soft), springs: [{ i: 1, j: 3, k: soft }, { i: 2, j: 3, k: soft }] }],
    ['a point more', withSpring(soft, { nodes: [...points, { id: 'N4', x: 5, y: 6, z: 0 }], supports: [{ node: 0, fix: all }, { node: 3, fix: all }, { node: 4, fix: all }] })],
  ])('number anew where something else is joined, lies otherwise or is held: %s', async (_, other) => {
    const before = withSpring(soft);
    for (const [now, earlier] of [[other, before], [before, other]] as const) {
      const like = ready(earlier);
      const own = ready(now);
      expect(own.equations).not.toBe(like.equations);
      expect(own.equations.key).not.toEqual(like.equations.key);
      expect(moved(own)).toEqual(moved(await afresh(now)));
    }
  });

  it('take a stiffness below nothing for none, and never for a rigid one', () => {
    const rigid = ready(withSpring([40, 50, 60, 7e5, 0, Infinity]));
    const below = ready(withSpring([40, 50, 60, 7e5, 1, -1]));
    expect(below.equations).toBe(ready(withSpring([40, 50, 60, 7e5, 1, 0])).equations);
    expect(below.equations).not.toBe(rigid.equations);
  });

  it('are forgotten after a dozen of other kinds, no sooner, and come out the same', () => {
    const chain = (count: number): Structure => ({ nodes: Array.from({ length: count + 1 }, (_, n) => ({ id: `${n}`, x: 70 * n, y: 3 * n * n, z: 0 })), members: Array.from({ length: count }, (_, n) => bar(n, n + 1)), springs: [], supports: [{ node: 0, fix: all }] });
    // Whatever was prepared before is forgotten first.
    for (let count = 15; count <= 26; count++) ready(chain(count));
    const first = ready(chain(2)).equations;
    for (let count = 3; count <= 13; count++) ready(chain(count));
    expect(ready(chain(2)).equations).toBe(first);
    ready(chain(14));
    const again = ready(chain(2)).equations;
    expect(again).not.toBe(first);
    expect(again).toEqual(first);
  });

  it('its members in a row share one matrix where they are alike in all, and only there', () => {
    const nodes = [0, 1, 2, 3, 4].map((n) => ({ id: `${n}`, x: 100 * n, y: n > 3 ? 1e-4 : 0, z: 0 }));
    const shared = (...members: Member[]): boolean[] => {
      const answer = prepare({ nodes, members, springs: [], supports: nodes.map((_, node) => ({ node, fix: all })) }, eulerBernoulli);
      if (!answer.stable) throw new Error('unstable');
      const { elements } = answer.prepared;
      return elements.slice(1).map((element, e) => element.k === elements[e]!.k);
    };
    expect(shared(bar(0, 1), bar(1, 2), bar(2, 3))).toEqual([true, true]);
    expect(shared(bar(0, 1), bar(1, 2), bar(2, 3), bar(3, 4))).toEqual([true, true, false]);
    expect(shared(bar(0, 1), bar(1, 3), bar(3, 2))).toEqual([false, false]);
    for (const more of [{ E: 9001 }, { G: 601 }, { A: 723 }, { Iy: 86881 }, { Iz: 21721 }, { J: 59605 }, { releases: { i: ['ry'] as const } }, { zref: [0, 1, 0] as const }])
      expect(shared(bar(0, 1), bar(1, 2, more), bar(2, 3))).toEqual([false, false]);
  });
});
