/** Eigenvalues of a small symmetric matrix, falling, with eigenvectors: `vectors[r]` belongs to `values[r]`. */
export interface SmallEigen {
  readonly values: readonly number[];
  readonly vectors: readonly Float64Array[];
}

/**
 * Reflects the rows from the last one up until `a` has three diagonals left (Householder): they come into `d` and, below
 * it, `e`; the rows of `v` become the reflected unit vectors.
 */
function tridiagonalise(a: Float64Array[], v: Float64Array[], d: Float64Array, e: Float64Array): void {
  const n = a.length;
  const p = new Float64Array(n);
  for (let i = n - 1; i > 0; i--) {
    const u = a[i]!.slice(0, i);
    const row = Math.hypot(...u);
    const rest = Math.hypot(...u.subarray(0, i - 1));
    e[i] = u[i - 1]!;
    if (!(rest > 1e-16 * row)) continue;
    e[i] = u[i - 1]! > 0 ? -row : row;
    u[i - 1]! -= e[i]!;
    const h = row * (row + Math.abs(a[i]![i - 1]!));
    // a ← H a H with H = 1 − u uᵀ/h on the rows above: a − q uᵀ − u qᵀ.
    let along = 0;
    for (let r = 0; r < i; r++) {
      let sum = 0;
      for (let c = 0; c < i; c++) sum += a[r]![c]! * u[c]!;
      p[r] = sum / h;
      along += p[r]! * u[r]!;
    }
    for (let r = 0; r < i; r++) p[r]! -= (along / (2 * h)) * u[r]!;
    for (let r = 0; r < i; r++) for (let c = 0; c < i; c++) a[r]![c]! -= p[r]! * u[c]! + u[r]! * p[c]!;
    // The rows of v span the same as before: v ← H v.
    for (let c = 0; c < n; c++) {
      let sum = 0;
      for (let r = 0; r < i; r++) sum += u[r]! * v[r]![c]!;
      for (let r = 0; r < i; r++) v[r]![c]! -= (sum / h) * u[r]!;
    }
  }
  for (let i = 0; i < n; i++) d[i] = a[i]![i]!;
}

/**
 * Eigenvalues of the first n × n entries of `rows`, of which the lower triangle is read: three diagonals by reflections,
 * then implicit QL steps with Wilkinson's shift (tred2 and tql2 of EISPACK, memory).
 */
export function symmetricEigen(rows: readonly Float64Array[], n: number): SmallEigen {
  const a = Array.from({ length: n }, (_, i) =>
    Float64Array.from({ length: n }, (_, j) => (j <= i ? rows[i]![j]! : rows[j]![i]!)),
  );
  const v = Array.from({ length: n }, (_, i) => Float64Array.from({ length: n }, (_, j) => (i === j ? 1 : 0)));
  const [d, e] = [new Float64Array(n), new Float64Array(n + 1)];
  tridiagonalise(a, v, d, e);
  for (let l = 0; l < n; l++) {
    for (let round = 0; round < 60; round++) {
      let m = l;
      while (m + 1 < n && Math.abs(e[m + 1]!) > 2 ** -52 * (Math.abs(d[m]!) + Math.abs(d[m + 1]!))) m++;
      if (m === l) break;
      // Between l and m all off the diagonal still counts: one sweep from m down to l, e[i + 1] between i and i + 1.
      const half = (d[l + 1]! - d[l]!) / (2 * e[l + 1]!);
      let g = d[m]! - d[l]! + e[l + 1]! / (half + (half < 0 ? -1 : 1) * Math.hypot(half, 1));
      let [s, c, moved] = [1, 1, 0];
      for (let i = m - 1; i >= l; i--) {
        const f = s * e[i + 1]!;
        const b = c * e[i + 1]!;
        const r = Math.hypot(f, g);
        e[i + 2] = i + 1 === m ? 0 : r;
        s = r > 0 ? f / r : 0;
        c = r > 0 ? g / r : 1;
        const from = d[i + 1]! - moved;
        const turned = (d[i]! - from) * s + 2 * c * b;
        moved = s * turned;
        d[i + 1] = from + moved;
        g = c * turned - b;
        const one = v[i]!;
        const two = v[i + 1]!;
        for (let k = 0; k < n; k++) {
          const x = one[k]!;
          const y = two[k]!;
          one[k] = c * x - s * y;
          two[k] = s * x + c * y;
        }
      }
      d[l]! -= moved;
      e[l + 1] = g;
    }
  }
  const order = Array.from({ length: n }, (_, i) => i).sort((p, q) => d[q]! - d[p]!);
  return { values: order.map((i) => d[i]!), vectors: order.map((i) => v[i]!) };
}
