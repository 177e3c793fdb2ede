import { describe, expect, it } from 'vitest';
import { fieldsOf, lazily } from '../../src/base/lazily.js';
import type { Solution } from '../../src/model/model.js';
import { demoSolved } from '../mechanics/fasteners/demo-model.js';
import { ofSubject } from './of-subject.js';

const { model, solution } = demoSolved({ face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, hang: { by: 'none' } });
const facts = (change: Partial<Solution>): ReadonlyMap<string, { readonly value: unknown; readonly reason?: string | undefined }> => {
  const other = lazily({ ...fieldsOf(solution), ...Object.fromEntries(Object.entries(change).map(([key, value]) => [key, () => value])) }) as Solution;
  return new Map(ofSubject('frame.')(model, other).filter(({ path }) => /lift_past|load_factor|second|mode|critical|reserve/u.test(path)).map((fact) => [fact.path, fact]));
};
const beta_per_mm2 = 4e-6;
const propeller = (factor: number) => ({ factor, beta_per_mm2 }) as never;
const lift = (share: number): number => Math.sqrt((share - 1) / beta_per_mm2);

describe('past the critical pull, y² = (f − 1)/β, f the pull over the critical pull', () => {
  it('for average boards and for those of 0.67 of their stiffness, at the peak pull and at the working pull', () => {
    const found = facts({ peak_factor: 0.95, peak_propeller: propeller(0.95), stability: { ...solution.stability, load_factor: 0.98, propeller: propeller(0.98) } });
    const of = (path: string): number => found.get(`frame.lift_past_critical_${path}`)!.value as number;
    expect(of('mm')).toBeCloseTo(lift(1 / (0.67 * 0.95)), 6);
    expect(of('average_mm')).toBeCloseTo(lift(1 / 0.95), 6);
    expect(of('working_mm')).toBeCloseTo(lift(1 / (0.67 * 0.98)), 6);
    expect(of('working_average_mm')).toBeCloseTo(lift(1 / 0.98), 6);
  });
  it('nothing where it holds, nothing where no propeller is in sight', () => {
    const found = facts({ peak_factor: 1.6, peak_propeller: propeller(1.6), stability: { ...solution.stability, load_factor: null, propeller: null } });
    expect(['mm', 'average_mm', 'working_mm'].map((path) => found.get(`frame.lift_past_critical_${path}`)!.value)).toEqual([0, 0, 0]);
    expect(found.get('frame.critical_pull_N_per_m')!.value).toBeNull();
    expect(found.get('frame.second_factor')!.reason).toMatch(/No pull of this kind/u);
  });
  it('unknown where a bar bows sideways first, or where the frame folds up: more than the shorter side', () => {
    const sideways = facts({ peak_factor: 0.9, peak_propeller: propeller(0.95) });
    expect(sideways.get('frame.lift_past_critical_mm')!.reason).toMatch(/bows sideways first/u);
    // Soft boards fall at 0.67 of the factor: a first factor of 1.4 is below 1 for them, of 1.5 is not.
    const soft = (first: number) => facts({ peak_factor: first, peak_propeller: propeller(2) });
    expect([soft(1.4).get('frame.lift_past_critical_mm')!.reason !== undefined, soft(1.4).get('frame.lift_past_critical_average_mm')!.value, soft(1.5).get('frame.lift_past_critical_mm')!.value]).toEqual([true, 0, 0]);
    const factorOf = (y_mm: number): number => 1 / (1 + beta_per_mm2 * y_mm ** 2);
    const at = (y_mm: number) => facts({ peak_factor: factorOf(y_mm), peak_propeller: propeller(factorOf(y_mm)) }).get('frame.lift_past_critical_average_mm')!;
    expect(at(599).value).toBeCloseTo(599, 6);
    expect(at(601).reason).toMatch(/fold up/u);
  });
});
