import { shelfIn } from '../shelf/in-system.js';
import type { Screw, Shelf } from '../shelf/shelf.js';
import { builtSize, plyThickness_mm } from './build-up.js';
import { planDefaults } from './defaults.js';
import { settleNails } from './settle-nails.js';
import { settleSetbacks } from './settle-setbacks.js';
import type { Assumed, Plan } from './plan.js';

/** Wood kept between a screw's tip and the far face, mm. */
const cover_mm = 3;

/**
 * Settles the defaults that depend on what is on the shelf; whatever the plan itself says stays.
 * A default setback becomes what a firm brush clears, a default nail one that fits its corner or none, a default ply screw the one that fits two plies.
 */
export function settlePlan(plan: Plan, shop: Shelf): Plan {
  const shelf = shelfIn(shop, plan.units);
  const bars = Object.hasOwn(shelf.lumber, plan.bars.stock) ? shelf.lumber[plan.bars.stock] : undefined;
  if (bars === undefined) return plan;
  const notes = new Map(plan.assumed.map((entry) => [entry.path, entry.value]));
  const size = builtSize(bars, plan.bars.lay, plan.bars.plies, plan.bars.stack);
  const crossbars = settleSetbacks(plan, size, shelf, notes);
  const corners = settleNails(plan, size, shelf, notes);
  let { ply_screws } = plan;
  if (ply_screws !== null && notes.has('ply-screws.use')) {
    const use = fittingScrew(Object.values(shelf.screws), plyThickness_mm(bars, plan.bars.lay, plan.bars.stack));
    notes.set('ply-screws.use', use ?? 'none: no screw on the shelf holds two plies this thick and stays inside them');
    if (use !== null) ply_screws = { ...ply_screws, use };
  }
  const assumed: readonly Assumed[] = [...notes].map(([path, value]) => ({ path, value }));
  return { ...plan, crossbars, corners, ply_screws, assumed };
}

/** The usual screw where it holds at least a third of the second ply without coming near its far face; else the thinnest, then longest one that does; else null. */
export function fittingScrew(screws: readonly Screw[], ply_mm: number): string | null {
  const fits = screws.filter(({ length_mm }) => length_mm >= ply_mm * (4 / 3) && length_mm <= 2 * ply_mm - cover_mm);
  if (fits.some(({ key }) => key === planDefaults.ply_screw)) return planDefaults.ply_screw;
  const [best] = [...fits].sort((a, b) => a.shank_mm - b.shank_mm || b.length_mm - a.length_mm || (a.key < b.key ? -1 : 1));
  return best?.key ?? null;
}
