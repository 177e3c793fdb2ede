import type { Element } from 'xast';
import { cleanText } from '../report/clean-text.js';
import { ink, paperFill, softInk, typeface, woodFill } from '../report/drawings/drawing-standard.js';
import type { Picture } from '../report/drawings/picture.js';
import { shape, words, writeSvg } from '../report/drawings/svg.js';
import type { Chart } from './chart.js';
import { figure } from './chart-page.js';
import type { Shape } from './chart-plan.js';

/** A3, lying, mm. */
const sheet = { width: 420, height: 297 } as const;
const margin = 10;
const head = 46;
const foot = 12;
const nameWidth = 116;
/** Letters of this size, mm, are read from two metres: capitals a four-hundredth of the distance high (practice). */
const letters = 7;

const columns = ['none', 'braced', 'one', 'braced', 'two', 'braced'] as const;

/**
 * The chart for the wall: in big figures the largest frame that is clear, for each kind of bar, and whole on A3 or on
 * four sheets of A4 that lie edge to edge.
 */
export function wallChart(chart: Chart): readonly Picture[] {
  const marks = [ground(chart), ...figures(chart), ...heads(chart)];
  const whole = finish(
    'wall-chart.svg',
    'Wall chart on A3',
    [0, 0, sheet.width, sheet.height],
    [sheet.width, sheet.height],
    marks,
  );
  const quarter = (i: number): Picture => {
    const [x, y] = [((i % 2) * sheet.width) / 2, (Math.floor(i / 2) * sheet.height) / 2];
    return finish(
      `wall-chart-a4-${i + 1}.svg`,
      `Wall chart on four sheets of A4, sheet ${i + 1}`,
      [x, y, sheet.width / 2, sheet.height / 2],
      [297, 210],
      marks,
    );
  };
  return [whole, ...[0, 1, 2, 3].map(quarter)];
}

function finish(
  name: string,
  title: string,
  view: readonly number[],
  [width, height]: readonly [number, number],
  marks: readonly Element[],
): Picture {
  const alt =
    'For each kind of bar the largest square frame and the largest oblong of three to two that is clear: without a crossbar, with one, with two, each without corner braces and with them. The same figures stand in the tables of the chart.';
  const id = name.replace(/\.svg$/u, '');
  const attributes = {
    xmlns: 'http://www.w3.org/2000/svg',
    width: `${width}mm`,
    height: `${height}mm`,
    viewBox: view.join(' '),
    role: 'img',
    'aria-labelledby': `${id}-title ${id}-desc`,
  };
  const svg = shape('svg', attributes, [
    shape('title', { id: `${id}-title` }, [words(title)]),
    shape('desc', { id: `${id}-desc` }, [words(alt)]),
    shape('g', { 'font-family': typeface, fill: ink }, [...marks]),
  ]);
  return { name, svg: writeSvg(svg), alt: cleanText(alt) };
}

const text = (
  said: string,
  x: number,
  y: number,
  size: number,
  more: Readonly<Record<string, string | number>> = {},
): Element => shape('text', { x, y, 'font-size': size, ...more }, [words(said)]);

const rowHeight = ({ rows }: Chart): number => (sheet.height - head - foot - margin) / Math.max(1, rows.length);
const columnWidth = (sheet.width - 2 * margin - nameWidth) / (2 * columns.length);
const columnEnd = (i: number): number => margin + nameWidth + (i + 1) * columnWidth - 2;

/** White, and a stripe behind every other stock. */
function ground(chart: Chart): Element {
  const high = rowHeight(chart);
  const stocks = [...new Set(chart.rows.map(({ stock }) => stock.key))];
  const stripes = chart.rows.flatMap(({ stock }, i) =>
    stocks.indexOf(stock.key) % 2 === 0
      ? [
          shape('rect', {
            x: margin,
            y: head + i * high,
            width: sheet.width - 2 * margin,
            height: high,
            fill: woodFill,
          }),
        ]
      : [],
  );
  return shape('g', {}, [
    shape('rect', { x: 0, y: 0, width: sheet.width, height: sheet.height, fill: paperFill }),
    ...stripes,
  ]);
}

function heads(chart: Chart): readonly Element[] {
  const unit = chart.units === 'metric' ? 'mm' : 'in';
  const middle = (from: number): number => margin + nameWidth + (from + columns.length / 2) * columnWidth;
  const groups: readonly (readonly [string, number])[] = [
    [`Square: side, ${unit}`, 0],
    [`Three to two: width, ${unit}`, columns.length],
  ];
  return [
    text('How large may a frame be?', margin, 17, 12, { 'font-weight': 700 }),
    ...groups.map(([said, from]) =>
      text(said, middle(from), 28, letters, { 'font-weight': 700, 'text-anchor': 'middle' }),
    ),
    text('crossbars:', margin + nameWidth - 4, 40, 6.5, { 'text-anchor': 'end' }),
    ...[...columns, ...columns].map((said, i) => text(said, columnEnd(i), 40, 6.5, { 'text-anchor': 'end' })),
    shape('line', {
      x1: columnEnd(columns.length - 1) + 2,
      y1: 22,
      x2: columnEnd(columns.length - 1) + 2,
      y2: sheet.height - foot - margin,
      stroke: softInk,
      'stroke-width': 0.6,
    }),
    text(
      `Up to these sizes every check of the chart is clear, by ruleset “${chart.ruleset_name}” from shelf “${chart.shelf_name}”. Larger: audit the plan first. + goes on beyond the chart.`,
      margin,
      sheet.height - margin,
      4.6,
    ),
  ];
}

function figures(chart: Chart): readonly Element[] {
  const high = rowHeight(chart);
  const size = Math.min(letters, high * 0.78);
  return chart.rows.flatMap(({ stock, lay, plies, entries }, row) => {
    const y = head + (row + 0.5) * high + size * 0.35;
    const name = `${stock.key} ${lay === 'edge' ? 'on edge' : 'flat'}${plies === 1 ? '' : ', doubled'}`;
    const cells = (['square', 'oblong'] as readonly Shape[]).flatMap((one) =>
      entries.filter((entry) => entry.shape === one),
    );
    return [
      text(name, margin + 2, y, size),
      ...cells.map((entry, i) =>
        text(figure(chart, entry.clear_mm), columnEnd(i), y, size, {
          'text-anchor': 'end',
          ...(entry.build.braced ? {} : { 'font-weight': 700 }),
        }),
      ),
    ];
  });
}
