import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planPlyScrews } from '../../../src/mechanics/fasteners/ply-screws.js';
import { freePlaces_mm } from '../../../src/mechanics/fasteners/row-places.js';
import { beforePlyScrews } from '../../../src/mechanics/occupancy/before-ply-screws.js';
import { braceFoot_mm, cornerParts } from '../../../src/mechanics/occupancy/corner-parts.js';
import { hangingPoints, wirePathAt } from '../../../src/mechanics/occupancy/hanging-points.js';
import { inLine, inTheWay, inTheWayAt, roomBetween, type Occupant } from '../../../src/mechanics/occupancy/occupant.js';
import { staplesBySteel } from '../../../src/mechanics/occupancy/staple-line.js';
import { plyScrews, plyScrewsInTheWay } from '../../../src/mechanics/occupancy/what-occupies.js';
import { bracesMet, crossbarsMet } from '../../../src/mechanics/occupancy/wire-path.js';
import { pickAngle } from '../../../src/mechanics/bench/pick-supply.js';
import { clearances } from '../../../src/mechanics/cloth/clearance.js';
import { applyEdit } from '../../../src/suggest/edit.js';
import { demoModel, demoShelf } from '../fasteners/demo-model.js';

const pair = (leg: number, more: object = {}) => demoModel({
  face: { width: '910 mm', height: '730 mm' },
  bars: { stock: 'strip-19x38', lay: 'edge', plies: 2 },
  corners: { brace: { kind: 'timber', leg: `${leg} mm`, stock: 'strip-19x38', lay: 'edge' } },
  ...more,
});

test('a nail through a mitre lies from the outer edge of each bar inward, as deep as it is long', () => {
  const model = demoModel({ face: { width: '910 mm', height: '730 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { nails: { use: 'brad-18ga-25', each: 1 } } });
  const { length_mm } = demoShelf().nails['brad-18ga-25']!;
  const nails = cornerParts(model).filter(({ kind }) => kind === 'corner-nail');
  expect(nails).toHaveLength(8);
  for (const { across_mm } of nails) expect(across_mm).toEqual([38 - length_mm, 38].map((mm) => expect.closeTo(mm, 9)));
});

describe('ply screws', () => {
  test('give way to the screw and the foot of a brace, wherever it stands', () => {
    let moved = 0;
    for (let leg = 70; leg <= 330; leg += 9) {
      const model = pair(leg);
      const screws = plyScrews(model);
      expect(screws.length).toBeGreaterThan(0);
      for (const screw of screws) for (const other of beforePlyScrews(model)) expect([leg, screw.along_mm[0], other.kind, other.of, inTheWay(screw, other)]).toEqual([leg, screw.along_mm[0], other.kind, other.of, false]);
      expect(plyScrewsInTheWay(model)).toEqual([]);
      const free = planPlyScrews(demoModel({ face: { width: '910 mm', height: '730 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2 }, hang: { by: 'none' } }))[0]!;
      const here = planPlyScrews(model)[0]!;
      expect(here.count).toBe(free.count);
      if (JSON.stringify(here.rows) !== JSON.stringify(free.rows)) moved += 1;
    }
    expect(moved).toBeGreaterThan(5);
  });

  test('the two screws that stood 3 mm apart on one line no longer do', () => {
    // the brace's screw stands 16 mm in from the toe of its slanted end: leg + 19/√2 − 16
    const model = pair(83);
    const brace = cornerParts(model).find(({ kind, bar }) => kind === 'brace-screw' && bar === 'top')!;
    const at = (brace.along_mm[0] + brace.along_mm[1]) / 2;
    expect(at).toBeCloseTo(83 + 19 / Math.SQRT2 - 16, 9);
    const places = planPlyScrews(model)[0]!.rows.find(({ piece }) => piece === 'top')!.places_mm;
    expect(Math.min(...places.map((mm) => Math.abs(mm - at)))).toBeGreaterThanOrEqual(4 * 3.5);
  });

  test('moved places are free, as many, in order and no nearer than asked', () => {
    fc.assert(fc.property(fc.integer({ min: 300, max: 1800 }), fc.array(fc.integer({ min: 0, max: 1800 }), { maxLength: 5 }), (length, walls) => {
      const places = Array.from({ length: Math.floor(length / 150) }, (_, i) => 60 + i * 150).filter((mm) => mm < length - 60);
      const blocked = (mm: number): boolean => walls.some((wall) => Math.abs(wall - mm) < 22);
      const moved = freePlaces_mm(places, blocked, length, 35, 1);
      expect(moved).toHaveLength(places.length);
      for (let i = 1; i < moved.length; i++) expect(moved[i]! - moved[i - 1]!).toBeGreaterThanOrEqual(35);
      moved.forEach((mm, i) => { if (!blocked(places[i]!)) expect(mm).toBe(places[i]); });
    }));
  });
});

describe('hanging points', () => {
  test('move off the foot of a brace to the nearest clear place, and ring and wire are then clear', () => {
    const model = pair(170);
    const points = hangingPoints(model);
    const [, to] = braceFoot_mm(170, 19);
    expect(points.planned_mm).toBe(180);
    expect(points.drop_mm).toBeGreaterThan(to + 10);
    expect(points.moved_off?.kind).toContain('brace');
    expect(points.meets).toEqual([]);
    expect(bracesMet(model, wirePathAt(model, points.drop_mm)!)).toEqual([]);
    expect(bracesMet(model, wirePathAt(model, 100)!)).toEqual([{ kind: 'top-braces', of: 'frame' }]);
  });

  test('stay where the plan has them when nothing is in the way', () => {
    expect(hangingPoints(demoModel({ face: { width: '910 mm', height: '730 mm' }, bars: { stock: 'strip-19x38', lay: 'edge' } }))).toMatchObject({ drop_mm: 180, moved_off: null, meets: [] });
  });

  test('a crossbar deep enough to reach the wire is told of, one in front of it is not, and from the backs one flush with them is not met', () => {
    const crossed = (crossbar: object, hang: object = {}) => hangingPoints(demoModel({ face: { width: '910 mm', height: '730 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: '2/5', stock: 'strip-19x38', ...crossbar }], hang: { by: 'wire', from: 'inside', ...hang } })).meets;
    expect(crossed({ lay: 'edge' })).toEqual([{ kind: 'whole-crossbar', of: 'crossbar-1' }]);
    expect(crossed({ lay: 'flat', setback: '0 mm' })).toEqual([]);
    expect(crossed({ lay: 'edge', setback: '0 mm' }, { by: 'wire', from: 'back' })).toEqual([]);
    expect(crossed({ lay: 'edge' }, { by: 'two-hooks' })).toEqual([]);
  });

  // From rings on the backs the wire runs 4 mm behind them and wants 2 mm of room: what stands out by more than 2 mm is met, wherever its height is between ring and hook.
  describe('a wire from the backs', () => {
    const deep = { 'square-38x38': 38, 'strip-19x38': 19 } as const;
    const model = (stock: keyof typeof deep, setback_mm: number, crossbar: object) => demoModel({
      face: { width: '910 mm', height: '730 mm' }, bars: { stock, lay: 'flat' }, crossbars: [{ stock: 'strip-19x38', lay: 'flat', setback: `${setback_mm} mm`, ...crossbar }], hang: { by: 'wire', from: 'back', drop: '200 mm', slack: '100 mm', hooks: 1 },
    });
    test.each([['upright left of the middle', { runs: 'upright', at: '2/5' }], ['upright right of it', { runs: 'upright', at: '13/20' }], ['level, between ring and hook', { runs: 'level', at: '58/73' }]] as const)('touches a crossbar that stands out farther than the wire runs: %s', (_, crossbar) => {
      for (const stock of ['square-38x38', 'strip-19x38'] as const) for (const setback_mm of [1, 2, 3, 12, 20, 21, 22, 30]) {
        if (setback_mm >= deep[stock]) continue;
        const out_mm = setback_mm + 19 - deep[stock];
        expect(hangingPoints(model(stock, setback_mm, crossbar)).meets, `${stock}, ${out_mm} mm out`).toEqual(out_mm > 4 - 2 ? [{ kind: 'whole-crossbar', of: 'crossbar-1' }] : []);
      }
    });

    test('not a level crossbar below the rings or above the hook: ring 200 mm down, the hook as far above it as a wire of that slack rises', () => {
      const level = (down_mm: number) => {
        const across = model('strip-19x38', 12, { runs: 'level', at: `${730 - down_mm}/730` });
        return crossbarsMet(across, wirePathAt(across, 200)!);
      };
      // 38 mm wide and 2 mm of room on each side: 21 mm from its middle
      expect(level(200 + 22)).toEqual([]);
      expect(level(200 + 20)).toEqual([{ kind: 'whole-crossbar', of: 'crossbar-1' }]);
      expect(level(100 - 20)).toEqual([{ kind: 'whole-crossbar', of: 'crossbar-1' }]);
      expect(level(100 - 22)).toEqual([]);
    });

    test('a plan that names no hanging takes two hooks where a wire would touch from either face, and a wire again where the crossbar goes', () => {
      const plan = (setback: string, hang?: object) => demoModel({ face: { width: '910 mm', height: '730 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: '2/5', stock: 'strip-19x38', lay: 'flat', setback }], ...(hang === undefined ? {} : { hang }) }).plan;
      expect(plan('12 mm').hang).toMatchObject({ by: 'two-hooks', from: 'inside' });
      expect(plan('2 mm').hang).toMatchObject({ by: 'wire', from: 'back' });
      expect(plan('12 mm', { by: 'wire' }).hang).toMatchObject({ by: 'wire', from: 'back' });
      const gone = applyEdit(plan('12 mm'), { words: [], crossbars: [] }, demoShelf());
      expect(gone.hang).toMatchObject({ by: 'wire', from: 'inside', slack_mm: 105 });
    });
  });
});

test('room between two things is the widest gap less what both want, alike either way round', () => {
  const box = (along: [number, number], deep: [number, number]) => ({ bar: 'top' as const, kind: 'brace' as const, of: 'top-left', along_mm: along, across_mm: [0, 20] as const, deep_mm: deep, keep_mm: 3 });
  const [p, q] = [box([0, 10], [0, 5]), box([31, 40], [2, 9])];
  expect(roomBetween(p, q)).toBe(21 - 6);
  expect(roomBetween(q, p)).toBe(21 - 6);
  expect(roomBetween(p, box([4, 9], [40, 50]))).toBe(35 - 6);
  expect(roomBetween(p, { ...q, bar: 'left' })).toBe(Infinity);
});

test('what is in line with a thing meets it where it is moved to, just as one made there would; what is not, nowhere', () => {
  const span = (from: number, most: number) => fc.tuple(fc.integer({ min: from, max: most }), fc.integer({ min: 1, max: 25 })).map(([at, size]) => [at, at + size] as const);
  const thing = fc.record({ bar: fc.constantFrom('top' as const, 'left' as const), kind: fc.constant('brace' as const), of: fc.constant('frame'), along_mm: span(-20, 60), across_mm: span(-30, 30), deep_mm: span(-30, 30), keep_mm: fc.integer({ min: 0, max: 7 }) });
  const seen = { met: 0, passed: 0, beside: 0 };
  fc.assert(fc.property(thing, thing, fc.integer({ min: -60, max: 60 }), (p: Occupant, q: Occupant, by) => {
    const there = { ...p, along_mm: [p.along_mm[0] + by, p.along_mm[1] + by] as const };
    expect(inLine(p, q) && inTheWayAt(p, by, q)).toBe(inTheWay(there, q));
    seen[!inLine(p, q) ? 'beside' : inTheWayAt(p, by, q) ? 'met' : 'passed'] += 1;
  }), { numRuns: 1000, seed: 11 });
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(25);
});

test('staples go beside the steel where the wood is wide enough; where it is not they are counted', () => {
  const angled = (stock: string, lay: string, to = 'back') => staplesBySteel(demoModel({ face: { width: '610 mm', height: '430 mm' }, bars: { stock, lay }, corners: { brace: { kind: 'steel-angle', leg: '80 mm' } }, cloth: { fixing: { to } } }));
  expect(angled('square-38x38', 'flat')).toMatchObject({ strip_mm: (38 - 17.1) / 2, reach_mm: 100, on_steel: 0 });
  // 19 mm wide: 8.55 mm of steel leave 5.2 mm. Staples stand (i + 1/2)/n along: 13 on 610 mm, 9 on 430 mm; two lie within the 100 mm of the angle that is bought from each end.
  expect(angled('strip-19x38', 'edge')).toMatchObject({ reach_mm: 100, on_steel: 16 });
  expect(angled('strip-19x38', 'edge', 'edge')).toBeNull();
});

test('braces count in the room behind the cloth: flush with the front of thin bars they print through', () => {
  const braced = (bars: object, lay: string) => clearances(demoModel({ face: { width: '910 mm', height: '730 mm' }, bars, corners: { brace: { leg: '160 mm', stock: 'strip-19x38', lay } } })).find(({ behind }) => behind === 'braces')!;
  expect(braced({ stock: 'strip-19x38', lay: 'flat' }, 'flat')).toMatchObject({ depth_mm: 0 });
  expect(braced({ stock: 'strip-19x38', lay: 'flat' }, 'flat').left_mm).toBeLessThan(0);
  expect(braced({ stock: 'strip-19x38', lay: 'edge' }, 'flat').depth_mm).toBe(19);
  expect(braced({ stock: 'strip-19x38', lay: 'edge', lip: '6 mm' }, 'edge').depth_mm).toBe(6);
});

test('the steel that is bought reaches every screw that is driven into it', () => {
  for (const leg of [60, 80, 100, 130, 180]) {
    const model = demoModel({ face: { width: '910 mm', height: '730 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { brace: { kind: 'steel-angle', leg: `${leg} mm` } } });
    const farthest = Math.max(...cornerParts(model).filter(({ kind, bar, along_mm }) => kind === 'angle-screw' && bar === 'top' && along_mm[1] < 455).map(({ along_mm }) => along_mm[1]));
    expect(pickAngle(model)!.leg_mm).toBeGreaterThan(farthest);
  }
});
