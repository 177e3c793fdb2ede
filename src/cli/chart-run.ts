import { join } from 'node:path';
import { chartPage } from '../chart/chart-page.js';
import { chartKinds, chartOf, entriesOfRow, type ChartEntry } from '../chart/chart.js';
import { wallChart } from '../chart/wall-chart.js';
import { writeMarkdown } from '../report/markdown.js';
import { loadBench } from './bench.js';
import type { ChartSharing } from './chart-work.js';
import type { ChartOptions } from './option-types.js';
import { exitCode } from './exit.js';
import { writeFolder } from './write-files.js';
import { progress } from './progress.js';
import { shareOut, usualJobs } from './share-work.js';
import { tell } from './terminal.js';

/** Makes the chart and writes page and picture; resolves to the exit code. */
export async function runChart(options: ChartOptions): Promise<number> {
  const bench = loadBench(options);
  if (bench === null) return exitCode.error;
  const sharing: ChartSharing = { work: 'chart', bench, units: options.units };
  const kinds = chartKinds(bench.shelf).length;
  const rows: (readonly ChartEntry[])[] = [];
  const bar = progress(kinds * entriesOfRow, 'kinds of frame');
  const take = (row: readonly ChartEntry[]): void => void rows.push(row);
  await shareOut(sharing, kinds, options.jobs ?? usualJobs(kinds, 1), { take, step: bar.step });
  bar.end();
  const chart = chartOf(bench, options.units, rows);
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
