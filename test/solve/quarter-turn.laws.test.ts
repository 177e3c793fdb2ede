import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barNames, cornerNames } from '../../src/base/names.js';
import type { BarName, CornerName } from '../../src/base/names.js';
import type { Influence } from '../../src/model/frame-results.js';
import type { EdgePull, FrameShape, Section } from '../../src/model/frame-shape.js';
import { solidSection } from '../../src/model/section.js';
import { findStability, solveInfluence } from '../../src/solve/analyse-frame.js';
import { frameOf, quarterTurned, turnedBar } from '../frame3d/frame-shapes.js';

const share = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const section: fc.Arbitrary<Section> = fc.tuple(share(12, 70), share(12, 90)).map(([w, d]) => solidSection(w, d, 9000, 560));
const give = fc.oneof(share(0, 12), fc.constantFrom(0, 40, 100));
const ofBars = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<Record<BarName, T>> => fc.record({ top: value, bottom: value, left: value, right: value });
const ofCorners = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<Record<CornerName, T>> =>
  fc.record({ 'top-left': value, 'top-right': value, 'bottom-left': value, 'bottom-right': value });

/** Frames of which no two bars, corners or braces need be alike. */
const uneven: fc.Arbitrary<FrameShape> = fc
  .record({
    span_x_mm: share(400, 1900),
    span_y_mm: share(350, 1500),
    bars: ofBars(section),
    eccentricity_mm: ofBars(share(5, 45)),
    corner_give: ofCorners(give),
    crossbars: fc.array(fc.record({ runs: fc.constantFrom('upright' as const, 'level' as const), at: share(0.2, 0.8), section, give }), { maxLength: 3 }),
    braces: fc.subarray([...cornerNames]),
  })
  .map(({ crossbars, braces, ...shape }) => ({
    ...shape,
    crossbars: crossbars.map((c, i) => ({ ...c, name: `crossbar-${i + 1}` })),
    braces: braces.map((corner, i) => ({ corner, leg_mm: (0.15 + 0.03 * i) * Math.min(shape.span_x_mm, shape.span_y_mm), section: solidSection(38, 19, 9000, 560) })),
  }));
const pulls: fc.Arbitrary<EdgePull> = fc.record({ x: share(0.02, 0.5), y: share(0.02, 0.5) });
const swapped = ({ x, y }: EdgePull): EdgePull => ({ x: y, y: x });

describe('a frame turned a quarter stands as before', () => {
  it('both factors and both modes, whatever the bars, joints, crossbars, braces and pulls', () => {
    fc.assert(
      fc.property(uneven, pulls, (shape, pull) => {
        const [one, two] = [findStability(shape, pull), findStability(quarterTurned(shape), swapped(pull))];
        expect(two.load_factor! / one.load_factor!).toBeCloseTo(1, 6);
        expect(two.second_factor! / one.second_factor!).toBeCloseTo(1, 6);
        // Two modes at almost one factor mix as they like.
        fc.pre(one.second_factor! > 1.001 * one.load_factor!);
        expect(two.mode).toBe(one.mode);
        const word = (words: string): string => words.replace(/^(top|bottom|left|right)(?= bar)/, (bar) => turnedBar[bar as BarName]);
        if (!/brace/.test(one.mode_words!)) expect(two.mode_words).toBe(word(one.mode_words!));
      }),
      { numRuns: 60, seed: 20 },
    );
  });

  it('and so does its answer to the natural curvature of a bar', () => {
    fc.assert(
      fc.property(uneven, pulls, share(0.1, 0.9), (shape, full, part) => {
        const by = part * Math.min(1, findStability(shape, full).load_factor!);
        const pull = { x: by * full.x, y: by * full.y };
        const [here, there] = [solveInfluence(shape, pull)!, solveInfluence(quarterTurned(shape), swapped(pull))!];
        const largest = (pick: (i: Influence) => readonly number[]): number => Math.max(...here.flatMap(pick).map(Math.abs));
        const lift = largest((i) => [i.corner_lift]);
        const crook = largest((i) => (i.kind === 'plane' ? barNames.flatMap((b) => [...i.bar_crook[b]]) : []));
        for (const one of here) {
          const [kind, bar] = [one.kind, one.member as BarName];
          if (!barNames.includes(bar)) continue;
          const two = there.find((i) => i.member === turnedBar[bar] && i.kind === kind)!;
          if (kind !== 'plane') {
            // The corner that comes forward is the other of the pair now.
            expect(Math.abs(two.corner_lift + one.corner_lift)).toBeLessThan(1e-6 * lift);
            continue;
          }
          const sign = bar === 'bottom' || bar === 'top' ? -1 : 1;
          for (const b of barNames) {
            const line = Array.from(one.bar_crook[b]);
            if (b === 'left' || b === 'right') line.reverse();
            two.bar_crook[turnedBar[b]].forEach((v, s) => expect(Math.abs(v - sign * line[s]!)).toBeLessThan(1e-6 * crook));
          }
        }
      }),
      { numRuns: 25, seed: 20 },
    );
  });

  it('loose joints and narrow bars on edge: a pull of fixed direction would lean it over, and only when it stands', () => {
    const shape = frameOf({ width: 600, height: 1100, w: 19, d: 64, give: 100 });
    const pull = { x: 0.093, y: 0.28 };
    const [stands, lies] = [findStability(shape, pull), findStability(quarterTurned(shape), swapped(pull))];
    expect([stands.mode, lies.mode]).toEqual(['propeller', 'propeller']);
    expect(stands.load_factor! / lies.load_factor!).toBeCloseTo(1, 8);
    expect(stands.second_factor! / lies.second_factor!).toBeCloseTo(1, 6);
    const [fixedStands, fixedLies] = [findStability(shape, pull, { threads: false }), findStability(quarterTurned(shape), swapped(pull), { threads: false })];
    expect(Math.abs(fixedStands.second_factor! / fixedLies.second_factor! - 1)).toBeGreaterThan(0.5);
  });
});

describe('the threads of the cloth', () => {
  it('never lower a factor, and leave movements out of the plane as they are', () => {
    fc.assert(
      fc.property(uneven, pulls, (shape, pull) => {
        const [without, held] = [findStability(shape, pull, { threads: false }), findStability(shape, pull)];
        expect(held.load_factor!).toBeGreaterThanOrEqual(without.load_factor! * (1 - 1e-7));
        expect(held.second_factor!).toBeGreaterThanOrEqual(without.second_factor! * (1 - 1e-7));
        const by = 0.5 * Math.min(1, without.load_factor!);
        const low = { x: by * pull.x, y: by * pull.y };
        const [a, b] = [solveInfluence(shape, low, { threads: false })!, solveInfluence(shape, low)!];
        const largest = Math.max(...a.map((i) => Math.abs(i.corner_lift)));
        a.forEach((i, n) => expect(Math.abs(i.corner_lift - b[n]!.corner_lift)).toBeLessThan(1e-9 * largest));
      }),
      { numRuns: 25, seed: 20 },
    );
  });

  it('hold a frame that a pull of fixed direction would lean over, so that it answers to warp where it stands', () => {
    const shape = frameOf({ width: 600, height: 1100, w: 12, d: 90, give: 100 });
    const pull = { x: 0.1, y: 0.3 };
    const fixed = findStability(shape, pull, { threads: false });
    expect(fixed).toMatchObject({ mode: 'sideways', mode_words: 'the frame leans over in its plane' });
    expect(fixed.load_factor).toBeLessThan(1);
    expect(solveInfluence(shape, pull, { threads: false })).toBeNull();
    expect(findStability(shape, pull)).toMatchObject({ mode: 'propeller' });
    expect(findStability(shape, pull).load_factor).toBeGreaterThan(1);
    expect(solveInfluence(shape, pull)).not.toBeNull();
  });
});
