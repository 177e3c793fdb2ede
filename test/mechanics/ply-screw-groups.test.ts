import { describe, expect, test } from 'vitest';
import { fasteningFacts } from '../facts/of-subject.js';
import { planPlyScrews } from '../../src/mechanics/fasteners/ply-screws.js';
import { demoModel, demoSolved } from './fasteners/demo-model.js';

const face = { face: { width: '1200 mm', height: '900 mm' } };
const thick = { stock: 'stud-38x64', lay: 'edge', plies: 2 };
const thin = { runs: 'upright', at: 0.5, stock: 'strip-19x38', lay: 'edge', plies: 2 };

function exits(plan: object): Record<string, number> {
  const { model, solution } = demoSolved({ face: { width: '1200 mm', height: '900 mm' }, ...plan });
  return Object.fromEntries(fasteningFacts(model, solution).filter((f) => f.path === 'fastening.exit_mm').map((f) => [f.about, f.value as number]));
}

describe('crossbars of thinner plies take screws of their own', () => {
  test('the default screw of each stays inside its wood', () => {
    const found = exits({ bars: thick, crossbars: [thin] });
    expect(found['ply-screws']).toBeGreaterThan(3);
    expect(found['crossbar-ply-screws']).toBeGreaterThan(3);
  });

  test('a screw that the plan names is judged in every piece it is driven into', () => {
    const found = exits({ bars: thick, crossbars: [thin], 'ply-screws': { use: 'screw-8x64' } });
    expect(found['ply-screws']).toBeCloseTo(2 * 38 - 63.5, 6);
    expect(found['crossbar-ply-screws']).toBeCloseTo(2 * 19 - 63.5, 6);
  });

  test('a pilot that the plan names is for its screw, and without one for the screw of the bars alone', () => {
    const pilots = (words: object) => {
      const model = demoModel({ ...face, bars: thick, crossbars: [thin], 'ply-screws': words });
      return planPlyScrews(model).map(({ name, pilot_mm }) => [name, pilot_mm]);
    };
    const [, [, usual] = []] = pilots({});
    expect(usual).not.toBe(1.7);
    const named = { pilot: '1.7 mm' };
    expect(pilots(named)).toEqual([['ply-screws', 1.7], ['crossbar-ply-screws', usual]]);
    expect(pilots({ use: 'screw-6x32', ...named })).toEqual([['ply-screws', 1.7], ['crossbar-ply-screws', 1.7]]);
  });

  test('how firmly they hold a crossbar together hangs on its own screws, not on those of the bars', () => {
    const stiff = (words: object) => demoModel({ ...face, bars: { ...thick, bond: 'screws' }, crossbars: [thin], ...words }).crossbars[0]!.section.I_plane_mm4;
    const named = (use: string) => stiff({ 'ply-screws': { use } });
    // Those of the crossbar are No. 6, those of the bars No. 8.
    expect(named('screw-8x64')).toBeGreaterThan(1.001 * named('screw-6x32'));
    expect(stiff({})).toBeCloseTo(named('screw-6x32'), 6);
  });

  test('crossbars built like the bars need no second kind', () => {
    expect(Object.keys(exits({ bars: thick, crossbars: [{ ...thin, stock: 'stud-38x64' }] }))).not.toContain('crossbar-ply-screws');
  });

  test('two plies in a crossbar of a frame of single bars are glued and screwed by default', () => {
    const { model } = demoSolved({ face: { width: '1200 mm', height: '900 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [thin] });
    const { section, fibre_mm } = model.crossbars[0]!;
    expect(section.I_plane_mm4).toBeCloseTo((38 * 38 ** 3) / 12, 6);
    expect(fibre_mm).toBe(19);
    expect(model.plan.assumed).toContainEqual({ path: 'bars.bond', value: 'glue+screws' });
  });
});

test('the order of crossbars does not matter to what their end screws do', () => {
  const two = [{ runs: 'upright', at: 0.5, stock: 'square-38x38', lay: 'flat' }, { runs: 'level', at: 0.5, stock: 'strip-19x38', lay: 'edge' }];
  const ends = (crossbars: readonly object[]): readonly unknown[] => {
    const { model, solution } = demoSolved({ face: { width: '1200 mm', height: '900 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, crossbars });
    return fasteningFacts(model, solution).filter((f) => f.about === 'crossbar-screws').map(({ path, value }) => [path, value]);
  };
  expect(ends(two)).toEqual(ends([...two].reverse()));
});
