import { HOOKS_APART_SHARE, meetsUpright, ringDeep_mm } from '../fit/wire-depth.js';
import { formatLength } from '../base/units-format.js';
import type { Shelf } from '../shelf/shelf.js';
import { builtSize, type BuiltSize } from './build-up.js';
import type { Plan } from './plan.js';

type Face = Plan['hang']['from'];

/**
 * The hanging with what the plan does not name settled: the inside face of the bars, or the back where a wire from the
 * inside would run into an upright crossbar; where it would
 * from either, two hooks without a wire.
 */
export function settleHanging(
  plan: Plan,
  crossbars: Plan['crossbars'],
  bar: BuiltSize,
  shelf: Shelf,
  notes: Map<string, string>,
): Plan['hang'] {
  const free = notes.has('hang.by') && notes.has('hang.slack');
  const hang = free ? wired(plan, notes) : plan.hang;
  if (hang.by !== 'wire') return hang;
  const named = !notes.has('hang.from');
  const faces: readonly Face[] = named ? [hang.from] : ['inside', 'back'];
  const clear = faces.find((from) => !meets(plan, { ...hang, from }, crossbars, bar, shelf));
  if (clear === undefined && free) {
    notes.set('hang.by', 'two hooks without a wire, which would run into the upright crossbar');
    notes.set('hang.slack', 'none without a wire');
    if (!named) notes.set('hang.from', 'the inside of the bars');
    return { ...hang, by: 'two-hooks', from: named ? hang.from : 'inside' };
  }
  if (named) return hang;
  const from = clear ?? 'back';
  notes.set(
    'hang.from',
    from === 'back'
      ? 'the back of the bars, since a wire from the inside would run into the upright crossbar'
      : 'the inside of the bars',
  );
  return { ...hang, from };
}

/** By a wire, as a plan hangs that says nothing of it; its usual slack is kept in the plan while it hangs otherwise. */
function wired({ hang, units }: Plan, notes: Map<string, string>): Plan['hang'] {
  notes.set('hang.by', 'wire');
  notes.set('hang.slack', formatLength(hang.slack_mm, units));
  return { ...hang, by: 'wire' };
}

/** Whether the wire runs into an upright crossbar. */
function meets(
  { face, bars }: Plan,
  hang: Plan['hang'],
  crossbars: Plan['crossbars'],
  bar: BuiltSize,
  shelf: Shelf,
): boolean {
  const span_mm = face.width_mm - (hang.from === 'inside' ? 2 : 1) * bar.w_mm;
  const wire = {
    ring_x_mm: (face.width_mm - span_mm) / 2,
    hook_x_mm: (face.width_mm - (hang.hooks >= 2 ? HOOKS_APART_SHARE * span_mm : 0)) / 2,
    ring_deep_mm: ringDeep_mm(hang.from, bar.d_mm),
  };
  return crossbars.some(({ runs, at, stock, lay, plies, setback_mm }) => {
    const lumber = Object.hasOwn(shelf.lumber, stock) ? shelf.lumber[stock] : undefined;
    if (runs !== 'upright' || lumber === undefined) return false;
    const { w_mm, d_mm } = builtSize(lumber, lay, plies, bars.stack);
    return meetsUpright(
      wire,
      { middle_mm: at * face.width_mm, w_mm, back_mm: bar.d_mm - setback_mm - d_mm },
      face.width_mm,
    );
  });
}
