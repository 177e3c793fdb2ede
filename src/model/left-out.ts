import type { Model } from './model.js';

/**
 * What the computation leaves out, in sentences for the report: always the limits of the method, and then those this
 * plan touches.
 */
export function leftOut(model: Model): string[] {
  const { plan } = model;
  const sentences = [
    'All bars and crossbars are taken in one plane: a crossbar set back behind the bars is a little softer in truth.',
    'A bar bent in the plane and twisted at once (lateral-torsional coupling along the bar) is covered by the stability check only, not by the shape under pull.',
    'Near and past the pull at which it gives way, a frame is taken as turning elastically under cloth that does not stretch: real cloth holds it back, so the lift told there is the most it comes to.',
    'Joints give like springs; slip in a joint before it breaks is not followed.',
    'The cloth pulls as much as the plan says in each direction; its weave, its own stretch and its creep are not followed.',
    'Each board is taken from the spread of its kind; the growth rings of your actual board are not known.',
    'Knocks, falls and transport are not covered, beyond one accidental pull on the corners.',
  ];
  const brace = plan.corners.brace;
  if (brace !== null && brace.kind !== 'timber')
    sentences.push(
      'Corner plates are taken as springs in the plane beside their joints; out of that plane they add nothing.',
    );
  if (plan.crossbars.length > 0)
    sentences.push('Crossbars that cross are taken as half-lapped and rigid where they cross.');
  if (model.braces.length > 0) sentences.push('Natural warp of the corner braces is left out: they are short.');
  if (plan.bars.plies > 1 && plan.bars.bond === 'screws' && plan.bars.plies > 3)
    sentences.push('Four boards held by screws alone are counted as loose boards.');
  return sentences;
}
