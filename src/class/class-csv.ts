import { toCsv } from '../cutting/csv.js';
import { verdictWord } from '../report/words/verdict.js';
import type { ClassFindings } from './class-findings.js';
import type { ClassRow, NotRead } from './class-row.js';
import { valueInWords } from './marks.js';

/** Columns left empty for the teacher. */
const forTheTeacher = ['mark', 'remark'] as const;

type Field = string | number;

/**
 * The class as a table for a spreadsheet: a heading, one row a file in their order, then a column for each rule with
 * value and verdict, and blanks for the teacher.
 */
export function classCsv(found: ClassFindings): string {
  const { rows, others, pooled_rows, shares, rules, points } = found;
  const named = rows.some(({ student }) => student !== null);
  const head = [
    'no',
    'file',
    ...(named ? ['student'] : []),
    'plan',
    'frames',
    'verdict',
    'not clear',
    ...(points ? ['points', 'of points'] : []),
    'chance of a lifted corner',
    'cost alone',
    'its share',
    'currency',
    'remarks of the reader',
    ...rules,
    ...forTheTeacher,
  ];
  const places = new Map(pooled_rows.map((pooled, place) => [pooled, place]));
  const planLine = (row: ClassRow, i: number): readonly Field[] => {
    const place = places.get(i);
    return [
      row.no,
      row.file,
      ...(named ? [row.student ?? ''] : []),
      row.name,
      row.count,
      verdictWord[row.verdict].toLowerCase(),
      row.findings.length,
      ...(points ? [amount(row.points?.earned), amount(row.points?.of)] : []),
      row.lift_chance === null ? 'unknown' : valueInWords(row.lift_chance, 'chance', row.units),
      amount(row.cost, 'unknown'),
      place === undefined ? '' : amount(shares[place], 'unknown'),
      found.currency,
      '',
      ...rules.map((rule) => markInWords(row, rule)),
      ...forTheTeacher.map(() => ''),
    ];
  };
  const otherLine = ({ no, file, kind, why }: NotRead): readonly Field[] => {
    const verdict = kind === 'beside' ? 'no plan' : 'not read';
    const start = [
      no,
      file,
      ...(named ? [''] : []),
      '',
      '',
      verdict,
      '',
      ...(points ? ['', ''] : []),
      '',
      '',
      '',
      '',
      why,
    ];
    return [...start, ...Array.from({ length: head.length - start.length }, () => '')];
  };
  const lines = [
    ...rows.map((row, i) => ({ no: row.no, line: planLine(row, i) })),
    ...others.map((other) => ({ no: other.no, line: otherLine(other) })),
  ];
  return toCsv([head, ...lines.sort((a, b) => a.no - b.no).map(({ line }) => line)]);
}

/** `caution 3.1 mm`, `unknown`, or nothing where the rule was not asked of the plan. */
function markInWords({ marks }: ClassRow, rule: string): string {
  const mark = marks.get(rule);
  return mark === undefined ? '' : `${mark.verdict}${mark.value === '' ? '' : ` ${mark.value}`}`;
}

const amount = (value: number | null | undefined, otherwise = ''): Field =>
  value == null ? otherwise : Number(value.toPrecision(6));
