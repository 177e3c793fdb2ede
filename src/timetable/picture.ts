import type { Element } from 'xast';
import { dayText, monthOf } from '../base/days.js';
import {
  darkerFill,
  ink,
  sheetWidth,
  softInk,
  textSize,
  weight,
  paperFill,
  woodFill,
} from '../report/drawings/drawing-standard.js';
import { textWidth, type Label } from '../report/drawings/labels.js';
import { drawing, finishPicture, type Picture } from '../report/drawings/picture.js';
import { line, outline, rectangle } from '../report/drawings/strokes.js';
import { stages, type Stage } from './task-table.js';
import type { Timetable } from './timetable.js';
import { whoOf } from './words.js';

/** Sessions and frames on one picture. */
const columns = 8;
const rows = 26;
const left = 112;
const top = 96;
const rowHeight = 19;

/** One letter for each part of the work; the letter says it, the grey only helps. */
const letters: Readonly<Record<Stage, string>> = { wood: 'W', glue: 'G', frame: 'F', cloth: 'C', ground: 'P' };
const fills: Readonly<Record<Stage, string>> = {
  wood: woodFill,
  glue: darkerFill,
  frame: woodFill,
  cloth: paperFill,
  ground: darkerFill,
};

/**
 * Frames down, sessions across: what is done on each frame in each session, and a line where it rests from one to the
 * next.
 */
export function timetablePictures(table: Timetable): readonly Picture[] {
  const found: Picture[] = [];
  for (let s = 0; s < table.sessions.length; s += columns)
    for (let f = 0; f < table.jobs.length; f += rows)
      found.push(sheet(table, s, f, found.length === 0 ? 'timetable.svg' : `timetable-${found.length + 1}.svg`));
  return found;
}

function sheet(table: Timetable, firstSession: number, firstJob: number, name: string): Picture {
  const { sessions, jobs, placed } = table;
  const shown = sessions.slice(firstSession, firstSession + columns);
  const frames = jobs.slice(firstJob, firstJob + rows);
  const step = (sheetWidth - left - 8) / shown.length;
  const box = Math.min(step - 5, 44);
  const x = (s: number): number => left + s * step;
  const y = (f: number): number => top + f * rowHeight;
  const marks: Element[] = [];
  const labels: Label[] = [
    { text: 'Frames down, sessions across', heavy: true, spots: [{ x: sheetWidth / 2, y: 15, anchor: 'middle' }] },
    {
      text: 'W wood, G glue, F frame, C cloth, P ground',
      size: textSize.small,
      spots: [{ x: sheetWidth / 2, y: 33, anchor: 'middle' }],
    },
    {
      text: 'a line: it rests or waits until the next session',
      size: textSize.small,
      spots: [{ x: sheetWidth / 2, y: 48, anchor: 'middle' }],
    },
  ];
  const told: string[] = [];
  shown.forEach(({ day }, s) => {
    const date = dayText(day);
    const before = shown[s - 1];
    const head = (text: string, above: number, heavy = false): void =>
      void labels.push({
        text,
        heavy,
        size: textSize.small,
        spots: [{ x: x(s) + box / 2, y: top - above, anchor: 'middle' }],
      });
    head(`${firstSession + s + 1}`, 35, true);
    head(String(Number(date.slice(8))), 22);
    if (before === undefined || dayText(before.day).slice(0, 7) !== date.slice(0, 7)) head(monthOf(day).slice(0, 3), 9);
  });
  frames.forEach((job, f) => {
    const own = placed.filter((one) => one.job === job);
    const [begin, end] = [own[0]?.session ?? 0, own.at(-1)?.session ?? -1];
    labels.push({
      text: shortened(whoOf(job, jobs)),
      size: textSize.small,
      spots: [{ x: 6, y: y(f) + rowHeight / 2 - 1, anchor: 'start' }],
    });
    const middle = y(f) + rowHeight / 2 - 1;
    const [from, to] = [Math.max(begin - firstSession, 0), Math.min(end - firstSession, shown.length - 1)];
    if (to > from || (to >= from && (begin < firstSession || end >= firstSession + shown.length)))
      marks.push(
        line(
          [
            { x: begin < firstSession ? x(0) - 3 : x(from), y: middle },
            { x: end >= firstSession + shown.length ? sheetWidth - 4 : x(to) + box, y: middle },
          ],
          { width: weight.thin, colour: softInk },
        ),
      );
    const said = shown.flatMap((_, s) => {
      const here = own.filter(({ session }) => session === firstSession + s);
      const kinds = stages.filter((stage) => here.some(({ task }) => task.stage === stage));
      if (kinds.length === 0) return [];
      marks.push(
        outline(rectangle(x(s), y(f), box, rowHeight - 3), {
          width: kinds.includes('glue') ? weight.edge : weight.thin,
          fill: fills[kinds.at(-1) as Stage],
          colour: ink,
        }),
      );
      labels.push({
        text: kinds.map((kind) => letters[kind]).join(''),
        size: textSize.small,
        spots: [{ x: x(s) + box / 2, y: middle, anchor: 'middle' }],
      });
      return [`${firstSession + s + 1} ${kinds.join(' and ')}`];
    });
    told.push(`${whoOf(job, jobs)}: ${said.length === 0 ? 'nothing here' : said.join(', ')}.`);
  });
  const alt = `${frames.length} ${frames.length === 1 ? 'frame' : 'frames'} in sessions ${firstSession + 1} to ${firstSession + shown.length}. ${told.slice(0, 8).join(' ')}${told.length > 8 ? ` And ${told.length - 8} more, as the lists tell.` : ''}`;
  return finishPicture(
    { name, title: 'What is done on each frame in each session', alt },
    top + frames.length * rowHeight + 10,
    drawing({ marks, labels }),
  );
}

/** Cut to the room beside the rows; the end stays, which tells one frame of a plan from another. */
function shortened(text: string): string {
  const fits = (candidate: string): boolean => textWidth(candidate, textSize.small) <= left - 10;
  if (fits(text)) return text;
  const end = /(?:frame )?\d+\)?$/u.exec(text)?.[0] ?? '';
  const letterList = [...text.slice(0, text.length - end.length)];
  while (letterList.length > 1 && !fits(`${letterList.join('')}…${end}`)) letterList.pop();
  return `${letterList.join('').trimEnd()}…${end}`;
}
