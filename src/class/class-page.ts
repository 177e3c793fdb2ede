import type { Verdict } from '../findings/finding.js';
import { userText } from '../report/clean-text.js';
import type { Report } from '../report/compose.js';
import { bullets, document, heading, paragraph, setApart, strong, type Block, type Cell } from '../report/tree.js';
import { appliedInWords, relaxedBlocks } from '../report/words/applied.js';
import { samplingInWords } from '../report/words/sampling.js';
import { counted } from '../report/words/verdict.js';
import { measuredInWords } from '../shelf/measured-words.js';
import type { ClassFindings } from './class-findings.js';
import type { ClassRow } from './class-row.js';
import { figuresBlocks } from './figures-blocks.js';
import { marksBlocks } from './marks-table.js';
import { problemBlocks } from './not-read-page.js';
import { planTable } from './plan-table.js';
import { buyingBlocks, cutListBlocks, sawBlocks, troubleBlocks } from './pooled-blocks.js';
import { boardBlocks, rollBlocks } from './pooled-pictures.js';
import type { CommonFinding, RollUp } from './roll-up.js';

/** Plans whose frames may be cut, and therefore bought for: clear or caution. */
export const mayBeCut = (verdict: Verdict): boolean => verdict === 'clear' || verdict === 'caution';

/** The page for the teacher: how every plan stands, what most got wrong, one buying list, one cutting plan. */
export function composeClassPage(found: ClassFindings): Report {
  const boards = found.pooled === null ? { blocks: [], pictures: [] } : boardBlocks(found.pooled, 'class-');
  const rolls = found.pooled === null ? { blocks: [], pictures: [] } : rollBlocks(found.pooled, 'class-');
  const part = (title: string, blocks: readonly Block[]): readonly Block[] =>
    blocks.length === 0 ? [] : [heading(2, title), ...blocks];
  return {
    tree: document([
      heading(1, 'The class at a glance'),
      setApart(paragraph(strong(classSentence(found.roll_up)))),
      paragraph(`Judged by ruleset ${appliedInWords(found.applied)}.`),
      ...relaxedBlocks(found.applied),
      ...part('Plan by plan', planTable(found)),
      ...part('Plans that could not be read', problemBlocks(found.broken)),
      ...part('Rule by rule', marksBlocks(found.rows, found.rules)),
      ...part('What went wrong most often', commonBlocks(found)),
      ...part('The class in figures', figuresBlocks(found.rows, found.currency)),
      ...part('What to buy for all', [
        ...whoIsIn(found),
        ...(found.pooled === null ? [] : [...troubleBlocks(found.pooled), ...buyingBlocks(found.pooled)]),
      ]),
      ...part(
        'What to cut',
        found.pooled === null
          ? []
          : [...cutListBlocks(found.pooled), ...boards.blocks, ...sawBlocks(found.pooled, found.saw)],
      ),
      ...part('The cloth on the roll', rolls.blocks),
      ...part('What this rests on', [
        paragraph(
          `Ruleset ${appliedInWords(found.applied)}; shelf “${userText(found.shelf_name)}”.${found.measured.length === 0 ? '' : ` Measured by the studio itself: ${userText(measuredInWords(found.measured), 600)}.`} ${samplingInWords(found)} Each plan’s own page says what was assumed and left out.`,
        ),
      ]),
    ]),
    pictures: [...boards.pictures, ...rolls.pictures],
  };
}

/** The class in one sentence. */
export function classSentence({ plans, broken, beside, verdicts }: RollUp): string {
  const parts = [
    ...(verdicts.clear > 0 ? [`${verdicts.clear} clear`] : []),
    ...(verdicts.caution > 0 ? [`${verdicts.caution} to be cut with care`] : []),
    ...(verdicts.unknown > 0 ? [`${verdicts.unknown} not cleared because something is unknown`] : []),
    ...(verdicts.stop > 0 ? [`${verdicts.stop} not to be cut yet`] : []),
  ];
  const read = parts.length === 0 ? 'No plan could be read' : `${counted(plans, 'plan')}: ${parts.join(', ')}`;
  const not =
    broken === 0 ? '' : `; ${plans === 0 ? counted(broken, 'file') : counted(broken, 'more file')} could not be read`;
  return `${read}${not}${beside === 0 ? '' : `; ${counted(beside, 'file')} beside them ${beside === 1 ? 'is' : 'are'} no plan`}.`;
}

function commonBlocks({ rows, roll_up }: ClassFindings): readonly Block[] {
  const [first] = roll_up.common;
  if (rows.length === 0) return [];
  if (first === undefined) return [paragraph('Nothing: every plan meets every check that applies to it.')];
  const shared = roll_up.common.filter(({ plans }) => plans > 1);
  if (shared.length === 0) return [paragraph('No two plans share a finding.')];
  const single = roll_up.common.length - shared.length;
  return [
    bullets(
      shared.map((one): Cell => [
        strong(`${one.plans} of ${roll_up.plans}`),
        ` (${countsInWords(one)}): ${userText(one.example.title)} (${userText(one.rule, 60)}). ${exampleInWords(one, rows)} ${one.example.do.join(' ')}`,
      ]),
    ),
    ...(single > 0
      ? [
          paragraph(
            `${single === 1 ? 'One more finding concerns' : `${single} more findings concern`} a single plan each; its own page has it.`,
          ),
        ]
      : []),
  ];
}

function countsInWords({ stops, unknowns, cautions }: CommonFinding): string {
  return [
    ...(stops > 0 ? [`${stops} stop`] : []),
    ...(unknowns > 0 ? [`${unknowns} unknown`] : []),
    ...(cautions > 0 ? [`${cautions} caution`] : []),
  ].join(', ');
}

const exampleInWords = ({ example, example_row }: CommonFinding, rows: readonly ClassRow[]): string =>
  `In “${userText(rows[example_row]?.name ?? '', 60)}”: ${example.say}`;

/** Who is in the buying list and who is not, and why. */
export function whoIsIn({ rows, others, pooled_rows }: ClassFindings): readonly Block[] {
  const pooled = new Set(pooled_rows);
  const out = rows.flatMap(({ name }, i) => (pooled.has(i) ? [] : [`“${userText(name, 60)}”`]));
  const unread = others.filter(({ kind }) => kind === 'not-read').map(({ file }) => userText(file, 100));
  const they = (list: readonly unknown[]): string => (list.length === 1 ? 'it is' : 'they are');
  const waiting =
    out.length === 0 ? '' : ` Not in it, because ${they(out)} not cleared for cutting: ${out.join(', ')}.`;
  const missing =
    unread.length === 0
      ? ''
      : ` Not in it, because ${unread.length === 1 ? 'it' : 'they'} could not be read: ${unread.join(', ')}.`;
  const start =
    pooled_rows.length === 0
      ? 'No plan is cleared for cutting yet, so there is nothing to buy.'
      : `One list for the ${counted(pooled_rows.length, 'plan')} that may be cut.`;
  return [paragraph(`${start}${pooled_rows.length === 0 ? '' : waiting}${missing}`)];
}
