import { countVerdicts, foldFindings } from '../findings/summary.js';
import type { Audit } from '../report/audit-view.js';
import { userText } from '../report/clean-text.js';
import { benchSheetSection } from '../report/sections/bench-sheet.js';
import { pieceNotes, pieceRows } from '../report/sections/piece-rows.js';
import { telling } from '../report/telling.js';
import { bullets, heading, paragraph, setApart, steps, strong, table, type Block, type Cell } from '../report/tree.js';
import { aboutsInWords } from '../report/words/about.js';
import { barsInWords, cornersInWords } from '../report/words/build.js';
import { verdictSentence, verdictWord } from '../report/words/verdict.js';
import { markingOrder } from '../cutting/marking.js';

/** So many changes stand on a plan's sheet of the pack; its own page has all. */
const mostChanges = 3;

/** One plan of a class on one sheet of paper: verdict, up to three things to change, what to cut, what to chalk on the wood, and the blanks of the bench. */
export function planSheet(audit: Audit, title: string): readonly Block[] {
  const told = telling(audit);
  const { plan } = audit;
  const folded = foldFindings(audit.findings);
  const wrong = folded.filter(({ finding }) => finding.verdict !== 'clear' && finding.do.length > 0);
  const mayCut = audit.verdict === 'clear' || audit.verdict === 'caution';
  return [
    heading(2, title),
    setApart(paragraph(strong(verdictSentence(audit.verdict, countVerdicts(folded.map(({ finding }) => finding)))))),
    paragraph(`${plan.student === null ? '' : `${userText(plan.student, 60)}. `}Face ${told.length(plan.face.width_mm)} wide, ${told.length(plan.face.height_mm)} high; bars: ${barsInWords(plan)}; corners: ${cornersInWords(plan)}. Diagonal ${told.said('frame.diagonal_mm')}.`),
    ...(wrong.length === 0 ? [] : [
      heading(3, 'What to change first'),
      bullets(wrong.slice(0, mostChanges).map(({ finding, abouts }): Cell => [strong(verdictWord[finding.verdict]), `, ${aboutsInWords(abouts)}: ${finding.say} ${finding.do[0] ?? ''}`])),
      ...(wrong.length > mostChanges ? [paragraph(`${wrong.length - mostChanges} more on the plan’s own page.`)] : []),
    ]),
    ...(mayCut ? cutting(audit) : [paragraph(strong('Nothing to cut yet. '), 'What to cut is printed once the plan may be cut.')]),
    ...(mayCut ? [heading(3, 'Bench sheet'), ...benchSheetSection(told).blocks.filter(({ type }) => type === 'table')] : []),
  ];
}

/** The pieces with the letters to chalk on them, and the order at the saw. */
function cutting(audit: Audit): readonly Block[] {
  const told = telling(audit);
  const notes = pieceNotes(told, audit.cut);
  const order = markingOrder(audit.cut);
  const saw = [...order.tests.map(({ words }) => words), ...order.steps.map(({ words }) => words), ...order.later.map(({ words }) => `When the glue of the blanks has set: ${words}`)];
  return [
    heading(3, 'Cut list, and what to chalk on each piece'),
    table([{ head: 'Chalk on it' }, { head: 'Number', align: 'right' }, { head: 'Stock' }, { head: 'Cut to', align: 'right' }, { head: 'Short side', align: 'right' }, { head: 'Ends' }, { head: 'Cut' }], pieceRows(told, audit.cut).map((cells) => [...cells, '☐'])),
    ...(notes.length === 0 ? [] : [bullets(notes)]),
    ...(saw.length === 0 ? [] : [heading(3, 'Mark and saw in this order'), steps(saw)]),
  ];
}
