import { formatLength } from '../base/units-format.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Screw, Shelf } from '../shelf/shelf.js';
import { builtSize, plyThickness_mm } from './build-up.js';
import { planDefaults } from './defaults.js';
import type { Assumed, Plan } from './plan.js';

/** Wood kept between a screw's tip and the far face, mm. */
const cover_mm = 3;

/**
 * Settles the defaults that depend on what is on the shelf; whatever the plan itself says stays.
 * A default setback becomes as much of 5 mm as leaves the crossbar's back level with the bars; a default ply screw becomes the one that fits two plies.
 */
export function settlePlan(plan: Plan, shop: Shelf): Plan {
  const shelf = shelfIn(shop, plan.units);
  const bars = Object.hasOwn(shelf.lumber, plan.bars.stock) ? shelf.lumber[plan.bars.stock] : undefined;
  if (bars === undefined) return plan;
  const notes = new Map(plan.assumed.map((entry) => [entry.path, entry.value]));
  const depth_mm = builtSize(bars, plan.bars.lay, plan.bars.plies, plan.bars.stack).d_mm + plan.bars.lip_mm;
  const crossbars = plan.crossbars.map((crossbar, index) => {
    const path = `crossbars[${index}].setback`;
    const lumber = Object.hasOwn(shelf.lumber, crossbar.stock) ? shelf.lumber[crossbar.stock] : undefined;
    if (!notes.has(path) || lumber === undefined) return crossbar;
    const setback_mm = Math.max(0, Math.min(planDefaults.setback_mm, depth_mm - builtSize(lumber, crossbar.lay, crossbar.plies, plan.bars.stack).d_mm));
    notes.set(path, formatLength(setback_mm, plan.units));
    return { ...crossbar, setback_mm };
  });
  let { ply_screws } = plan;
  if (ply_screws !== null && notes.has('ply-screws.use')) {
    const use = fittingScrew(Object.values(shelf.screws), plyThickness_mm(bars, plan.bars.lay, plan.bars.stack)) ?? ply_screws.use;
    notes.set('ply-screws.use', use);
    ply_screws = { ...ply_screws, use };
  }
  const assumed: readonly Assumed[] = [...notes].map(([path, value]) => ({ path, value }));
  return { ...plan, crossbars, ply_screws, assumed };
}

/** The usual screw where it holds at least a third of the second ply without coming near its far face; else the thinnest, then longest one that does; else null. */
export function fittingScrew(screws: readonly Screw[], ply_mm: number): string | null {
  const fits = screws.filter(({ length_mm }) => length_mm >= ply_mm * (4 / 3) && length_mm <= 2 * ply_mm - cover_mm);
  if (fits.some(({ key }) => key === planDefaults.ply_screw)) return planDefaults.ply_screw;
  const [best] = [...fits].sort((a, b) => a.shank_mm - b.shank_mm || b.length_mm - a.length_mm || (a.key < b.key ? -1 : 1));
  return best?.key ?? null;
}
