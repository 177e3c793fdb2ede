import { chanceInWords } from '../base/chance-words.js';
import { formatNumber } from '../base/units-format.js';
import { userText } from '../report/clean-text.js';
import { pageLink, paragraph, strong, table, type Block, type Cell, type Column, type Inline } from '../report/tree.js';
import { badge } from '../report/words/verdict.js';
import type { ClassFindings } from './class-findings.js';
import type { ClassRow, NotRead } from './class-row.js';
import { money } from '../report/words/cost.js';

/** Every file of the class in its order, whether it could be read or not. */
export function planTable(found: ClassFindings): readonly Block[] {
  const { rows, others, pooled_rows } = found;
  const columns = columnsOf(found);
  const lines = [
    ...rows.map((row, i) => ({ no: row.no, cells: columns.map(({ cell }) => cell(row, i)) })),
    ...others.map((other) => ({ no: other.no, cells: columns.map(({ blank }) => blank(other)) })),
  ];
  const many = rows.some(({ count }) => count > 1);
  return [
    table(
      columns,
      lines.sort((a, b) => a.no - b.no).map(({ cells }) => cells),
    ),
    paragraph(
      `${pooled_rows.length > 1 ? 'The number before a plan stands on its pieces too: 3-T is the top bar of plan 3. ' : ''}“Chance of a lifted corner”: how many frames built like this will stand off the wall at one corner by more than the ruleset allows. “Cost alone”: everything for this plan${many ? ', all its frames' : ''}, its boards bought for it alone. “Its share”: what it pays when all that may be cut is bought together: boards shared by the length of the pieces, cloth by its area, everything else by what each uses, and what is left over in the same way.${found.points ? ' “Points”: all of a rule’s points where it is clear, half where it is a caution, none where it is unknown or a stop.' : ''}`,
    ),
    ...sameNames(rows),
  ];
}

interface PlanColumn extends Column {
  readonly cell: (row: ClassRow, i: number) => Cell;
  readonly blank: (other: NotRead) => Cell;
}

function columnsOf({ rows, pooled_rows, shares, points, currency }: ClassFindings): readonly PlanColumn[] {
  const place = new Map(pooled_rows.map((row, i) => [row, i]));
  const share = (i: number): string => (place.has(i) ? money(shares[place.get(i)!] ?? null, currency) : '');
  const none = (): Cell => '';
  const named = rows.some(({ student }) => student !== null);
  return [
    {
      head: 'Plan',
      cell: ({ no, name, count, page }) => [
        strong(`${no}.`),
        ' ',
        linked(`${userText(name, 60)}${count > 1 ? `, ${count} frames` : ''}`, page),
      ],
      blank: ({ no, file, page }) => [strong(`${no}.`), ' ', linked(userText(file, 50), page)],
    },
    ...(named
      ? [
          {
            head: 'Student',
            cell: ({ student }: ClassRow) => (student === null ? '' : userText(student, 60)),
            blank: none,
          },
        ]
      : []),
    {
      head: 'Verdict',
      cell: ({ verdict }) => [strong(badge(verdict))],
      blank: ({ kind }) => (kind === 'beside' ? 'No plan' : [strong('Not read')]),
    },
    { head: 'Worst finding', cell: worstInWords, blank: ({ why }) => userText(why, 300) },
    {
      head: 'Chance of a lifted corner',
      cell: ({ lift_chance }) => (lift_chance === null ? 'unknown' : chanceInWords(lift_chance)),
      blank: none,
    },
    { head: 'Cost alone', align: 'right', cell: ({ cost }) => money(cost, currency), blank: none },
    { head: 'Its share', align: 'right', cell: (_, i) => share(i), blank: none },
    ...(points
      ? [
          {
            head: 'Points',
            align: 'right' as const,
            cell: ({ points: earned }: ClassRow) => pointsInWords(earned),
            blank: none,
          },
        ]
      : []),
  ];
}

/** A name that leads to the page of its own, where there is one. */
const linked = (name: string, page: string | null): Inline => (page === null ? name : pageLink(name, page));

/** `7.5 of 10` */
export const pointsInWords = (points: ClassRow['points']): string =>
  points === null ? '' : `${formatNumber(points.earned, 4)} of ${formatNumber(points.of, 4)}`;

function worstInWords({ findings }: ClassRow): string {
  const [worst] = findings;
  if (worst === undefined) return 'Nothing: every check that applies is met.';
  return `${worst.say}${findings.length > 1 ? ` And ${findings.length - 1} more.` : ''}`;
}

/** Plans of one name, which a page cannot tell apart by it. */
function sameNames(rows: readonly ClassRow[]): readonly Block[] {
  const byName = new Map<string, ClassRow[]>();
  for (const row of rows) byName.set(row.name, [...(byName.get(row.name) ?? []), row]);
  return [...byName]
    .filter(([, some]) => some.length > 1)
    .map(([name, some]) =>
      paragraph(
        strong('One name, several plans:'),
        ` “${userText(name, 60)}” is the name in ${some.map(({ no, file }) => `${userText(file, 100)} (${no})`).join(' and ')}.`,
      ),
    );
}
