import type { Report } from '../report/compose.js';
import { document, heading, paragraph, setApart, strong, type Block } from '../report/tree.js';
import { appliedInWords, relaxedBlocks } from '../report/words/applied.js';
import type { ClassFindings } from './class-findings.js';
import { classSentence, whoIsIn } from './class-page.js';
import { chalkBlocks, type PlanSheet } from './plan-sheet.js';
import { planTable } from './plan-table.js';
import { buyingBlocks, cutListBlocks, numberBlocks, sawBlocks, troubleBlocks } from './pooled-blocks.js';
import { boardBlocks, rollBlocks } from './pooled-pictures.js';

/** Everything to print for a class: first a sheet for each plan, then the teacher's pages. */
export function composeClassPack(found: ClassFindings, sheets: readonly PlanSheet[]): Report {
  const { pooled, pooled_rows } = found;
  const places = new Map(pooled_rows.map((row, place) => [row, place]));
  const cutting = (row: number): readonly Block[] => {
    const place = places.get(row);
    return pooled === null || place === undefined ? [] : chalkBlocks(pooled, place);
  };
  const boards = pooled === null ? { blocks: [], pictures: [] } : boardBlocks(pooled, 'pack-');
  const rolls = pooled === null ? { blocks: [], pictures: [] } : rollBlocks(pooled, 'pack-');
  const part = (title: string, blocks: readonly Block[]): readonly Block[] =>
    blocks.length === 0 ? [] : [heading(2, title), ...blocks];
  return {
    tree: document([
      heading(1, 'Class pack'),
      setApart(paragraph(strong(classSentence(found.roll_up)))),
      paragraph(
        `Judged by ruleset ${appliedInWords(found.applied)}. A sheet for each plan, then the pages for the teacher.`,
      ),
      ...relaxedBlocks(found.applied),
      ...sheets.flatMap(({ row, head, foot }) => [...head, ...cutting(row), ...foot]),
      ...part('For the teacher: every file', planTable(found)),
      ...part(
        'For the teacher: what to buy',
        pooled === null ? whoIsIn(found) : [...whoIsIn(found), ...troubleBlocks(pooled), ...buyingBlocks(pooled)],
      ),
      ...part(
        'For the teacher: the boards',
        pooled === null ? [] : [...numberBlocks(pooled), ...cutListBlocks(pooled), ...boards.blocks],
      ),
      ...part('For the teacher: the cloth on the roll', rolls.blocks),
      ...part('For the teacher: saw by saw', pooled === null ? [] : sawBlocks(pooled, found.saw)),
    ]),
    pictures: [...boards.pictures, ...rolls.pictures],
  };
}
