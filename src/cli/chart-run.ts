import { join } from 'node:path';
import { chartPage } from '../chart/chart-page.js';
import { makeChart } from '../chart/chart.js';
import { wallChart } from '../chart/wall-chart.js';
import { writeMarkdown } from '../report/markdown.js';
import { loadBench } from './bench.js';
import type { ChartOptions } from './option-types.js';
import { exitCode } from './exit.js';
import { writeFolder } from './write-files.js';
import { progress, type Progress } from './progress.js';
import { tell } from './terminal.js';

/** Makes the chart and writes page and picture; resolves to the exit code. */
export async function runChart(options: ChartOptions): Promise<number> {
  const bench = loadBench(options);
  if (bench === null) return exitCode.error;
  let bar: Progress | null = null;
  const onEntry = (_: number, of: number): Promise<void> => (bar ??= progress(of, 'kinds of frame')).step();
  const chart = await makeChart(bench, { units: options.units, onEntry });
  (bar as Progress | null)?.end();
  const { tree, pictures } = chartPage(chart);
  writeFolder(
    options.out,
    [
      { name: 'chart.md', text: writeMarkdown(tree) },
      ...[...pictures, ...wallChart(chart)].map(({ name, svg }) => ({ name, text: svg })),
    ],
    options,
  );
  tell(`Chart of ${chart.rows.length} kinds of bar  →  ${join(options.out, 'chart.md')}`);
  return exitCode.fine;
}
