import type { Report } from '../report/compose.js';
import type { Picture } from '../report/drawings/picture.js';
import { linkerTo, titlesOf } from '../report/linked-parts.js';
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
  const { parts, pictures } = packOf(found);
  return { tree: document([...parts(sheets)].flat()), pictures };
}

/** The pack part by part, so that the sheets of thousands of plans need not be there at the same time. */
export interface PackInParts {
  /** First what stands before all parts, then the blocks of each part, its heading first. */
  readonly parts: (sheets: Iterable<PlanSheet>) => Iterable<readonly Block[]>;
  readonly pictures: readonly Picture[];
}

/** The same with the links of the whole document in each part. */
export function composePackInParts(found: ClassFindings, sheets: () => Iterable<PlanSheet>): PackInParts {
  const { parts, pictures } = packOf(found);
  const titles: string[] = [];
  for (const part of parts(sheets())) titles.push(...titlesOf(part.slice(0, 1)));
  const link = linkerTo(titles);
  return {
    *parts(some) {
      for (const part of parts(some)) yield link(part);
    },
    pictures,
  };
}

function packOf(found: ClassFindings): PackInParts {
  const { pooled, pooled_rows } = found;
  const places = new Map(pooled_rows.map((row, place) => [row, place]));
  const cutting = (row: number): readonly Block[] => {
    const place = places.get(row);
    return pooled === null || place === undefined ? [] : chalkBlocks(pooled, place);
  };
  const boards = pooled === null ? { blocks: [], pictures: [] } : boardBlocks(pooled, 'pack-');
  const rolls = pooled === null ? { blocks: [], pictures: [] } : rollBlocks(pooled, 'pack-');
  const teacher: readonly (readonly [string, readonly Block[]])[] = [
    ['every file', planTable(found)],
    [
      'what to buy',
      pooled === null ? whoIsIn(found) : [...whoIsIn(found), ...troubleBlocks(pooled), ...buyingBlocks(pooled)],
    ],
    ['the boards', pooled === null ? [] : [...numberBlocks(pooled), ...cutListBlocks(pooled), ...boards.blocks]],
    ['the cloth on the roll', rolls.blocks],
    ['saw by saw', pooled === null ? [] : sawBlocks(pooled, found.saw)],
  ];
  return {
    *parts(sheets) {
      yield [
        heading(1, 'Class pack'),
        setApart(paragraph(strong(classSentence(found.roll_up)))),
        paragraph(
          `Judged by ruleset ${appliedInWords(found.applied)}. A sheet for each plan, then the pages for the teacher.`,
        ),
        ...relaxedBlocks(found.applied),
      ];
      for (const { row, head, foot } of sheets) yield [...head, ...cutting(row), ...foot];
      for (const [title, blocks] of teacher)
        if (blocks.length > 0) yield [heading(2, `For the teacher: ${title}`), ...blocks];
    },
    pictures: [...boards.pictures, ...rolls.pictures],
  };
}
