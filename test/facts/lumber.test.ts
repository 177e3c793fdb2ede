import { describe, expect, test } from 'vitest';
import { barNames, cornerNames } from '../../src/base/names.js';
import { catalogueByPath } from '../../src/facts/catalogue.js';
import { lumberFacts } from './of-subject.js';
import { waitForBoards } from '../../src/mechanics/moisture/board-drying.js';
import { daysToDry } from '../../src/mechanics/moisture/drying.js';
import { equilibriumMoisture_pct } from '../../src/mechanics/moisture/equilibrium.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';

const plan = (more: object = {}) => ({ face: { width: '800 mm', height: '600 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, room: { humidity: '30..60 %', temperature: '20 C' }, ...more });
const value = (more: object, path: string, about = 'frame'): number | string | null => lumberFacts(demoModel(plan(more))).find((f) => f.path === path && f.about === about)?.value ?? null;

test('every fact once, in the catalogue’s unit, about what it should be', () => {
  const facts = lumberFacts(demoModel(plan()));
  expect(new Set(facts.map((f) => `${f.path} ${f.about}`)).size).toBe(facts.length);
  for (const fact of facts) expect(fact.unit).toBe(catalogueByPath.get(fact.path)?.unit);
  expect(facts.filter((f) => f.path === 'bar.seasonal_width_mm').map((f) => f.about)).toEqual([...barNames]);
  expect(facts.filter((f) => f.path === 'corner.mitre_gap_mm').map((f) => f.about)).toEqual([...cornerNames]);
});

describe('moisture', () => {
  test('the gap is the moisture now less that of the middle of the humidity range', () => {
    const middle = equilibriumMoisture_pct(0.45, 20);
    expect(value({ lumber: { moisture: '19 %' } }, 'lumber.room_moisture_pct')).toBeCloseTo(middle, 12);
    expect(value({ lumber: { moisture: '19 %' } }, 'lumber.moisture_gap_pct')).toBeCloseTo(19 - middle, 12);
    expect(value({ lumber: { moisture: '6 %' } }, 'lumber.moisture_gap_pct')).toBeLessThan(0);
  });
  test('knots and way of choosing are passed on', () => {
    expect(value({ lumber: { chosen: 'picked', knots: 'many' } }, 'lumber.chosen')).toBe('picked');
    expect(value({ lumber: { chosen: 'picked', knots: 'many' } }, 'lumber.knots')).toBe('many');
  });
});

describe('days to wait', () => {
  test('the slowest board decides, crossbars and braces included', () => {
    const thin = waitForBoards(demoModel(plan()));
    expect(thin.days).toBe(daysToDry(19, 38, 1e-10));
    const thick = waitForBoards(demoModel(plan({ crossbars: [{ runs: 'upright', at: '1/2', stock: 'square-38x38', lay: 'flat' }] })));
    expect(thick).toMatchObject({ thickness_mm: 38, width_mm: 38, days: daysToDry(38, 38, 1e-10) });
    expect(thick.days).toBeGreaterThan(2 * thin.days);
  });
  test('a diffusion three times larger or smaller gives the ends of the band', () => {
    const wait = waitForBoards(demoModel(plan()));
    expect(wait.low_days).toBeCloseTo(daysToDry(19, 38, 3e-10), 2);
    expect(wait.high_days).toBeCloseTo(daysToDry(19, 38, 1e-10 / 3), 2);
  });
});

describe('width and mitre', () => {
  test('seasonal width: the bar’s width times the larger change coefficient times the swing (6.2 to 11.0 %, eq. 13-2)', () => {
    const swing = equilibriumMoisture_pct(0.6, 20) - equilibriumMoisture_pct(0.3, 20);
    expect(value({}, 'bar.seasonal_width_mm', 'left')).toBeCloseTo(38 * 0.00289 * swing, 12);
  });
  test('mitre gap by hand: from 14 % to the driest air, across less along', () => {
    const loss = 14 - equilibriumMoisture_pct(0.3, 20);
    expect(value({ lumber: { moisture: '14 %' } }, 'corner.mitre_gap_mm', 'top-left')).toBeCloseTo(38 * Math.SQRT2 * (0.00289 * loss - 0.000111 * loss), 12);
  });
  test('boards drier than the driest air, and corners without a mitre, open nothing', () => {
    expect(value({ lumber: { moisture: '5 %' } }, 'corner.mitre_gap_mm', 'bottom-right')).toBe(0);
    expect(value({ lumber: { moisture: '19 %' }, corners: { cut: 'half-lap' } }, 'corner.mitre_gap_mm', 'bottom-right')).toBe(0);
  });
});
