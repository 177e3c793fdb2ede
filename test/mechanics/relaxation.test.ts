import { describe, expect, it } from 'vitest';
import { relaxShare } from '../../src/mechanics/cloth/relaxation.js';
import { demoModel } from './fasteners/demo-model.js';

const pull = { x_N_per_m: 250, y_N_per_m: 180 };
const model = demoModel({ face: { width: '1200 mm', height: '700 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, cloth: { use: 'cotton-duck-340', pull: { x: '250 N/m', y: '180 N/m' } } });
const stiffness = model.shelf.cloths['cotton-duck-340']!.stiffness_N_per_m;
type Solved = Parameters<typeof relaxShare>[1];

/** Bow lines of the bars, mm inward, as both pulls and as the pull along x alone make them. */
function solved(both: Record<'left' | 'right' | 'top' | 'bottom', readonly number[]>, by_x: typeof both): Solved {
  const lines = (of: typeof both) => ({ bars: Object.fromEntries(Object.entries(of).map(([bar, list]) => [bar, { bow_line: list.map((inward_mm) => ({ inward_mm })) }])) });
  return { working: lines(both), working_x: lines(by_x) } as unknown as Solved;
}
const flat = { left: [0, 0], right: [0, 0], top: [0, 0], bottom: [0, 0] };

describe('the pull that bowing bars take away', () => {
  it('one way alone: pull = pull₀ − stiffness · bow · pull/pull₀ / length', () => {
    const taken = (stiffness * (2 + 3)) / 1200 / pull.x_N_per_m;
    const only = { ...flat, left: [0, 2, 1], right: [0, 3, -1] };
    expect(relaxShare(model, solved(only, only))).toBeCloseTo(1 - 1 / (1 + taken), 12);
    const down = { ...flat, top: [1, 4], bottom: [0, 1] };
    expect(relaxShare(model, solved(down, flat))).toBeCloseTo(1 - 1 / (1 + (stiffness * 5) / 700 / pull.y_N_per_m), 12);
  });

  it('both ways at once: what is left solves the two equations together, and the worse way is told', () => {
    // Where bow is largest, 3 of 4 mm on the upright bars come of the pull along x, 0.5 of 2.5 mm on the level ones.
    const both = { left: [0, 4, 1], right: [0, 2, 0], top: [0, 2.5, 0], bottom: [0.5, 1.5, 0] };
    const by_x = { left: [0, 3, 9], right: [0, 1.5, 9], top: [9, 0.5, 9], bottom: [9, 0.25, 9] };
    const [kx, ky] = [stiffness / 1200 / pull.x_N_per_m, stiffness / 700 / pull.y_N_per_m];
    // x = 1 − kx (4.5 x + 1.5 y), y = 1 − ky (0.75 x + 3.25 y), by repeated substitution.
    let [x, y] = [1, 1];
    for (let n = 0; n < 20_000; n++) [x, y] = [x + 0.02 * (1 - kx * (4.5 * x + 1.5 * y) - x), y + 0.02 * (1 - ky * (0.75 * x + 3.25 * y) - y)];
    expect(relaxShare(model, solved(both, by_x))).toBeCloseTo(1 - Math.min(x, y), 8);
  });

  it('cloth that one way lets go of hangs slack there, and the other way stands alone; bars that bow out take nothing', () => {
    const [kx, ky] = [stiffness / 1200 / pull.x_N_per_m, stiffness / 700 / pull.y_N_per_m];
    // The pull along y bows the upright bars far, the pull along x bows nothing: the threads along x go slack.
    const slack_mm = 3 / kx;
    expect(relaxShare(model, solved({ ...flat, left: [0, slack_mm] }, flat))).toBe(1);
    const slack_y = { ...flat, top: [0, 3 / ky] };
    expect(relaxShare(model, solved(slack_y, slack_y))).toBe(1);
    const out = { ...flat, left: [0, -2], right: [0, -1] };
    expect(relaxShare(model, solved(out, out))).toBe(0);
  });
});
