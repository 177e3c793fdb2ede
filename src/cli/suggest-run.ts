import { fileProblem } from '../base/problem.js';
import { createTwoFilesPatch } from 'diff';
import { existsSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { readPlanWith } from '../plan/read-plan.js';
import type { Plan } from '../plan/plan.js';
import type { Suggestion, Suggestions } from '../suggest/suggest.js';
import { suggest } from '../suggest-plans.js';
import { suggestionsAsJson, tellSuggestions } from '../suggest/tell.js';
import { writeEdit } from '../suggest/write-plan.js';
import { loadBench } from './bench.js';
import { exitCode } from './exit.js';
import { readText } from './read-text.js';
import { progress, type Progress } from './progress.js';
import type { SuggestOptions } from './option-types.js';
import { columns, complain, print, printJson, tell, warn } from './terminal.js';
import { typed } from './typed.js';
import { expectShortWork } from './short-work.js';
import { thereAlready } from './cannot-write.js';
import { writeNewFile } from './write-files.js';

/** Searches, prints, and writes the picked plan when asked; resolves to the exit code. */
export async function runSuggest(file: string, options: SuggestOptions): Promise<number> {
  expectShortWork();
  const bench = loadBench(options);
  const read = readText(file);
  if ('problem' in read) complain([read.problem]);
  if (bench === null || 'problem' in read) return exitCode.error;
  const plan = readPlanWith(read.text, file, bench.shelf);
  complain(plan.ok ? plan.warnings : plan.problems);
  if (!plan.ok) return exitCode.error;
  if (options.write !== undefined && existsSync(options.write)) throw thereAlready(options.write);
  let bar: Progress | null = null;
  const onExamined = (_: number, builds: number): Promise<void> =>
    (bar ??= progress(builds, 'ways to build it', true)).step();
  const answer = await suggest(plan.value, bench, { clear: options.clear, onExamined });
  (bar as Progress | null)?.end();
  if (options.format === 'json') printJson(suggestionsAsJson(answer));
  else {
    tell(tellSuggestions(answer, { columns: columns(), whole: options.verbose }).trimEnd());
    for (const line of nextLines(file, options, answer)) tell(line);
  }
  if (answer.found.length === 0) return exitCode.unknown;
  if (options.write === undefined) return exitCode.fine;
  const picked = answer.found.find(({ aims }) => aims.includes(options.pick));
  if (picked === undefined) {
    complain([
      fileProblem(
        file,
        'no-such-suggestion',
        `no plan that is ${options.pick}`,
        'one of the plans above',
        'Pick another with --pick.',
      ),
    ]);
    return exitCode.error;
  }
  const text = changedText(read.text, picked, (changed) => readPlanWith(changed, file, bench.shelf));
  if (text === null) {
    complain([
      fileProblem(
        file,
        'cannot-edit',
        'a plan file that is put together in an unusual way',
        'a plain plan file',
        'Make the changes above by hand.',
      ),
    ]);
    return exitCode.error;
  }
  return save(file, options, read.text, text);
}

/** The text with the changes in it, only if it reads back as the very plan that was promised. */
function changedText(
  text: string,
  { edit, plan }: Suggestion,
  reread: (text: string) => ReturnType<typeof readPlanWith>,
): string | null {
  const changed = writeEdit(text, edit, plan);
  if (changed === null) return null;
  const again = reread(changed);
  const frame = (one: Plan): Plan => ({ ...one, assumed: [] });
  return again.ok && isDeepStrictEqual(frame(again.value), frame(plan)) ? changed : null;
}

/** Shows what changes, then writes a file that must be new. */
function save(file: string, { write, format }: SuggestOptions, before: string, after: string): number {
  const target = write as string;
  const shown = createTwoFilesPatch(file, target, before, after, undefined, undefined, { context: 2 });
  if (format === 'json') warn(shown);
  else print(shown);
  writeNewFile(target, after);
  if (format !== 'json') tell(`Written: ${target}`);
  return exitCode.fine;
}

/**
 * What to type next: the same search for cautions too, where the plan has no stop, or the command that writes a plan
 * that was found.
 */
function nextLines(file: string, { clear, write }: SuggestOptions, { planned, found }: Suggestions): readonly string[] {
  const cautions = !clear && (planned.verdict === 'caution' || planned.verdict === 'unknown');
  if (cautions)
    return [
      `The plan has no stop as it stands. To clear its cautions as well: sightdown suggest ${typed(file)} --clear`,
    ];
  if (write !== undefined || !found.some(({ edit }) => edit.words.length > 0)) return [];
  return [
    `To write one of them: sightdown suggest ${typed(file)}${clear ? ' --clear' : ''} --write ${typed(file.replace(/(?:\.ya?ml)?$/iu, '-2.yaml'))}`,
  ];
}
