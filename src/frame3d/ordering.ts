/** Neighbours of every point of a graph: those of point p are `list[offset[p]] … list[offset[p + 1] - 1]`. */
export interface Graph {
  readonly offset: Int32Array;
  readonly list: Int32Array;
}

/** A graph of `count` points from its edges, given as consecutive pairs. */
export function graphOf(count: number, edges: readonly number[]): Graph {
  const offset = new Int32Array(count + 1);
  for (const p of edges) offset[p + 1]!++;
  for (let p = 0; p < count; p++) offset[p + 1]! += offset[p]!;
  const cursor = offset.slice(0, count);
  const list = new Int32Array(edges.length);
  for (let e = 0; e < edges.length; e += 2) {
    const p = edges[e]!;
    const q = edges[e + 1]!;
    list[cursor[p]!++] = q;
    list[cursor[q]!++] = p;
  }
  return { offset, list };
}

/** Breadth-first sweep from `from`, neighbours by rising degree; appends to `order` and returns the depth reached. */
function sweep(graph: Graph, from: number, seen: Uint8Array, order: number[]): number {
  const { offset, list } = graph;
  const degree = (p: number): number => offset[p + 1]! - offset[p]!;
  let head = order.length;
  order.push(from);
  seen[from] = 1;
  let depth = 0;
  while (head < order.length) {
    const levelEnd = order.length;
    depth++;
    for (; head < levelEnd; head++) {
      const p = order[head]!;
      const firstNew = order.length;
      for (let e = offset[p]!; e < offset[p + 1]!; e++) {
        const q = list[e]!;
        if (seen[q]) continue;
        seen[q] = 1;
        let at = order.length;
        order.push(q);
        while (at > firstNew && degree(order[at - 1]!) > degree(q)) {
          order[at] = order[at - 1]!;
          at--;
        }
        order[at] = q;
      }
    }
  }
  return depth;
}

/**
 * Orders the points so that neighbours get numbers close together (reverse Cuthill–McKee, each part of
 * the graph swept from a point far out), which keeps the band of a matrix on this graph narrow.
 */
export function narrowOrder(graph: Graph): number[] {
  const count = graph.offset.length - 1;
  const done = new Uint8Array(count);
  const order: number[] = [];
  for (let p = 0; p < count; p++) {
    if (done[p]) continue;
    let from = p;
    let depth = 0;
    for (let round = 0; round < 4; round++) {
      const trial: number[] = [];
      const reached = sweep(graph, from, done.slice(), trial);
      if (reached <= depth) break;
      depth = reached;
      from = trial[trial.length - 1]!;
    }
    sweep(graph, from, done, order);
  }
  return order.reverse();
}
