import { barNames, type BarName } from '../base/names.js';
import { lazily } from '../base/lazily.js';
import { once } from '../base/once.js';
import { remembered } from '../base/remembered.js';
import { causeInWords, noWarpWords } from '../base/warp-words.js';
import { assessWarp, type WarpRisk } from '../risk/assess.js';
import { bowedFrames, bowP90s, frameLines } from '../risk/natural-bow.js';
import { declareFacts, known, type FactInput, type FactValue } from './declare.js';

const no_samples = 'No samples were asked for.';
const no_spread = 'The numbers of the shelf give no spread of natural warp that can be worked with.';
const no_limit = (name: string): string => `The ruleset’s limit ${name} is not a length that can be worked out.`;

/**
 * A mean lift this small beside its spread is the rounding of bars that cancel out: which digits it has depends on the
 * machine.
 */
const rounding_share = 1e-9;

/** What is known of a frame's natural warp. */
interface Warp {
  readonly input: FactInput;
  /** In closed form; null where a bar bows sideways at working pull: then nothing is known, and says why. */
  readonly risk: WarpRisk | null;
  /** Whether the shelf gives every board a spread that can be worked with. */
  readonly spread_known: boolean;
  /** Past its critical pull a frame can turn so far that its own closed form no longer holds. */
  readonly folds: boolean;
  /** P90 of each bar’s largest departure, mm; null where it is not known: past the critical pull, without a spread. */
  readonly bow_p90_mm: Readonly<Record<BarName, number>> | null;
  /** Chance of at least one bowed bar; null besides where no samples are asked for. */
  readonly bowed: number | null;
}

const warpOf = remembered((input: FactInput): Warp => {
  const { model, solution, settings } = input;
  const bows = once(() => {
    const found = warp.risk;
    return found === null || !warp.spread_known || found.frame.past_critical
      ? null
      : { worst: found.bow, lines: frameLines(found.terms) };
  });
  const warp: Warp = lazily<Omit<Warp, 'input'>, Pick<Warp, 'input'>>(
    {
      risk: () => assessWarp(model, solution, settings),
      spread_known: () =>
        warp.risk?.terms.every(({ mean_per_m, sd_per_m }) => Number.isFinite(mean_per_m) && sd_per_m >= 0) === true,
      folds: () => (warp.risk?.lift.p90_mm ?? 0) > Math.min(model.plan.face.width_mm, model.plan.face.height_mm),
      bow_p90_mm: () => {
        const found = bows();
        return found && bowP90s(found.lines, found.worst);
      },
      bowed: () => {
        const found = settings.samples < 1 ? null : bows();
        return found && bowedFrames(found.lines, settings.bar_bow_limit_mm, settings).value;
      },
    },
    { input },
  );
  return warp;
});

/** What the closed form says, or why it says nothing. */
function told({ risk, spread_known }: Warp, value: (of: WarpRisk) => number | undefined, reason: string): FactValue {
  if (risk === null) return { unknown: noWarpWords['bows-sideways'] };
  return spread_known ? known(value(risk), reason) : { unknown: no_spread };
}

/** The same of a length that is meaningless where the frame folds up. */
const liftTold = (warp: Warp, value: (of: WarpRisk) => number): FactValue =>
  told(warp, (risk) => (warp.folds ? undefined : value(risk)), warp.folds ? noWarpWords.folds : no_spread);

/** What is known of bows, or why nothing is. */
function bowTold({ risk, spread_known }: Warp, value: number | null | undefined): FactValue {
  if (risk === null) return { unknown: noWarpWords['bows-sideways'] };
  if (value != null) return known(value, no_spread);
  return { unknown: risk.frame.past_critical ? noWarpWords['past-critical'] : spread_known ? no_samples : no_spread };
}

const usually = { source: 'physics', moved_by: 'boards', known_from: 'warp' } as const;

/** Natural warp of the whole frame: how far a corner lifts, and how likely. */
export const warpFacts = declareFacts(
  { each: 'frame', of: (input) => [['frame', warpOf(input)]] as const },
  usually,
)({
  'warp.corner_lift_mean_mm': {
    unit: 'mm',
    signed: true,
    meaning: 'Expected lift of one corner above the plane of the other three, towards the viewer positive.',
    value: (warp) => liftTold(warp, ({ lift }) => (Math.abs(lift.mean) < rounding_share * lift.sd ? 0 : lift.mean)),
  },
  'warp.corner_lift_sd_mm': {
    unit: 'mm',
    meaning: 'Standard deviation of the corner lift over frames built like this.',
    value: (warp) => liftTold(warp, ({ lift }) => lift.sd),
  },
  'warp.corner_lift_p90_mm': {
    unit: 'mm',
    meaning: 'Nine frames in ten built like this lift a corner by less than this.',
    value: (warp) => liftTold(warp, ({ lift }) => lift.p90_mm),
  },
  'warp.corner_lift_chance': {
    unit: 'chance',
    meaning:
      'Chance that a frame built like this, of boards of average stiffness, lifts a corner by more than the limit `corner-lift` at working pull.',
    value: (warp) => told(warp, ({ lift_chance }) => lift_chance, no_limit('corner-lift')),
  },
  'warp.bar_bow_chance': {
    unit: 'chance',
    known_from: 'samples',
    meaning:
      'Chance that at least one bar stands out of plane by more than the limit `bar-bow`, from bounds where these are narrow, else from sampling.',
    value: (warp) => {
      const limits_known = barNames.every((bar) => Number.isFinite(warp.input.settings.bar_bow_limit_mm[bar]));
      return limits_known || warp.risk === null || warp.risk.frame.past_critical
        ? bowTold(warp, warp.bowed)
        : { unknown: no_limit('bar-bow') };
    },
  },
});

/** Which causes the spread of the lift comes from, largest first. */
export const causeFacts = declareFacts(
  {
    each: 'frame',
    of: (input) => {
      const warp = warpOf(input);
      return warp.risk === null
        ? [['frame', { warp, share: 0 }] as const]
        : warp.risk.causes.map((cause) => [causeInWords(cause), { warp, share: cause.share }] as const);
    },
  },
  usually,
)({
  'warp.cause_share': {
    unit: 'share',
    meaning: 'Share of the variance of the corner lift by cause; the cause stands in `about`.',
    value: ({ warp, share }) => told(warp, () => share, no_spread),
  },
});

/**
 * What natural warp leaves of each bar's straightness: out of plane the largest value anywhere along the bar, in the
 * plane that at its worst place.
 */
export const barWarpFacts = declareFacts(
  {
    each: 'bar',
    of: (input) =>
      barNames.map((bar): readonly [BarName, { readonly bar: BarName; readonly warp: Warp }] => [
        bar,
        { bar, warp: warpOf(input) },
      ]),
  },
  usually,
)({
  'bar.natural_bow_p90_mm': {
    unit: 'mm',
    meaning:
      'Nine bars in ten, in the assembled frame at working pull, stand out of plane by less than this from natural warp alone.',
    value: ({ bar, warp }) => bowTold(warp, warp.bow_p90_mm?.[bar]),
  },
  'bar.natural_crook_p90_mm': {
    unit: 'mm',
    meaning:
      'Nine bars in ten, in the assembled frame at working pull, stand out of straight in the plane of the cloth by less than this from natural warp alone, at their worst place.',
    value: ({ bar, warp }) =>
      told(
        warp,
        ({ frame, crook }) => (frame.past_critical ? undefined : crook[bar].p90_mm),
        warp.risk?.frame.past_critical === true ? noWarpWords['past-critical'] : no_spread,
      ),
  },
});
