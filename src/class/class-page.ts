import type { Problem } from '../base/problem.js';
import { chanceInWords } from '../base/chance-words.js';
import { planLetter } from '../cutting/pool.js';
import type { Applied } from '../findings/applied.js';
import type { Verdict } from '../findings/finding.js';
import { userText } from '../report/clean-text.js';
import type { Report } from '../report/compose.js';
import { bullets, document, heading, paragraph, setApart, strong, table, type Block, type Cell } from '../report/tree.js';
import { appliedInWords, relaxedBlocks } from '../report/words/applied.js';
import { counted, verdictWord } from '../report/words/verdict.js';
import { measuredInWords } from '../shelf/measured-words.js';
import type { ClassRow } from './class-row.js';
import type { Pooled } from './pooled.js';
import { buyingBlocks, cutListBlocks, money, sawBlocks, troubleBlocks } from './pooled-blocks.js';
import { boardBlocks, rollBlocks } from './pooled-pictures.js';
import type { CommonFinding, RollUp } from './roll-up.js';

/** Everything a page about many plans speaks of. */
export interface ClassFindings {
  readonly rows: readonly ClassRow[];
  readonly roll_up: RollUp;
  /** Problems of the plans that could not be read. */
  readonly broken: readonly Problem[];
  /** What the plans take that are neither stopped nor unknown; null when there are none. */
  readonly pooled: Pooled | null;
  /** Positions among the rows of the plans that were pooled, in the order of their letters. */
  readonly pooled_rows: readonly number[];
  /** The ruleset all were judged by, and what it relaxes. */
  readonly applied: Applied;
  readonly shelf_name: string;
  /** The shelf's numbers that the studio measured itself, see `Shelf.measured`. */
  readonly measured: readonly string[];
  readonly currency: string;
  readonly seed: number;
  readonly samples: number;
}

/** Plans whose frames may be cut, and therefore bought for: clear or caution. */
export const mayBeCut = (verdict: Verdict): boolean => verdict === 'clear' || verdict === 'caution';

/** The page for the teacher: how every plan stands, what most got wrong, one buying list, one cutting plan. */
export function composeClassPage(found: ClassFindings): Report {
  const boards = found.pooled === null ? { blocks: [], pictures: [] } : boardBlocks(found.pooled, 'class-');
  const rolls = found.pooled === null ? { blocks: [], pictures: [] } : rollBlocks(found.pooled, 'class-');
  const part = (title: string, blocks: readonly Block[]): readonly Block[] => (blocks.length === 0 ? [] : [heading(2, title), ...blocks]);
  return {
    tree: document([
      heading(1, 'The class at a glance'),
      setApart(paragraph(strong(classSentence(found.roll_up)))),
      ...relaxedBlocks(found.applied),
      ...part('Plan by plan', planTable(found)),
      ...part('Plans that could not be read', brokenBlocks(found.broken)),
      ...part('What most of the class got wrong', commonBlocks(found)),
      ...part('What to buy for all', [...whoIsIn(found), ...(found.pooled === null ? [] : [...troubleBlocks(found.pooled), ...buyingBlocks(found.pooled)])]),
      ...part('What to cut', found.pooled === null ? [] : [...cutListBlocks(found.pooled), ...boards.blocks, ...sawBlocks(found.pooled)]),
      ...part('The cloth on the roll', rolls.blocks),
      ...part('What this rests on', [paragraph(`Ruleset ${appliedInWords(found.applied)}; shelf “${userText(found.shelf_name)}”.${found.measured.length === 0 ? '' : ` Measured by the studio itself: ${userText(measuredInWords(found.measured), 600)}.`} Sampling with seed ${found.seed}, ${found.samples} samples for each plan. Each plan’s own page says what was assumed and left out.`)]),
    ]),
    pictures: [...boards.pictures, ...rolls.pictures],
  };
}

/** The class in one sentence. */
export function classSentence({ plans, broken, verdicts }: RollUp): string {
  const parts = [
    ...(verdicts.clear > 0 ? [`${verdicts.clear} clear`] : []),
    ...(verdicts.caution > 0 ? [`${verdicts.caution} to be cut with care`] : []),
    ...(verdicts.unknown > 0 ? [`${verdicts.unknown} not cleared because something is unknown`] : []),
    ...(verdicts.stop > 0 ? [`${verdicts.stop} not to be cut yet`] : []),
  ];
  return `${counted(plans, 'plan')}: ${parts.join(', ')}${broken > 0 ? `; ${counted(broken, 'more file')} could not be read` : ''}.`;
}

function planTable({ rows, pooled_rows, currency }: ClassFindings): readonly Block[] {
  const letters = new Map(pooled_rows.map((row, i) => [row, planLetter(i)]));
  const cells = rows.map((row, i): readonly Cell[] => [
    pooled_rows.length > 1 ? (letters.get(i) ?? '') : '',
    `${userText(row.name, 60)}${row.count > 1 ? `, ${row.count} frames` : ''}`,
    [strong(verdictWord[row.verdict])],
    worstInWords(row),
    row.lift_chance === null ? 'unknown' : chanceInWords(row.lift_chance),
    money(row.cost, currency),
    userText(row.page ?? row.file, 100),
  ]);
  return [
    table([{ head: 'Letter' }, { head: 'Plan' }, { head: 'Verdict' }, { head: 'Worst finding' }, { head: 'Chance of a lifted corner' }, { head: 'Cost alone', align: 'right' }, { head: 'Its page' }], cells),
    paragraph('“Chance of a lifted corner”: how many frames built like this will stand off the wall at one corner by more than the ruleset allows. “Cost alone”: everything for this plan, its boards bought for it alone.'),
  ];
}

function worstInWords({ findings }: ClassRow): string {
  const [worst] = findings;
  if (worst === undefined) return 'Nothing: every check that applies is met.';
  return `${worst.say}${findings.length > 1 ? ` And ${findings.length - 1} more.` : ''}`;
}

function brokenBlocks(broken: readonly Problem[]): readonly Block[] {
  return broken.length === 0 ? [] : [bullets(broken.map(({ file, line, column, path, found, allowed, hint }): Cell => `${userText(line > 0 ? `${file}:${line}:${column}` : file, 120)}${path === '' ? '' : `, ${userText(path, 60)}`}: found ${userText(found, 200)}; allowed: ${userText(allowed, 300)}. ${userText(hint, 300)}`))];
}

function commonBlocks({ rows, roll_up }: ClassFindings): readonly Block[] {
  const [first] = roll_up.common;
  if (first === undefined) return [paragraph('Nothing: every plan meets every check that applies to it.')];
  const shared = roll_up.common.filter(({ plans }) => plans > 1);
  if (shared.length === 0) return [paragraph('No two plans share a finding.')];
  const single = roll_up.common.length - shared.length;
  return [
    bullets(shared.map((one): Cell => [strong(`${one.plans} of ${roll_up.plans}`), ` (${countsInWords(one)}), ${userText(one.rule, 60)}. ${exampleInWords(one, rows)} ${one.example.do.join(' ')}`])),
    ...(single > 0 ? [paragraph(`${single === 1 ? 'One more finding concerns' : `${single} more findings concern`} a single plan each; its own page has it.`)] : []),
  ];
}

function countsInWords({ stops, unknowns, cautions }: CommonFinding): string {
  return [...(stops > 0 ? [`${stops} stop`] : []), ...(unknowns > 0 ? [`${unknowns} unknown`] : []), ...(cautions > 0 ? [`${cautions} caution`] : [])].join(', ');
}

const exampleInWords = ({ example, example_row }: CommonFinding, rows: readonly ClassRow[]): string => `In “${userText(rows[example_row]?.name ?? '', 60)}”: ${example.say}`;

function whoIsIn({ rows, pooled_rows }: ClassFindings): readonly Block[] {
  const out = rows.flatMap(({ name }, i) => (pooled_rows.includes(i) ? [] : [`“${userText(name, 60)}”`]));
  const waiting = out.length === 0 ? '' : ` Not in it, because ${out.length === 1 ? 'it is' : 'they are'} not cleared for cutting: ${out.join(', ')}.`;
  if (pooled_rows.length === 0) return [paragraph('No plan is cleared for cutting yet, so there is nothing to buy.')];
  return [paragraph(`One list for the ${counted(pooled_rows.length, 'plan')} that may be cut.${waiting}`)];
}
