/**
 * Air carried by a free flat rectangle, by small panels of constant dipole strength (each panel a ring of vortex lines), a quarter of it by symmetry.
 * Incompressible air; the error falls with the panel size, so three sizes are extrapolated. Returns C: mass per area over air density and shorter side.
 */
export function airCoefficientByPanels(aspect: number, shape: 'half-sine' | 'rigid' = 'half-sine'): number {
  const [coarse, middle, fine] = [5, 10, 20].map((n) => onGrid(aspect, n, shape)) as [number, number, number];
  const [e1, e2] = [2 * middle - coarse, 2 * fine - middle];
  return (4 * e2 - e1) / 3;
}

function onGrid(aspect: number, ny: number, shape: 'half-sine' | 'rigid'): number {
  const nx = Math.round(ny * Math.min(aspect, 2.5));
  const hx = aspect / (2 * nx);
  const hy = 1 / (2 * ny);
  const points = Array.from({ length: nx * ny }, (_, k) => ({ x: (Math.floor(k / ny) + 0.5) * hx, y: ((k % ny) + 0.5) * hy }));
  const corner = (x: number, y: number): number => Math.sqrt(x * x + y * y) / (x * y);
  const wash = (dx: number, dy: number): number => {
    const x1 = dx - hx / 2;
    const x2 = dx + hx / 2;
    const y1 = dy - hy / 2;
    const y2 = dy + hy / 2;
    return -(corner(x2, y2) - corner(x1, y2) - corner(x2, y1) + corner(x1, y1)) / (4 * Math.PI);
  };
  const A = points.map((p) => Float64Array.from(points, (q) => wash(p.x - q.x, p.y - q.y) + wash(p.x - q.x, p.y + q.y) + wash(p.x + q.x, p.y - q.y) + wash(p.x + q.x, p.y + q.y)));
  const v = points.map((p) => (shape === 'rigid' ? 1 : Math.cos((Math.PI * p.x) / aspect) * Math.cos(Math.PI * p.y)));
  const mu = solve(A, v);
  const energy = mu.reduce((sum, m, i) => sum + m * (v[i] as number), 0);
  const square = v.reduce((sum, x) => sum + x * x, 0);
  return Math.abs(energy) / square;
}

/** Gauss with row pivots, in place. */
function solve(A: Float64Array[], b: readonly number[]): number[] {
  const x = [...b];
  const n = x.length;
  for (let k = 0; k < n; k++) {
    let p = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(A[i]![k]!) > Math.abs(A[p]![k]!)) p = i;
    [A[k], A[p]] = [A[p]!, A[k]!];
    [x[k], x[p]] = [x[p]!, x[k]!];
    const pivot = A[k]!;
    for (let i = k + 1; i < n; i++) {
      const row = A[i]!;
      const f = row[k]! / pivot[k]!;
      if (f === 0) continue;
      for (let j = k; j < n; j++) row[j]! -= f * pivot[j]!;
      x[i]! -= f * x[k]!;
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    for (let j = k + 1; j < n; j++) x[k]! -= A[k]![j]! * x[j]!;
    x[k]! /= A[k]![k]!;
  }
  return x;
}
