/** Nodes and weights on 0..1. */
export interface QuadratureRule {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

/** Gauss–Legendre rule with `count` points on 0..1, exact for polynomials up to degree 2·count − 1. */
export function gaussLegendre(count: number): QuadratureRule {
  const nodes: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < count; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 100; step++) {
      const [value, derivative] = legendre(count, x);
      slope = derivative;
      const move = value / derivative;
      x -= move;
      if (Math.abs(move) < 1e-15) break;
    }
    nodes.push((1 - x) / 2);
    weights.push(1 / ((1 - x * x) * slope * slope));
  }
  return { nodes, weights };
}

/** Legendre polynomial of degree n and its derivative at x. */
function legendre(n: number, x: number): [number, number] {
  let before = 1;
  let here = x;
  for (let k = 2; k <= n; k++) {
    const next = ((2 * k - 1) * x * here - (k - 1) * before) / k;
    before = here;
    here = next;
  }
  return [here, (n * (x * here - before)) / (x * x - 1)];
}
