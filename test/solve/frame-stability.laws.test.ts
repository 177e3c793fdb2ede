import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eachWay, evenGive } from '../../src/base/joint-give.js';
import { barNames, cornerNames } from '../../src/base/names.js';
import { findStability, solveInfluence, solveStatics } from '../../src/solve/analyse-frame.js';
import type { Influence, Stability } from '../../src/model/frame-results.js';
import type { EdgePull, FrameShape } from '../../src/model/frame-shape.js';
import { solidSection } from '../../src/model/section.js';
import { everyCorner, frameOf, mirrored } from '../frame3d/frame-shapes.js';
import { runs as some } from '../effort.js';

/** Random but repeatable; a law that fails prints its counterexample. */
const runs = (all: number): fc.Parameters<unknown> => ({ numRuns: some(all, 1 / 4), seed: 20 });
/** Rounding of the mesh and the solvers, never more. */
const slack = 1e-3;

const size = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });
const share = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/** Frames as people build them. */
const usual: fc.Arbitrary<FrameShape> = fc
  .record({ width: size(450, 2000), height: size(400, 1800), w: size(19, 65), d: size(19, 65), give: share(0, 12), crossbarGive: share(0, 20), uprights: size(0, 2), levels: size(0, 1), braced: fc.boolean(), at: share(0.3, 0.7) })
  .map(({ uprights, levels, braced, at, ...words }) =>
    frameOf({
      ...words,
      crossbars: [
        ...Array.from({ length: uprights }, (_, i) => ({ runs: 'upright' as const, at: uprights === 1 ? at : (i + at) / uprights, w: words.w, d: Math.max(12, words.d - 6) })),
        ...Array.from({ length: levels }, () => ({ runs: 'level' as const, at: 1 - at, w: words.w, d: Math.max(12, words.d - 6) })),
      ],
      brace: braced ? { leg: 0.22 * Math.min(words.width, words.height), w: words.w, d: 19 } : undefined,
    }),
  );
/** Frames whose crossbars, if any, all run one way: no cross. */
const uncrossed = usual.map((shape): FrameShape => ({ ...shape, crossbars: shape.crossbars.filter((c) => c.runs === 'upright') }));
const pulls: fc.Arbitrary<EdgePull> = fc.record({ x: share(0.05, 0.5), y: share(0.05, 0.5) });

const factor = (shape: FrameShape, pull: EdgePull): number => findStability(shape, pull).load_factor!;

/** The propeller's own factor, when it is among the first two. */
function propeller(s: Stability): number | null {
  if (s.mode_words === 'propeller') return s.load_factor;
  return s.second_mode_words === 'propeller' ? s.second_factor : null;
}

const scaled = (shape: FrameShape, by: number): FrameShape => {
  const stiffer = (s: FrameShape['bars']['top']): FrameShape['bars']['top'] => ({ ...s, E_MPa: s.E_MPa * by, G_MPa: s.G_MPa * by });
  return {
    ...shape,
    bars: Object.fromEntries(barNames.map((b) => [b, stiffer(shape.bars[b])])) as FrameShape['bars'],
    crossbars: shape.crossbars.map((c) => ({ ...c, section: stiffer(c.section) })),
    braces: shape.braces.map((b) => ({ ...b, section: stiffer(b.section) })),
  };
};

describe('laws of stability', () => {
  it('deeper bars never lower the load factor', () => {
    fc.assert(
      fc.property(usual, pulls, share(1.05, 2), (shape, pull, more) => {
        const deeper = <T extends { section: FrameShape['bars']['top'] }>(part: T): T => ({ ...part, section: deepen(part.section) });
        const deepen = (s: FrameShape['bars']['top']): FrameShape['bars']['top'] => solidSection(s.w_mm, s.d_mm * more, s.E_MPa, s.G_MPa);
        const grown: FrameShape = {
          ...shape,
          bars: Object.fromEntries(barNames.map((b) => [b, deepen(shape.bars[b])])) as FrameShape['bars'],
          crossbars: shape.crossbars.map(deeper),
          braces: shape.braces.map(deeper),
        };
        expect(factor(grown, pull)).toBeGreaterThanOrEqual(factor(shape, pull) * (1 - slack));
      }),
      runs(25),
    );
  });

  it('stiffer corners never lower the load factor (crossbars one way only)', () => {
    fc.assert(
      fc.property(uncrossed, pulls, share(0, 0.9), (shape, pull, part) => {
        const stiffer: FrameShape = { ...shape, corner_give: everyCorner(eachWay(shape.corner_give['top-left'], (widths) => widths * part)) };
        expect(factor(stiffer, pull)).toBeGreaterThanOrEqual(factor(shape, pull) * (1 - slack));
      }),
      runs(25),
    );
  });

  it('a crossbar that the frame presses never lowers the factor of the propeller (crossbars one way only)', () => {
    fc.assert(
      fc.property(uncrossed, pulls, share(0.25, 0.75), fc.constantFrom('upright' as const, 'level' as const), (shape, pull, at, runs) => {
        const { w_mm, d_mm } = shape.bars.top;
        const section = solidSection(w_mm, d_mm, 9000, 562.5);
        const bare: FrameShape = { ...shape, braces: [], crossbars: shape.crossbars.filter((c) => c.runs === runs) };
        const more: FrameShape = { ...bare, crossbars: [...bare.crossbars, { name: 'crossbar-9', runs, at, section, give: evenGive(4) }] };
        fc.pre(solveStatics(more, pull).crossbars.every((c) => c.axial_N <= 0));
        const [before, after] = [propeller(findStability(bare, pull)), propeller(findStability(more, pull))];
        fc.pre(before !== null && after !== null);
        expect(after).toBeGreaterThanOrEqual(before! * (1 - slack));
      }),
      runs(25),
    );
  });

  it('a crossbar that the frame pulls is a tie: it presses the bars beside it, and may lower the factor', () => {
    const long = { width: 1895, height: 572, w: 21, d: 58 };
    const pull = { x: 0.3, y: 0.3 };
    const tied = frameOf({ ...long, crossbars: [{ runs: 'level', at: 0.5, w: 21, d: 52 }] });
    const [before, after] = [solveStatics(frameOf(long), pull), solveStatics(tied, pull)];
    expect(after.crossbars[0]!.axial_N).toBeGreaterThan(0);
    expect(after.bars.top.axial_N).toBeCloseTo(before.bars.top.axial_N - after.crossbars[0]!.axial_N / 2, 1);
    expect(factor(tied, pull)).toBeLessThan(factor(frameOf(long), pull));
  });

  it('braces never lower the load factor of a frame without a cross', () => {
    fc.assert(
      fc.property(uncrossed, pulls, share(0.12, 0.3), (shape, pull, leg) => {
        const { w_mm, d_mm } = shape.bars.top;
        const section = solidSection(w_mm, d_mm, 9000, 562.5);
        const leg_mm = leg * Math.min(shape.span_x_mm, shape.span_y_mm);
        const braced: FrameShape = { ...shape, braces: cornerNames.map((corner) => ({ corner, leg_mm, section, give: evenGive(6) })) };
        fc.pre(solveStatics(braced, pull).crossbars.every((c) => c.axial_N <= 0));
        expect(factor(braced, pull)).toBeGreaterThanOrEqual(factor({ ...shape, braces: [] }, pull) * (1 - slack));
      }),
      runs(25),
    );
  });

  it('a cross carries the pull through the middle: stiffer corners take it over, press the bars more, and may lower the factor', () => {
    const words = { width: 1382, height: 999, w: 20, d: 49, crossbarGive: 2, crossbars: [{ runs: 'upright', at: 0.5, w: 20, d: 43 }, { runs: 'level', at: 0.5, w: 20, d: 43 }] } as const;
    const [soft, stiff] = [frameOf({ ...words, give: 4.3 }), frameOf({ ...words, give: 0 })];
    const pull = { x: 0.1, y: 0.1 };
    expect(Math.abs(solveStatics(stiff, pull).bars.top.axial_N)).toBeGreaterThan(Math.abs(solveStatics(soft, pull).bars.top.axial_N));
    expect(factor(stiff, pull)).toBeLessThan(factor(soft, pull));
  });

  it('scales with E and G, and inversely with the pull', () => {
    fc.assert(
      fc.property(usual, pulls, share(0.5, 3), share(0.3, 4), (shape, pull, stiffness, load) => {
        const [one, two] = [findStability(shape, pull), findStability(scaled(shape, stiffness), { x: load * pull.x, y: load * pull.y })];
        expect((two.load_factor! * load) / stiffness / one.load_factor!).toBeCloseTo(1, 6);
        expect(two.mode_words).toBe(one.mode_words);
      }),
      runs(15),
    );
  });

  it('half the centre-line size of a square frame bears eight times the pull (thin bars: shear left out)', () => {
    fc.assert(
      fc.property(size(600, 2000), size(19, 65), size(19, 65), (span, w, d) => {
        const at = (side: number): number =>
          findStability(frameOf({ width: side + w, height: side + w, w, d }), { x: 0.2, y: 0.2 }, { shear: false }).load_factor!;
        expect(at(span / 2) / at(span)).toBeCloseTo(8, 4);
      }),
      runs(10),
    );
  });
});

const lifts = (list: readonly Influence[], kind: Influence['kind'], members: readonly string[]): number[] =>
  members.map((m) => list.find((i) => i.member === m && i.kind === kind)!.corner_lift);

describe('laws of symmetry', () => {
  it('equal twist in all four bars of a square frame lifts nothing', () => {
    fc.assert(
      fc.property(size(500, 1500), size(19, 50), size(19, 50), share(0, 12), fc.boolean(), (side, w, d, give, braced) => {
        const shape = frameOf({ width: side, height: side, w, d, give, brace: braced ? { leg: side / 5, w, d: 19 } : undefined });
        const factorHere = factor(shape, { x: 1, y: 1 });
        const T = 0.4 * factorHere;
        const four = lifts(solveInfluence(shape, { x: T, y: T })!, 'twist', barNames);
        const sum = four.reduce((p, q) => p + q);
        expect(Math.abs(sum)).toBeLessThan(1e-6 * Math.max(...four.map(Math.abs)));
      }),
      runs(15),
    );
  });

  it('a frame and its mirror image agree: same factors, same answer to twist of the other hand, opposite lift by bow', () => {
    fc.assert(
      fc.property(usual, pulls, share(0, 9), share(0, 9), (even, pull, left, right) => {
        const shape: FrameShape = {
          ...even,
          corner_give: { 'top-left': { plane: left, out: 3, twist: right }, 'bottom-left': evenGive(2), 'top-right': evenGive(0.5), 'bottom-right': { plane: right, out: left, twist: 5 } },
          corner_plate_Nmm_per_rad: { ...even.corner_plate_Nmm_per_rad, 'top-left': 1e6 * right, 'bottom-right': 2e5 },
          braces: even.braces.slice(1).map((b) => ({ ...b, give: { plane: left, out: right, twist: 4 } })),
        };
        const image = mirrored(shape);
        const [one, two] = [findStability(shape, pull), findStability(image, pull)];
        expect(two.load_factor! / one.load_factor!).toBeCloseTo(1, 6);
        expect(two.mode).toBe(one.mode);
        const safe = { x: pull.x * 0.3 * Math.min(1, one.load_factor!), y: pull.y * 0.3 * Math.min(1, one.load_factor!) };
        const [here, there] = [solveInfluence(shape, safe)!, solveInfluence(image, safe)!];
        const swapped = barNames.map((b) => (b === 'left' ? 'right' : b === 'right' ? 'left' : b));
        const [twist, twistImage] = [lifts(here, 'twist', barNames), lifts(there, 'twist', swapped)];
        const [out, outImage] = [lifts(here, 'out', barNames), lifts(there, 'out', swapped)];
        const scale = Math.max(...twist.map(Math.abs));
        twist.forEach((v, i) => expect(Math.abs(v - twistImage[i]!)).toBeLessThan(1e-6 * scale));
        out.forEach((v, i) => expect(Math.abs(v + outImage[i]!)).toBeLessThan(1e-6 * scale));
        const [a, b] = [solveStatics(shape, pull), solveStatics(image, pull)];
        barNames.forEach((bar, i) => {
          const largest = Math.max(...barNames.map((n) => Math.abs(a.bars[n].inward_bow_mm)));
          expect(Math.abs(a.bars[bar].inward_bow_mm - b.bars[swapped[i]!].inward_bow_mm)).toBeLessThan(1e-6 * largest);
        });
      }),
      runs(15),
    );
  });

  it('turning the frame a quarter changes nothing but names, movements out of its plane', () => {
    fc.assert(
      fc.property(size(500, 1500), size(500, 1500), size(19, 50), share(0, 8), share(0.3, 0.7), pulls, (width, height, w, give, at, pull) => {
        const crossbar = { at, w: 30, d: 25 };
        const one = findStability(frameOf({ width, height, w, d: 30, give, crossbars: [{ runs: 'upright', ...crossbar }] }), pull);
        const two = findStability(frameOf({ width: height, height: width, w, d: 30, give, crossbars: [{ runs: 'level', ...crossbar }] }), { x: pull.y, y: pull.x });
        expect(two.load_factor! / one.load_factor!).toBeCloseTo(1, 6);
        expect(two.second_factor! / one.second_factor!).toBeCloseTo(1, 6);
      }),
      runs(10),
    );
  });

  it('the order in which crossbars and braces are told does not matter', () => {
    fc.assert(
      fc.property(usual, pulls, (shape, pull) => {
        const turned: FrameShape = { ...shape, crossbars: [...shape.crossbars].reverse(), braces: [...shape.braces].reverse() };
        const [one, two] = [findStability(shape, pull), findStability(turned, pull)];
        expect(two.load_factor! / one.load_factor!).toBeCloseTo(1, 7);
        const [a, b] = [solveStatics(shape, pull), solveStatics(turned, pull)];
        for (const bar of barNames) expect(Math.abs(a.bars[bar].axial_N - b.bars[bar].axial_N)).toBeLessThan(1e-7 * Math.max(...barNames.map((n) => Math.abs(a.bars[n].axial_N))));
      }),
      runs(15),
    );
  });
});

describe('no plan makes it hang or talk nonsense', () => {
  const wild: fc.Arbitrary<FrameShape> = fc
    .record({
      width: size(150, 6000),
      height: size(150, 6000),
      w: share(3, 140),
      d: share(3, 200),
      give: fc.oneof(fc.constant(0), share(0, 1000), share(0, 1e-5)),
      crossbarGive: fc.oneof(fc.constant(0), share(0, 1000)),
      crossbars: fc.array(fc.record({ runs: fc.constantFrom('upright' as const, 'level' as const), at: fc.oneof(share(0, 1), fc.constantFrom(0.5, 0.5000001, 0.25, 0.999999)), w: share(3, 90), d: share(3, 120) }), { maxLength: 9 }),
      leg: fc.option(share(0.001, 0.95), { nil: undefined }),
    })
    .map(({ leg, ...words }) => frameOf({ ...words, brace: leg === undefined ? undefined : { leg: leg * (Math.min(words.width, words.height) - words.w), w: 30, d: 19 } }));
  const anyPull = fc.record({ x: fc.oneof(fc.constant(0), share(1e-6, 5)), y: fc.oneof(fc.constant(0), share(1e-6, 5)) });

  it('whatever the sizes, places, joints and pulls', () => {
    fc.assert(
      fc.property(wild, anyPull, (shape, pull) => {
        const statics = solveStatics(shape, pull);
        for (const bar of Object.values(statics.bars)) {
          expect(Object.values(bar).every((v) => typeof v !== 'number' || Number.isFinite(v))).toBe(true);
        }
        const found = findStability(shape, pull);
        if (pull.x === 0 && pull.y === 0) {
          expect(found.load_factor).toBeNull();
          return;
        }
        expect(found.load_factor).toBeGreaterThan(0);
        expect(found.second_factor!).toBeGreaterThanOrEqual(found.load_factor!);
        expect(found.mode_shape.every((l) => l.points.every((p) => Math.abs(p.dx) + Math.abs(p.dy) + Math.abs(p.dz) < 3))).toBe(true);
        const influence = solveInfluence(shape, pull);
        expect(influence === null).toBe(found.load_factor! <= 1);
        for (const i of influence ?? []) expect(Number.isFinite(i.corner_lift) && i.bar_bow.top.every(Number.isFinite)).toBe(true);
      }),
      runs(60),
    );
  });
});
