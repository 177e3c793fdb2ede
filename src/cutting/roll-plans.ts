import { clothCutSize } from '../mechanics/cloth/cut-size.js';
import { clothCutOf, rollWidth_mm } from '../mechanics/cloth/cloth-sheet.js';
import { clothOf } from '../mechanics/cloth/shelf-numbers.js';
import type { Model } from '../model/model.js';
import type { Cloth } from '../shelf/shelf.js';
import { packRoll, type RollLayout } from './roll.js';
import type { RollPiece } from './roll-piece.js';

/** All cloths of one kind, from one or several plans, on one roll. */
export interface ClothRoll {
  readonly cloth: Cloth;
  readonly layout: RollLayout;
  readonly cost: number;
}

/** A plan's cloth as pieces for the roll, one for each frame: the longer side along the threads; a square may lie either way. */
export function rollPieces(model: Model): RollPiece[] {
  const { width_mm, height_mm } = clothCutSize(clothCutOf(model));
  const { name, count } = model.plan;
  return Array.from({ length: count }, (_, i) => ({
    name: count === 1 ? name : `${name} ${i + 1}`,
    along_mm: Math.max(width_mm, height_mm),
    across_mm: Math.min(width_mm, height_mm),
    turnable: width_mm === height_mm,
  }));
}

/** Lays the cloths of all plans out, a roll for each kind of cloth and roll width, in order of first use. */
export function clothRolls(models: readonly Model[]): ClothRoll[] {
  const groups = new Map<string, { cloth: Cloth; roll_mm: number; pieces: RollPiece[] }>();
  for (const model of models) {
    const cloth = clothOf(model);
    const roll_mm = rollWidth_mm(model);
    const key = `${cloth.key} ${roll_mm}`;
    const group = groups.get(key) ?? { cloth, roll_mm, pieces: [] };
    group.pieces.push(...rollPieces(model));
    groups.set(key, group);
  }
  return [...groups.values()].map(({ cloth, roll_mm, pieces }) => {
    const layout = packRoll(pieces, roll_mm);
    return { cloth, layout, cost: (layout.length_mm / 1000) * cloth.price_per_m };
  });
}
