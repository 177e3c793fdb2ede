/** A spot where the next piece may start: everything left of it or below it is taken or given up. */
export interface Corner {
  readonly x: number;
  readonly y: number;
}

/** A placed rectangle; `across` along x, `along` along y. */
export interface Block {
  readonly x: number;
  readonly y: number;
  readonly across: number;
  readonly along: number;
}

/**
 * Corners of the staircase beyond which the roll is still open, from the roll's start (y = 0) to its far end (x = 0).
 * A point is open when, for every block, it lies past its right side or past its end. Any packing pushed left and down can be
 * laid block by block so that each starts on such a corner of the blocks before it.
 */
export function cornersOf(blocks: readonly Block[]): Corner[] {
  const farthestFirst = [...blocks].sort((p, q) => q.y + q.along - (p.y + p.along) || q.x + q.across - (p.x + p.across));
  const corners: Corner[] = [];
  let reach = 0;
  for (const block of farthestFirst) {
    const right = block.x + block.across;
    if (right <= reach) continue;
    corners.push({ x: reach, y: block.y + block.along });
    reach = right;
  }
  corners.push({ x: reach, y: 0 });
  return corners.reverse();
}
