import { formatLength, lengthFigures } from '../base/units-format.js';
import type { Report } from '../report/compose.js';
import {
  bullets,
  document,
  heading,
  paragraph,
  picture,
  table,
  type Block,
  type Cell,
  type Column,
} from '../report/tree.js';
import type { Chart, ChartEntry } from './chart.js';
import { chartPicture } from './chart-picture.js';
import type { Shape } from './chart-plan.js';
import { leftOutOfCharts } from './subjects.js';

/** The wall chart as a page with one picture. */
export function chartPage(chart: Chart): Report {
  const drawn = chartPicture(chart);
  const unit = chart.units === 'metric' ? 'mm' : 'in';
  const blocks: Block[] = [
    heading(1, 'How large may a frame be?'),
    paragraph(
      `Largest frames by ruleset "${chart.ruleset_name}" from shelf "${chart.shelf_name}", to the last ${formatLength(chart.sizes.step_mm, chart.units)}.`,
    ),
    bullets([
      'First figure: up to here every check the chart asks is clear; a frame of this size may be planned without asking.',
      'Second figure: up to here no check says stop; in between ask first, and audit the plan itself.',
      'A dash: none of the sizes that were tried. A plus: as far as the chart looks, and maybe further.',
    ]),
    picture(drawn),
    heading(2, `Square frames: length of the side, ${unit}`),
    sizesTable(chart, 'square'),
    heading(2, `Oblong frames, three wide to two high: width, ${unit}`),
    sizesTable(chart, 'oblong'),
    heading(2, 'What was assumed and left out'),
    bullets([
      'Boards that were glanced along (plain), at 12 % moisture; corners mitred, glued and nailed; usual cotton at the usual pull; every other default of a plan.',
      'Two plies: side by side, glued and screwed (only glued where no screw on the shelf fits), their warps opposed.',
      'One crossbar: upright, in the middle. Two: crossing in the middle. Braces: timber of the bars’ stock across each corner, a quarter of the shorter side long. Crossbars lie as the bars do where they fit, else flat.',
      `Not asked here, so audit each plan before cutting: ${Object.values(leftOutOfCharts).join('; ')}. Longest boards on the shelf do count.`,
      'Each figure passes the audit’s own checks, and the next step up does not; the two steps below a first figure pass as well. Between the sizes that were tried, a larger frame is taken to fare no better.',
    ]),
  ];
  return { tree: document(blocks), pictures: [drawn] };
}

const columns: readonly Column[] = [
  { head: 'Bars' },
  ...['No crossbar', 'and braces', 'One crossbar', 'and braces', 'Two crossbars', 'and braces'].map((head): Column => ({
    head,
    align: 'right',
  })),
];

function sizesTable(chart: Chart, shape: Shape): Block {
  const rows = chart.rows.map(({ stock, lay, plies, entries }): readonly Cell[] => [
    `${stock.key}, ${lay === 'edge' ? 'on edge' : 'flat'}${plies === 1 ? '' : ', two plies'}`,
    ...entries.filter((entry) => entry.shape === shape).map((entry) => bothFigures(chart, entry)),
  ]);
  return table(columns, rows);
}

const bothFigures = (chart: Chart, { clear_mm, no_stop_mm }: ChartEntry): string =>
  no_stop_mm === null ? '–' : `${figure(chart, clear_mm)} / ${figure(chart, no_stop_mm)}`;

/** Without its unit, which stands over the table. */
export function figure({ units, sizes }: Chart, size_mm: number | null): string {
  if (size_mm === null) return '–';
  return `${lengthFigures(size_mm, units)}${size_mm + sizes.step_mm > sizes.most_mm ? '+' : ''}`;
}
