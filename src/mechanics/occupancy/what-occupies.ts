import { barNames, type BarName } from '../../base/names.js';
import type { Model } from '../../model/model.js';
import { plannedFastenings } from '../fasteners/planned-fastenings.js';
import { beforePlyScrews } from './before-ply-screws.js';
import { inTheWay, type Occupant } from './occupant.js';
import { plyScrewBoxes } from './ply-screw-boxes.js';

/** The room that the ply screws of the four side bars take up. */
export function plyScrews(model: Model): readonly Occupant[] {
  const planned = plannedFastenings(model).find(({ name }) => name === 'ply-screws');
  if (planned === undefined) return [];
  return planned.rows.flatMap(({ piece, places_mm }) =>
    (barNames as readonly string[]).includes(piece) ? plyScrewBoxes(model, piece as BarName, planned, places_mm) : [],
  );
}

/** Ply screws that nothing could be moved for, each with what it runs into. */
export function plyScrewsInTheWay(model: Model): readonly (readonly [screw: Occupant, into: Occupant])[] {
  const fixed = beforePlyScrews(model);
  const met: (readonly [Occupant, Occupant])[] = [];
  for (const screw of plyScrews(model)) for (const other of fixed) if (inTheWay(screw, other)) met.push([screw, other]);
  return met;
}
