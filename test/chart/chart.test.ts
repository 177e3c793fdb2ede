import { describe, expect, it } from 'vitest';
import { audit } from '../../src/audit.js';
import { chartPage } from '../../src/chart/chart-page.js';
import { chartPlan, heightOf, type ChartBuild, type Shape } from '../../src/chart/chart-plan.js';
import { chartSizes, type Chart } from '../../src/chart/chart.js';
import { faringBy } from '../../src/suggest/fare.js';
import { largest } from '../../src/chart/largest.js';
import { largestOf } from '../../src/chart/largest-of.js';
import { chartRules, isAskedByCharts, leftOutOfCharts } from '../../src/chart/subjects.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { writeMarkdown } from '../../src/report/markdown.js';
import { bench, withoutNotes } from '../suggest/studio.js';
import { sampleOf } from '../effort.js';
import { faultsOf } from '../words/faults.js';

const build = (stock: string, lay: ChartBuild['lay'], plies: 1 | 2, crossbars: 0 | 1 | 2, braced: boolean): ChartBuild => ({ stock, lay, plies, crossbars, braced });

/** Both figures of an entry, looked for from no particular size. */
const figures = (one: ChartBuild, shape: Shape, units: 'metric' | 'inch' = 'metric') =>
  largestOf({ build: one, shape, bench, units, sizes: chartSizes(units), faring: faringBy({ ...bench, ruleset: chartRules(bench.ruleset) }), like: { clear_mm: null, no_stop_mm: null } });

/** The largest of 20 to 360 steps that passes a test of sizes, from wherever one begins. */
const largestBy = (passes: (steps: number) => boolean, guess: number) => largest({ first: 20, last: 360, below: 2 }, guess, async (steps) => ({ passes: passes(steps), uses: [] }));

/** What the full audit says of a chart entry at a size: its findings in the subjects that count. */
async function verdicts(one: ChartBuild, shape: Shape, width_mm: number): Promise<ReadonlySet<string>> {
  const plan = chartPlan(one, shape, width_mm, bench.shelf);
  if (plan === null) return new Set(['refused']);
  const { findings } = await audit(plan, bench);
  const asked = new Set(bench.ruleset.rules.filter(isAskedByCharts).map(({ id }) => id));
  return new Set(findings.filter(({ rule }) => asked.has(rule)).map(({ verdict }) => verdict));
}

describe('an entry of the chart', () => {
  const sample: readonly (readonly [ChartBuild, Shape])[] = [
    [build('strip-19x38', 'flat', 1, 0, false), 'square'],
    [build('strip-19x38', 'edge', 2, 1, true), 'oblong'],
    [build('stud-38x64', 'edge', 1, 2, false), 'oblong'],
    [build('board-19x89', 'flat', 2, 1, false), 'square'],
  ];
  it.each(sampleOf(sample, 2))('%o, %s: the audit passes it just inside and not just outside', async (one, shape) => {
    const sizes = chartSizes('metric');
    const { clear_mm, no_stop_mm: noStop_mm } = await figures(one, shape);
    if (clear_mm === null || noStop_mm === null) throw new Error('these samples have sizes');
    expect(clear_mm % sizes.step_mm).toBe(0);
    expect(clear_mm).toBeLessThanOrEqual(noStop_mm);
    expect(await verdicts(one, shape, clear_mm)).toEqual(new Set(['clear']));
    expect(await verdicts(one, shape, clear_mm + sizes.step_mm)).not.toEqual(new Set(['clear']));
    expect([...(await verdicts(one, shape, noStop_mm))].filter((verdict) => verdict === 'stop' || verdict === 'refused')).toEqual([]);
    const beyond = await verdicts(one, shape, noStop_mm + sizes.step_mm);
    expect(beyond.has('stop') || beyond.has('refused')).toBe(true);
  });

  it('is to the last half inch in inches', async () => {
    const { no_stop_mm: found } = await figures(build('strip-19x38', 'flat', 1, 0, false), 'square', 'inch');
    const { no_stop_mm: metric } = await figures(build('strip-19x38', 'flat', 1, 0, false), 'square');
    expect((found ?? 0) / 12.7 - Math.round((found ?? 0) / 12.7)).toBeCloseTo(0, 9);
    // a shop in inches sells 3/4 x 1-1/2 in, a quarter of a per cent more each way than 19 x 38 mm
    expect(Math.abs((found ?? 0) - (metric ?? 0))).toBeLessThan(2 * 12.7);
  });

  it.each([20, 77, 100, 360])('begun at %d steps, is null where nothing in the range passes, and the end of the range where everything does', async (guess) => {
    expect(await largestBy(() => false, guess)).toBeNull();
    expect(await largestBy(() => true, guess)).toBe(360);
    for (const edge of [20, 21, 77, 359]) expect(await largestBy((steps) => steps <= edge, guess)).toBe(edge);
  });

  it.each([20, 50, 70, 200])('begun at %d steps, skips sizes that are too small before the first that passes', async (guess) => {
    expect(await largestBy((steps) => steps >= 60 && steps <= 94, guess)).toBe(94);
  });

  it.each([20, 90, 94, 98, 200])('begun at %d steps, is below a ragged edge: sizes right below the one that is given pass too', async (guess) => {
    expect(await largestBy((steps) => steps <= 92 || steps === 95 || steps === 96 || steps === 98, guess)).toBe(92);
    expect(await largestBy((steps) => steps === 95, 95)).toBe(95);
  });

  it('is found in few steps where a limit is used more the larger the frame is, whatever else is used', async () => {
    const tried: number[] = [];
    const found = await largest({ first: 20, last: 360, below: 2 }, 100, async (steps) => {
      tried.push(steps);
      const [bow, dry] = [2 * (steps / 151.5) ** 3, 0.9];
      return { passes: bow <= 2, uses: [{ of: 'bow', actual: bow, limit: 2, most: true, verdict: bow <= 2 ? 'clear' : 'caution' }, { of: 'dry', actual: dry, limit: 1, most: true, verdict: 'clear' }] };
    });
    expect(found).toBe(151);
    expect(tried.length).toBeLessThan(8);
  });

  it('is the plan one would write for it', () => {
    const plan = chartPlan(build('strip-19x38', 'edge', 2, 1, true), 'oblong', 1200, bench.shelf);
    const written = readPlanWith(
      'plan: 1\nname: Chart\nface: { width: 1200 mm, height: 800 mm }\nbars: { stock: strip-19x38, lay: edge, plies: 2, bond: glue+screws, pairing: opposed }\ncrossbars: [ { runs: upright, lay: edge } ]\ncorners: { brace: { kind: timber } }\n',
      'plan.yaml', bench.shelf);
    if (plan === null || !written.ok) throw new Error('both must be plans');
    expect(withoutNotes(plan)).toEqual(withoutNotes(written.value));
    expect(heightOf('oblong', 1200)).toBe(800);
    expect(chartPlan(build('stud-38x89', 'flat', 2, 0, false), 'square', 300, bench.shelf)).toBeNull();
    expect(chartPlan(build('stud-38x89', 'flat', 2, 0, false), 'square', 900, bench.shelf)?.bars.bond).toBe('glue');
  });
});

describe('the page', () => {
  it('tells both figures for every kind of bar, in the units asked for, and what was left out', () => {
    const stock = bench.shelf.lumber['planed-21x45'];
    if (stock === undefined) throw new Error('planed-21x45');
    const entries = (['square', 'oblong'] as const).flatMap((shape) => ([0, 1, 2] as const).flatMap((crossbars) => [false, true].map((braced) => ({
      build: build(stock.key, 'edge', 1, crossbars, braced), shape, clear_mm: crossbars === 0 ? null : 508 + 127 * crossbars, no_stop_mm: crossbars === 0 && !braced ? null : shape === 'square' ? 1016 : 3657.6,
    }))));
    const chart: Chart = { shelf_name: 'Rack in the hall', ruleset_name: 'Evening class', units: 'inch', sizes: chartSizes('inch'), rows: [{ stock, lay: 'edge', plies: 1, entries }] };
    const { tree, pictures } = chartPage(chart);
    const text = writeMarkdown(tree);
    expect(text).toContain('| planed-21x45, on edge | – | – / 40 | 25 / 40 | 25 / 40 | 30 / 40 | 30 / 40 |');
    expect(text).toContain('| planed-21x45, on edge | – | – / 144+ | 25 / 144+ | 25 / 144+ | 30 / 144+ | 30 / 144+ |');
    for (const what of Object.values(leftOutOfCharts)) expect(text).toContain(what);
    expect(faultsOf(text)).toEqual([]);
    expect(pictures.map(({ name }) => name)).toEqual(['chart.svg']);
    expect((pictures[0]?.svg.match(/fill="#fff"/g) ?? []).length).toBeGreaterThanOrEqual(4);
  });
});
