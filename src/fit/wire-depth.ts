/** How far a wall hook holds a wire from the wall, mm (proposal). */
export const HOOK_STANDOFF_MM = 8;

/** Two hooks under one wire stand this share of the ring span apart, at the third points (proposal). */
export const HOOKS_APART_SHARE = 1 / 3;

/** How far behind the back of the frame a wire runs from rings screwed into the back, mm (proposal). */
export const RING_BEHIND_MM = 4;

/**
 * How far in front of the backs of the bars a wire leaves its rings: half way through the depth of the bars inside
 * them, behind the backs on them (negative).
 */
export const ringDeep_mm = (from: 'inside' | 'back', bar_d_mm: number): number =>
  from === 'back' ? -RING_BEHIND_MM : bar_d_mm / 2;

/** Clear room a wire wants beside wood, mm (proposal). */
export const WIRE_ROOM_MM = 2;

/**
 * The left half of a loaded wire seen from above: ring and hook across from the left edge, the ring's depth in front of
 * the backs of the bars, mm.
 */
export interface WireDepth {
  readonly ring_x_mm: number;
  readonly hook_x_mm: number;
  readonly ring_deep_mm: number;
}

/**
 * How far in front of the backs the wire is, at a distance across from the left edge, mm: from the ring back to the
 * hook on the wall, and level between the hooks. From rings on the backs it runs level all the way: the hook draws the
 * frame that much farther off the wall.
 */
export function wireDeep_mm(wire: WireDepth, x_mm: number): number {
  const t = Math.min(1, Math.max(0, (x_mm - wire.ring_x_mm) / Math.max(1e-9, wire.hook_x_mm - wire.ring_x_mm)));
  return wire.ring_deep_mm + t * (Math.min(HOOK_STANDOFF_MM, wire.ring_deep_mm) - wire.ring_deep_mm);
}

/**
 * Whether the wire at this depth runs into wood whose back lies `back_mm` in front of the backs of the bars: it comes
 * from the wall, so it is free only where the wood begins in front of it.
 */
export const runsInto = (deep_mm: number, back_mm: number): boolean => deep_mm > back_mm - WIRE_ROOM_MM;

/**
 * Whether a wire runs into an upright crossbar of width `w_mm` whose middle lies `middle_mm` from the left edge of a
 * face `face_mm` wide and whose back lies `back_mm` in front of the backs.
 * The wire is symmetric, so a crossbar right of the middle meets it as one left of it would.
 */
export function meetsUpright(
  wire: WireDepth,
  crossbar: { readonly middle_mm: number; readonly w_mm: number; readonly back_mm: number },
  face_mm: number,
): boolean {
  const x_mm = Math.min(crossbar.middle_mm, face_mm - crossbar.middle_mm);
  return (
    x_mm + crossbar.w_mm / 2 + WIRE_ROOM_MM > wire.ring_x_mm && runsInto(wireDeep_mm(wire, x_mm), crossbar.back_mm)
  );
}
