import { remembered, rememberedBy } from '../base/remembered.js';
import { buyPacks } from '../cost/packs.js';
import { weightParts } from '../model/weight.js';
import { builtSize } from '../plan/build-up.js';
import type { Plan } from '../plan/plan.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Hardware, Shelf } from '../shelf/shelf.js';

/** Lower than this share of the height nothing is hung that leans on its hook; then no hardware can be picked. */
const deepest_share = 0.5;
/** A piece so high hangs on any hook, however far that holds it off the wall, mm. */
const high_mm = 100;

/** Cost of all frames, whole cents, and mass of one, whole grams. */
interface Least {
  readonly cents: number;
  readonly grams: number;
}

/**
 * Less than what all frames of a plan hang by can cost, and one of them weigh, whichever way `hangOptions` changes it:
 * a wire may become two hooks and the other way round, all else stays as planned.
 */
export function leastHanging(plan: Plan, shelf: Shelf): Least {
  const { by, drop_mm } = plan.hang;
  const open = by === 'wire' || by === 'two-hooks';
  const steel_kg = (way: Plan['hang']['by']): number =>
    weightParts({ ...plan, hang: { ...plan.hang, by: way } }, shelf, 0).hardware_kg;
  const heavier_kg = (open ? Math.min(steel_kg('wire'), steel_kg('two-hooks')) : steel_kg(by)) - steel_kg('none');
  const { height_mm } = plan.face;
  const priced = open && height_mm > high_mm && drop_mm < deepest_share * height_mm;
  return { cents: priced ? leastCents(plan, shelf) : 0, grams: Math.floor(heavier_kg * 1000) };
}

/** Two rings, and two hooks or a wire that spans the frame with its hooks, of which there may be more and no fewer. */
function leastCents(plan: Plan, shop: Shelf): number {
  const shelf = shelfIn(shop, plan.units);
  const least = (kind: Hardware['kind'], amount: number): number =>
    leastPacks(shelf.hardware)(kind, amount * plan.count);
  const stock = shelf.lumber[plan.bars.stock];
  const { lay, plies, stack } = plan.bars;
  const w_mm = stock === undefined ? Infinity : builtSize(stock, lay, plies, stack).w_mm;
  const span_m = Math.max(0, plan.face.width_mm - 2 * w_mm) / 1000;
  const wire = least('wire', 1) * span_m;
  const hooks = least('hook', Math.max(1, plan.hang.hooks));
  // A wire without slack carries nothing: neither rings nor hook are picked for it.
  const byWire = plan.hang.by === 'wire' && plan.hang.slack_mm <= 0 ? 0 : least('ring', 2) + wire + hooks;
  return Math.floor(100 * Math.min(byWire, least('ring', 2) + least('hook', 2)) + 1e-6);
}

/** Least cost of so many pieces of a kind, of metres for a wire; 0 where there is none. */
const leastPacks = remembered((hardware: Shelf['hardware']) =>
  rememberedBy(
    (kind: Hardware['kind'], amount: number) => `${kind} ${amount}`,
    (kind, amount) => {
      const costs = Object.values(hardware).flatMap((part) => (part.kind === kind ? [packsCost(part, amount)] : []));
      return costs.length === 0 ? 0 : Math.min(...costs);
    },
    100,
  ),
);

const packsCost = ({ packs, price }: Hardware, pieces: number): number =>
  packs.length > 0 ? (buyPacks(packs, pieces)?.cost ?? 0) : price * pieces;
