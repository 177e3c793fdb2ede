import { remembered } from '../../base/remembered.js';
import type { Drill } from '../../shelf/shelf.js';

/** Where in the wood the hole is: beside the smooth shank, or where the thread bites. */
export type HolePlace = 'shank' | 'thread';
/** What the screw is there for. */
export type HoleFor = 'lateral' | 'withdrawal';

/**
 * Largest lead hole for a wood screw, mm, by specific gravity and place. Sideways load, up to 0.6: seven eighths of
 * shank and root; denser: shank and root themselves.
 * Pull-out load, thread part: up to 0.6: 70 % of the root (the standard asks for none up to 0.5; thin strips are
 * drilled all the same); denser: 90 %. The shank part is as for sideways load.
 * Source: nds-2018 12.1.5.2 and 12.1.5.3, wood-handbook-2010 ch. 8.
 */
export function screwHole_mm(
  screw: { readonly shank_mm: number; readonly root_mm: number },
  G: number,
  place: HolePlace,
  load: HoleFor = 'lateral',
): number {
  const dense = G > 0.6;
  if (place === 'shank') return (dense ? 1 : 7 / 8) * screw.shank_mm;
  if (load === 'lateral') return (dense ? 1 : 7 / 8) * screw.root_mm;
  return (dense ? 0.9 : 0.7) * screw.root_mm;
}

/**
 * Largest lead hole for a nail, mm: three quarters of its diameter up to a specific gravity of 0.6, nine tenths above.
 * Source: nds-2018 12.1.6.3.
 */
export function nailHole_mm(diameter_mm: number, G: number): number {
  return (G > 0.6 ? 0.9 : 0.75) * diameter_mm;
}

const isInch = (drill: Drill): boolean => /in\b|"/.test(drill.label);

const byKind = remembered((drills: readonly Drill[]) => ({
  metric: drills.filter((drill) => !isInch(drill)),
  inch: drills.filter(isInch),
}));

/** Drills as the plan's writer would name them, when there are any of that kind; otherwise all. */
function preferred(drills: readonly Drill[], units: 'metric' | 'inch' | null): readonly Drill[] {
  if (units === null) return drills;
  const kind = byKind(drills)[units];
  return kind.length > 0 ? kind : drills;
}

/**
 * The largest drill on hand that is not wider than the rule; null when all are wider. Drills of the plan's units come
 * first when one of them fits.
 */
export function nearestDrill(
  drills: readonly Drill[],
  rule_mm: number,
  units: 'metric' | 'inch' | null = null,
): Drill | null {
  return widestUpTo(preferred(drills, units), rule_mm) ?? widestUpTo(drills, rule_mm);
}

/**
 * The smallest drill on hand at least as wide as the shank, so that the screw slips through and draws the pieces
 * together (practice); null when all are narrower.
 */
export function clearanceDrill(
  drills: readonly Drill[],
  shank_mm: number,
  units: 'metric' | 'inch' | null = null,
): Drill | null {
  return narrowestFrom(preferred(drills, units), shank_mm) ?? narrowestFrom(drills, shank_mm);
}

function widestUpTo(drills: readonly Drill[], most_mm: number): Drill | null {
  let best: Drill | null = null;
  for (const drill of drills)
    if (drill.diameter_mm <= most_mm && (best === null || drill.diameter_mm > best.diameter_mm)) best = drill;
  return best;
}

function narrowestFrom(drills: readonly Drill[], least_mm: number): Drill | null {
  let best: Drill | null = null;
  for (const drill of drills)
    if (drill.diameter_mm >= least_mm && (best === null || drill.diameter_mm < best.diameter_mm)) best = drill;
  return best;
}
