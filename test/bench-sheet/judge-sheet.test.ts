import { describe, expect, test } from 'vitest';
import { judgeSheet, withMeasured } from '../../src/bench-sheet/judge-sheet.js';
import { weightAt_kg } from '../../src/bench-sheet/judge-material.js';
import { factOf, type Promised } from '../../src/bench-sheet/promised.js';
import { clothSheet } from '../../src/mechanics/cloth/cloth-sheet.js';
import { pushSpan } from '../../src/mechanics/cloth/frame-spans.js';
import { pushSag_mm } from '../../src/mechanics/cloth/push-test.js';
import { nothing, promisedBy, ruled, spoken } from './audited.js';
import type { Sheet } from '../../src/bench-sheet/sheet.js';
import type { Finding, Verdict } from '../../src/findings/finding.js';

const studio = promisedBy();
/** Boards that are all measured straight: nine in ten lift hardly at all, so that the reading error decides. */
const straight = promisedBy({ lumber: { chosen: 'picked', moisture: '9 %' }, boards: ['top', 'bottom', 'left', 'right'].map((bar) => ({ for: bar, twist: '0 deg/m', bow: '0 /m', crook: '0 /m' })) });
const measuredFindings = (promised: Promised, sheet: Sheet): readonly Finding[] => judgeSheet(promised, sheet).findings;
const verdict = (promised: Promised, sheet: Partial<Sheet>, rule: string, about?: string): Verdict => spoken(measuredFindings(promised, { ...nothing, ...sheet }), rule, about).verdict;
const tiny = 1e-6;

describe('diagonals', () => {
  const pair = (off: number): Partial<Sheet> => {
    const D = Math.hypot(900, 600);
    return { diagonals_mm: [D + off / 2, D - off / 2] };
  };

  test('equal within two millimetres of tape; not beyond', () => {
    expect(verdict(studio, pair(2 - tiny), 'diagonals')).toBe('clear');
    expect(verdict(studio, pair(2 + tiny), 'diagonals')).toBe('caution');
  });

  test('the ruleset’s own tape is taken when a rule spoke of it', () => {
    const stricter = { ...studio, findings: [ruled('frame.diagonal_difference_mm', 1)] };
    expect(verdict(stricter, pair(1 - tiny), 'diagonals')).toBe('clear');
    expect(verdict(stricter, pair(1.5), 'diagonals')).toBe('caution');
  });

  test('beyond half a degree in every corner it is a stop', () => {
    const half_degree = (2 * 900 * 600 * Math.tan(Math.PI / 360)) / Math.hypot(900, 600);
    expect(verdict(studio, pair(half_degree - 1e-3), 'diagonals')).toBe('caution');
    expect(verdict(studio, pair(half_degree + 1e-3), 'diagonals')).toBe('stop');
  });

  test('pushing a frame over does not change the size its diagonals tell; a wrong size does', () => {
    const pushed: Partial<Sheet> = { diagonals_mm: [Math.hypot(912, 600), Math.hypot(888, 600)] };
    expect(verdict(studio, pushed, 'size')).toBe('clear');
    const D = Math.hypot(900, 600);
    expect(verdict(studio, { diagonals_mm: [D + 3 - tiny, D + 3 - tiny] }, 'size')).toBe('clear');
    expect(verdict(studio, { diagonals_mm: [D + 3 + tiny, D + 3 + tiny] }, 'size')).toBe('caution');
    const inner = Math.hypot(900 - 38, 600 - 38);
    expect(spoken(measuredFindings(studio, { ...nothing, diagonals_mm: [inner, inner] }), 'size').say).toContain('inner corners');
  });
});

describe('corner lift', () => {
  test('the limit: at it not a stop, beyond it one', () => {
    expect(verdict(studio, { corner_lift_mm: 4 }, 'corner-lift')).not.toBe('stop');
    expect(verdict(studio, { corner_lift_mm: 4 + tiny }, 'corner-lift')).toBe('stop');
    expect(verdict(studio, { winding_mm: 4 + tiny }, 'winding')).toBe('stop');
  });

  test('what nine in ten stay under, plus the reading error: at it clear, beyond it a caution', () => {
    const p90 = factOf(straight, 'warp.corner_lift_p90_mm')!;
    expect(p90 + 1).toBeLessThan(4);
    expect(verdict(straight, { corner_lift_mm: p90 + 0.5 }, 'corner-lift')).toBe('clear');
    expect(verdict(straight, { corner_lift_mm: p90 + 0.5 + tiny }, 'corner-lift')).toBe('caution');
    expect(verdict(straight, { winding_mm: p90 + 1 }, 'winding')).toBe('clear');
    expect(verdict(straight, { winding_mm: p90 + 1 + tiny }, 'winding')).toBe('caution');
  });

  test('without a limit, or where the frame does not hold, never clear', () => {
    const unlimited = { ...studio, settings: { ...studio.settings, corner_lift_limit_mm: Number.NaN } };
    expect(verdict(unlimited, { corner_lift_mm: 0 }, 'corner-lift')).toBe('unknown');
    const weak = promisedBy({ face: { width: '1500 mm', height: '1400 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, cloth: { pull: { working: '900 N/m', peak: '900 N/m' } } });
    expect(verdict(weak, { corner_lift_mm: 1 }, 'corner-lift')).toBe('unknown');
    expect(verdict(weak, { corner_lift_mm: 5 }, 'corner-lift')).toBe('stop');
  });

  test('before the cloth it is held against the frame without cloth', () => {
    const stage = (when: Sheet['when']): string => spoken(measuredFindings(studio, { ...nothing, when, corner_lift_mm: 3 }), 'corner-lift').say;
    expect(stage('before-cloth')).not.toBe(stage('after-cloth'));
    expect(spoken(measuredFindings(studio, { ...nothing, when: 'before-cloth', corner_lift_mm: 9 }), 'corner-lift').do[0]).toBe('Do not put the cloth on yet.');
    expect(spoken(measuredFindings(studio, { ...nothing, corner_lift_mm: 9 }), 'corner-lift').do[0]).toBe('Do not hang it as it is.');
  });
});

describe('bars sighted along', () => {
  test('out of the plane: natural bow and dish were expected, the limit bounds both', () => {
    const expected = factOf(straight, 'bar.natural_bow_p90_mm', 'left')! + Math.abs(factOf(straight, 'bar.dish_mm', 'left')!);
    const allowed = Math.min(3, expected + 0.5);
    expect(verdict(straight, { bow_mm: { left: allowed } }, 'bar-bow', 'left')).toBe('clear');
    expect(verdict(straight, { bow_mm: { left: -allowed - tiny } }, 'bar-bow', 'left')).toBe('caution');
    expect(verdict(straight, { bow_mm: { left: 3 + tiny } }, 'bar-bow', 'left')).toBe('caution');
  });

  test('inward: the ruleset’s limit when a rule spoke of the bar, else a 400th of its length', () => {
    const limited = { ...studio, findings: [ruled('bar.inward_bow_long_term_mm', 0.2, 'top')] };
    expect(verdict(limited, { inward_bow_mm: { top: 0.2 } }, 'inward-bow', 'top')).toBe('clear');
    expect(verdict(limited, { inward_bow_mm: { top: 0.2 + tiny } }, 'inward-bow', 'top')).toBe('caution');
    expect(verdict(studio, { inward_bow_mm: { top: studio.model.bars.top.span_mm / 400 + tiny } }, 'inward-bow', 'top')).toBe('caution');
  });

  test('an unknown expectation is never clear', () => {
    const blind = { ...studio, facts: studio.facts.filter(({ path }) => path !== 'bar.natural_bow_p90_mm') };
    expect(verdict(blind, { bow_mm: { top: 0.1 } }, 'bar-bow', 'top')).toBe('unknown');
  });
});

describe('the cloth', () => {
  const { bare, grounded } = clothSheet(studio.model, studio.solution).tap;

  test('a note inside the band, a quarter of a hertz beyond it either way', () => {
    expect(verdict(studio, { tap_Hz: bare.low_Hz - 0.25 + tiny }, 'tap')).toBe('clear');
    expect(verdict(studio, { tap_Hz: bare.high_Hz + 0.25 - tiny }, 'tap')).toBe('clear');
    expect(verdict(studio, { tap_Hz: bare.low_Hz - 0.25 - tiny }, 'tap')).toBe('caution');
    expect(verdict(studio, { tap_Hz: bare.high_Hz + 0.25 + tiny }, 'tap')).toBe('caution');
  });

  test('with the ground on, the grounded note counts', () => {
    expect(grounded.high_Hz).toBeLessThan(bare.high_Hz);
    expect(verdict(studio, { when: 'after-ground', tap_Hz: grounded.low_Hz }, 'tap')).toBe('clear');
    expect(verdict(studio, { when: 'after-ground', tap_Hz: grounded.low_Hz - 0.25 - tiny }, 'tap')).toBe('caution');
  });

  test('past the peak whatever the air does: stop', () => {
    // Pull goes with the square of the note: the least pull a note can mean is that of free air, high_Hz at working pull.
    const at = bare.high_Hz * Math.sqrt(2) + 0.25;
    expect(verdict(studio, { tap_Hz: at - 0.01 }, 'tap')).toBe('caution');
    expect(verdict(studio, { tap_Hz: at + 0.01 }, 'tap')).toBe('stop');
  });

  test('a weight that sinks too far or too little', () => {
    const sag = pushSag_mm(pushSpan(studio.model), studio.plan.cloth.working, 500, 50);
    const push = (sag_mm: number): Partial<Sheet> => ({ push: { weight_g: 500, pad_mm: 50, sag_mm } });
    expect(verdict(studio, push(sag), 'push')).toBe('clear');
    expect(verdict(studio, push(sag * 1.25 + 0.5 - tiny), 'push')).toBe('clear');
    expect(verdict(studio, push(sag * 1.25 + 0.5 + tiny), 'push')).toBe('caution');
    expect(verdict(studio, push(sag / 1.25 - 0.5 + tiny), 'push')).toBe('clear');
    expect(verdict(studio, push(sag / 1.25 - 0.5 - tiny), 'push')).toBe('caution');
    expect(verdict(studio, push(sag / 2 - 0.5 - 0.01), 'push')).toBe('stop');
  });

  test('the reserve at the pull that was read: caution under 1.5, stop under 1', () => {
    const slim = promisedBy({ face: { width: '1200 mm', height: '1000 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, cloth: { pull: { working: '100 N/m', peak: '200 N/m' } } });
    const factor = 0.67 * slim.solution.stability.load_factor!;
    const sag = pushSag_mm(pushSpan(slim.model), slim.plan.cloth.working, 500, 50);
    // The highest pull a sag allows is that of half a millimetre less.
    const reading = (share: number): Partial<Sheet> => ({ push: { weight_g: 500, pad_mm: 50, sag_mm: sag / share + 0.5 } });
    const findings = (share: number) => spoken(measuredFindings(slim, { ...nothing, ...reading(share) }), 'twist-reserve');
    expect(findings(factor / 1.5 - 1e-4)).toMatchObject({ verdict: 'clear' });
    expect(findings(factor / 1.5 + 1e-4)).toMatchObject({ verdict: 'caution' });
    expect(findings(factor - 1e-4)).toMatchObject({ verdict: 'caution' });
    expect(findings(factor + 1e-4)).toMatchObject({ verdict: 'stop' });
    expect(findings(factor).actual).toBeCloseTo(1, 9);
  });

  test('a pull ratio of its own: a note at the working pull gives the working pull back', () => {
    const uneven = promisedBy({ cloth: { pull: { working: { x: '260 N/m', y: '140 N/m' }, peak: { x: '520 N/m', y: '280 N/m' } } } });
    const tap = clothSheet(uneven.model, uneven.solution).tap.bare;
    const { pull } = judgeSheet(uneven, { ...nothing, tap_Hz: tap.high_Hz });
    expect(pull!.low).toBeLessThan(1);
    expect(pull!.low).toBeCloseTo(((tap.high_Hz - 0.25) / tap.high_Hz) ** 2, 9);
    expect(verdict(uneven, { tap_Hz: tap.high_Hz }, 'tap')).toBe('clear');
  });
});

describe('weight and moisture', () => {
  test('fifteen in a hundred either way, by stage', () => {
    for (const when of ['before-cloth', 'after-cloth', 'after-ground', 'finished'] as const) {
      const kg = weightAt_kg(studio, { when });
      expect(verdict(studio, { when, weight_kg: kg * 1.15 }, 'weight')).toBe('clear');
      expect(verdict(studio, { when, weight_kg: kg * 1.151 }, 'weight')).toBe('caution');
      expect(verdict(studio, { when, weight_kg: kg * 0.85 }, 'weight')).toBe('clear');
      expect(verdict(studio, { when, weight_kg: kg * 0.849 }, 'weight')).toBe('caution');
    }
    expect(weightAt_kg(studio, { when: 'before-cloth' })).toBe(studio.model.weight.wood_kg);
    expect(weightAt_kg(studio, { when: 'finished' })).toBe(studio.model.weight.total_kg);
  });

  test('hooks are held against the true weight', () => {
    const hook = factOf(studio, 'hanging.hook_factor')!;
    const kg = studio.model.weight.total_kg;
    expect(hook).toBeGreaterThan(2);
    expect(verdict(studio, { when: 'finished', weight_kg: (kg * hook) / 2 - tiny }, 'hook-factor')).toBe('clear');
    expect(verdict(studio, { when: 'finished', weight_kg: (kg * hook) / 2 + tiny }, 'hook-factor')).toBe('caution');
    expect(verdict(studio, { when: 'finished', weight_kg: kg * hook + tiny }, 'hook-factor')).toBe('stop');
  });

  test('boards as dry as the plan says within a point; wetter is a caution, and so is much drier than the room', () => {
    const planned = studio.plan.lumber.moisture_pct;
    expect(verdict(studio, { moisture_pct: planned + 1 }, 'moisture')).toBe('clear');
    expect(verdict(studio, { moisture_pct: planned + 1 + tiny }, 'moisture')).toBe('caution');
    const room = factOf(studio, 'lumber.room_moisture_pct')!;
    expect(verdict(studio, { moisture_pct: room - 5 + tiny }, 'moisture')).toBe('clear');
    expect(verdict(studio, { moisture_pct: room - 5 - tiny }, 'moisture')).toBe('caution');
  });
});

describe('the verdict', () => {
  test('a sheet for another plan is a caution', () => {
    expect(verdict(studio, { plan: 'Stairwell banner', corner_lift_mm: 0 }, 'plan')).toBe('caution');
    expect(measuredFindings(studio, { ...nothing, plan: 'Gullmark Street trial' })).toEqual([]);
  });

  test.each(['clear', 'caution', 'unknown', 'stop'] as const)('good readings never lower a plan that is %s', (planned) => {
    const audit = { ...studio, findings: [ruled('frame.twist_reserve', 1, 'frame', planned)], verdict: planned };
    const good = withMeasured(audit, { ...nothing, corner_lift_mm: 0, diagonals_mm: [Math.hypot(900, 600), Math.hypot(900, 600)] });
    expect(good.measured.findings.every((f) => f.verdict === 'clear')).toBe(true);
    expect(good.verdict).toBe(planned);
  });

  test('a reading outside the promise joins the verdict, and every finding of it says what to do', () => {
    const bad = withMeasured(studio, { ...nothing, corner_lift_mm: 9, tap_Hz: 40, moisture_pct: 20, weight_kg: 9, bow_mm: { top: 8 }, diagonals_mm: [1000, 1100] });
    expect(bad.verdict).toBe('stop');
    const outside = bad.measured.findings.filter((f) => f.verdict !== 'clear');
    expect(outside.length).toBeGreaterThanOrEqual(6);
    for (const finding of outside) expect(finding.do.length, finding.rule).toBeGreaterThan(0);
    expect(bad.findings).toEqual(expect.arrayContaining([...bad.measured.findings]));
  });
});
