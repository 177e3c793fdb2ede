import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { digest } from '../../src/base/digest.js';
import type { Problem } from '../../src/base/problem.js';
import { showProblems } from '../../src/base/show-problem.js';
import { readSources } from '../../src/base/sources.js';
import { rulesFolder } from '../../src/cli/files.js';
import type { Prepared } from '../../src/cli/prepared.js';
import { loadRuleset, prepareLayer, prepareStack } from '../../src/rules/read/load-ruleset.js';
import { readShelf } from '../../src/shelf/read-shelf.js';

/** Reads the shipped shelf and rulesets once, at build time: reading YAML is most of what starting costs. */
const text = (name: string): string => readFileSync(join(rulesFolder, name), 'utf8');
const sourcesText = text('sources.yaml');
const list = readSources(sourcesText);
const sources = list.map(({ key }) => key);
const shelfText = text('shelf.yaml');
const shelf = readShelf(shelfText, 'shelf.yaml', undefined, new Set(sources));
if (!shelf.ok) refused(shelf.problems);
const rulesets = readdirSync(rulesFolder).filter((name) => /^(baseline|class-.*)\.yaml$/.test(name)).sort();
const layers = rulesets.map((name) => prepareLayer(text(name), name, { sources: new Set(sources) })).filter((layer) => layer !== null);
for (const name of rulesets) {
  const loaded = loadRuleset(text, name, { sources: new Set(sources), prepared: layers });
  if (!loaded.ok) refused(loaded.problems);
}
const stacks = rulesets.map((name) => prepareStack(text, name, { sources: new Set(sources), prepared: layers })).filter((stack) => stack !== null);
const prepared: Prepared = { shelf: { of: digest(shelfText), value: shelf.value }, sources: { of: digest(sourcesText), list }, layers, stacks };
const out = process.argv[2] ?? 'dist';
mkdirSync(out, { recursive: true });
// In one-byte letters alone, which are read twice as fast.
const plain = JSON.stringify(prepared).replace(/[^\0-\x7f]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`);
writeFileSync(join(out, 'prepared.json'), plain);

/** Says what is wrong with the files, as the command does, and ends. */
function refused(problems: readonly Problem[]): never {
  process.stderr.write(`${showProblems(problems.map((problem) => ({ ...problem, file: join('rules', problem.file) })))}\n`);
  process.exit(1);
}
