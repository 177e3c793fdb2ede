import { deflateRawSync, inflateRawSync } from 'node:zlib';
import type { PlanSheet } from '../class/plan-sheet.js';

/**
 * One plan's sheet of the pack while the rest of the class is gone through: a tenth of what it takes as a tree, and
 * nothing of it for the garbage collector to walk through.
 */
export interface KeptSheet {
  /** Position of the plan among the rows. */
  readonly row: number;
  readonly packed: Uint8Array;
}

/** Puts a sheet away. */
export const packedSheet = ({ row, head, foot }: PlanSheet): KeptSheet => ({
  row,
  // A copy of its own length: what is deflated lies in a buffer many times as long.
  packed: Uint8Array.from(deflateRawSync(JSON.stringify({ head, foot }), { level: 1 })),
});

/** Takes sheets out again, one after the other. */
export function* unpacked(sheets: Iterable<KeptSheet>): Generator<PlanSheet> {
  for (const { row, packed } of sheets) {
    const { head, foot } = JSON.parse(inflateRawSync(packed).toString('utf8')) as Pick<PlanSheet, 'head' | 'foot'>;
    yield { row, head, foot };
  }
}
