import type { CutPlan } from './boards/purchase.js';

/** One strip of a raised lip of one frame; they come off strips, not off boards. */
export interface LipStrip {
  readonly plan: number;
  readonly copy: number;
  /** What to write on it: `lip T`, named like the pieces of its frame where there are several, such as `2.1-lip T`. */
  readonly tag: string;
  readonly cut_mm: number;
}

/** Every strip of every frame that is cut, plan by plan. */
export function lipStrips(cut: CutPlan): readonly LipStrip[] {
  const before = new Map(
    cut.stocks.flatMap(({ boards }) =>
      boards.flatMap(({ pieces }) =>
        pieces.map(
          ({ plan, copy, tag, piece }) => [`${plan}/${copy}`, tag.slice(0, tag.length - piece.label.length)] as const,
        ),
      ),
    ),
  );
  return cut.lists.flatMap(({ lips, frames }, plan) =>
    Array.from({ length: frames }, (_, i) =>
      lips.map(({ label, cut_mm }): LipStrip => ({
        plan,
        copy: i + 1,
        tag: `${before.get(`${plan}/${i + 1}`) ?? ''}${label}`,
        cut_mm,
      })),
    ).flat(),
  );
}
