import type { Problem } from '../base/problem.js';
import { userText } from '../report/clean-text.js';
import type { Report } from '../report/compose.js';
import { bullets, document, heading, paragraph, setApart, strong, type Block, type Cell } from '../report/tree.js';
import type { NotRead } from './class-row.js';

/**
 * The page that stands where a plan's report would: it says that there is none, so that an older report is not taken
 * for one.
 */
export function composeNotReadPage({ file, why }: NotRead, problems: readonly Problem[]): Report {
  const told = problemBlocks(problems);
  return {
    tree: document([
      heading(1, `${userText(file, 120)}: not read`),
      setApart(
        paragraph(
          strong('This file could not be read as a plan, so nothing is known of its frame.'),
          ` ${userText(why, 300)}`,
        ),
      ),
      paragraph('A report that stood here before was about an earlier state of the file and no longer holds.'),
      ...(told.length === 0 ? [] : [heading(2, 'What is wrong'), ...told]),
    ]),
    pictures: [],
  };
}

/** Problems with their places, as a list. */
export function problemBlocks(problems: readonly Problem[]): readonly Block[] {
  if (problems.length === 0) return [];
  return [
    bullets(
      problems.map(({ file, line, column, path, found, allowed, hint }): Cell => {
        const place = userText(line > 0 ? `${file}:${line}:${column}` : file, 120);
        return `${place}${path === '' ? '' : `, ${userText(path, 60)}`}: found ${userText(found, 200)}; allowed: ${userText(allowed, 300)}. ${userText(hint, 300)}`;
      }),
    ),
  ];
}
