import { formatLength } from '../base/units-format.js';
import type { Model } from '../model/model.js';
import { hangingPoints } from '../mechanics/occupancy/hanging-points.js';
import { step, type WorkStep } from './step.js';

/** Faces from here on are too large to hang alone, mm². */
const LARGE_MM2 = 1.5e6;
/** Pieces from here on call for care overhead, kg. */
const HEAVY_KG = 10;

/** The last step: to the wall. */
export function hangSteps(model: Model): readonly WorkStep[] {
  const { plan, weight } = model;
  const { by } = plan.hang;
  if (by === 'none') return [];
  const large = plan.face.width_mm * plan.face.height_mm > LARGE_MM2;
  const cautions = ['drill-slip', 'lifting', ...(large || weight.total_kg > HEAVY_KG ? ['overhead-hanging'] : [])];
  const below = formatLength(hangingPoints(model).drop_mm, plan.units);
  const text = {
    wire: `Drill for the ring screws, ${below} below the top edge, turn them in, knot the wire with the slack of the hanging page, and hang the piece.`,
    'two-hooks': `Drill for the ring screws, ${below} below the top edge, turn them in, and hang the piece on its two hooks.`,
    'd-rings': `Screw a strap hanger to the back of each side bar, its ring ${below} below the top edge and pointing up, and hang the piece on two hooks, set level with a spirit level.`,
    cleat:
      'Screw one bevelled strip under the top bar, flush with its back, its bevel looking down and away from the wall, so that a point hangs down next to the wall; screw the other level to the wall, into what carries it, its bevel looking up and to the wall, and set the piece down so that one point goes behind the other.',
  }[by];
  return [step('hang', text, cautions)];
}
