import { pickScrew } from '../fit/pick-screw.js';
import type { Lumber, Screw, Shelf } from '../shelf/shelf.js';
import { laidSize, plyThickness_mm } from './build-up.js';
import { planDefaults } from './defaults.js';
import type { Lay, Plan, Stack } from './plan.js';

/** Wood kept between a screw's tip and the far face, mm. */
const cover_mm = 3;

/**
 * Plies of one piece as a screw through them meets them: how thick each is along the screw, how high the face it is
 * driven into, how many, of which wood.
 */
export interface PlyStack {
  readonly ply_mm: number;
  readonly face_mm: number;
  readonly plies: number;
  readonly specific_gravity: number;
}

/** The plies of a piece that is built like this. */
export function plyStack(
  stock: Lumber,
  { lay, plies }: { readonly lay: Lay; readonly plies: number },
  stack: Stack,
): PlyStack {
  const { w_mm, d_mm } = laidSize(stock, lay);
  return {
    ply_mm: plyThickness_mm(stock, lay, stack),
    face_mm: stack === 'side-by-side' ? d_mm : w_mm,
    plies,
    specific_gravity: stock.species.specific_gravity,
  };
}

/** Whether two pieces take the same screws. */
export const sameStack = (a: PlyStack, b: PlyStack): boolean =>
  a.ply_mm === b.ply_mm && a.face_mm === b.face_mm && a.plies === b.plies && a.specific_gravity === b.specific_gravity;

/** Of pieces that take one screw the thinnest decides. */
export const byThickness = (a: PlyStack, b: PlyStack): number => a.ply_mm * a.plies - b.ply_mm * b.plies;

/**
 * The usual screw where it holds at least a third of the second ply without coming near its far face; else the
 * thinnest, then longest one that does; else null.
 */
export function fittingScrew(screws: readonly Screw[], ply_mm: number): string | null {
  const fits = screws.filter(({ length_mm }) => length_mm >= ply_mm * (4 / 3) && length_mm <= 2 * ply_mm - cover_mm);
  if (fits.some(({ key }) => key === planDefaults.ply_screw)) return planDefaults.ply_screw;
  const [best] = [...fits].sort(
    (a, b) => a.shank_mm - b.shank_mm || b.length_mm - a.length_mm || (a.key < b.key ? -1 : 1),
  );
  return best?.key ?? null;
}

/**
 * How a screw of this length sits in a stack of equal plies: plies it passes, penetration into the one that holds its
 * tip, wood left.
 */
export function plyScrewFit(
  length_mm: number,
  ply_mm: number,
  plies: number,
): { readonly passes: number; readonly penetration_mm: number; readonly exit_mm: number } {
  const passes = Math.max(0, Math.min(plies - 1, Math.ceil(length_mm / ply_mm - 1e-9) - 1));
  return {
    passes,
    penetration_mm: passes === 0 ? 0 : Math.min(ply_mm, length_mm - passes * ply_mm),
    exit_mm: plies * ply_mm - length_mm,
  };
}

/**
 * Whether a screw holds one ply to the next: its tip, a diameter long, bites only where it is all in the next ply
 * (practice).
 */
export const plyScrewHolds = (
  { length_mm, shank_mm }: Pick<Screw, 'length_mm' | 'shank_mm'>,
  { ply_mm, plies }: PlyStack,
): boolean => plyScrewFit(length_mm, ply_mm, plies).penetration_mm >= shank_mm;

/** Whether the plan itself says which screw goes through its plies. */
export const namesPlyScrew = ({ ply_screws, assumed }: Plan): boolean =>
  ply_screws !== null && !assumed.some(({ path }) => path === 'ply-screws.use');

/**
 * The screw for a stack: the plan's own, where it names one; else one that fits plies of this thickness. Null when
 * nothing fits.
 */
export function plyScrewFor(plan: Plan, shelf: Shelf, { ply_mm, face_mm, plies }: PlyStack): Screw | null {
  const key = namesPlyScrew(plan) ? plan.ply_screws!.use : fittingScrew(Object.values(shelf.screws), ply_mm);
  if (key !== null) return shelf.screws[key] ?? null;
  return pickScrew(shelf, { through_mm: ply_mm, holding_mm: ply_mm * (plies - 1), edge_mm: face_mm / 2 });
}
