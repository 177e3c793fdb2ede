import {
  darkerFill,
  ink,
  paperFill,
  sheetWidth,
  softInk,
  textSize,
  weight,
} from '../report/drawings/drawing-standard.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from '../report/drawings/picture.js';
import { line, outline, rectangle } from '../report/drawings/strokes.js';
import type { Label } from '../report/drawings/labels.js';
import type { Chart, ChartEntry } from './chart.js';
import type { Shape } from './chart-plan.js';

/** Where things stand, sheet units. */
const left = 80;
const top = 84;
const gap = 20;
const panelWidth = (sheetWidth - left - gap - 14) / 2;
const headHeight = 16;
const rowHeight = 16;
const barHeight = 4.3;

/** Rows of the chart under the names of their stocks. */
interface Line {
  readonly y: number;
  readonly name: string;
  readonly entries: readonly ChartEntry[] | null;
}

/**
 * Bars as long as the largest clear frame: filled without braces, the white part with them; a thin line goes on to
 * where a stop would come.
 */
export function chartPicture(chart: Chart): Picture {
  const { lines, bottom } = layOut(chart);
  const longest_mm = Math.max(
    chart.sizes.step_mm,
    ...chart.rows.flatMap(({ entries }) => entries.map((entry) => entry.no_stop_mm ?? 0)),
  );
  const scale = panelWidth / longest_mm;
  const panel = (shape: Shape, at: number): Drawing =>
    drawPanel(chart, lines, shape, { x: left + at * (panelWidth + gap), bottom, scale, longest_mm });
  const names = drawing({
    labels: lines.map(({ y, name, entries }): Label => ({
      text: name,
      size: textSize.small,
      heavy: entries === null,
      spots: [
        { x: entries === null ? 4 : 12, y: y + (entries === null ? headHeight : rowHeight) / 2, anchor: 'start' },
      ],
    })),
  });
  return finishPicture(
    {
      name: 'chart.svg',
      title: 'Largest frames by stock, lay and plies',
      alt: 'For each kind of bar three bars, for none, one and two crossbars: as long as the largest frame that is clear, filled without corner braces and white with them; a thin line runs on to where a stop would come. Left: side of a square. Right: width of an oblong of three to two. The figures stand in the tables.',
    },
    bottom + 10,
    together(key(), panel('square', 0), panel('oblong', 1), names),
  );
}

function layOut(chart: Chart): { readonly lines: readonly Line[]; readonly bottom: number } {
  const lines: Line[] = [];
  let y = top + 6;
  let stock = '';
  for (const row of chart.rows) {
    if (row.stock.key !== stock) {
      lines.push({ y, name: row.stock.key, entries: null });
      y += headHeight;
      stock = row.stock.key;
    }
    lines.push({ y, name: `${row.lay}${row.plies === 1 ? '' : ' × 2'}`, entries: row.entries });
    y += rowHeight;
  }
  return { lines, bottom: y };
}

interface Panel {
  readonly x: number;
  readonly bottom: number;
  readonly scale: number;
  readonly longest_mm: number;
}

function drawPanel(
  chart: Chart,
  lines: readonly Line[],
  shape: Shape,
  { x, bottom, scale, longest_mm }: Panel,
): Drawing {
  const every_mm = chart.units === 'metric' ? 1000 : 36 * 25.4;
  const ticks = Array.from({ length: Math.floor(longest_mm / every_mm) + 1 }, (_, i) => i * every_mm);
  const grid = ticks.map((at_mm) =>
    line(
      [
        { x: x + at_mm * scale, y: top },
        { x: x + at_mm * scale, y: bottom },
      ],
      { width: weight.thin, colour: at_mm === 0 ? ink : darkerFill },
    ),
  );
  const labels: Label[] = [
    {
      text: `${shape === 'square' ? 'Square: side' : 'Three to two: width'}, ${chart.units === 'metric' ? 'm' : 'in'}`,
      size: textSize.small,
      heavy: true,
      spots: [{ x, y: top - 22, anchor: 'start' }],
    },
    ...ticks.map((at_mm): Label => ({
      text: String(Math.round(at_mm / (chart.units === 'metric' ? 1000 : 25.4))),
      size: textSize.small,
      spots: [{ x: x + at_mm * scale, y: top - 7, anchor: 'middle' }],
    })),
  ];
  const bars = lines.flatMap(({ y, entries }) =>
    (entries ?? [])
      .filter((entry) => entry.shape === shape)
      .flatMap((entry) => drawEntry(entry, x, y + 1.2 + entry.build.crossbars * (barHeight + 0.3), scale)),
  );
  return drawing({ marks: [...grid, ...bars.sort((a, b) => a.order - b.order).map(({ mark }) => mark)], labels });
}

/** Braced below, unbraced on top, so that both lengths show. */
function drawEntry({ build, clear_mm, no_stop_mm }: ChartEntry, x: number, y: number, scale: number) {
  const middle = y + barHeight / 2;
  const order = build.braced ? 0 : 1;
  const marks = [];
  if (no_stop_mm !== null && build.braced)
    marks.push({
      order,
      mark: line(
        [
          { x, y: middle },
          { x: x + no_stop_mm * scale, y: middle },
        ],
        { width: weight.thin, colour: softInk },
      ),
    });
  if (clear_mm !== null)
    marks.push({
      order,
      mark: outline(rectangle(x, y, clear_mm * scale, barHeight), {
        width: weight.thin,
        fill: build.braced ? paperFill : softInk,
      }),
    });
  return marks;
}

/** What the bars mean. */
function key(): Drawing {
  const [first, second] = [14, 31];
  const sample = (x: number, y: number, fill: string) =>
    outline(rectangle(x, y - 3, 16, 6), { width: weight.thin, fill });
  const label = (x: number, y: number, text: string): Label => ({
    text,
    size: textSize.small,
    spots: [{ x, y, anchor: 'start' }],
  });
  return drawing({
    marks: [
      sample(6, first, softInk),
      sample(206, first, paperFill),
      line(
        [
          { x: 6, y: second },
          { x: 22, y: second },
        ],
        { width: weight.thin, colour: softInk },
      ),
    ],
    labels: [
      label(28, first, 'clear, no braces'),
      label(228, first, 'clear, braced'),
      label(28, second, 'no stop, braced'),
      label(6, second + 17, 'Three bars each: none, one, two crossbars'),
    ],
  });
}
