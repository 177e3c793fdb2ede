import { describe, expect, test } from 'vitest';
import type { Chart, ChartEntry } from '../../src/chart/chart.js';
import { wallChart } from '../../src/chart/wall-chart.js';
import type { Lumber } from '../../src/shelf/shelf.js';

/** A made-up chart of 24 kinds of bar: the figures only have to come out where they belong. */
const rows: Chart['rows'] = Array.from({ length: 24 }, (_, i) => ({
  stock: { key: `strip-${15 + Math.floor(i / 4)}x38` } as Lumber, lay: i % 2 === 0 ? 'flat' : 'edge', plies: i % 4 < 2 ? 1 : 2,
  entries: (['square', 'oblong'] as const).flatMap((shape) => ([0, 1, 2] as const).flatMap((crossbars) => [false, true].map((braced): ChartEntry => ({
    build: { stock: 'strip-19x38', lay: 'flat', plies: 1, crossbars, braced }, shape, no_stop_mm: 3600, clear_mm: i === 0 ? null : i === 23 ? 3600 : 400 + 10 * i + 100 * crossbars + (braced ? 50 : 0),
  })))),
}));
const chart: Chart = { shelf_name: 'Shelf <of ours>', ruleset_name: 'Rules & more', units: 'metric', sizes: { least_mm: 200, most_mm: 3600, step_mm: 10 }, rows };

describe('the wall chart', () => {
  const [whole, ...quarters] = wallChart(chart);

  test('fits A3, and four sheets of A4 show all of it once', () => {
    expect(whole?.svg).toContain('width="420mm" height="297mm" viewBox="0 0 420 297"');
    expect(quarters.map(({ svg }) => /viewBox="([^"]*)"/u.exec(svg)?.[1])).toEqual(['0 0 210 148.5', '210 0 210 148.5', '0 148.5 210 148.5', '210 148.5 210 148.5']);
    for (const { svg } of quarters) expect(svg).toContain('width="297mm" height="210mm"');
  });

  test('its figures are high enough to be read from two metres, and stand on the sheet', () => {
    const texts = [...(whole?.svg ?? '').matchAll(/<text x="([\d.]+)" y="([\d.]+)" font-size="([\d.]+)"[^>]*>([^<]*)</gu)].map(([, x, y, size, said]) => ({ x: Number(x), y: Number(y), size: Number(size), said: said ?? '' }));
    const figures = texts.filter(({ said }) => /^(?:\d+\+?|–)$/u.test(said));
    expect(figures).toHaveLength(24 * 12);
    // Capitals and figures are about 0.72 of the size high; a four-hundredth of two metres is 5 mm.
    for (const { size } of figures) expect(0.72 * size).toBeGreaterThan(5);
    for (const { x, y } of texts) expect(x > 0 && x < 420 && y > 0 && y < 297).toBe(true);
    expect(figures.filter(({ said }) => said === '–')).toHaveLength(12);
    expect(figures.filter(({ said }) => said === '3600+')).toHaveLength(12);
    expect(new Set(figures.map(({ x, y }) => `${x} ${y}`)).size).toBe(figures.length);
  });

  test('has a title and a description, and names from files are escaped', () => {
    for (const { svg } of [whole!, ...quarters]) {
      expect(svg).toMatch(/<title id="([^"]+)-title">[^<]+<\/title><desc id="\1-desc">[^<]+<\/desc>/u);
      expect(svg).not.toContain('<of ours>');
    }
  });
});
