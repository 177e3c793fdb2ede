import type { UnitSystem } from '../base/names.js';
import type { SawAtHand } from '../base/saw.js';
import { formatLength } from '../base/units-format.js';

/**
 * What a workshop has at hand, as far as the order of work asks; what is left out is taken to be there, the saw's
 * height from the shelf.
 */
export interface ToolsAtHand {
  /** How high a piece the highest-cutting saw takes standing in it, mm. */
  readonly saw_height_mm?: number;
  /** The best way of cutting there is; `none` where the shop cuts the pieces. */
  readonly saw?: SawAtHand;
  readonly corner_clamps?: number;
  readonly bar_clamps?: number;
  readonly moisture_meter?: boolean;
  /** Whether a table or floor is flat enough to glue a frame on. */
  readonly flat_place?: boolean;
}

/** Clamps that the four corners take at one go. */
export const CORNER_CLAMPS = 4;

/** Where a frame lies true: `on a flat table`, or what stands in for one. */
export const flatPlace = ({ flat_place }: ToolsAtHand, usual: string): string =>
  flat_place === false
    ? 'on two straight battens laid parallel, packed until they line up when you sight over them'
    : usual;

/** A sentence after the gluing of corners where clamps for all four are missing; empty where they are there. */
export function fewCornerClamps({ corner_clamps = CORNER_CLAMPS }: ToolsAtHand, clamp_min: number): string {
  if (corner_clamps >= CORNER_CLAMPS) return '';
  if (corner_clamps === 0)
    return ' There are no corner clamps: lay a scrap with a notch outside each corner, wind a cord twice round the frame over them and tighten it by twisting a stick in it, a little on each side in turn.';
  const [at_once, rest] = [
    ['one corner', 'the next'],
    ['two corners across from each other', 'the other two'],
    ['three corners', 'the last'],
  ][corner_clamps - 1] as [string, string];
  return ` There ${corner_clamps === 1 ? 'is one corner clamp' : `are ${corner_clamps} corner clamps`}: glue ${at_once}, leave them clamped for ${clamp_min} minutes with the rest of the frame laid out dry, then ${rest}; measure the diagonals each time.`;
}

/** Screws that stand in for clamps lie this far apart (`practice`). */
const apart_mm = { metric: 150, inch: 152.4 } as const;

/** A sentence after the gluing of plies where clamps for one bar are missing; empty where they are there. */
export function fewBarClamps({ bar_clamps }: ToolsAtHand, needed: number, units: UnitSystem): string {
  if (bar_clamps === undefined || bar_clamps >= needed) return '';
  if (bar_clamps === 0)
    return ` There are no clamps: close the plies with screws from the back while the glue sets, one every ${formatLength(apart_mm[units], units)}, or lay the bar on a true floor under a stiff board and load it evenly, bricks or filled cans side by side along its whole length.`;
  return ` There ${bar_clamps === 1 ? 'is one clamp' : `are ${bar_clamps} clamps`} and a bar asks for ${needed}: lay a stiff batten along each side under the clamps, spread them evenly, put weights between them, and glue one bar at a time.`;
}

/** The trial by weight where no meter reads the boards. */
export const weighing =
  'There is no moisture meter: weigh one board on a kitchen scale, write the weight and the day on it, and weigh it again every second day. It is ready to cut when it stops losing: less than one part in 200 from one time to the next (4 g of a board of 800 g).';
