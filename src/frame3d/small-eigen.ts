/** Eigenvalues of a small symmetric matrix, falling, with eigenvectors: `vectors[r]` belongs to `values[r]`. */
export interface SmallEigen {
  readonly values: readonly number[];
  readonly vectors: readonly Float64Array[];
}

/** What is left off the diagonal below this share of the largest entry moves no value by more than its square. */
const negligible = 1e-11;

/** Turns lines p and q of an n × n matrix by (c, s): rows, a step being n, or columns, where it is 1. */
function turn(m: Float64Array, n: number, step: number, p: number, q: number, c: number, s: number): void {
  const along = step === 1 ? n : 1;
  for (let k = 0, i = p * step, j = q * step; k < n; k++, i += along, j += along) {
    const x = m[i]!;
    const y = m[j]!;
    m[i] = c * x - s * y;
    m[j] = s * x + c * y;
  }
}

/** Cyclic Jacobi rotations on a copy of the first n × n entries of `rows`; converges for every symmetric matrix. */
export function symmetricEigen(rows: readonly Float64Array[], n: number): SmallEigen {
  const a = new Float64Array(n * n);
  const v = new Float64Array(n * n);
  let size = 0;
  for (let i = 0; i < n; i++) {
    v[i * n + i] = 1;
    for (let j = 0; j <= i; j++) {
      const x = rows[i]![j]!;
      a[i * n + j] = a[j * n + i] = x;
      size = Math.max(size, Math.abs(x));
    }
  }
  for (let round = 0; round < 60; round++) {
    let turned = false;
    for (let p = 0; p < n; p++) {
      for (let q = p + 1; q < n; q++) {
        const off = a[p * n + q]!;
        if (Math.abs(off) <= negligible * size) continue;
        turned = true;
        const theta = (a[q * n + q]! - a[p * n + p]!) / (2 * off);
        const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        const c = 1 / Math.sqrt(t * t + 1);
        turn(a, n, n, p, q, c, t * c);
        turn(a, n, 1, p, q, c, t * c);
        turn(v, n, n, p, q, c, t * c);
      }
    }
    if (!turned) break;
  }
  const value = (i: number): number => a[i * n + i]!;
  const order = Array.from({ length: n }, (_, i) => i).sort((p, q) => value(q) - value(p));
  return { values: order.map(value), vectors: order.map((i) => v.subarray(i * n, (i + 1) * n)) };
}
