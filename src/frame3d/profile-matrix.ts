/**
 * Symmetric matrices stored by rows from their first non-zero entry to the diagonal (a variable band),
 * with their LDLᵀ factors. Fill-in stays inside the band, so one array holds matrix or factors.
 */
export interface ProfileMatrix {
  readonly n: number;
  /** First column stored in each row. */
  readonly first: Int32Array;
  /** Entry (i, j), first[i] ≤ j ≤ i, is `values[start[i] + j]`. */
  readonly start: Int32Array;
  readonly values: Float64Array;
}

/** Where the entries of a matrix, or of some of its rows, stand among its values. */
export type Rows = Omit<ProfileMatrix, 'values'>;

/** L (unit diagonal left out) below the diagonal and 1/D beside it. */
export interface ProfileFactors extends ProfileMatrix {
  /** 1/d of each row; 0 where the pivot vanished, which holds that unknown at zero. */
  readonly inverse: Float64Array;
  /** Rows whose pivot vanished against their diagonal: the matrix is singular there. */
  readonly vanished: readonly number[];
  /** How many pivots are negative: the number of negative eigenvalues (Sylvester's law of inertia). */
  readonly negative: number;
}

/** A pivot below this share of its original diagonal counts as vanished. */
const vanishing = 1e-12;

/**
 * Σ a[p + k] b[q + k], k < count. Two sums run side by side because a processor adds faster than it waits for one sum.
 */
export function dotSegments(a: Float64Array, p: number, b: Float64Array, q: number, count: number): number {
  let s0 = 0;
  let s1 = 0;
  let k = 0;
  for (; k + 1 < count; k += 2) {
    s0 += a[p + k]! * b[q + k]!;
    s1 += a[p + k + 1]! * b[q + k + 1]!;
  }
  if (k < count) s0 += a[p + k]! * b[q + k]!;
  return s0 + s1;
}

/** The rows of a matrix with the given row starts. */
export function rowsFrom(first: Int32Array): Rows {
  const n = first.length;
  const start = new Int32Array(n);
  let length = 0;
  for (let i = 0; i < n; i++) {
    start[i] = length - first[i]!;
    length += i - first[i]! + 1;
  }
  return { n, first, start };
}

/** An all-zero matrix with these rows, the first of which begins its values. */
export function emptyOn({ n, first, start }: Rows): ProfileMatrix {
  return { n, first, start, values: new Float64Array(n === 0 ? 0 : start[n - 1]! + n) };
}

/** An all-zero matrix with the given row starts. */
export const emptyProfile = (first: Int32Array): ProfileMatrix => emptyOn(rowsFrom(first));

/** Rows and columns `from` … `to` − 1 of matrices with these row starts, which nothing ties to those before. */
export function rowsOf(matrix: Rows, from: number, to: number): Rows {
  const n = to - from;
  const first = new Int32Array(n);
  const start = new Int32Array(n);
  for (let i = 0; i < n; i++) {
    first[i] = matrix.first[from + i]! - from;
    start[i] = matrix.start[from + i]! + from;
  }
  return { n, first, start };
}

/** These rows of a matrix by themselves, on the same values. */
export const partOf = ({ n, first, start }: Rows, { values }: ProfileMatrix): ProfileMatrix => ({
  n,
  first,
  start,
  values,
});

/** Adds to entry (i, j); either order of indices, which must lie inside the band. */
export function addEntry(matrix: ProfileMatrix, i: number, j: number, value: number): void {
  if (i >= j) matrix.values[matrix.start[i]! + j]! += value;
  else matrix.values[matrix.start[j]! + i]! += value;
}

/** LDLᵀ, row by row, without pivoting; of a copy of the matrix, or of the matrix itself when it may be overwritten. */
export function factorise(matrix: ProfileMatrix, overwrite = false): ProfileFactors {
  const { n, first, start } = matrix;
  const a = overwrite ? matrix.values : matrix.values.slice();
  const inverse = new Float64Array(n);
  const vanished: number[] = [];
  let negative = 0;
  for (let i = 0; i < n; i++) {
    const fi = first[i]!;
    const si = start[i]!;
    for (let j = fi + 1; j < i; j++) {
      const sj = start[j]!;
      const fj = first[j]!;
      const from = fi > fj ? fi : fj;
      if (from < j) a[si + j]! -= dotSegments(a, si + from, a, sj + from, j - from);
    }
    const diagonal = a[si + i]!;
    let d = diagonal;
    for (let j = fi; j < i; j++) {
      const v = a[si + j]!;
      const l = v * inverse[j]!;
      a[si + j] = l;
      d -= l * v;
    }
    a[si + i] = d;
    if (!(Math.abs(d) > vanishing * Math.abs(diagonal))) vanished.push(i);
    else {
      inverse[i] = 1 / d;
      if (d < 0) negative++;
    }
  }
  return { n, first, start, values: a, inverse, vanished, negative };
}

/** Solves in place: `b` enters as the right-hand side and leaves as the solution. */
export function solveFactored(factors: ProfileFactors, b: Float64Array): void {
  const { n, first, start, values: a, inverse } = factors;
  let from = 0;
  while (from < n && b[from] === 0) from++;
  for (let i = from; i < n; i++) {
    const si = start[i]!;
    const f = first[i]!;
    b[i]! -= dotSegments(a, si + f, b, f, i - f);
  }
  for (let i = from; i < n; i++) b[i]! *= inverse[i]!;
  for (let i = n - 1; i >= 0; i--) {
    const x = b[i]!;
    if (x === 0) continue;
    const si = start[i]!;
    for (let j = first[i]!; j < i; j++) b[j]! -= a[si + j]! * x;
  }
}

/** The movement that costs no energy behind a vanished pivot; 1 at that row. */
export function nullVector(factors: ProfileFactors, row: number): Float64Array {
  const { n, first, start, values: a } = factors;
  const x = new Float64Array(n);
  x[row] = 1;
  for (let i = row; i >= 0; i--) {
    const xi = x[i]!;
    if (xi === 0) continue;
    const si = start[i]!;
    for (let j = first[i]!; j < i; j++) x[j]! -= a[si + j]! * xi;
  }
  return x;
}

/** y += matrix · x. */
export function addProduct(matrix: ProfileMatrix, x: Float64Array, y: Float64Array): void {
  const { n, first, start, values: a } = matrix;
  for (let i = 0; i < n; i++) {
    const si = start[i]!;
    const xi = x[i]!;
    let sum = a[si + i]! * xi;
    for (let j = first[i]!; j < i; j++) {
      const v = a[si + j]!;
      sum += v * x[j]!;
      y[j]! += v * xi;
    }
    y[i]! += sum;
  }
}
