import { capital } from '../base/capital.js';
import type { SawAtHand } from '../base/saw.js';
import { formatLength, formatNumber, formatQuantity, formatShare, formatSize } from '../base/units-format.js';
import { noWarpWords, readingInWords } from '../base/warp-words.js';
import { fitsDoor, PICTURE_LIFT, peopleToLift, recommendedLift_kg } from '../mechanics/lifting.js';
import type { FactSettings, Model, Solution } from '../model/model.js';
import { assessWarp, boardState } from '../risk/assess.js';
import { grownLift } from '../risk/closed-form.js';
import { usefulReadings, type Reading } from '../risk/readings.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import { slipsAtTheBench, type Slip } from './slips.js';

/** What being a little off would do, which reading would tell most, and whether the piece can be carried out. */
export interface WhatIf {
  readonly slips: readonly Slip[];
  readonly readings: ReadingsToTake;
  readonly door: DoorAnswer;
  readonly lifting: LiftingAnswer;
}

/** One reading worth taking. */
export interface ReadingToTake extends Reading {
  /** How many other boards would tell as much. */
  readonly alike: number;
  /** Nine in ten frames stay under this once it is taken and turns out average, mm. */
  readonly lift_p90_mm: number;
}

/** Readings worth taking before cutting, most telling first. */
export interface ReadingsToTake {
  readonly best: readonly ReadingToTake[];
  /** Nine in ten stay under this now, mm; null when the flat frame does not hold. */
  readonly lift_p90_mm: number | null;
  /**
   * Reserve against twisting as planned and with softer joints: what knowing the joints would move. Null when unknown.
   */
  readonly reserve: { readonly as_planned: number; readonly softer: number } | null;
  readonly say: readonly string[];
}

/** Whether the finished frame goes through a door. */
export interface DoorAnswer {
  readonly fits: 'yes' | 'no';
  /** True when the plan names the door; else a common one is taken. */
  readonly asked: boolean;
  readonly say: string;
}

/** Who lifts it. */
export interface LiftingAnswer {
  readonly people: number;
  readonly weight_kg: number;
  /** Most that one person should lift so, kg. Source: niosh-94-110. */
  readonly one_person_kg: number;
  readonly say: string;
}

/** A common inside door, clear, mm (`practice`), for plans that name none: sold as 760 x 1980 mm and as 30 x 78 in. */
const common_door = { metric: { width_mm: 760, height_mm: 1980 }, inch: { width_mm: 762, height_mm: 1981.2 } } as const;

/** A reading that settles less of the doubt than this is not worth a walk to the board. */
const least_settled = 0.03;

/** How many readings are told. */
const readings_told = 3;

/**
 * Everything for the part “What if I am a little off?”. Pure; sentences are in the plan's own units and speak of the
 * saw at hand.
 */
export function whatIf(model: Model, solution: Solution, settings: FactSettings, saw?: SawAtHand): WhatIf {
  return {
    slips: slipsAtTheBench(model, solution, saw),
    readings: readingsToTake(model, solution, settings),
    door: throughTheDoor(model),
    lifting: lifting(model),
  };
}

function readingsToTake(model: Model, solution: Solution, settings: FactSettings): ReadingsToTake {
  const { units } = model.plan;
  const reserve = reserves(model, solution);
  const joints =
    reserve === null
      ? []
      : [
          `A test joint would tell nothing of natural warp, but of the reserve against twisting: ${formatNumber(reserve.as_planned, 2)} with joints as the shelf takes them, ${formatNumber(reserve.softer, 2)} if they give more.`,
        ];
  const risk = assessWarp(model, solution, settings);
  if (risk === null || risk.frame.past_critical) {
    return {
      best: [],
      lift_p90_mm: null,
      reserve,
      say: [
        risk === null
          ? noWarpWords['bows-sideways']
          : 'The working pull turns this flat frame into a propeller whatever its boards, so no reading of them helps.',
        ...joints,
      ],
    };
  }
  const { unpulled, growth, p90_mm } = risk.lift;
  const useful = usefulReadings(model, risk.terms, boardState(model).assumptions);
  const alikeTo = ({ settles }: Reading): readonly Reading[] =>
    useful.filter((other) => Math.abs(other.settles - settles) < 1e-6);
  const best = useful
    .filter((reading) => alikeTo(reading)[0] === reading)
    .slice(0, readings_told)
    .map((reading): ReadingToTake => ({
      ...reading,
      alike: alikeTo(reading).length - 1,
      lift_p90_mm: grownLift(
        { mean: unpulled.mean, sd: unpulled.sd * Math.sqrt(Math.max(0, 1 - reading.settles)) },
        growth,
      ).p90_mm,
    }));
  const told = best
    .filter(({ settles }) => settles >= least_settled)
    .map((reading) => {
      const [then, now] = [formatLength(reading.lift_p90_mm, units), formatLength(p90_mm, units)];
      const gain =
        then === now
          ? ''
          : `; nine in ten such frames would then stay under ${then} instead of ${now}, if it turns out average`;
      return `${capital(readingInWords(reading.of))}${reading.alike === 0 ? '' : ` (${reading.alike} other ${reading.alike === 1 ? 'board tells' : 'boards tell'} as much)`}: settles up to ${formatShare(reading.settles)} of the doubt about a lifted corner${gain}.`;
    });
  return {
    best,
    lift_p90_mm: p90_mm,
    reserve,
    say: [...(told.length === 0 ? ['No single reading would tell much more about a lifted corner.'] : told), ...joints],
  };
}

function reserves(model: Model, { peak_factor, soft_peak_factor }: Solution): ReadingsToTake['reserve'] {
  const share = shelfNumber(model.shelf, 'stiffness-share');
  return peak_factor === null || soft_peak_factor === null
    ? null
    : { as_planned: share * peak_factor, softer: share * soft_peak_factor };
}

function throughTheDoor(model: Model): DoorAnswer {
  const { plan } = model;
  const door = plan.door ?? common_door[plan.units];
  const { width_mm, height_mm } = plan.face;
  const depth_mm = model.bars.top.section.d_mm + plan.bars.lip_mm;
  const fits = fitsDoor(width_mm, height_mm, depth_mm, door) === 'yes' ? 'yes' : 'no';
  const size = formatSize(door.width_mm, door.height_mm, plan.units);
  const which =
    plan.door === null ? `a common door (${size} clear; the plan names none)` : `the door of the plan (${size} clear)`;
  const shorter = formatLength(Math.min(width_mm, height_mm), plan.units);
  const say =
    fits === 'yes'
      ? `It goes through ${which}, upright, with its ${shorter} side standing.`
      : `It does not go upright through ${which}: its shorter side is ${shorter}${depth_mm > door.width_mm ? ` and it is ${formatLength(depth_mm, plan.units)} deep` : ''}. Tilting it may help a little; measure before you build, or build it in the room.`;
  return { fits, asked: plan.door !== null, say };
}

function lifting({ plan, weight }: Model): LiftingAnswer {
  const { width_mm, height_mm } = plan.face;
  const people = peopleToLift(weight.total_kg, width_mm, height_mm);
  const one_person_kg = recommendedLift_kg(PICTURE_LIFT);
  const light = weight.total_kg <= one_person_kg;
  const by = people <= 1 ? 'One person lifts it' : `${people === 2 ? 'Two' : people} people lift it`;
  const why = light && people > 1 ? ', not for its weight but because one cannot reach around it' : '';
  return {
    people,
    weight_kg: weight.total_kg,
    one_person_kg,
    say: `${by}${why}: finished it weighs about ${formatQuantity(weight.total_kg, 'kg', plan.units)}; one person should lift at most about ${formatQuantity(Number(one_person_kg.toPrecision(2)), 'kg', plan.units)} to a wall.`,
  };
}
