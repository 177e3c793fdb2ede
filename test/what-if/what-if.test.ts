import { describe, expect, test } from 'vitest';
import { frameFacts } from '../facts/of-subject.js';
import { recommendedLift_kg } from '../../src/mechanics/lifting.js';
import type { SawAtHand } from '../../src/base/saw.js';
import { slipsAtTheBench } from '../../src/what-if/slips.js';
import { whatIf } from '../../src/what-if/what-if.js';
import { builtAndSolved, usualSettings } from './plans.js';

const wide = { face: { width: '2400 mm', height: '2100 mm' }, bars: { stock: 'stud-38x89', lay: 'edge' } };

describe('slips', () => {
  test('numbers of the 900 x 600 frame of strips on edge, 19 mm wide', () => {
    const { model, solution } = builtAndSolved();
    const [angle, long, tilt] = slipsAtTheBench(model, solution);
    expect(angle!.gap_mm).toBeCloseTo(19 * Math.SQRT2 * 0.5 * (Math.PI / 180), 9);
    expect(angle!.diagonal_difference_mm).toBeCloseTo((2 * 900 * 600 * Math.tan(Math.PI / 360)) / Math.hypot(900, 600), 2);
    expect(long!.diagonal_difference_mm).toBeCloseTo(900 / Math.hypot(900, 600), 2);
    expect(long!.corner_lift_mm).toBe(0);
    expect(tilt!.corner_lift_mm).toBeGreaterThan(0.5);
    expect(tilt!.corner_lift_mm).toBeLessThan(600 * 0.5 * (Math.PI / 180));
  });

  test('a plan in inches is told in inches and takes its own slip', () => {
    const { model, solution } = builtAndSolved({ face: { width: '36 in', height: '24 in' } });
    const slips = slipsAtTheBench(model, solution);
    expect(slips.map(({ slip }) => slip).join()).toContain('1/32 in');
    expect(slips.map(({ say }) => say).join()).not.toMatch(/\d mm/);
  });

  test('they are kept off with the saw at hand: no stop and no swing by hand, no cut of one’s own where the shop saws', () => {
    const { model, solution } = builtAndSolved();
    const said = (saw?: SawAtHand): string => slipsAtTheBench(model, solution, saw).map(({ say }) => say).join(' ');
    expect(said('hand')).not.toMatch(/\bstop\b|swing|slot|Set the blade|a saw set/u);
    expect(said('hand')).toMatch(/Mark opposite bars from one stick/);
    expect(said('mitre-box')).not.toMatch(/swing|Set the blade/u);
    expect(said('mitre-box')).toMatch(/slots stand upright/);
    expect(said('power')).not.toMatch(/slot/u);
    expect(said('none')).toMatch(/Have two scraps cut first.*Have opposite bars cut against one stop.*Ask for the blade/u);
    expect(said('none')).not.toMatch(/you cut|Cut two|Set the blade/u);
    expect(said()).toMatch(/swinging the saw over or taking the other slot of a mitre box rather than turning the board/);
    const butted = builtAndSolved({ corners: { cut: 'butt' } });
    expect(slipsAtTheBench(butted.model, butted.solution).map(({ say }) => say).join(' ')).not.toMatch(/swing|slot/u);
  });

  test('a frame that does not hold leaves the lift unknown, never nothing', () => {
    const { model, solution } = builtAndSolved({ face: { width: '1500 mm', height: '1400 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, cloth: { pull: { working: '900 N/m', peak: '900 N/m' } } });
    expect(solution.influence).toBeNull();
    expect(slipsAtTheBench(model, solution)[2]!.corner_lift_mm).toBeNull();
    const { readings } = whatIf(model, solution, usualSettings);
    expect(readings.lift_p90_mm).toBeNull();
    expect(readings.say[0]).toContain('propeller');
  });
});

describe('readings', () => {
  test('wet boards: moisture is worth a reading, and every reading narrows the lift', () => {
    const { model, solution } = builtAndSolved({ lumber: { chosen: 'picked', moisture: '18 %' } });
    const { readings } = whatIf(model, solution, usualSettings);
    expect(readings.best.map(({ of }) => of)).toContain('moisture');
    for (const { lift_p90_mm, settles } of readings.best) {
      expect(settles).toBeGreaterThan(0);
      expect(lift_p90_mm).toBeLessThan(readings.lift_p90_mm!);
    }
    expect(readings.best.map(({ settles }) => settles)).toEqual([...readings.best.map(({ settles }) => settles)].sort((a, b) => b - a));
  });
});

describe('out of the studio', () => {
  test('a common door when the plan names none, the plan’s own when it does', () => {
    const small = builtAndSolved();
    expect(whatIf(small.model, small.solution, usualSettings).door).toMatchObject({ fits: 'yes', asked: false });
    const large = builtAndSolved(wide);
    expect(whatIf(large.model, large.solution, usualSettings).door).toMatchObject({ fits: 'no', asked: false });
    const asked = builtAndSolved({ ...wide, door: { width: '900 mm', height: '2200 mm' } });
    expect(whatIf(asked.model, asked.solution, usualSettings).door).toMatchObject({ fits: 'yes', asked: true });
  });

  test('the fact says no when the door is too low', () => {
    const fits = (door: object): unknown => {
      const { model, solution } = builtAndSolved({ ...wide, door });
      return frameFacts(model, solution).find(({ path }) => path === 'frame.fits_door')?.value;
    };
    expect(fits({ width: '760 mm', height: '1980 mm' })).toBe('no');
    expect(fits({ width: '760 mm', height: '2100 mm' })).toBe('yes');
    expect(fits({ width: '100 mm', height: '2100 mm' })).toBe('yes');
  });

  test('one person or two; the limit of one is niosh-rwl (40 cm in front, from 90 cm by 60 cm, fair grip): 11.672 kg', () => {
    const small = builtAndSolved();
    const { lifting } = whatIf(small.model, small.solution, usualSettings);
    expect(lifting.people).toBe(1);
    expect(Math.abs(lifting.one_person_kg / 11.672 - 1)).toBeLessThan(1e-4);
    expect(lifting.one_person_kg).toBe(recommendedLift_kg({ H_cm: 40, V_cm: 90, D_cm: 60, A_deg: 0, FM: 1, CM: 0.95 }));
    const large = builtAndSolved(wide);
    const both = whatIf(large.model, large.solution, usualSettings).lifting;
    expect(both.people).toBe(2);
    expect(both.say).toContain('Two people');
  });
});
