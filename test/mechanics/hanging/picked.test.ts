import { describe, expect, it } from 'vitest';
import { bottomOut_mm, standsOut } from '../../../src/mechanics/hanging/stands-out.js';
import { pickRated, pickRing } from '../../../src/mechanics/hanging/pick-hardware.js';
import { ringUse } from '../../../src/mechanics/hanging/ring.js';
import { pickAngle, pickLip, pickStaple, gussets } from '../../../src/mechanics/bench/pick-supply.js';
import { hangingFacts } from '../../facts/of-subject.js';
import { crossbarEnds } from '../../../src/mechanics/occupancy/crossbar-ends.js';
import { planCrossbarScrews } from '../../../src/mechanics/fasteners/crossbar-screws.js';
import type { Hardware, Shelf } from '../../../src/shelf/shelf.js';
import { demoModel, demoShelf, demoSolved } from '../fasteners/demo-model.js';

const shelf = demoShelf();
const hardware = (list: readonly Partial<Hardware>[]): Shelf => ({ ...shelf, hardware: Object.fromEntries(list.map((one) => [one.key!, one as Hardware])) });

describe('hardware', () => {
  it('the weakest that carries the load with twice the wanted factor, else the strongest', () => {
    const hooks = hardware([
      { key: 'c', kind: 'hook', rating_N: 300 }, { key: 'b', kind: 'hook', rating_N: 100 }, { key: 'a', kind: 'hook', rating_N: 300 }, { key: 'w', kind: 'wire', rating_N: 200 },
    ]);
    const picked = (load: number, factor: number): string | undefined => pickRated(hooks, 'hook', load, factor)?.key;
    expect([picked(20, 2.5), picked(20.1, 2.5), picked(60, 2.5), picked(500, 2.5)]).toEqual(['b', 'a', 'a', 'c']);
    expect(pickRated(hooks, 'cleat', 1, 1)).toBeNull();
  });
  it('the ring that stays 3.2 mm inside the wood and uses half its strength at most; else the least used; where all come out, the shortest', () => {
    const ring = (key: string, rating_N: number, thread_length_mm: number, thread_diameter_mm: number) => ({ key, kind: 'ring', rating_N, thread_length_mm, thread_diameter_mm }) as const;
    const rings = [ring('small', 60, 12, 2.5), ring('large', 240, 20, 4.5), ring('long', 120, 30, 3)];
    const load = { along_N: 25, across_N: 8 };
    const use = (key: string, wood: number): number => ringUse(rings.find((one) => one.key === key) as unknown as Hardware, load, 0.42, wood);
    const picked = (wood: number, of = load): string | undefined => pickRing(hardware(rings), of, 0.42, wood)?.key;
    const half = { along_N: load.along_N * (0.5 / use('small', 38)) * 0.999, across_N: load.across_N * (0.5 / use('small', 38)) * 0.999 };
    expect(picked(38, half)).toBe('small');
    expect(picked(38, { along_N: half.along_N * 1.01, across_N: half.across_N * 1.01 })).not.toBe('small');
    expect(picked(15.2, { along_N: 900, across_N: 0 })).toBe('small');
    expect(picked(15.1)).toBe('small');
    expect([picked(23.19, { along_N: 900, across_N: 0 }), picked(23.21, { along_N: 900, across_N: 0 })]).toEqual(['small', 'large']);
    expect(pickRing(hardware([ring('long', 9, 30, 3), ring('short', 200, 28, 3), ring('weak', 100, 28, 3)]), load, 0.42, 20)?.key).toBe('weak');
    expect(pickRing(hardware(rings), load, 0.42, 38, 'strap')).toBeNull();
  });
});

describe('what stands out behind the bars', () => {
  const face = { width: '1200 mm', height: '800 mm' };
  const bars = { stock: 'square-38x38', lay: 'flat' };
  const deep = (runs: string, at: number, setback = '5 mm') => ({ runs, at, stock: 'stud-38x64', lay: 'edge', setback });

  it('a crossbar deeper than the bars, by its depth and setback; a level one where it lies, an upright one all the way', () => {
    const level = demoModel({ face, bars, crossbars: [deep('level', 0.6)] });
    expect(standsOut(level)).toEqual({ what: { kind: 'whole-crossbar', of: 'crossbar-1' }, out_mm: 64 + 5 - 38, up_mm: [[480 - 19, 480 + 19]] });
    const upright = demoModel({ face, bars, crossbars: [deep('upright', 0.3)] });
    expect(standsOut(upright)).toEqual({ what: { kind: 'whole-crossbar', of: 'crossbar-1' }, out_mm: 31, up_mm: [[38, 762]] });
    expect(standsOut(demoModel({ face, bars, crossbars: [{ runs: 'upright', at: 0.5, stock: 'strip-19x38', lay: 'flat' }] }))).toBeNull();
  });
  it('the farthest of several, and plates by their thickness at both ends of the height', () => {
    const both = demoModel({ face, bars, crossbars: [deep('upright', 0.3, '3 mm'), deep('level', 0.6, '9 mm')] });
    expect(standsOut(both)).toMatchObject({ what: { kind: 'whole-crossbar', of: 'crossbar-2' }, out_mm: 35 });
    const plated = demoModel({ face, bars, corners: { brace: { kind: 'ply-gusset', leg: '150 mm' } } });
    expect(standsOut(plated)).toEqual({ what: { kind: 'all-gussets', of: 'frame' }, out_mm: 9, up_mm: [[0, 169], [631, 800]] });
    expect(gussets(plated)).toMatchObject({ leg_mm: 169, thickness_mm: 9 });
    const angled = demoModel({ face, bars, corners: { brace: { kind: 'steel-angle', leg: '100 mm' } } });
    const angle = pickAngle(angled)!;
    expect(standsOut(angled)).toEqual({ what: { kind: 'all-angles', of: 'frame' }, out_mm: angle.thickness_mm ?? 2, up_mm: [[0, angle.leg_mm], [800 - angle.leg_mm!, 800]] });
  });
  it('holds the lower edge off the wall only from the lowest quarter of the height', () => {
    const out = (at: number): number => bottomOut_mm(demoModel({ face, bars, crossbars: [deep('level', at)] }));
    // The crossbar is 38 mm high: its lower edge at 181 of 200 mm, and at 201.
    expect([out(0.25), out(0.275), out(0.7)]).toEqual([31, 0, 0]);
    expect(bottomOut_mm(demoModel({ face, bars, crossbars: [deep('upright', 0.3)] }))).toBe(31);
    expect(bottomOut_mm(demoModel({ face, bars, corners: { brace: { kind: 'ply-gusset', leg: '150 mm' } } }))).toBe(9);
  });
});

describe('supplies', () => {
  const face = { width: '1200 mm', height: '800 mm' };
  it('the longest staple that stays 3.2 mm inside the wood it is shot into: depth from behind, width from the edge; else the shortest', () => {
    const staple = (key: string, leg_mm: number) => ({ key, kind: 'staple', name: key, leg_mm });
    const on = { ...shelf, supplies: Object.fromEntries([staple('six', 6), staple('ten', 10), staple('sixteen', 16), staple('sixteen-more', 15.9)].map((one) => [one.key, one])) } as unknown as Shelf;
    const picked = (to: string, bars: object): string | undefined => pickStaple(demoModel({ face, bars, cloth: { use: 'cotton-duck-340', fixing: { to } } }, on))?.key;
    expect(picked('back', { stock: 'strip-19x38', lay: 'flat' })).toBe('ten');
    expect(picked('edge', { stock: 'strip-19x38', lay: 'flat' })).toBe('sixteen');
    expect(picked('edge', { stock: 'strip-19x38', lay: 'edge' })).toBe('ten');
    const none = { ...shelf, supplies: {} } as Shelf;
    expect(pickStaple(demoModel({ face, bars: { stock: 'strip-19x38', lay: 'flat' } }, none))).toBeNull();
  });
  it('a lip is a strip only where the plan raises one', () => {
    const lip = (mm: string) => pickLip(demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat', lip: mm } }));
    expect(lip('0 mm')).toBeNull();
    expect(lip('6 mm')?.kind).toBe('lip');
  });
});

describe('crossbar ends on the side bars', () => {
  it('an upright one meets top and bottom, a level one left and right, each where it lies, with its screws', () => {
    const model = demoModel({
      face: { width: '1300 mm', height: '800 mm' }, bars: { stock: 'stud-38x89', lay: 'edge' },
      crossbars: [{ runs: 'upright', at: 0.3, stock: 'stud-38x64', lay: 'edge', setback: '6 mm' }, { runs: 'level', at: 0.6, stock: 'stud-38x64', lay: 'edge', setback: '10 mm' }],
    });
    const screws = planCrossbarScrews(model)!;
    expect(screws.along_grain).toBe(true);
    const ends = crossbarEnds(model);
    const of = (name: string, kind: string) => ends.filter((one) => one.kind === kind && one.of === name);
    expect(of('crossbar-1', 'crossbar').map(({ bar, along_mm, deep_mm, across_mm }) => [bar, ...along_mm, ...deep_mm, ...across_mm])).toEqual([['top', 371, 409, 19, 83, -38, 0], ['bottom', 371, 409, 19, 83, -38, 0]]);
    expect(of('crossbar-2', 'crossbar').map(({ bar, along_mm, deep_mm }) => [bar, ...along_mm, ...deep_mm])).toEqual([['left', 461, 499, 15, 79], ['right', 461, 499, 15, 79]]);
    // 64 mm deep: two screws, a quarter of the depth from either face, all across the bar they come through.
    const mid = ([a, b]: readonly [number, number]): number => (a + b) / 2;
    expect(of('crossbar-1', 'crossbar-screw').map(({ bar, along_mm, deep_mm, across_mm }) => [bar, mid(along_mm), mid(deep_mm), ...across_mm])).toEqual([['top', 390, 35, 0, 38], ['top', 390, 67, 0, 38], ['bottom', 390, 35, 0, 38], ['bottom', 390, 67, 0, 38]]);
    expect(of('crossbar-2', 'crossbar-screw').map(({ bar, deep_mm }) => [bar, mid(deep_mm)])).toEqual([['left', 31], ['left', 63], ['right', 31], ['right', 63]]);
    const shallow = demoModel({ face: { width: '1300 mm', height: '800 mm' }, bars: { stock: 'stud-38x89', lay: 'edge' }, crossbars: [{ runs: 'upright', at: 0.3, stock: 'square-38x38', setback: '6 mm' }] });
    expect(crossbarEnds(shallow).filter(({ kind }) => kind === 'crossbar-screw').map(({ bar, deep_mm }) => [bar, mid(deep_mm)])).toEqual([['top', 64], ['bottom', 64]]);
    for (const one of of('crossbar-1', 'crossbar-screw')) expect(one.along_mm[1] - one.along_mm[0]).toBeCloseTo(screws.shank_mm, 9);
  });
});

describe('the fact of the side bars’ bow on a wire', () => {
  it('is of the bar that bows more, inward or outward, wire and cloth together', () => {
    const { model, solution } = demoSolved({ face: { width: '1100 mm', height: '800 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, hang: { by: 'wire', drop: '200 mm', from: 'inside', hooks: 1, slack: '70 mm' } });
    const bow = (left: number, right: number): number => {
      const hung = { ...solution.working, bars: { ...solution.working.bars, left: { ...solution.working.bars.left, inward_bow_mm: left }, right: { ...solution.working.bars.right, inward_bow_mm: right } } };
      return hangingFacts(model, { ...solution, hung } as typeof solution).find(({ path }) => path === 'hanging.inward_bow_mm')!.value as number;
    };
    expect([bow(1.5, 2.5), bow(-2.5, 1.5), bow(0.5, -0.75), bow(3, 2)]).toEqual([2.5, -2.5, -0.75, 3]);
  });
});
