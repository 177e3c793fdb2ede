import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cornerNames } from '../../src/base/names.js';
import { frameAsRead } from '../../src/bench-sheet/frame-as-read.js';
import { judgeSheet } from '../../src/bench-sheet/judge-sheet.js';
import { liftParts } from '../../src/bench-sheet/lift-parts.js';
import { likelyCauses } from '../../src/bench-sheet/likely-causes.js';
import type { LikelyCause } from '../../src/bench-sheet/diagnose.js';
import type { Promised } from '../../src/bench-sheet/promised.js';
import { stages, type Sheet } from '../../src/bench-sheet/sheet.js';
import { clothSheet } from '../../src/mechanics/cloth/cloth-sheet.js';
import { assessWarp } from '../../src/risk/assess.js';
import { nothing, promisedBy } from './audited.js';

const plain = promisedBy({ lumber: { chosen: 'plain', moisture: '9 %' } });
const wet = promisedBy({ lumber: { chosen: 'plain', moisture: '22 %' } });
const braced = promisedBy({ bars: { stock: 'strip-19x38', lay: 'edge', plies: 2 }, crossbars: [{ runs: 'upright', at: '2/5', lay: 'flat' }], lumber: { chosen: 'unsorted', moisture: '14 %' }, boards: [{ for: 'top', ply: 1, twist: '1.2 deg/m' }] });
const causesOf = (promised: Promised, sheet: Partial<Sheet>, size: number): readonly LikelyCause[] => {
  const full = { ...nothing, ...sheet };
  return likelyCauses(promised, full, frameAsRead(promised.model, promised.solution, full), size).causes;
};
const part = (causes: readonly LikelyCause[], kind: string): number => causes.filter((c) => c.kind === kind).reduce((sum, c) => sum + (c.part_mm ?? 0), 0);

describe('law: the parts of a lift', () => {
  test('add up to the lift that was read, whatever the plan, the stage, the corner and the pull', () => {
    const note = clothSheet(plain.model, plain.solution).tap.bare.high_Hz;
    fc.assert(fc.property(
      fc.constantFrom(plain, wet, braced), fc.constantFrom(...stages), fc.constantFrom(null, ...cornerNames), fc.double({ min: 0.5, max: 40, noNaN: true }), fc.constantFrom(null, 0.8, 1, 1.3),
      fc.constantFrom(null, 0, 6),
      (promised, when, lifted, size, pull, off) => {
        const sheet = { when, lifted, tap_Hz: pull === null || when === 'before-cloth' ? null : note * pull, diagonals_mm: off === null ? null : ([1082 + off, 1082] as const) };
        const causes = causesOf(promised, sheet, size);
        expect(causes.length).toBeGreaterThan(1);
        expect(causes.reduce((sum, { part_mm }) => sum + (part_mm ?? 0), 0)).toBeCloseTo(size, 8);
      },
    ), { numRuns: 60 });
  }, 30_000);

  test('boards alone vary as the promise says they do', () => {
    for (const promised of [plain, wet, braced]) {
      const boards = liftParts(promised.model, promised.solution.influence!, null, 0).filter(({ kind }) => kind !== 'corners' && kind !== 'reading');
      const { lift } = assessWarp(promised.model, promised.solution, promised.settings!)!;
      expect(boards.reduce((sum, { mean }) => sum + mean, 0)).toBeCloseTo(lift.unpulled.mean / (1 - lift.growth.pull_share), 9);
      expect(Math.sqrt(boards.reduce((sum, { variance }) => sum + variance, 0))).toBeCloseTo(lift.unpulled.sd / (1 - lift.growth.pull_share), 9);
    }
  });
});

describe('cures', () => {
  const cures = (promised: Promised): string => causesOf(promised, { when: 'finished' }, 8).map(({ cure }) => cure).join(' ');
  const withBrace = (brace: string | Record<string, string>): Promised => promisedBy({ lumber: { chosen: 'plain', moisture: '22 %' }, corners: { brace } });

  test('never advise what the plan has already', () => {
    expect(cures(wet)).toContain('glue a brace across each corner');
    expect(cures(withBrace({ kind: 'timber', leg: '120 mm' }))).not.toContain('a brace across each corner');
    expect(cures(withBrace({ kind: 'timber', leg: '120 mm' }))).toContain('a plywood triangle');
    expect(cures(withBrace({ kind: 'ply-gusset', leg: '120 mm' }))).not.toContain('plywood triangle');
    expect(cures(withBrace({ kind: 'ply-gusset', leg: '120 mm' }))).toContain('a timber brace across each corner, beside the plywood');
  });

  test('speak of one more crossbar where there is one', () => {
    expect(cures(wet)).not.toContain('one more crossbar');
    expect(cures(braced)).toContain('one more crossbar');
  });
});

describe('which cause comes first', () => {
  test('dry boards chosen at a glance: their twist; wet ones: drying takes a part', () => {
    expect(causesOf(plain, {}, 8)[0]!.kind).toBe('twist-chosen');
    expect(causesOf(plain, {}, 8).some(({ kind }) => kind.endsWith('drying'))).toBe(false);
    expect(part(causesOf(wet, {}, 8), 'twist-drying')).toBeGreaterThan(0.5);
  });

  test('corners off square make leaning cuts more likely', () => {
    const square = part(causesOf(plain, { diagonals_mm: [1082, 1082] }, 8), 'corners');
    const off = part(causesOf(plain, { diagonals_mm: [1092, 1082] }, 8), 'corners');
    expect(off).toBeGreaterThan(1.5 * square);
  });

  test('cloth that pulls harder than planned takes its part, and more the harder it pulls; slack cloth takes none', () => {
    const slim = promisedBy({ face: { width: '1100 mm', height: '900 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, cloth: { pull: { working: '150 N/m', peak: '300 N/m' } } });
    const { high_Hz } = clothSheet(slim.model, slim.solution).tap.bare;
    const at = (share: number): number => part(causesOf(slim, { tap_Hz: high_Hz * Math.sqrt(share) }, 12), 'pull');
    expect(at(0.5)).toBe(0);
    expect(at(1.2)).toBeGreaterThan(0);
    expect(at(1.6)).toBeGreaterThan(at(1.2));
  });

  test('past the critical pull the propeller comes first, and alone where the flat frame no longer holds', () => {
    const weak = promisedBy({ face: { width: '1500 mm', height: '1400 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, cloth: { pull: { working: '900 N/m', peak: '900 N/m' } } });
    const causes = causesOf(weak, {}, 80);
    expect(causes.map(({ kind }) => kind)).toEqual(['past-critical']);
    expect(causes[0]!.cure).toContain('Take pull off now');
    const factor = plain.solution.stability.load_factor!;
    const note = clothSheet(plain.model, plain.solution).tap.bare;
    const soft = causesOf(plain, { tap_Hz: Math.sqrt(0.8 * factor) * ((note.low_Hz + note.high_Hz) / 2) }, 20);
    expect(soft[0]!.kind).toBe('past-critical');
    expect(soft[0]!.name).toContain('soft boards');
  });

  test('the corner that stands up turns the sign: the mean of such frames then helps or hinders', () => {
    const one = likelyCauses(plain, { ...nothing, lifted: 'top-right' }, frameAsRead(plain.model, plain.solution, nothing), 6);
    const other = likelyCauses(plain, { ...nothing, lifted: 'top-left' }, frameAsRead(plain.model, plain.solution, nothing), 6);
    const unsaid = likelyCauses(plain, nothing, frameAsRead(plain.model, plain.solution, nothing), 6);
    expect([one.lift_mm, other.lift_mm]).toEqual([6, -6]);
    expect(one.causes).not.toEqual(other.causes);
    const mean = assessWarp(plain.model, plain.solution, plain.settings!)!.lift.mean;
    expect(Math.sign(unsaid.lift_mm)).toBe(Math.sign(mean));
    expect(unsaid.corner_said).toBe(false);
  });

  test('a lift within the promise is not diagnosed; one beyond it brings cures', () => {
    expect(judgeSheet(plain, { ...nothing, corner_lift_mm: 0.5 }).diagnosis).toBeNull();
    const { diagnosis, findings } = judgeSheet(plain, { ...nothing, corner_lift_mm: 9 });
    expect(diagnosis!.lift_mm).toBe(Math.sign(diagnosis!.lift_mm) * 9);
    expect(findings[0]!.do.length).toBeGreaterThan(1);
  });
});

test('moisture that was read takes the place of the plan’s', () => {
  expect(part(causesOf(plain, { moisture_pct: 20 }, 8), 'twist-drying')).toBeGreaterThan(0.3);
  expect(part(causesOf(wet, { moisture_pct: 8 }, 8), 'twist-drying')).toBe(0);
});

test('two readings of one lift: the cures stand with one, the other points to it', () => {
  const { findings } = judgeSheet(plain, { ...nothing, corner_lift_mm: 9, winding_mm: 9 });
  const steps = findings.map((f) => f.do);
  expect(steps[0]!.length).toBeGreaterThan(1);
  expect(steps[1]!.at(-1)).toBe('As for the other reading of the lift.');
});
