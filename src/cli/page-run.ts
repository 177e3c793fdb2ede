import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { parse } from 'yaml';
import { readSources } from '../base/sources.js';
import { readPlanWith } from '../plan/read-plan.js';
import { loadRuleset } from '../rules/read/load-ruleset.js';
import { exitCode } from './exit.js';
import { packageFolder, rulesFolder } from './files.js';
import { loadShelf, sourceKeys, textsBeside } from './load.js';
import type { PageOptions } from './option-types.js';
import { readText } from './read-text.js';
import { rulesFile, withShippedNames } from './rules-file.js';
import { complain, tell } from './terminal.js';
import { writeFolder } from './write-files.js';

/** The plan that is open where none is named. */
const starter = {
  file: 'small-study.yaml',
  text: 'plan: 1\nname: Small study\nface: { width: 500 mm, height: 400 mm }\nbars: { stock: strip-19x38, lay: flat }\n',
};

interface NamedText {
  readonly file: string;
  readonly text: string;
}

/**
 * Writes the page with shelf, rules and plan inside it; gives the exit code. Nothing is written when any of them cannot
 * be read.
 */
export function runPage(options: PageOptions): number {
  const shelf = loadShelf(options.shelf);
  const rules = rulesInPage(rulesFile(options.rules ?? 'baseline'));
  complain(shelf.ok ? shelf.warnings : shelf.problems);
  if (!shelf.ok || rules === null) return exitCode.error;
  const plan = options.plan === undefined ? starter : named(options.plan);
  if (plan === null) return exitCode.error;
  const read = readPlanWith(plan.text, plan.file, shelf.value);
  complain(read.ok ? read.warnings : read.problems);
  if (!read.ok) return exitCode.error;
  const data = {
    shelf: shipped('shelf.yaml'),
    own_shelf: options.shelf === undefined ? null : named(options.shelf),
    ...rules,
    sources: sourcesInPage(),
    plan,
  };
  const template = readFileSync(join(packageFolder, 'dist', 'page.html'), 'utf8');
  writeFolder(
    dirname(options.out),
    [{ name: basename(options.out), text: template.replace('@data@', () => inScript(data)) }],
    options,
  );
  tell(`The page  →  ${options.out}`);
  return exitCode.fine;
}

/** Data as JSON that no HTML reader takes for anything but text. */
const inScript = (data: unknown): string =>
  JSON.stringify(data).replace(
    /[<>\u2028\u2029]/gu,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

/** The list of sources as JSON, which is YAML too, without the notes for those who edit it: no page tells them. */
const sourcesInPage = (): string =>
  JSON.stringify({
    list: readSources(readFileSync(join(rulesFolder, 'sources.yaml'), 'utf8')).map(
      ({ key, title, edition, year, status }) => ({ key, title, edition, year, status }),
    ),
  });

/** A file that ships with the tool. */
const shipped = (file: string): NamedText => ({
  file,
  text: bareText(readFileSync(join(rulesFolder, file), 'utf8')),
});

/**
 * A text that ships with the tool without what is for those who edit it, comments and the examples of rules, where it
 * says the very same without them: they would be a fiftieth of the page.
 */
function bareText(text: string): string {
  const bare = text.replace(/(?:^|[ \t]+)#[^'"\n]*$/gmu, '').replace(/^ {4}examples:.*\n(?: {6}.*\n)*/gmu, '');
  return isDeepStrictEqual(withoutExamples(parse(bare)), withoutExamples(parse(text))) ? bare : text;
}

const withoutExamples = (read: unknown): unknown =>
  JSON.parse(JSON.stringify(read, (key, value: unknown) => (key === 'examples' ? undefined : value)));

function named(path: string): NamedText | null {
  const read = readText(path);
  if ('text' in read) return { file: basename(path), text: read.text };
  complain([read.problem]);
  return null;
}

const isShipped = (name: string, text: string): boolean =>
  shippedRules().includes(basename(name)) && readFileSync(join(rulesFolder, basename(name)), 'utf8') === text;

const shippedRules = (): readonly string[] =>
  readdirSync(rulesFolder).filter((name) => /^(?:baseline|class-.*)\.yaml$/u.test(name));

/**
 * The ruleset that judges at first with all it builds on, and those that ship with the tool; null after complaining.
 */
function rulesInPage(entry: string): { readonly rules: readonly NamedText[]; readonly entry: string } | null {
  const first = readText(entry);
  if ('problem' in first) {
    complain([withShippedNames(entry, first.problem)]);
    return null;
  }
  const beside = textsBeside(entry, first.text);
  const texts = new Map<string, string>();
  const asked = (name: string): string | null => {
    const text = beside(name);
    if (text !== null)
      texts.set(name === entry ? basename(entry) : name, isShipped(name, text) ? bareText(text) : text);
    return text;
  };
  const read = loadRuleset(asked, entry, { sources: sourceKeys() });
  complain(read.ok ? read.warnings : read.problems);
  if (!read.ok) return null;
  for (const name of [...shippedRules()].sort()) if (!texts.has(name)) texts.set(name, shipped(name).text);
  return { rules: [...texts].map(([file, text]) => ({ file, text })), entry: basename(entry) };
}
