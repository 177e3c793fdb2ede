import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runIn } from '../cli/command.js';
import { faultsOf } from './faults.js';

const top = new URL('../../', import.meta.url).pathname;
/** Pages of every kind as the tool writes them; that they are what it makes now is asked elsewhere. The page of outside checks cites books as they are written. */
const pages = ['reports', 'test/class/room'].flatMap((folder) =>
  readdirSync(top + folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.md') && !name.startsWith('validation/')).sort().map((name) => `${folder}/${name}`));

/** A line as one reads it: no marks of Markdown, no rules of tables. */
const asRead = (markdown: string): readonly string[] => markdown.split('\n')
  .filter((line) => !line.startsWith('![') && !/^\| *:?-/u.test(line) && !line.startsWith('<!--'))
  .map((line) => line.replace(/\]\([^)]*\)/gu, ']').replace(/\\([[\]_*|<&~])/gu, '$1').replace(/^\s*(?:[-*]|\d+\.) /u, ''));

test.each(pages)('%s reads without a slip', (page) => {
  expect([...new Set(asRead(readFileSync(`${top}${page}`, 'utf8')).flatMap((line) => faultsOf(line)))]).toEqual([]);
});

const commands = ['', 'new', 'audit', 'suggest', 'cut', 'place', 'measure', 'measure joint', 'learn', 'timetable', 'rules', 'rules check', 'rules show', 'rules facts', 'rules compare', 'chart', 'page', 'schema'];

test.each(commands)('what `sightdown %s --help` says reads without a slip', (command) => {
  const said = runIn(top, [...command.split(' ').filter((word) => word !== ''), '--help']).out;
  expect(said).toContain(`Usage: sightdown ${command}`.trim());
  // What is told of each argument and option, without its name; what is typed is left out.
  const told = said.replace(/^ {2}\S.*? {2,}(?=\S)/gmu, '').replace(/^Usage:.*$|^Examples?:\n(?: .*\n)+/gmu, '');
  expect([...new Set(told.split('\n\n').flatMap((part) => faultsOf(part.replace(/\s+/gu, ' '))))]).toEqual([]);
});
