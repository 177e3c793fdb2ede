import { barNames, type BarName } from '../../src/base/names.js';
import { liftFrom } from '../../src/risk/lift-curve.js';
import { findStability, solveInfluence, solveStatics } from '../../src/solve/analyse-frame.js';
import type { CaseRun } from './cases-frames.js';
import { shapeOf, type FrameCase } from './cases-shapes.js';

/** A stretched frame and the pulls at which it stops being stable, as factors on the pull it names. */
export interface StabilityCase extends FrameCase {
  readonly pull_x_N_per_m: number;
  readonly pull_y_N_per_m: number;
  readonly expect: {
    readonly load_factor: number;
    readonly second_load_factor: number;
    readonly mode: string;
    readonly inward_bow_mm?: Readonly<Record<BarName, number>>;
    readonly lift_mm_per_rad_per_m?: Readonly<Record<BarName, number>>;
    readonly closed_form_equal_pull_N_per_m?: number;
  };
}

/** Lift of the fourth corner (mm) by pull over critical pull. */
export type Lifts = Readonly<Record<string, number>>;

/** A frame near and past its critical pull (equal both ways unless it says otherwise). */
export interface PastCriticalCase extends FrameCase {
  readonly pull_x_N_per_m?: number;
  readonly pull_y_N_per_m?: number;
  /** Besides these, lifts named by where they start: `lift_mm_from_10_mm`, `lift_mm_from_half_mm`. */
  readonly expect: { readonly critical_pull_N_per_m: number; readonly beta_per_mm2: number } & Readonly<Record<string, number | Lifts>>;
}

/** One number held against what a file says, and how far off it may be (a share). */
interface Check {
  readonly what: string;
  readonly found: number | null;
  readonly expected: number;
  readonly within: number;
}

const off = ({ found, expected }: Check): number => (found === null ? Infinity : expected === 0 ? Math.abs(found) : Math.abs(found / expected - 1));

function reportOf<C extends FrameCase>(cases: readonly C[], checksOf: (c: C) => readonly Check[], tolerance: string): CaseRun {
  let good = 0;
  const lines = cases.map((c) => {
    const checks = checksOf(c);
    const wrong = checks.filter((check) => !(off(check) <= check.within));
    if (checks.length > 0 && wrong.length === 0) good++;
    const worst = Math.max(...checks.map(off));
    return `${wrong.length === 0 ? 'ok ' : 'OFF'} ${c.id}: ${checks.length} numbers, worst off ${(100 * worst).toFixed(2)} %`
      + wrong.map(({ what, found, expected }) => `; ${what} ${found === null ? 'none' : Number(found.toPrecision(6))}, expected ${expected}`).join('');
  });
  return { lines, within: good, total: cases.length, tolerance };
}

/** First and second factor and mode within 1 %, inward bow within 2 % (such files look at nodes only), lift by twist within 1.5 %. */
export function stabilityChecks(c: StabilityCase): readonly Check[] {
  const shape = shapeOf(c);
  const pull = { x: c.pull_x_N_per_m / 1000, y: c.pull_y_N_per_m / 1000 };
  // A case made stiff in bending alone is a beam without shear.
  const options = { shear: c.stiff === undefined };
  const found = findStability(shape, pull, options);
  const { expect } = c;
  const bows = expect.inward_bow_mm === undefined ? null : solveStatics(shape, pull, [], options).bars;
  const lifts = expect.lift_mm_per_rad_per_m === undefined || found.load_factor! <= 1 ? null : solveInfluence(shape, pull, options);
  return [
    { what: 'load factor', found: found.load_factor, expected: expect.load_factor, within: 0.01 },
    { what: 'second factor', found: found.second_factor, expected: expect.second_load_factor, within: 0.01 },
    { what: `mode ${found.mode} for ${expect.mode}`, found: found.mode === expect.mode ? 1 : 0, expected: 1, within: 0 },
    ...barNames.flatMap((bar): Check[] => [
      ...(bows === null ? [] : [nearly(`bow of ${bar}`, bows[bar].inward_bow_mm, expect.inward_bow_mm![bar], 0.02)]),
      ...(lifts === null ? [] : [{
        what: `lift by ${bar}`, found: (lifts.find((i) => i.member === bar && i.kind === 'twist')?.corner_lift ?? NaN) / 1000, expected: expect.lift_mm_per_rad_per_m![bar], within: 0.015,
      }]),
    ]),
  ];
}

/** A bow as small as the last digit it is printed to says nothing. */
function nearly(what: string, found: number, expected: number, within: number): Check {
  return Math.abs(found - expected) <= 1e-5 ? { what, found: expected, expected, within } : { what, found, expected, within };
}

/** Critical pull, β and every lift within 3 %. */
export function pastCriticalChecks(c: PastCriticalCase): readonly Check[] {
  const { pull_x_N_per_m: x = 200, pull_y_N_per_m: y = 200 } = c;
  const { propeller } = findStability(shapeOf(c), { x: x / 1000, y: y / 1000 });
  const { critical_pull_N_per_m, beta_per_mm2, ...more } = c.expect;
  const within = 0.03;
  const beta = propeller?.beta_per_mm2 ?? NaN;
  return [
    { what: 'critical pull', found: propeller === null ? null : (propeller.factor * (x + y)) / 2, expected: critical_pull_N_per_m, within },
    { what: 'beta', found: beta, expected: beta_per_mm2, within },
    ...Object.entries(more).flatMap(([name, lifts]) => {
      const start = /^lift_mm_from_(half|[\d.]+)_mm$/u.exec(name)?.[1];
      if (start === undefined || typeof lifts === 'number') return [];
      const from_mm = start === 'half' ? 0.5 : Number(start);
      return Object.entries(lifts).map(([f, expected]): Check => ({
        what: `lift from ${from_mm} mm at ${f}`, found: liftFrom({ pull_share: Number(f), beta_per_mm2: beta }, from_mm), expected, within,
      }));
    }),
  ];
}

export const runStabilityCases = (cases: readonly StabilityCase[]): CaseRun =>
  reportOf(cases, stabilityChecks, '1 % (factors; 2 % for bows, 1.5 % for lifts)');
export const runPastCriticalCases = (cases: readonly PastCriticalCase[]): CaseRun => reportOf(cases, pastCriticalChecks, '3 %');
