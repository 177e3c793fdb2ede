import { foldFindings, type FoldedFinding } from '../../findings/summary.js';
import { userText } from '../clean-text.js';
import { heading, paragraph, strong, table, type Block, type Cell } from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { aboutsInWords } from '../words/about.js';
import { usedBar } from '../words/used.js';
import { counted, verdictWord } from '../words/verdict.js';

const subjects: Readonly<Record<string, string>> = {
  frame: 'The frame as a whole', bars: 'Bars', crossbars: 'Crossbars', warp: 'Warp', lumber: 'Lumber', boards: 'Boards', corners: 'Corners', fastenings: 'Screws and nails', glue: 'Glue',
  cloth: 'Cloth', hanging: 'Hanging', cutting: 'Cutting and buying', cost: 'Cost',
};

/** Part 4: every check that spoke, by subject, gravest first, with how much of its limit is used. */
export function checksSection(told: Telling): Section {
  const bySubject = new Map<string, FoldedFinding[]>();
  for (const fold of foldFindings(told.audit.findings)) {
    const subject = fold.finding.rule.split('/')[0] ?? '';
    bySubject.set(subject, [...(bySubject.get(subject) ?? []), fold]);
  }
  const blocks: Block[] = [
    paragraph('Where a rule speaks of several parts, the line tells of the one that comes closest to its limit, or goes furthest past it. 100 % means that the limit is just met.'),
    ...[...bySubject].flatMap(([subject, folds]) => [
      heading(3, subjects[subject] ?? capital(userText(subject.replaceAll('-', ' '), 40))),
      table([{ head: 'Verdict' }, { head: 'Check' }, { head: 'Where' }, { head: 'Limit used' }], folds.map(line)),
    ]),
  ];
  if (bySubject.size === 0) blocks.push(paragraph('No rule of the ruleset had anything to say.'));
  const silent = told.audit.silent.length + told.audit.switched_off.length;
  if (silent > 0) blocks.push(paragraph(`${counted(silent, 'rule')} did not speak; why is told on the last pages.`));
  return { title: 'The checks', blocks, pictures: [] };
}

function line({ finding, abouts }: FoldedFinding): readonly Cell[] {
  const word = verdictWord[finding.verdict];
  return [finding.verdict === 'clear' ? word : strong(word), finding.say, aboutsInWords(abouts), finding.verdict === 'unknown' ? 'not known' : usedBar(finding.used)];
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
