import { formatLength } from '../base/units-format.js';
import { KEYS_PER_CORNER } from '../fit/keyed-sizes.js';
import type { Model } from '../model/model.js';
import { keyLimit } from '../mechanics/cloth/key-limit.js';
import { hasKeys } from '../mechanics/cloth/keys.js';
import { staplesBySteel } from '../mechanics/occupancy/staple-line.js';
import { step, type WorkStep } from './step.js';

/** Hours a stretched and grounded cloth rests in the room it will hang in before it is judged and hung (practice). */
const REST_H = 24;

/** From frame to a stretched, grounded cloth that is taut, closed at the back and ready to hang. */
export function clothSteps(model: Model): readonly WorkStep[] {
  const { plan } = model;
  const ground = Object.values(model.shelf.grounds)[0];
  const { coats } = plan.ground;
  const { fixing } = plan.cloth;
  const every = formatLength(fixing.every_mm, plan.units);
  return [
    step(
      'threads',
      'Lay the cloth on its face and the frame on it, its front down. Turn it until the threads run true to the bars: follow one thread along each side with a pencil, the same distance from the bar at both ends.',
    ),
    step(
      'stretch',
      `Stretch the cloth from the middle of each side outwards, opposite sides in turn, and staple every ${every} on the ${fixing.to}, as the stretching page shows.${bySteel(model)}`,
      ['staple-gun', 'eye-protection'],
    ),
    step(
      'second-round',
      'Go round a second time, in the same order: the first staples hold less than the last, so draw them, pull again and set them anew until the note or the weight says the same everywhere.',
      ['staple-gun', 'eye-protection'],
    ),
    step(
      'corners',
      `Fold the corners last, as the stretching page shows: ${pleat[fixing.to]}, and no thicker than two layers.`,
      ['staple-gun'],
    ),
    step(
      'trim',
      `${fixing.to === 'back' ? 'Turn' : 'Lay'} the ${formatLength(fixing.turn_mm, plan.units)} beyond the staples ${fixing.to === 'back' ? 'under' : 'round onto the back'} and staple it flat, or trim it straight; do not cut it back to the staples, or the cloth cannot be pulled again.`,
      ['staple-gun'],
    ),
    ...(hasKeys(plan)
      ? [
          step(
            'keys',
            `Slip ${4 * KEYS_PER_CORNER} keys, ${KEYS_PER_CORNER} to a corner, into the inner corners by hand. Tap them in, all four corners in turn, only when the finished cloth has gone slack.`,
            ['eye-protection'],
          ),
        ]
      : []),
    ...(coats > 0
      ? [
          step(
            'ground',
            `Brush on ${coats === 1 ? 'one coat' : `${coats} coats`} of ground, letting each dry.`,
            ['solvent'],
            ground ? ground.dry_h * coats : null,
            'the ground to dry',
          ),
        ]
      : []),
    step(
      'rest',
      'Let the piece stand upright in the room it will hang in, then tap it or weigh it down once more.',
      [],
      REST_H,
      'cloth and wood to settle',
    ),
    step(
      'dust-cover',
      'Close the back against dust when the paint is dry: paper glued or thin board screwed along the bars, with a hole near each lower corner, so that air comes through, and the hanging points left free.',
    ),
  ];
}

/** Where the pleat of a corner goes, by where the cloth is fixed. */
const pleat = {
  back: 'the pleat lies on the back, never on the edge that is seen',
  edge: 'the pleat lies flat under the fold, square to the corner',
} as const;

/** What helps a cloth that has gone slack one day, by what the corners allow. */
export function slackStep(model: Model): WorkStep {
  const again = 'Draw the staples of one long side from the middle outwards, pull, and set them anew';
  const never = 'Never wet the back to tighten it: it comes back slacker.';
  if (!hasKeys(model.plan))
    return step(
      'when-slack',
      `If it goes slack: ${lower(again)}; the glued or nailed corners cannot be opened. ${never}`,
      ['staple-gun'],
    );
  const { travel_mm } = keyLimit(model);
  return step(
    'when-slack',
    `If it goes slack: tap the keys in evenly, a little at each corner in turn, no more than ${formatLength(travel_mm, model.plan.units)} at any; after that ${lower(again)}. ${never}`,
  );
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

/** Where steel lies on the backs, the staples go beside it. */
function bySteel(model: Model): string {
  const steel = staplesBySteel(model);
  if (steel === null) return '';
  const { units } = model.plan;
  return steel.on_steel > 0
    ? ` Within ${formatLength(steel.reach_mm, units)} of the corners ${steel.on_steel} staples would meet the steel: leave them out there and tack the cloth to the edge instead.`
    : ` Within ${formatLength(steel.reach_mm, units)} of the corners keep to the strip of ${formatLength(steel.strip_mm, units)} outside the steel.`;
}
