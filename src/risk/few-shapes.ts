/** A family of rows of numbers written with as few shapes as it takes: row_j = Σ_k coefficient(k, j) · shape_k. */
export interface FewShapes {
  readonly rank: number;
  /** rank × numbers in a row, shape by shape: orthonormal. */
  readonly shapes: readonly number[];
  /** rank × number of rows, shape by shape. */
  readonly coefficients: readonly number[];
}

/** Rows closer than this to the shapes already kept add nothing that could be seen (relative to the longest row). */
const negligible = 1e-3;

/** Squares of lengths that differ by less than this share are taken for equal. */
const rounding = 1e-9;

/**
 * Pivoted modified Gram–Schmidt: takes the row with the longest remainder, keeps its direction, strips it from the
 * others, until nothing above `negligible` is left. What the causes do at each place along a bar is a mix of very few
 * shapes. `lines` holds the rows one after the other, `columns` numbers each.
 */
export function fewShapes(lines: Float64Array, columns: number): FewShapes {
  const left = lines.slice();
  const rows = columns === 0 ? 0 : left.length / columns;
  const most = Math.min(rows, columns);
  const squares: number[] = [];
  for (let j = 0; j < rows; j++) squares.push(square(left, j * columns, columns));
  const least = (negligible * Math.sqrt(squares[longest(squares)] ?? 0)) ** 2;
  const shapes: number[] = [];
  const coefficients: number[] = [];
  let rank = 0;
  for (; rank < most; rank++) {
    const pivot = longest(squares);
    if ((squares[pivot] as number) <= least) break;
    const length = Math.sqrt(squares[pivot] as number);
    const shape = rank * columns;
    for (let i = 0; i < columns; i++) shapes.push((left[pivot * columns + i] as number) / length);
    for (let j = 0; j < rows; j++) {
      const row = j * columns;
      let part = 0;
      for (let i = 0; i < columns; i++) part += (left[row + i] as number) * (shapes[shape + i] as number);
      coefficients.push(part);
      for (let i = 0; i < columns; i++)
        left[row + i] = (left[row + i] as number) - part * (shapes[shape + i] as number);
      squares[j] = square(left, row, columns);
    }
  }
  return { rank, shapes, coefficients };
}

/** The first of those that are as long as any but for rounding, so that rounding never chooses between like rows. */
function longest(squares: readonly number[]): number {
  let best = 0;
  for (let j = 1; j < squares.length; j++)
    if ((squares[j] as number) > (squares[best] as number) * (1 + rounding)) best = j;
  return best;
}

function square(rows: Float64Array, from: number, count: number): number {
  let sum = 0;
  for (let i = from; i < from + count; i++) sum += (rows[i] as number) * (rows[i] as number);
  return sum;
}
