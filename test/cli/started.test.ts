import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { sampleOf } from '../effort.js';
import { folder, plan, stopPlan, withoutProgress, type Folder } from './command.js';

const files: Readonly<Record<string, string>> = {
  'sill.yaml': plan('Sill', '{ width: 520 mm, height: 410 mm }'),
  'thin.yaml': stopPlan,
  'wet.yaml': plan('Wet boards').replace('9 %', '19 %'),
  'class/one.yaml': plan('One'),
  'class/two.yaml': plan('Two', '{ width: 26 in, height: 20 in }'),
  'class/not.yaml': 'plan: 1\nname: Not yet\n',
  'pile.yaml': 'pile: 1\nboards:\n  - { mark: A, stock: strip-19x38, length: 2400 mm, twist: 0.4 deg/m }\n',
  'sheet.yaml': 'sheet: 1\ncorner-lift: 40 mm\n',
  'shop.yaml': 'shop: 1\nsessions: [ { date: 2027-01-12, length: 2 h } ]\n',
};

/** Every command, and each exit code: what is typed, and how it ends. */
const typed: readonly (readonly [line: string, code: number])[] = [
  ['audit sill.yaml --out r', 0],
  ['audit thin.yaml --format json', 3],
  ['audit wet.yaml --strict --format json', 2],
  ['audit sill.yaml --out r --format html --pile pile.yaml --shop shop.yaml', 0],
  ['audit sill.yaml --out r --measured sheet.yaml', 3],
  ['audit sill.yaml --format csv', 0],
  ['audit sill.yaml wet.yaml --measured sheet.yaml', 1],
  ['audit class --out r --format html', 1],
  ['suggest class/not.yaml', 1],
  ['cut sill.yaml --format csv', 0],
  ['place sill.yaml --pile pile.yaml --format json', 0],
  ['measure sag --stock strip-19x38 --span 1.5m --weight 5kg --sag 17mm --date 2024-05-02', 0],
  ['learn class', 1],
  ['timetable sill.yaml --shop shop.yaml --format json', 2],
  ['rules show bars/inward-bow', 0],
  ['rules check gone.yaml', 1],
  ['new --name Nook --width 900mm --height 650mm --stock strip-19x38', 0],
  ['chart --units ells', 1],
  ['page --plan sill.yaml --out page.html', 0],
  ['schema plan', 0],
];

/** A new folder with all of the files, and everything in it once a line was typed there. */
function done(how: 'run' | 'start', line: string) {
  const here: Folder = folder();
  for (const [name, text] of Object.entries(files)) here.write(name, text);
  const run = here[how](...line.split(' '));
  return { ...run, err: withoutProgress(run.err), written: Object.fromEntries(here.files().map((name) => [name, readFileSync(join(here.path, name), 'utf8')])) };
}

/** The other tests ask the process that stays; this is what lets them. */
it.each(sampleOf(typed, 2))('`sightdown %s`, started anew, ends with %d and says and writes what the process that stays does', (line, code) => {
  const anew = done('start', line);
  expect(anew.code, anew.err).toBe(code);
  expect(done('run', line)).toEqual(anew);
});
