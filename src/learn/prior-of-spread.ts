import type { Choosing } from '../base/names.js';
import type { BoardWarp } from '../risk/ply-warp.js';
import type { Lumber } from '../shelf/shelf.js';
import { believe, type Nig } from './nig.js';
import { normalOf } from './spread-evidence.js';

/**
 * What the shelf says of one kind of warp, as a belief: of twist mean and spread, of bow and crook, whose sign is
 * chance, the size about nothing; null where the shelf says it has none.
 */
export function priorOfSpread(
  stock: Lumber,
  chosen: Choosing,
  kind: BoardWarp,
): { readonly nig: Nig; readonly fixed_mean: boolean; readonly size: number; readonly mean: number } | null {
  const { mean, sd } = normalOf(stock, chosen, kind);
  const size = kind === 'twist' ? sd : Math.hypot(mean, sd);
  return size > 0
    ? { nig: believe(kind === 'twist' ? mean : 0, size), fixed_mean: kind !== 'twist', size, mean }
    : null;
}
