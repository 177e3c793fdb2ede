import { describe, expect, test } from 'vitest';
import { clearances } from '../../src/mechanics/cloth/clearance.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';

/** Nothing is equal: sides, pulls, places. */
const plan = {
  face: { width: '1140 mm', height: '690 mm' },
  bars: { stock: 'stud-38x64', lay: 'edge' },
  cloth: { pull: { working: { x: '130 N/m', y: '190 N/m' } } },
};
const crossbar = (more: object = {}): object => ({ runs: 'upright', at: 0.3, stock: 'strip-19x38', lay: 'edge', ...more });

/** Setback, room that a firm brush leaves, and what is said of it, for the first crossbar. */
function settled(changes: object, one: object = crossbar()) {
  const model = demoModel({ ...plan, crossbars: [one], ...changes });
  const setback_mm = model.plan.crossbars[0]!.setback_mm;
  return {
    setback_mm,
    left_mm: clearances(model)[0]!.left_mm,
    told: model.plan.assumed.find(({ path }) => path === 'crossbars[0].setback')?.value,
  };
}

describe('a setback that the plan leaves open', () => {
  // A lip of under a millimetre is one too: the cloth then swings over the whole face, not between the inner edges.
  test.each<[string, object, object, number]>([
    ['wide, upright', {}, crossbar(), 0.5],
    ['wide, level', {}, crossbar({ runs: 'level', at: 0.7 }), 0.5],
    ['over a thin lip', { bars: { ...plan.bars, lip: '0.5 mm' } }, crossbar(), 0.5],
    ['small, wide bars', { face: { width: '420 mm', height: '330 mm' }, bars: { stock: 'stud-38x64', lay: 'flat', lip: '0.5 mm' }, cloth: { pull: { working: '60 N/m' } } }, crossbar({ at: 0.45, lay: 'flat' }), 0.5],
    ['in inches', { face: { width: '44 in', height: '27 in' } }, crossbar({ runs: 'level', at: 0.4 }), 25.4 / 16],
    ['two plies side by side', { bars: { ...plan.bars, plies: 2 } }, crossbar({ plies: 2 }), 0.5],
    ['slack cloth', { cloth: { pull: { working: '90 N/m' } } }, crossbar(), 0.5],
  ])('%s: goes to the first mark at which a firm brush leaves 2 mm', (_, changes, one, mark) => {
    const { setback_mm, left_mm, told } = settled(changes, one);
    const step = mark === 0.5 ? 1 : mark;
    expect(setback_mm / step).toBeCloseTo(Math.round(setback_mm / step), 9);
    expect(left_mm).toBeGreaterThanOrEqual(2 - 1e-9);
    expect(left_mm - step).toBeLessThan(2);
    expect(setback_mm).toBeGreaterThan(5);
    expect(told).toContain('so that a firm brush clears it');
  });

  test('a taut cloth asks less than the usual 5 mm, or 3/16 in', () => {
    const taut = { cloth: { pull: { working: '900 N/m' } } };
    expect(settled(taut)).toMatchObject({ setback_mm: 5, told: '5 mm, so that a firm brush clears it' });
    const inches = settled({ ...taut, face: { width: '44 in', height: '27 in' } });
    expect([inches.setback_mm, inches.told]).toEqual([expect.closeTo((3 / 16) * 25.4, 9), '3/16 in, so that a firm brush clears it']);
  });

  test('goes back only as far as a third of the shallower piece stays beside the other', () => {
    // Bars 19 mm deep, crossbar 38: two thirds of 19 are 12.67, down to 12 mm; then 31 mm lie behind the backs.
    const thin = settled({ bars: { stock: 'strip-19x38', lay: 'flat' }, cloth: { pull: { working: '60 N/m' } } });
    expect(thin).toMatchObject({ setback_mm: 12, told: '12 mm, as far back as its ends can still be joined; it then stands 31 mm out behind the bars' });
    expect(thin.left_mm).toBeLessThan(2);
  });

  test('that it stands out behind the bars is said from the first tenth on', () => {
    const flush = (lip: string) => settled({ bars: { stock: 'strip-19x38', lay: 'edge', lip }, cloth: { pull: { working: '900 N/m' } } }, crossbar({ lay: 'flat' })).told;
    expect(flush('0 mm')).not.toContain('behind the bars');
    expect(settled({ bars: { stock: 'strip-19x38', lay: 'edge' }, cloth: { pull: { working: '900 N/m' } } }).told).toBe('5 mm, so that a firm brush clears it; it then stands 5 mm out behind the bars');
  });

  test('one that is named stays', () => {
    expect(settled({}, crossbar({ setback: '3 mm' }))).toMatchObject({ setback_mm: 3, told: undefined });
  });
});
