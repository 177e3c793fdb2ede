import type { ToolsAtHand } from '../order-of-work/tools-at-hand.js';
import type { SawKind } from './shop-schema.js';
import type { Shop } from './shop.js';

/**
 * What a workshop has, for the order of work: its best saw and how high any of them cuts; what its file leaves out is
 * left out here.
 */
export function toolsAtHand({ saws, corner_clamps, bar_clamps, flat_places, moisture_meter }: Shop): ToolsAtHand {
  const best = sawOrder.find((kind) => saws?.some((saw) => saw.kind === kind));
  const known = (saws ?? []).every(({ most_mm }) => most_mm !== null);
  const heights = (saws ?? []).flatMap(({ most_mm }) => (most_mm === null ? [] : [most_mm]));
  return {
    ...(best === undefined ? {} : { saw: best }),
    // A saw of unknown height among them may be the highest: then the shelf's number stands in.
    ...(known && heights.length > 0 ? { saw_height_mm: Math.max(...heights) } : {}),
    ...(corner_clamps === null ? {} : { corner_clamps }),
    ...(bar_clamps === null ? {} : { bar_clamps }),
    ...(flat_places === null ? {} : { flat_place: flat_places > 0 }),
    ...(moisture_meter === null ? {} : { moisture_meter }),
  };
}

const sawOrder: readonly SawKind[] = ['power', 'mitre-box', 'hand', 'none'];
