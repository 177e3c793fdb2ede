/** The integral and the joint chance against frames drawn the plain way, for bars of one to five shapes of like size. */
import { describe, expect, it } from 'vitest';
import { barNames, type BarName } from '../../src/base/names.js';
import { normalDeviates } from '../../src/risk/normal-deviates.js';
import { barRisk } from '../../src/risk/closed-form.js';
import { bowedFrames, bowP90s, frameLines } from '../../src/risk/natural-bow.js';
import type { WarpTerm } from '../../src/risk/terms.js';

const stations = 9;
/** Lines that are mixes of so many given shapes, none of them a mix of the others; their peaks lie at different places. */
const shape = (k: number, s: number): number => Math.sin(((k + 1) * Math.PI * s) / (stations - 1)) + (k === 0 ? 0 : 0.2 * s * (stations - 1 - s)) / (8 + 3 * k);

interface Made {
  /** Shapes of each bar. */
  readonly ranks: Readonly<Record<BarName, number>>;
  readonly count: number;
  readonly mean: number;
  /** How much larger the first term is than the others. */
  readonly lead: number;
}

/** Terms whose lines along each bar are mixes of few shapes, all shapes alike in size unless one term leads. */
function terms({ ranks, count, mean, lead }: Made): readonly WarpTerm[] {
  let seed = 3;
  const wobble = (): number => Math.sin(7.13 * ++seed);
  return Array.from({ length: count }, (_, j): WarpTerm => {
    const line = (bar: BarName): Float64Array => {
      const mix = Array.from({ length: ranks[bar] }, () => wobble() * (j === 0 ? lead : 1));
      return Float64Array.from({ length: stations }, (_s, s) => mix.reduce((sum, share, k) => sum + share * shape(k, s), 0));
    };
    const bow = { top: line('top'), bottom: line('bottom'), left: line('left'), right: line('right') };
    return { warp: {} as WarpTerm['warp'], mean_per_m: j % 2 === 0 ? mean : -0.4 * mean, sd_per_m: 0.6 + 0.3 * (j % 3), lift: 0, bow, crook: bow };
  });
}

/** The largest departure along every bar in every frame: every station looked at, nothing skipped. */
function plain(list: readonly WarpTerm[], samples: number, seed: number): Record<BarName, Float64Array> {
  const columns = list.length + (list.length % 2);
  const draws = new Float64Array(samples * columns);
  normalDeviates(seed)(draws);
  const departure = (bar: BarName, n: number, s: number): number => {
    let sum = 0;
    for (const [j, { bow, mean_per_m, sd_per_m }] of list.entries()) sum += bow[bar][s]! * (mean_per_m + sd_per_m * draws[n * columns + j]!);
    return Math.abs(sum);
  };
  const largest = (bar: BarName, n: number): number => Math.max(...Array.from({ length: stations }, (_, s) => departure(bar, n, s)));
  return Object.fromEntries(barNames.map((bar) => [bar, Float64Array.from({ length: samples }, (_, n) => largest(bar, n))])) as Record<BarName, Float64Array>;
}

const samples = 8192;
describe.each<[string, Made]>([
  ['one shape a bar', { ranks: { top: 1, bottom: 1, left: 1, right: 1 }, count: 3, mean: 0.4, lead: 1 }],
  ['two shapes alike, an odd number of draws', { ranks: { top: 2, bottom: 2, left: 2, right: 1 }, count: 5, mean: 0, lead: 1 }],
  ['three to five shapes', { ranks: { top: 3, bottom: 4, left: 5, right: 3 }, count: 8, mean: 0.2, lead: 1 }],
  ['one draw that leads, the others small beside it', { ranks: { top: 2, bottom: 3, left: 1, right: 4 }, count: 7, mean: -0.3, lead: 60 }],
])('%s', (_, made) => {
  const list = terms(made);
  const lines = frameLines(list);
  const largest = plain(list, samples, 5);
  const p90 = bowP90s(lines, barRisk(list, 'bow'));
  it('nine in ten of each bar', () => {
    for (const bar of barNames) {
      const share = largest[bar].filter((bow) => bow <= p90[bar]).length / samples;
      expect(Math.abs(share - 0.9)).toBeLessThan(4 * Math.sqrt(0.09 / samples));
    }
  });
  it.each([['limits that few frames pass', 1.9], ['limits that most pass', 0.25], ['limits about the ninth decile', 1.003]])('%s', (_words, share) => {
    const limit = Object.fromEntries(barNames.map((bar, b) => [bar, p90[bar] * share * (1 + 0.04 * b)])) as Record<BarName, number>;
    const any = Array.from({ length: samples }, (_s, n) => barNames.some((bar) => largest[bar][n]! > limit[bar])).filter(Boolean).length / samples;
    const { value, se } = bowedFrames(lines, limit, { seed: 6, samples });
    expect(Math.abs(value - any)).toBeLessThan(4 * Math.hypot(se, Math.sqrt((any * (1 - any)) / samples)) + 1 / samples);
  });
});

describe('a frame whose boards are sure', () => {
  it('departs as its mean says, and is over the limit or not', () => {
    const sure = terms({ ranks: { top: 2, bottom: 1, left: 3, right: 2 }, count: 2, mean: 0.7, lead: 1 }).map((term) => ({ ...term, sd_per_m: 0 }));
    const size = (bar: BarName): number => Math.max(...Array.from({ length: stations }, (_, s) => Math.abs(sure.reduce((sum, { bow, mean_per_m }) => sum + bow[bar][s]! * mean_per_m, 0))));
    const lines = frameLines(sure);
    const at = (over: number) => bowedFrames(lines, { top: 99, bottom: 99, left: size('left') * over, right: 99 }, { seed: 1, samples: 40 });
    expect([at(0.999), at(1.001)]).toEqual([{ value: 1, se: 0 }, { value: 0, se: 0 }]);
    const p90 = bowP90s(lines, barRisk(sure, 'bow'));
    for (const bar of barNames) expect(p90[bar]).toBeCloseTo(size(bar), 12);
  });
});
