import type { UnitSystem } from '../base/names.js';
import { cutPlan, type CutPlan } from '../cutting/cut-plan.js';
import { planLetter } from '../cutting/pool.js';
import { clothRolls, type ClothRoll } from '../cutting/roll-plans.js';
import { materials, type MaterialLine } from '../cost/materials.js';
import { clothOf } from '../mechanics/cloth/shelf-numbers.js';
import { buildModel } from '../model/build-model.js';
import type { Plan } from '../plan/plan.js';
import type { Shelf } from '../shelf/shelf.js';
import { endlessShelf, shortBoards, type ShortBoard } from './enough-boards.js';

/** What several plans take together, bought in one go. */
export interface Pooled {
  readonly plans: readonly Plan[];
  /** Boards: what to buy and how to cut it. */
  readonly cut: CutPlan;
  /** Boards the cutting takes beyond what the shelf says is there; empty when there are enough. */
  readonly short: readonly ShortBoard[];
  /** Cloth: one roll for each kind, all its cloths laid out on it, named by the letters of their plans when there are several. */
  readonly rolls: readonly ClothRoll[];
  /** Everything else, equal things added up, in order of first use. */
  readonly others: readonly MaterialLine[];
  /** Sum of everything; null when the cost of the boards is unknown, or a cloth does not fit its roll: `reason` then says why. */
  readonly total_cost: number | null;
  readonly reason: string | null;
}

/** Works out boards for plans on a shelf, such as `cutPlan`. */
export type Cutter<C> = (plans: readonly Plan[], shelf: Shelf) => C;

/** What all plans take, each as often as its count says, the same on every machine. */
export function poolPlans(plans: readonly Plan[], shelf: Shelf): Pooled {
  const cut = cutPlan(plans, shelf);
  const endless = cut.cost === null ? endlessShelf(shelf) : null;
  return addUp(plans, shelf, endless === null ? cut : better(cut, cutPlan(plans, endless)));
}

/** The same with boards worked out by another, slower cutter. */
export async function poolPlansWith(plans: readonly Plan[], shelf: Shelf, cutter: Cutter<Promise<CutPlan>>): Promise<Pooled> {
  const cut = await cutter(plans, shelf);
  const endless = cut.cost === null ? endlessShelf(shelf) : null;
  return addUp(plans, shelf, endless === null ? cut : better(cut, await cutter(plans, endless)));
}

/** Where the shop has too few boards, the cutting as if it had enough: the page then says how many are missing. */
const better = (cut: CutPlan, endless: CutPlan): CutPlan => (endless.uncut.length < cut.uncut.length ? endless : cut);

function addUp(plans: readonly Plan[], shelf: Shelf, found: CutPlan): Pooled {
  const cut: CutPlan = { ...found, units: commonUnits(plans) };
  const models = plans.map((plan) => buildModel(plan, shelf));
  const rolls = clothRolls(models.map((model, i) => (models.length === 1 ? model : { ...model, plan: { ...model.plan, name: planLetter(i) } })));
  const others = new Map<string, MaterialLine>();
  for (const model of models)
    for (const line of materials(model, cut).lines) {
      if (line.what === 'wood' || line.what === clothOf(model).name) continue;
      const key = `${line.what} ${line.unit}`;
      const before = others.get(key);
      others.set(key, before === undefined ? line : { ...line, quantity: before.quantity + line.quantity, cost: plus(before.cost, line.cost) });
    }
  const wide = rolls.flatMap(({ layout }) => layout.too_wide);
  const lines = [...others.values()];
  const unpriced = lines.find(({ cost }) => cost === null);
  const reason = cut.reason ?? (wide.length > 0 ? `The roll is too narrow for the cloth of ${wide.join(', ')}.` : unpriced === undefined ? null : `The cost of ${unpriced.what} is unknown.`);
  const total_cost = reason !== null || cut.cost === null ? null : [...rolls, ...lines].reduce((sum, { cost }) => sum + (cost ?? 0), cut.cost);
  return { plans, cut, short: shortBoards(cut, shelf), rolls, others: lines, total_cost, reason };
}

/** The units of all plans; where they differ, millimetres, which show a length in inches to a tenth of a millimetre, while a sixteenth of an inch would hide more. */
function commonUnits(plans: readonly Plan[]): UnitSystem {
  return plans.length > 0 && plans.every(({ units }) => units === 'inch') ? 'inch' : 'metric';
}

const plus = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a + b);
