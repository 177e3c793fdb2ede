const plainNumber = /^(\u2212?\d+)(?:\.(\d+))?( \D+)?$/u;

/**
 * Rows of a table in which the plain numbers of a column stand with equally many decimals, those of each unit by
 * themselves. Words, fractions and ranges stay as they are.
 */
export function sameDecimals<C>(rows: readonly (readonly C[])[]): readonly (readonly C[])[] {
  const read = (cell: C | undefined): RegExpExecArray | null =>
    typeof cell === 'string' ? plainNumber.exec(cell) : null;
  const most = new Map<string, number>();
  for (const row of rows)
    for (const [i, cell] of row.entries()) {
      const number = read(cell);
      if (number === null) continue;
      const key = `${i}${number[3] ?? ''}`;
      most.set(key, Math.max(most.get(key) ?? 0, number[2]?.length ?? 0));
    }
  return rows.map((row) =>
    row.map((cell, i) => {
      const [, whole = '', decimals = '', unit = ''] = read(cell) ?? [];
      const wanted = most.get(`${i}${unit}`) ?? 0;
      if (whole === '' || decimals.length === wanted) return cell;
      return `${whole}.${decimals.padEnd(wanted, '0')}${unit}` as C;
    }),
  );
}
