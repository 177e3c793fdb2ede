import { believe, type Nig } from '../../src/learn/nig.js';
import { learnFrames } from '../../src/learn/learn.js';
import { answers, Chance, shelf, studioYear, type Truth } from './invented-studio.js';

const strip = shelf.lumber['strip-19x38']!.spread.plain;
const deg = 180 / Math.PI;

/** What is believed before any frame: the truths of the invented studios are drawn from it. */
const priors: Readonly<Record<keyof Truth, Nig>> = {
  twist: believe(strip.twist_rad_per_m.mean, strip.twist_rad_per_m.sd),
  bow: believe(0, strip.bow_per_m.sd), crook: believe(0, strip.crook_per_m.sd),
  ln_give: believe(Math.log(shelf.joints.give.mitre_glued_nailed.plane), Math.LN2), ln_pull: believe(0, 0.2), moisture: believe(0, 2),
};

/** How one learned number stood to its truth over many invented studios. */
export interface Calibration {
  readonly number: string;
  readonly studios: number;
  /** Share of studios whose middle nine tenths held the truth. */
  readonly held: number;
  /** Chi-square of the ranks of the truths in ten even classes; nine degrees of freedom. */
  readonly chi_square: number;
}

/** Simulation-based calibration (Talts and others, 2018, from memory): truths from the prior, frames from the truths, beliefs from the frames, ranks of the truths. */
export function calibrate(studios: number, frames: number, seed: number): readonly Calibration[] {
  const ranks = new Map<string, number[]>();
  const held = new Map<string, number>();
  for (let i = 0; i < studios; i++) {
    const chance = new Chance(seed + i);
    const truth = Object.fromEntries(Object.entries(priors).map(([name, prior]) => [name, chance.drawn(prior, name === 'bow' || name === 'crook')])) as unknown as Truth;
    const { entries, known } = learnFrames(studioYear(frames, truth, chance), shelf, undefined, new Map(answers));
    const look = (number: string, belief: string, which: 'mean' | 'spread', true_value: number, entry: (typeof entries)[number] | undefined, shown: number): void => {
      if (entry === undefined) throw new Error(`nothing was learned of ${number}`);
      ranks.set(number, [...(ranks.get(number) ?? []), known.get(belief)!.below(which, true_value)]);
      held.set(number, (held.get(number) ?? 0) + (shown >= entry.posterior.low && shown <= entry.posterior.high ? 1 : 0));
    };
    const entry = (what: string, of: string): (typeof entries)[number] | undefined => entries.find((one) => one.what === what && one.of === of);
    look('twist, spread', 'strip-19x38 plain twist', 'spread', truth.twist.sd, entry('twist', 'spread'), truth.twist.sd * deg);
    look('twist, mean', 'strip-19x38 plain twist', 'mean', truth.twist.mean, entry('twist', 'mean'), truth.twist.mean * deg);
    look('bow, spread', 'strip-19x38 plain bow', 'spread', truth.bow.sd, entry('bow', 'spread'), truth.bow.sd);
    look('crook, spread', 'strip-19x38 plain crook', 'spread', truth.crook.sd, entry('crook', 'spread'), truth.crook.sd);
    look('give', 'give mitre_glued_nailed', 'mean', truth.ln_give.mean, entry('give', 'mean'), Math.exp(truth.ln_give.mean));
    look('pull', 'pull cotton-duck-340', 'mean', truth.ln_pull.mean, entry('pull', 'mean'), 200 * Math.exp(truth.ln_pull.mean));
    look('moisture', 'moisture', 'mean', truth.moisture.mean, entry('moisture', 'mean'), truth.moisture.mean);
  }
  return [...ranks].map(([number, list]) => {
    const classes = Array.from({ length: 10 }, (_, i) => list.filter((rank) => Math.min(9, Math.floor(rank * 10)) === i).length);
    const expected = studios / 10;
    return { number, studios, held: held.get(number)! / studios, chi_square: classes.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0) };
  });
}
