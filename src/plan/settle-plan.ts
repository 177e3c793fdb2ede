import { formatQuantity } from '../base/units-format.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Shelf } from '../shelf/shelf.js';
import { builtSize, plyThickness_mm } from './build-up.js';
import { planDefaults } from './defaults.js';
import { fittingScrew } from './ply-screw.js';
import { settleHanging } from './settle-hanging.js';
import { settleNails } from './settle-nails.js';
import { settleSetbacks } from './settle-setbacks.js';
import type { Assumed, Plan } from './plan.js';

/**
 * Settles the defaults that depend on what is on the shelf; whatever the plan itself says stays.
 * A default pull becomes the one the shelf gives for the cloth, a default setback what a firm brush clears, a default
 * nail one that fits its corner or none,
 * a default ply screw the one that fits two plies.
 */
export function settlePlan(plan: Plan, shop: Shelf): Plan {
  const shelf = shelfIn(shop, plan.units);
  const bars = Object.hasOwn(shelf.lumber, plan.bars.stock) ? shelf.lumber[plan.bars.stock] : undefined;
  if (bars === undefined) return plan;
  const notes = new Map<string, string>();
  for (const { path, value } of plan.assumed) notes.set(path, value);
  const size = builtSize(bars, plan.bars.lay, plan.bars.plies, plan.bars.stack);
  const cloth = settlePull(plan, shelf, notes);
  const crossbars = settleSetbacks(plan, cloth.working, size, shelf, notes);
  const corners = settleNails(plan, size, shelf, notes);
  let { ply_screws } = plan;
  if (ply_screws !== null && notes.has('ply-screws.use')) {
    const use = fittingScrew(Object.values(shelf.screws), plyThickness_mm(bars, plan.bars.lay, plan.bars.stack));
    notes.set('ply-screws.use', use ?? 'none: no screw on the shelf holds two plies this thick and stays inside them');
    if (use !== null) ply_screws = { ...ply_screws, use };
  }
  const hang = settleHanging(plan, crossbars, size, shelf, notes);
  const assumed: readonly Assumed[] = [...notes].map(([path, value]) => ({ path, value }));
  return { ...plan, crossbars, corners, ply_screws, cloth, hang, assumed };
}

/** The pulls of a plan that names neither: what the studio reaches with that cloth, where its shelf says so. */
function settlePull({ cloth, units }: Plan, shelf: Shelf, notes: Map<string, string>): Plan['cloth'] {
  const working = Object.hasOwn(shelf.cloths, cloth.use) ? (shelf.cloths[cloth.use]?.pull_N_per_m ?? null) : null;
  if (working === null || !notes.has('cloth.pull.working') || !notes.has('cloth.pull.peak')) return cloth;
  const peak = working * planDefaults.peak_over_working;
  notes.set('cloth.pull.working', `${formatQuantity(working, 'N/m', units)}, the shelf’s number for this cloth`);
  notes.set('cloth.pull.peak', `${formatQuantity(peak, 'N/m', units)}, twice the working pull`);
  return { ...cloth, working: { x_N_per_m: working, y_N_per_m: working }, peak: { x_N_per_m: peak, y_N_per_m: peak } };
}
