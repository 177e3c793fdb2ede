import { capital } from '../base/capital.js';
import type { SawAtHand } from '../base/saw.js';
import { formatLength, lengthFigures } from '../base/units-format.js';
import type { Model, Solution } from '../model/model.js';
import {
  diagonalsOfAngle_mm,
  diagonalsOfLongBar_mm,
  gapOfLongBar_mm,
  gapOfSawAngle_mm,
  riseOfTilt_mm,
} from './slips-geometry.js';
import { liftPerTilt_mm_per_rad } from './tilt-lift.js';

/**
 * The slips that are looked at: half a degree at the saw, a millimetre (or a thirty-second of an inch) in one bar.
 * `practice`.
 */
export const slip_deg = 0.5;
/** The first in words. */
export const slipAngle = 'half a degree';
export const slip_mm = { metric: 1, inch: 25.4 / 32 } as const;

/** What one slip at the bench does to the frame; the rest of it being true. */
export interface Slip {
  readonly id: 'saw-angle' | 'bar-length' | 'saw-tilt';
  /** What slipped, in words. */
  readonly slip: string;
  /** Gap at one end of the worst mitre, the frame held square (or with equal diagonals), mm; 0 when it closes. */
  readonly gap_mm: number;
  /** Most that the two diagonals may come to differ, mm. */
  readonly diagonal_difference_mm: number;
  /**
   * How far one corner of the closed frame leaves the plane of the other three, mm; null when the flat frame does not
   * hold.
   */
  readonly corner_lift_mm: number | null;
  /** What it means and how to keep it off, in sentences. */
  readonly say: string;
}

/**
 * The three slips, each worked out on this frame, with how to keep them off with the saw at hand. Formulas:
 * `slips-geometry.ts`, `tilt-lift.ts`.
 */
export function slipsAtTheBench(model: Model, solution: Solution, saw?: SawAtHand): readonly Slip[] {
  return [sawAngle(model, saw), barLength(model, saw), sawTilt(model, solution, saw)];
}

const words = (mm: number, { plan: { units } }: Model): string =>
  lengthFigures(mm, units) === '0' ? `less than ${units === 'metric' ? '0.1 mm' : '1/64 in'}` : formatLength(mm, units);
const hasMitres = ({ plan }: Model): boolean => plan.corners.cut === 'mitre';

function sawAngle(model: Model, saw: SawAtHand | undefined): Slip {
  const { width_mm, height_mm } = model.plan.face;
  const w_mm = model.bars.top.section.w_mm;
  const gap_mm = hasMitres(model) ? gapOfSawAngle_mm(w_mm, slip_deg) : w_mm * Math.tan((slip_deg * Math.PI) / 180);
  const diagonal_difference_mm = diagonalsOfAngle_mm(width_mm, height_mm, slip_deg);
  const one = hasMitres(model) ? 'one mitre' : 'one end';
  return {
    id: 'saw-angle',
    slip: `${capital(slipAngle)} in the angle of ${one}`,
    gap_mm,
    diagonal_difference_mm,
    corner_lift_mm: 0,
    say: `Held square, that joint stays open ${words(gap_mm, model)} at one end; ${saw === 'hand' ? 'a mitre square that is off' : 'a saw set wrong'} opens every joint twice as far, because both pieces are off. Clamped shut instead, the corners go ${slipAngle} off square and the diagonals differ by ${words(diagonal_difference_mm, model)}. ${saw === 'none' ? 'Have two scraps cut first, put them together and hold a square in the corner before the bars are cut.' : 'Cut two scraps, put them together and hold a square in the corner before you cut the bars.'}`,
  };
}

/** How opposite bars come out alike with each saw. */
const againstOne = {
  power: 'Cut opposite bars against one stop',
  'mitre-box': 'Cut opposite bars against one stop',
  hand: 'Mark opposite bars from one stick',
  none: 'Have opposite bars cut against one stop',
} as const satisfies Readonly<Record<SawAtHand, string>>;

/**
 * How the lean of a blade is kept off; what leans all the same cancels only where no board was turned over. A hand saw
 * leans as the hand does: there only the lines help.
 */
function bladeUpright(saw: SawAtHand | undefined, mitred: boolean): string {
  if (saw === 'hand')
    return 'Mark the cut over the face and down both edges, and saw to the lines on the near and the far edge.';
  const rather = !mitred
    ? ''
    : `, ${{ power: 'swinging the saw over', 'mitre-box': 'in the other slot of the mitre box', none: 'swinging the saw over', either: 'swinging the saw over or taking the other slot of a mitre box' }[saw ?? 'either']} rather than turning the board`;
  const cancels = 'then the lean of one piece meets that of the next and cancels.';
  if (saw === 'none')
    return `Ask for the blade to be tried with a square, and for both ends of every bar cut with the same face up${rather}: ${cancels}`;
  const first = {
    power: 'Set the blade with a square',
    'mitre-box': 'Try with a square that the slots stand upright',
    either: 'Set the blade with a square',
  }[saw ?? 'either'];
  return `${first}, and cut both ends of every bar with the same face up${rather}: ${cancels}`;
}

function barLength(model: Model, saw: SawAtHand | undefined): Slip {
  const { width_mm, height_mm } = model.plan.face;
  const surplus_mm = slip_mm[model.plan.units];
  const w_mm = model.bars.top.section.w_mm;
  const between_mm = Math.min(width_mm, height_mm);
  const gap_mm = hasMitres(model)
    ? gapOfLongBar_mm(w_mm, surplus_mm, between_mm)
    : (w_mm * surplus_mm) / (2 * between_mm);
  const diagonal_difference_mm = diagonalsOfLongBar_mm(Math.max(width_mm, height_mm), between_mm, surplus_mm);
  return {
    id: 'bar-length',
    slip: `One bar ${words(surplus_mm, model)} longer than the one opposite`,
    gap_mm,
    diagonal_difference_mm,
    corner_lift_mm: 0,
    say: `The diagonals can still be made equal: then all four joints are a trace open (${words(gap_mm, model)}). With one end set square they differ by ${words(diagonal_difference_mm, model)}. The frame stays flat. ${againstOne[saw ?? 'power']}, so that both are wrong alike.`,
  };
}

function sawTilt(model: Model, { influence }: Solution, saw: SawAtHand | undefined): Slip {
  const { width_mm, height_mm } = model.plan.face;
  const open_mm = riseOfTilt_mm(Math.max(width_mm, height_mm), slip_deg, hasMitres(model) ? 45 : 90);
  const lift_mm =
    influence === null
      ? null
      : Math.max(...Object.values(liftPerTilt_mm_per_rad(model, influence))) * slip_deg * (Math.PI / 180);
  const closed =
    lift_mm === null
      ? 'What is left of it in the closed frame cannot be told: at working pull this flat frame does not hold.'
      : `Closed and stretched, the frame shares it out and one corner stands up about ${words(lift_mm, model)}; four such joints that all err to the same side make four times that.`;
  return {
    id: 'saw-tilt',
    slip: `Blade ${slipAngle} out of upright at one joint`,
    gap_mm: 0,
    diagonal_difference_mm: 0,
    corner_lift_mm: lift_mm,
    say: `The joint closes, but it builds a twist in: glued up tight, the far end of the longer bar stands ${words(open_mm, model)} off the table. ${closed} ${bladeUpright(saw, hasMitres(model))}`,
  };
}
