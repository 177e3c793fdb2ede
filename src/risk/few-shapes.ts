/** A family of lines along a bar written with as few shapes as it takes: line_j = Σ_k coefficient(k, j) · shape_k. */
export interface FewShapes {
  readonly rank: number;
  readonly stations: number;
  /** rank × stations, row by row: orthonormal lines. */
  readonly shapes: Float64Array;
  /** rank × columns, row by row. */
  readonly coefficients: Float64Array;
}

/** Lines closer than this to the shapes already kept add nothing that could be seen (relative to the longest line). */
const negligible = 1e-3;

/**
 * Column-pivoted modified Gram–Schmidt: takes the line with the longest remainder, keeps its direction, strips it from
 * the others,
 * until nothing above `negligible` is left. The bow of a bar under any mix of causes is a mix of very few shapes.
 */
export function fewShapes(lines: readonly Float64Array[]): FewShapes {
  const columns = lines.length;
  const stations = lines[0]?.length ?? 0;
  const left = lines.map((line) => line.slice());
  const longest = Math.max(0, ...left.map(norm));
  const shapes: number[] = [];
  const coefficients: number[] = [];
  let rank = 0;
  for (; rank < Math.min(columns, stations); rank++) {
    const pivot = left.reduce((best, line) => (norm(line) > norm(best) ? line : best));
    const length = norm(pivot);
    if (length <= negligible * longest) break;
    const shape = pivot.map((value) => value / length);
    shapes.push(...shape);
    for (const line of left) {
      const part = dot(line, shape);
      coefficients.push(part);
      for (let s = 0; s < stations; s++) line[s] = (line[s] as number) - part * (shape[s] as number);
    }
  }
  return { rank, stations, shapes: Float64Array.from(shapes), coefficients: Float64Array.from(coefficients) };
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

function norm(a: Float64Array): number {
  return Math.sqrt(dot(a, a));
}
