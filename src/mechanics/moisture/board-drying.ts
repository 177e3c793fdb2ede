import type { Model } from '../../model/model.js';
import { daysToDry } from './drying.js';

/**
 * Water through wood across the grain, m²/s, uncertain by a factor of three (proposal; the shelf's `diffusion` replaces
 * it).
 */
const diffusionFallback_m2_per_s = 1e-10;

/** Days for the slowest board of the frame to settle, and how far that may be off. */
export interface WaitDays {
  readonly days: number;
  /** With a diffusion three times larger and three times smaller. */
  readonly low_days: number;
  readonly high_days: number;
  /** The section that is slowest, mm. */
  readonly thickness_mm: number;
  readonly width_mm: number;
}

/**
 * How long every board of the plan should lie in the room, stacked on spacers before gluing, to go nine tenths of the
 * way.
 */
export function waitForBoards(model: Model): WaitDays {
  const D = model.shelf.proposals['diffusion']?.value ?? diffusionFallback_m2_per_s;
  const stocks = [...Object.values(model.bars), ...model.crossbars, ...model.braces].map((part) => part.stock);
  const timed = stocks.map((stock) => ({
    thickness_mm: stock.thickness_mm,
    width_mm: stock.width_mm,
    days: daysToDry(stock.thickness_mm, stock.width_mm, D),
  }));
  const slowest = timed.reduce((worst, next) => (next.days > worst.days ? next : worst));
  // the time goes as one over the diffusion
  return { ...slowest, low_days: slowest.days / 3, high_days: 3 * slowest.days };
}
