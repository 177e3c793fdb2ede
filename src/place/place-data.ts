import { noWarpWords } from '../base/warp-words.js';
import type { PlacedFrame, PlacedPile } from './result.js';

/** A placing as plain data, `format: "place/1"`. What cannot be known is null, with its reason. */
export function placeData({ frames, aim, proven, bound, left, buy }: PlacedPile): Record<string, unknown> {
  return {
    format: 'place/1',
    frames: frames.map(frameData),
    chance: aim,
    proven,
    bound,
    left: left.flatMap(({ board, left: sound, whole, why }) => {
      const rest = sound.map(({ from_mm, to_mm }) => ({
        board: board.mark,
        stock: board.stock,
        from_mm,
        length_mm: to_mm - from_mm,
        whole,
        why,
      }));
      return rest.length > 0 ? rest : [{ board: board.mark, stock: board.stock, from_mm: 0, length_mm: 0, whole, why }];
    }),
    buy:
      buy === null
        ? []
        : [
            ...buy.stocks.flatMap(({ stock, kinds }) =>
              kinds
                .filter(({ on_hand }) => !on_hand)
                .map(({ length_mm, count, price }) => ({ stock, length_mm, count, price })),
            ),
            ...buy.uncut.map(({ stock, reason }) => ({ stock, length_mm: null, count: null, price: null, reason })),
          ],
  };
}

function frameData({
  plan,
  copy,
  places,
  missing,
  lift,
  reason,
  bow_chance,
  luck,
}: PlacedFrame): Record<string, unknown> {
  return {
    plan: plan.name,
    copy,
    places: places.map(({ slot: { piece, tag }, board, from_mm, lie }) => ({
      for: piece.about,
      ply: piece.ply,
      board: board.mark,
      from_mm,
      length_mm: piece.cut_mm,
      face: lie.face,
      end: lie.end,
      tag,
    })),
    lift_mm:
      lift === null
        ? null
        : { mean: lift.mean_mm, sd: lift.sd_mm, chance: lift.chance, limit: lift.limit_mm, p90: lift.p90_mm },
    ...(reason === null ? {} : { reason: noWarpWords[reason] }),
    bow_chance,
    by_luck: luck === null ? null : { mean_chance: luck.mean_chance, error: luck.error, worst_mm: luck.worst_mm },
    missing: missing.map(({ piece, tag }) => ({
      for: piece.about,
      ply: piece.ply,
      stock: piece.stock,
      length_mm: piece.cut_mm,
      tag,
    })),
  };
}
