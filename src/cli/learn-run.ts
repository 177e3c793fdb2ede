import { readdirSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { beforeLearning, shelfChanges, writeLearned } from '../learn/shelf-file.js';
import { learn, learnedData, type Learned } from '../learn/learn.js';
import type { FolderText } from '../learn/folder.js';
import { composeLearnPage } from '../learn/page.js';
import { readShelf } from '../shelf/read-shelf.js';
import type { Shelf } from '../shelf/shelf.js';
import { writeMarkdown } from '../report/markdown.js';
import type { Problem } from '../base/problem.js';
import { exitCode } from './exit.js';
import { rulesFolder } from './files.js';
import type { LearnOptions } from './option-types.js';
import { defaultShelf, sourceKeys } from './load.js';
import { BadOption, dayOption } from './quantities.js';
import { readText } from './read-text.js';
import { complain, printJson, tell, warn } from './terminal.js';
import { writeFolder } from './write-files.js';
import { steadyJson } from '../class/class-data.js';

/** Reads a folder, says what its frames say, and with --write puts it into the shelf. Gives the exit code. */
export async function runLearn(folder: string, options: LearnOptions): Promise<number> {
  try {
    return await run(folder, options);
  } catch (error) {
    if (!(error instanceof BadOption)) throw error;
    warn(error.message);
    return exitCode.error;
  }
}

async function run(folder: string, options: LearnOptions): Promise<number> {
  const given = dayOption(options.date);
  if (options.write && options.shelf === undefined)
    throw new BadOption(
      '--write needs --shelf: name the shelf file of your own that should learn. A file that holds only `shelf: 1` will do.',
    );
  const { texts: inside, unread } = textsIn(folder);
  const texts = [...inside, ...(options.pile === undefined ? [] : [pileText(options.pile)])];
  complain(unread);
  const own = options.shelf === undefined ? null : ownShelf(options.shelf);
  const shelf = own?.before ?? shipped();
  const found = learn(texts, shelf);
  complain(found.folder.problems);
  const date = given ?? (options.write ? new Date().toISOString().slice(0, 10) : null);
  const changes = shelfChanges(found.entries, shelf);
  const written =
    own === null || !options.write ? null : writeLearned(own.text, changes, { base: shippedText(), shelf }, date);
  if (written !== null && options.shelf !== undefined) {
    const back = readShelf(written, options.shelf, shipped(), sourceKeys());
    if (!back.ok)
      throw new BadOption(
        `What was learned does not fit the shelf, so nothing was written: ${back.problems.map(({ path, found: what, allowed }) => `${path}: found ${what}; allowed: ${allowed}`).join('; ')}.`,
      );
    writeFolder(dirname(options.shelf), [{ name: basename(options.shelf), text: written }], { overwrite: true });
  }
  if (options.format === 'json') printJson(`${steadyJson(learnedData(found))}\n`);
  else await writePage(found, shelf, date, options, written === null ? null : (options.shelf ?? null));
  return unread.length > 0 || found.folder.problems.some(({ severity }) => severity === 'error')
    ? exitCode.error
    : exitCode.fine;
}

async function writePage(
  found: Learned,
  shelf: Shelf,
  date: string | null,
  { out = 'reports', format, overwrite }: LearnOptions,
  written: string | null,
): Promise<void> {
  const { tree, pictures, title } = composeLearnPage(found, shelf, { date, written });
  if (format === 'md')
    writeFolder(
      out,
      [{ name: 'learn.md', text: writeMarkdown(tree) }, ...pictures.map(({ name, svg }) => ({ name, text: svg }))],
      { overwrite },
    );
  else {
    const { writeHtml } = await import('../report/html.js');
    writeFolder(out, [{ name: 'learn.html', text: writeHtml(tree, pictures, { title, lang: 'en' }) }], { overwrite });
  }
  tell(
    `${found.frames} frames  →  ${join(out, `learn.${format}`)}${written === null ? '' : `; ${written} has learned`}`,
  );
}

/** Most files of one folder that are read. */
const most_files = 5000;

/**
 * Every YAML file of the folder; folders inside it are left alone, and what is no plain file is told. Throws BadOption.
 */
function textsIn(folder: string): { readonly texts: readonly FolderText[]; readonly unread: readonly Problem[] } {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() !== true)
    throw new BadOption(`${folder}: found no folder of that name; name the folder your plans and sheets are in.`);
  const names = readdirSync(folder)
    .filter((name) => /\.ya?ml$/i.test(name))
    .sort();
  if (names.length > most_files)
    throw new BadOption(
      `${folder}: found ${names.length} files; at most ${most_files} are read at once. Put them into several folders.`,
    );
  if (names.length === 0)
    throw new BadOption(`${folder}: found no file that ends in .yaml; put plans and bench sheets there.`);
  const read = names.map((name) => ({ name, ...readText(join(folder, name)) }));
  return {
    texts: read.flatMap((one) => ('text' in one ? [{ file: one.name, text: one.text }] : [])),
    unread: read.flatMap((one) => ('problem' in one ? [one.problem] : [])),
  };
}

/** The pile that --pile names, as one more file of the folder. Throws BadOption. */
function pileText(file: string): FolderText {
  const read = readText(file);
  if (!('problem' in read)) return { file, text: read.text };
  complain([read.problem]);
  throw new BadOption('The pile cannot be read.');
}

/** The studio's shelf as text, and as it stood before it learned anything. Throws BadOption after complaining. */
function ownShelf(file: string): { readonly text: string; readonly before: Shelf } {
  const read = readText(file);
  const shelf =
    'problem' in read
      ? ({ ok: false, problems: [read.problem] } as const)
      : readShelf(beforeLearning(read.text), file, shipped(), sourceKeys());
  complain(shelf.ok ? shelf.warnings : shelf.problems);
  if (!shelf.ok || 'problem' in read) throw new BadOption('The shelf cannot be read.');
  return { text: read.text, before: shelf.value };
}

function shipped(): Shelf {
  const shelf = defaultShelf();
  if (!shelf.ok) throw new Error('the shelf that ships with the tool cannot be read');
  return shelf.value;
}

function shippedText(): string {
  const read = readText(join(rulesFolder, 'shelf.yaml'));
  if ('problem' in read) throw new Error('the shelf that ships with the tool is missing');
  return read.text;
}
