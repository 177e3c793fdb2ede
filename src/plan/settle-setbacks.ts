import { formatLength } from '../base/units-format.js';
import { brushSag_mm, roomySetback_mm } from '../fit/brush-room.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import type { Shelf } from '../shelf/shelf.js';
import { builtSize, type BuiltSize } from './build-up.js';
import { usualLengths } from './defaults.js';
import type { ClothPull, Plan, PlanCrossbar } from './plan.js';

/** Setbacks are read off a rule: whole millimetres or sixteenths of an inch. */
const marks_mm = { metric: 1, inch: 25.4 / 16 } as const;

/**
 * The crossbars with every setback that the plan does not name made such that a firm brush clears them under this pull;
 * `notes` is told how far they then stand out behind.
 */
export function settleSetbacks(
  plan: Plan,
  pull: ClothPull,
  bar: BuiltSize,
  shelf: Shelf,
  notes: Map<string, string>,
): readonly PlanCrossbar[] {
  const { face, units } = plan;
  const { lip_mm } = plan.bars;
  const span = lip_mm > 0 ? face : { width_mm: face.width_mm - 2 * bar.w_mm, height_mm: face.height_mm - 2 * bar.w_mm };
  const brush = { force_N: shelfNumber(shelf, 'push-force'), patch_mm: shelfNumber(shelf, 'push-patch') };
  return plan.crossbars.map((crossbar, index) => {
    const path = `crossbars[${index}].setback`;
    const lumber = Object.hasOwn(shelf.lumber, crossbar.stock) ? shelf.lumber[crossbar.stock] : undefined;
    if (!notes.has(path) || lumber === undefined || !(span.width_mm > 0 && span.height_mm > 0)) return crossbar;
    const { d_mm } = builtSize(lumber, crossbar.lay, crossbar.plies, plan.bars.stack);
    const [x, y] = crossbar.runs === 'upright' ? [crossbar.at, 0.5] : [0.5, crossbar.at];
    const sag_mm = brushSag_mm({ face, span, pull }, brush, x, y);
    const { setback_mm, clears } = roomySetback_mm(
      { bar_d_mm: bar.d_mm, crossbar_d_mm: d_mm, lip_mm },
      sag_mm,
      usualLengths[units].setback_mm,
      marks_mm[units],
    );
    const behind_mm = setback_mm + d_mm - bar.d_mm;
    const why = clears ? 'so that a firm brush clears it' : 'as far back as its ends can still be joined';
    notes.set(
      path,
      `${formatLength(setback_mm, units)}, ${why}${behind_mm > 0.05 ? `; it then stands ${formatLength(behind_mm, units)} out behind the bars` : ''}`,
    );
    return { ...crossbar, setback_mm };
  });
}
