import { join } from 'node:path';
import { steadyJson } from '../class/class-data.js';
import { writeMarkdown } from '../report/markdown.js';
import { composeTimetable } from '../timetable/page.js';
import { timetableData } from '../timetable/timetable-data.js';
import { sheetFor } from '../report/html-print.js';
import { timetableOf, type Timetable } from '../timetable/timetable.js';
import { outcome } from '../timetable/words.js';
import { exitCode } from './exit.js';
import { loadShelf } from './load.js';
import { openPlans } from './open-plans.js';
import { loadShop } from './shop-file.js';
import { complain, printJson, tell, warn } from './terminal.js';
import type { TimetableOptions } from './option-types.js';
import { writeFolder } from './write-files.js';

/** Makes the timetable and writes or prints what was asked for; resolves to the exit code. */
export async function runTimetable(named: readonly string[], options: TimetableOptions): Promise<number> {
  const shelf = loadShelf(options.shelf);
  complain(shelf.ok ? shelf.warnings : shelf.problems);
  if (!shelf.ok) return exitCode.error;
  const open = openPlans(named, shelf.value);
  const shop = loadShop(options.shop);
  if (open === null || shop === null) return exitCode.error;
  if (shop.sessions.length === 0) {
    warn(
      `${options.shop} says no sessions. Add when people work: \`sessions: { on: [ tuesday ], from: 2027-01-12, length: 90 min }\`.`,
    );
    return exitCode.error;
  }
  const table = timetableOf(
    open.map(({ plan }) => plan),
    shop,
    shelf.value,
  );
  if (options.format === 'json') printJson(`${steadyJson(timetableData(table))}\n`);
  else tell(`${outcome(table)}  →  ${await writePage(table, options.out ?? join('reports', 'timetable'), options)}`);
  return table.schedule.sessions === null || table.money.term.reason !== null ? exitCode.unknown : exitCode.fine;
}

async function writePage(
  made: Timetable,
  out: string,
  { format, overwrite }: Pick<TimetableOptions, 'format' | 'overwrite'>,
): Promise<string> {
  const { tree, pictures } = composeTimetable(made);
  if (format === 'html') {
    const { writeHtml } = await import('../report/html.js');
    writeFolder(
      out,
      [
        {
          name: 'timetable.html',
          text: writeHtml(tree, pictures, {
            title: 'Timetable',
            lang: 'en',
            sheet: sheetFor(made.money.term.cut.units),
          }),
        },
      ],
      { overwrite },
    );
    return join(out, 'timetable.html');
  }
  writeFolder(
    out,
    [{ name: 'timetable.md', text: writeMarkdown(tree) }, ...pictures.map(({ name, svg }) => ({ name, text: svg }))],
    { overwrite },
  );
  return join(out, 'timetable.md');
}
