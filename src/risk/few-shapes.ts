/** A family of rows of numbers written with as few shapes as it takes: row_j = Σ_k coefficient(k, j) · shape_k. */
export interface FewShapes {
  readonly rank: number;
  /** Numbers in a row. */
  readonly stations: number;
  /** rank × numbers in a row, shape by shape: orthonormal. */
  readonly shapes: Float64Array;
  /** rank × number of rows, shape by shape. */
  readonly coefficients: Float64Array;
}

/** Rows closer than this to the shapes already kept add nothing that could be seen (relative to the longest row). */
const negligible = 1e-3;

/**
 * Pivoted modified Gram–Schmidt: takes the row with the longest remainder, keeps its direction, strips it from the
 * others, until nothing above `negligible` is left. What the causes do at each place along a bar is a mix of very few
 * shapes.
 */
export function fewShapes(lines: readonly Float64Array[]): FewShapes {
  const columns = lines.length;
  const stations = lines[0]?.length ?? 0;
  const most = Math.min(columns, stations);
  const left = lines.map((line) => line.slice());
  const squares = Float64Array.from(left, (line) => dot(line, line));
  const least = (negligible * Math.sqrt(squares[longest(squares)] ?? 0)) ** 2;
  const shapes = new Float64Array(most * stations);
  const coefficients = new Float64Array(most * columns);
  let rank = 0;
  for (; rank < most; rank++) {
    const pivot = longest(squares);
    const square = squares[pivot] as number;
    if (square <= least) break;
    const length = Math.sqrt(square);
    const shape = shapes.subarray(rank * stations, (rank + 1) * stations);
    for (let s = 0; s < stations; s++) shape[s] = ((left[pivot] as Float64Array)[s] as number) / length;
    for (let j = 0; j < columns; j++) {
      const line = left[j] as Float64Array;
      const part = dot(line, shape);
      coefficients[rank * columns + j] = part;
      for (let s = 0; s < stations; s++) line[s] = (line[s] as number) - part * (shape[s] as number);
      squares[j] = dot(line, line);
    }
  }
  return {
    rank,
    stations,
    shapes: shapes.subarray(0, rank * stations),
    coefficients: coefficients.subarray(0, rank * columns),
  };
}

function longest(squares: Float64Array): number {
  let best = 0;
  for (let j = 1; j < squares.length; j++) if ((squares[j] as number) > (squares[best] as number)) best = j;
  return best;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}
