/** Eigenvalues of a small symmetric matrix, falling, with eigenvectors: `vectors[r]` belongs to `values[r]`. */
export interface SmallEigen {
  readonly values: readonly number[];
  readonly vectors: readonly Float64Array[];
}

/** What is left off the diagonal below this share of the largest entry moves no value by more than its square. */
const negligible = 1e-11;

/** Cyclic Jacobi rotations on a copy of the first n × n entries of `rows`; converges for every symmetric matrix. */
export function symmetricEigen(rows: readonly Float64Array[], n: number): SmallEigen {
  const entries = new Float64Array(2 * n * n);
  const a: Float64Array[] = [];
  const v: Float64Array[] = [];
  let size = 0;
  for (let i = 0; i < n; i++) {
    const row = entries.subarray(i * n, (i + 1) * n);
    for (let j = 0; j < n; j++) {
      const x = j <= i ? rows[i]![j]! : rows[j]![i]!;
      row[j] = x;
      size = Math.max(size, Math.abs(x));
    }
    a.push(row);
    const own = entries.subarray((n + i) * n, (n + i + 1) * n);
    own[i] = 1;
    v.push(own);
  }
  for (let round = 0; round < 60; round++) {
    let turned = false;
    for (let p = 0; p < n; p++) {
      for (let q = p + 1; q < n; q++) {
        const off = a[p]![q]!;
        if (Math.abs(off) <= negligible * size) continue;
        turned = true;
        const theta = (a[q]![q]! - a[p]![p]!) / (2 * off);
        const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        const c = 1 / Math.sqrt(t * t + 1);
        const s = t * c;
        const rp = a[p]!;
        const rq = a[q]!;
        for (let k = 0; k < n; k++) {
          const x = rp[k]!;
          const y = rq[k]!;
          rp[k] = c * x - s * y;
          rq[k] = s * x + c * y;
        }
        const vp = v[p]!;
        const vq = v[q]!;
        for (let k = 0; k < n; k++) {
          const row = a[k]!;
          const r = row[p]!;
          const w = row[q]!;
          row[p] = c * r - s * w;
          row[q] = s * r + c * w;
          const x = vp[k]!;
          const y = vq[k]!;
          vp[k] = c * x - s * y;
          vq[k] = s * x + c * y;
        }
      }
    }
    if (!turned) break;
  }
  const order = Array.from({ length: n }, (_, i) => i).sort((p, q) => a[q]![q]! - a[p]![p]!);
  return { values: order.map((i) => a[i]![i]!), vectors: order.map((i) => v[i]!) };
}
