import { clothCutSize } from '../../mechanics/cloth/cut-size.js';
import { clothCutOf } from '../../mechanics/cloth/cloth-sheet.js';
import { clothOf } from '../../mechanics/cloth/shelf-numbers.js';
import type { Model } from '../../model/model.js';
import { shelfIn } from '../../shelf/in-system.js';
import type { Cloth, Shelf } from '../../shelf/shelf.js';
import { commonUnits } from '../pieces/pool.js';
import { packRoll, type RollLayout } from './roll.js';
import type { RollPiece } from './piece.js';

/** All cloths of one kind, from one or several plans, on one roll. */
export interface ClothRoll {
  readonly cloth: Cloth;
  readonly layout: RollLayout;
}

/**
 * A plan's cloth as pieces for the roll, one for each frame: the longer side along the threads; a square may lie either
 * way.
 */
export function rollPieces(model: Model): RollPiece[] {
  const { width_mm, height_mm } = clothCutSize(clothCutOf(model));
  const { name, count } = model.plan;
  return Array.from({ length: count }, (_, i) => ({
    name: count === 1 ? name : `${name}${/\d$/u.test(name) ? '.' : ' '}${i + 1}`,
    along_mm: Math.max(width_mm, height_mm),
    across_mm: Math.min(width_mm, height_mm),
    turnable: width_mm === height_mm,
  }));
}

/**
 * Lays the cloths of all plans out, a roll for each kind of cloth and roll width, in order of first use; rolls are
 * those of the units that the plans share.
 */
export function clothRolls(models: readonly Model[], shop: Shelf): ClothRoll[] {
  const shelf = shelfIn(shop, commonUnits(models.map(({ plan }) => plan)));
  const groups = new Map<string, { cloth: Cloth; roll_mm: number; pieces: RollPiece[] }>();
  for (const model of models) {
    const cloth = shelf.cloths[model.plan.cloth.use] ?? clothOf(model);
    const roll_mm = model.plan.cloth.roll_mm ?? cloth.roll_mm;
    const key = `${cloth.key} ${roll_mm}`;
    const group = groups.get(key) ?? { cloth, roll_mm, pieces: [] };
    group.pieces.push(...rollPieces(model));
    groups.set(key, group);
  }
  return [...groups.values()].map(({ cloth, roll_mm, pieces }) => ({ cloth, layout: packRoll(pieces, roll_mm) }));
}
