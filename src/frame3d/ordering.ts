/** The neighbours of every point of a graph. */
export type Graph = readonly (readonly number[])[];

/** A graph of `count` points from its edges, given as consecutive pairs. */
export function graphOf(count: number, edges: readonly number[]): Graph {
  const graph = Array.from({ length: count }, (): number[] => []);
  for (let e = 0; e < edges.length; e += 2) {
    graph[edges[e]!]!.push(edges[e + 1]!);
    graph[edges[e + 1]!]!.push(edges[e]!);
  }
  return graph;
}

/** Breadth-first sweep from `from`, neighbours by rising degree; appends to `order` and returns the depth reached. */
function sweep(graph: Graph, from: number, seen: Set<number>, order: number[]): number {
  let depth = 0;
  seen.add(from);
  for (let level = [from]; level.length > 0; depth++) {
    order.push(...level);
    level = level.flatMap((p) =>
      graph[p]!.filter((q) => !seen.has(q) && seen.add(q)).sort((a, b) => graph[a]!.length - graph[b]!.length),
    );
  }
  return depth;
}

/**
 * Orders the points so that neighbours get numbers close together (reverse Cuthill–McKee, each part of
 * the graph swept from a point far out), which keeps the band of a matrix on this graph narrow.
 */
export function narrowOrder(graph: Graph): number[] {
  const done = new Set<number>();
  const order: number[] = [];
  graph.forEach((_, p) => {
    if (done.has(p)) return;
    let from = p;
    let depth = 0;
    for (let round = 0; round < 4; round++) {
      const trial: number[] = [];
      const reached = sweep(graph, from, new Set(done), trial);
      if (reached <= depth) break;
      depth = reached;
      from = trial[trial.length - 1]!;
    }
    sweep(graph, from, done, order);
  });
  return order.reverse();
}
