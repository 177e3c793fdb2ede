import { capital } from '../../base/capital.js';
import { foldFindings, type FoldedFinding } from '../../findings/summary.js';
import { userText } from '../clean-text.js';
import { bullets, heading, paragraph, strong, type Block, type Cell } from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { aboutInWords, aboutsInWords } from '../words/about.js';
import { valueAndLimit } from '../words/check-line.js';
import { usedBar } from '../words/used.js';
import { badge, counted } from '../words/verdict.js';

const subjects: Readonly<Record<string, string>> = {
  frame: 'The frame as a whole',
  bars: 'Bars',
  crossbars: 'Crossbars',
  warp: 'Warp',
  lumber: 'Lumber',
  boards: 'Boards',
  corners: 'Corners',
  fastenings: 'Screws and nails',
  glue: 'Glue',
  cloth: 'Cloth',
  hanging: 'Hanging',
  cutting: 'Cutting and buying',
  cost: 'Cost',
};

/** Part 4: every check that spoke, by subject, gravest first, with how much of its limit is used. */
export function checksSection(told: Telling): Section {
  const bySubject = new Map<string, FoldedFinding[]>();
  for (const fold of foldFindings(told.audit.findings.filter(({ rule }) => !rule.startsWith('measured/')))) {
    const subject = fold.finding.rule.split('/')[0] ?? '';
    bySubject.set(subject, [...(bySubject.get(subject) ?? []), fold]);
  }
  const blocks: Block[] = [
    paragraph(
      'The per cent and the squares say how much of its limit each check uses: at 100 % it is just met. Each is told in short, with its value and its limit; what to do about those that are not clear stands under “What to change”. Where a rule speaks of several parts, the line tells of the one that is worst off.',
    ),
    ...[...bySubject].flatMap(([subject, folds]) => [
      heading(3, subjects[subject] ?? capital(userText(subject.replaceAll('-', ' '), 40))),
      bullets(folds.map((fold) => line(fold, told))),
    ]),
  ];
  if (bySubject.size === 0) blocks.push(paragraph('No rule of the ruleset had anything to say.'));
  const spoke = new Set(told.audit.findings.map(({ rule }) => rule));
  const silent = new Set(
    [...told.audit.silent, ...told.audit.applied.switched_off]
      .map(({ rule }) => rule)
      .filter((rule) => !spoke.has(rule)),
  ).size;
  if (silent > 0)
    blocks.push(paragraph(`${counted(silent, 'rule')} did not apply; why is told under “What this rests on”.`));
  return { title: 'The checks', blocks, pictures: [] };
}

function line({ finding, abouts }: FoldedFinding, { units, audit: { shelf } }: Telling): Cell {
  const word = badge(finding.verdict);
  const used = finding.verdict === 'unknown' ? '' : usedBar(finding.used);
  const where = finding.verdict === 'clear' ? aboutInWords(finding.about) : aboutsInWords(abouts);
  const place =
    where === 'whole frame' || saysItself(finding.title, where) || subjectItself(finding) ? '' : ` (${where})`;
  return [
    finding.verdict === 'clear' ? word : strong(word),
    `${used === '' ? '' : `, ${used}`}: ${userText(finding.title)}${place}: ${valueAndLimit(finding, units, shelf.currency)}.`,
  ];
}

/** A rule of the subject as a whole, such as the cloth, need not name it. */
const subjectItself = ({ rule, about }: FoldedFinding['finding']): boolean => rule.startsWith(`${about}/`);

/** A title that names its element already need not be told where. */
const saysItself = (title: string, where: string): boolean => title.toLowerCase().includes(where.toLowerCase());
