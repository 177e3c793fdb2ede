import { causeInWords, noWarpWords } from '../base/warp-words.js';
import type { Hardware } from '../shelf/shelf.js';
import type { HangingSheet, Sheets } from '../sheets/sheets.js';
import { obstacleInWords } from './words/obstacle.js';

/**
 * What the pages tell beyond facts and findings, as plain data: numbers and keys of the shelf, without the sentences.
 */
export function sheetsData({ cloth, fastenings, glue, hanging, warp, promises }: Sheets): Record<string, unknown> {
  const { folds: _folds, order: _order, duck: _duck, ...clothNumbers } = cloth;
  return {
    cloth: clothNumbers,
    fastenings: fastenings.map(
      ({ name, role, length_mm, count, pilot_mm, pilot_depth_mm, countersink_mm, exit_mm }) => ({
        name,
        role,
        length_mm,
        count,
        pilot_mm,
        pilot_depth_mm,
        countersink_mm,
        exit_mm,
      }),
    ),
    glue: glue === null ? null : glueData(glue),
    hanging: hanging === null ? null : hangingData(hanging),
    warp: warp.story === null ? { reason: noWarpWords[warp.reason] } : warpData(warp.story),
    promises,
  };
}

function glueData({ glue, lines: _lines, ...numbers }: NonNullable<Sheets['glue']>): Record<string, unknown> {
  return { glue: glue.key, ...numbers };
}

function hangingData({
  picked: { hook, wire, ring },
  held_by,
  ring_hole,
  stands_out,
  ...numbers
}: HangingSheet): Record<string, unknown> {
  const { points } = numbers;
  const key = (one: Hardware | null): string | null => one?.key ?? null;
  return {
    ...numbers,
    points: {
      ...points,
      moved_off: points.moved_off && obstacleInWords(points.moved_off),
      meets: points.meets.map(obstacleInWords),
    },
    picked: { hook: key(hook), wire: key(wire), ring: key(ring) },
    held_by: key(held_by),
    ring_hole:
      ring_hole === null ? null : { drill_mm: ring_hole.drill?.diameter_mm ?? null, depth_mm: ring_hole.depth_mm },
    stands_out_mm: stands_out?.out_mm ?? 0,
  };
}

function warpData(story: NonNullable<Sheets['warp']['story']>): Record<string, unknown> {
  const { limit_mm, mean_mm, sd_mm, p90_mm, chance, chance_soft, unpulled, growth, causes } = story;
  return {
    limit_mm,
    mean_mm,
    sd_mm,
    p90_mm,
    chance,
    chance_soft,
    unpulled,
    growth,
    causes: causes.map((cause) => ({ cause: causeInWords(cause), share: cause.share })),
  };
}
