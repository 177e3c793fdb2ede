import { stringify } from 'yaml';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { evenGive } from '../../src/base/joint-give.js';
import { barNames, type BarName } from '../../src/base/names.js';
import { pullOfTap } from '../../src/bench-sheet/pull-read.js';
import { clothOn, readingError, type Sheet, type SheetBoard } from '../../src/bench-sheet/sheet.js';
import { answerOf, gives, lnError, type PlanAnswer } from '../../src/learn/answers.js';
import type { BuiltFrame, StudioFolder } from '../../src/learn/folder.js';
import type { Nig } from '../../src/learn/nig.js';
import { jointError_mm, jointMoves_mm } from '../../src/measure/measure-joint.js';
import type { Influence } from '../../src/model/frame-results.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { solveInfluence } from '../../src/solve/analyse-frame.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';
import { nothing } from '../bench-sheet/audited.js';

/** Studios that do not exist: their boards, joints and hands are drawn, then frames are built of them by the very model that `learn` assumes. */
export const shelf = shippedShelf();

/** A stream of chance, the same for the same seed. */
export class Chance {
  private readonly source;
  constructor(seed: number) {
    this.source = xoroshiro128plus(Math.imul(seed + 1, 0x9e3779b1));
    // Small seeds give like beginnings.
    for (let i = 0; i < 32; i++) this.source.next();
  }
  /** Between 0 and 1, neither included. */
  even(): number { return ((this.source.next() >>> 0) + 0.5) / 2 ** 32; }
  normal(mean = 0, sd = 1): number { return mean + sd * Math.sqrt(-2 * Math.log(this.even())) * Math.cos(2 * Math.PI * this.even()); }
  /** Gamma with shape a (above 1/3) and scale 1: Marsaglia and Tsang's method (2000, from memory). */
  gamma(a: number): number {
    const d = a - 1 / 3;
    for (;;) {
      const x = this.normal();
      const v = (1 + x / Math.sqrt(9 * d)) ** 3;
      if (v > 0 && Math.log(this.even()) < x * x / 2 + d - d * v + d * Math.log(v)) return d * v;
    }
  }
  /** A mean and a spread from a belief; the mean stays where it is fixed. */
  drawn(belief: Nig, fixedMean = false): { readonly mean: number; readonly sd: number } {
    const sd = Math.sqrt(belief.scale / this.gamma(belief.shape));
    return { mean: fixedMean ? belief.mean : this.normal(belief.mean, sd / Math.sqrt(belief.worth)), sd };
  }
}

const plans: Readonly<Record<string, object>> = {
  small: { face: { width: '520 mm', height: '400 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, cloth: { pull: '150 N/m' } },
  oblong: { face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, cloth: { pull: '120 N/m' } },
  crossed: { face: { width: '1100 mm', height: '800 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: '1/2', stock: 'strip-19x38', lay: 'flat' }], cloth: { pull: '140 N/m' } },
};

/** The plans as files. */
export const planTexts = Object.entries(plans).map(([name, plan]) => ({ file: `${name}.yaml`, text: stringify({ plan: 1, name, count: 40, lumber: { moisture: '12 %' }, ...plan }) }));

/** Solved once for all studios. */
export const answers = new Map<string, PlanAnswer>(planTexts.map(({ file, text }) => {
  const name = file.replace('.yaml', '');
  const read = readPlanWith(text, file, shelf);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return [name, answerOf(read.value, shelf)!];
}));

/** What is true of a studio. Twist rad/m, bow and crook 1/m, the rest logarithms and percentage points. */
export interface Truth {
  readonly twist: { readonly mean: number; readonly sd: number };
  readonly bow: { readonly mean: number; readonly sd: number };
  readonly crook: { readonly mean: number; readonly sd: number };
  readonly ln_give: { readonly mean: number; readonly sd: number };
  readonly ln_pull: { readonly mean: number; readonly sd: number };
  readonly moisture: { readonly mean: number; readonly sd: number };
}

/** Exactly what the shelf and the audit say. */
export const asPromised: Truth = {
  twist: shelf.lumber['strip-19x38']!.spread.plain.twist_rad_per_m, bow: shelf.lumber['strip-19x38']!.spread.plain.bow_per_m, crook: shelf.lumber['strip-19x38']!.spread.plain.crook_per_m,
  ln_give: { mean: Math.log(shelf.joints.give.mitre_glued_nailed.plane), sd: 0 }, ln_pull: { mean: 0, sd: Math.log(1.25) / 1.645 }, moisture: { mean: 0, sd: 1 },
};

/** What a studio measures besides its frames. */
export interface Habits {
  /** Of each frame's boards, share that were read. */
  readonly boards_read: number;
  /** Of the frames, share that had a test corner. */
  readonly corners_loaded: number;
}

const sum = (influence: readonly Influence[], warp: (member: string, kind: Influence['kind']) => number, of: (one: Influence) => number): number =>
  influence.reduce((total, one) => total + of(one) * 1e-3 * warp(one.member, one.kind), 0);

function inwardAtGive(answer: PlanAnswer, bar: BarName, lnGive: number): number {
  const table = answer.inwardAt();
  const place = Math.min(gives.length - 1.000001, Math.max(0, (lnGive - Math.log(gives[0]!)) / Math.LN2));
  const i = Math.floor(place);
  return table[i]![bar] + (place - i) * (table[i + 1]![bar] - table[i]![bar]);
}

const error = { twist: 0.1 * (Math.PI / 180), curve: 0.0003 };

/** One frame of a studio: two sheets, before the cloth and with it. */
export function build(answer: PlanAnswer, number: number, truth: Truth, chance: Chance, { boards_read, corners_loaded }: Habits): BuiltFrame {
  const { name } = answer.model.plan;
  const { model, solution } = answer;
  const members = ['top', 'bottom', 'left', 'right', ...model.crossbars.map((crossbar) => crossbar.name)];
  const warp = new Map(members.map((member) => [member, { twist: chance.normal(truth.twist.mean, truth.twist.sd), out: chance.normal(0, truth.bow.sd), plane: chance.normal(0, truth.crook.sd) }]));
  const of = (member: string, kind: Influence['kind']): number => warp.get(member)![kind];
  const drying = chance.normal(truth.moisture.mean, truth.moisture.sd);
  const share = Math.exp(chance.normal(truth.ln_pull.mean, truth.ln_pull.sd));
  const lnGive = chance.normal(truth.ln_give.mean, truth.ln_give.sd);
  const boards: SheetBoard[] = number > 1 && chance.even() >= boards_read ? [] : barNames.map((bar) => ({
    for: bar, ply: 1, mark: null, twist_rad_per_m: chance.normal(of(bar, 'twist'), error.twist), bow_per_m: chance.normal(of(bar, 'out'), error.curve), crook_per_m: chance.normal(of(bar, 'plane'), error.curve),
  }));
  const read = (stage: Sheet['when']): Sheet => {
    const cloth = clothOn({ when: stage } as Sheet);
    const at = cloth ? share : 0;
    const influence = at === 0 ? answer.bare : solveInfluence(model.shape, { x: model.working.x * at, y: model.working.y * at }) ?? answer.bare;
    const lift = chance.normal(sum(influence, of, (one) => one.corner_lift), readingError.table_mm);
    const each = (value: (bar: BarName) => number): Readonly<Record<BarName, number>> => Object.fromEntries(barNames.map((bar) => [bar, chance.normal(value(bar), readingError.string_mm)])) as Record<BarName, number>;
    return {
      ...nothing, plan: name, frame: number, when: stage,
      corner_lift_mm: Math.abs(lift), lifted: chance.even() < 0.3 ? null : lift > 0 ? 'top-right' : 'top-left',
      bow_mm: each((bar) => sum(influence, of, (one) => one.bar_bow[bar][8]!) + at * solution.working.bars[bar].dish_mm),
      inward_bow_mm: each((bar) => sum(influence, of, (one) => one.bar_crook[bar][8]!) + at * inwardAtGive(answer, bar, lnGive)),
    };
  };
  const before: Sheet = { ...read('before-cloth'), boards, moisture_pct: chance.normal(model.plan.lumber.moisture_pct + drying, readingError.meter_pct) };
  const after = read('after-cloth');
  const atTen = pullOfTap(model, { ...nothing, tap_Hz: 10 })!.value;
  const note = 10 * Math.sqrt(share / atTen);
  const noise = lnError(pullOfTap(model, { ...nothing, tap_Hz: note })!);
  const tap_Hz = note * Math.exp(chance.normal(0, noise) / 2);
  const test = { way: 'plane' as const, weight_g: 3000, arm_mm: 150 };
  const corner = evenGive(Math.exp(chance.normal(truth.ln_give.mean, truth.ln_give.sd)));
  const bar = model.bars.top.section;
  const test_joints = number > 1 && chance.even() >= corners_loaded ? [] : [{ ...test, moves_mm: chance.normal(jointMoves_mm(test, bar, corner), jointError_mm(test, bar, corner)) }];
  return { plan: model.plan, number, sheets: [{ file: `${name}-${number}-a.yaml`, sheet: before }, { file: `${name}-${number}-b.yaml`, sheet: { ...after, tap_Hz, test_joints } }] };
}

/** A year of frames. */
export function studioYear(frames: number, truth: Truth, chance: Chance, habits: Habits = { boards_read: 0.25, corners_loaded: 0.25 }): StudioFolder {
  const names = Object.keys(plans);
  const built = Array.from({ length: frames }, (_, i) => build(answers.get(names[i % names.length]!)!, Math.floor(i / names.length) + 1, truth, chance, habits));
  return { frames: built, plans_without_sheets: [], sheets_without_plan: [], left: [], questions: [], problems: [] };
}
