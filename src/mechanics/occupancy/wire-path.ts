import { meetsUpright, runsInto, WIRE_ROOM_MM, wireDeep_mm } from '../../fit/wire-depth.js';
import type { Model } from '../../model/model.js';
import { braceFoot_mm } from './corner-parts.js';
import { crossbarsLie } from './crossbar-ends.js';
import type { Obstacle } from './occupant.js';

/**
 * The left half of a loaded wire, from ring to hook; the right half mirrors it. Across from the left edge, down from
 * the top edge, depth from the back of the bars.
 */
export interface WirePath {
  readonly ring_x_mm: number;
  readonly ring_drop_mm: number;
  readonly hook_x_mm: number;
  readonly hook_drop_mm: number;
  /** How far in front of the backs the wire leaves its ring; below 0 behind them. */
  readonly ring_deep_mm: number;
}

/**
 * The braces a loaded wire runs against between its rings and hooks: other hanging points may be clear of
 * them. A brace fills the strip between its two sides across the corner, flush with the backs; the wire meets it where
 * any of it lies in that strip.
 */
export function bracesMet(model: Model, path: WirePath): readonly Obstacle[] {
  const brace = model.braces.find(({ corner }) => corner === 'top-left');
  if (brace === undefined) return [];
  const w_mm = model.bars.left.section.w_mm;
  const [inner, outer] = braceFoot_mm(brace.leg_mm, brace.section.w_mm).map((mm) => mm + w_mm) as [number, number];
  const steps = 40;
  for (let i = 0; i <= steps; i++) {
    const x = path.ring_x_mm + ((path.hook_x_mm - path.ring_x_mm) * i) / steps;
    const y = path.ring_drop_mm + ((path.hook_drop_mm - path.ring_drop_mm) * i) / steps;
    if (
      x + y > inner - WIRE_ROOM_MM &&
      x + y < outer + WIRE_ROOM_MM &&
      runsInto(wireDeep_mm(path, x), 0) &&
      wireDeep_mm(path, x) < brace.section.d_mm + WIRE_ROOM_MM
    )
      return [{ kind: 'top-braces', of: 'frame' }];
  }
  return [];
}

/**
 * The crossbars it runs against: no other hanging points help, but another setback may. Between the hooks the wire
 * stays level, at the hooks' own distance from the wall; from rings on the backs it touches what stands farther out
 * behind them than the wire runs, less its room.
 */
export function crossbarsMet(model: Model, path: WirePath): readonly Obstacle[] {
  const { width_mm, height_mm } = model.plan.face;
  return crossbarsLie(model).flatMap((lie): readonly Obstacle[] => {
    const named = { kind: 'whole-crossbar', of: lie.name } as const;
    if (lie.runs === 'upright')
      return meetsUpright(path, { middle_mm: lie.middle_mm, w_mm: lie.w_mm, back_mm: lie.deep_mm[0] }, width_mm)
        ? [named]
        : [];
    const half = lie.w_mm / 2 + WIRE_ROOM_MM;
    const down = height_mm - lie.middle_mm;
    if (down - half > path.ring_drop_mm || down + half < path.hook_drop_mm) return [];
    const t = (path.ring_drop_mm - down) / Math.max(1e-9, path.ring_drop_mm - path.hook_drop_mm);
    const x = path.ring_x_mm + Math.min(1, Math.max(0, t)) * (path.hook_x_mm - path.ring_x_mm);
    return runsInto(wireDeep_mm(path, x), lie.deep_mm[0]) ? [named] : [];
  });
}
