import type { UnitSystem } from '../base/names.js';
import type { Bench } from '../bench.js';
import { chartKinds, chartRow, type ChartEntry } from '../chart/chart.js';
import type { DoPiece } from './do-piece.js';

/** A chart, shared out row by row. */
export interface ChartSharing {
  readonly work: 'chart';
  readonly bench: Bench;
  readonly units: UnitSystem;
}

/** One row each; a step is an entry of it. */
export function chartPieces({ bench, units }: ChartSharing): DoPiece<readonly ChartEntry[]> {
  const kinds = chartKinds(bench.shelf);
  return (piece, step) => chartRow(kinds[piece]!, bench, units, step);
}
