import type { BarName } from '../../base/names.js';
import type { Statics } from '../../model/frame-results.js';
import type { Model, Solution } from '../../model/model.js';
import { pullChangeFromBow_N_per_m } from './pull-changes.js';
import { clothOf } from './shelf-numbers.js';

/**
 * Share of the working pull that the middle of the cloth loses because opposite bars bow in, the worse of the two
 * directions: what is left when bow and stretch have found
 * their balance, pull = pull₀ − stiffness × bow(pull)/length each way, both pulls bowing all bars. Elastic bow, whole
 * face length; 0 where the bars bow out, 1 where the cloth
 * hangs slack one way.
 */
export function relaxShare(model: Model, { working, working_x }: Pick<Solution, 'working' | 'working_x'>): number {
  const { face, cloth } = model.plan;
  const stiffness = clothOf(model).stiffness_N_per_m;
  /** Share of a direction's pull taken away by the bow that the pulls along x and along y make at full strength. */
  const taken = (
    pair: readonly [BarName, BarName],
    length_mm: number,
    pull_N_per_m: number,
  ): readonly [number, number] => {
    const parts = pair.map((bar) => bowParts(bar, working, working_x)) as [BowParts, BowParts];
    const share = (of: (parts: BowParts) => number): number =>
      -pullChangeFromBow_N_per_m(stiffness, of(parts[0]), of(parts[1]), length_mm) / pull_N_per_m;
    return [share((p) => p.by_x_mm), share((p) => p.by_y_mm)];
  };
  const [xx, xy] = taken(['left', 'right'], face.width_mm, cloth.working.x_N_per_m);
  const [yx, yy] = taken(['top', 'bottom'], face.height_mm, cloth.working.y_N_per_m);
  const det = (1 + xx) * (1 + yy) - xy * yx;
  const both = { x: (1 + yy - xy) / det, y: (1 + xx - yx) / det };
  // Cloth does not push: where it would, it hangs slack that way.
  return Math.max(0, 1 - Math.max(0, Math.min(both.x, both.y)));
}

interface BowParts {
  readonly by_x_mm: number;
  readonly by_y_mm: number;
}

/** Inward bow of a bar where it is largest, by which of the two pulls makes it. */
function bowParts(bar: BarName, whole: Statics, by_x: Statics): BowParts {
  const line = whole.bars[bar].bow_line;
  let at = 0;
  for (let i = 1; i < line.length; i++) if (Math.abs(line[i]!.inward_mm) > Math.abs(line[at]!.inward_mm)) at = i;
  const by_x_mm = by_x.bars[bar].bow_line[at]!.inward_mm;
  return { by_x_mm, by_y_mm: line[at]!.inward_mm - by_x_mm };
}
