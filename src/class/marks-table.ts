import type { Verdict } from '../findings/finding.js';
import { userText } from '../report/clean-text.js';
import { pageLink, paragraph, table, type Block, type Cell } from '../report/tree.js';
import type { ClassRow } from './class-row.js';
import { markLegend, markSign } from './marks.js';

/** So many plans stand side by side in one table: more columns do not fit on a sheet. */
const mostColumns = 24;

/**
 * Rule by plan: a sign where a rule spoke, its value on the plan's own page. Rules that are clear wherever they are
 * asked are told in one line.
 */
export function marksBlocks(rows: readonly ClassRow[], rules: readonly string[]): readonly Block[] {
  const verdictsOf = (rule: string): readonly Verdict[] => rows.flatMap(({ marks }) => marks.get(rule)?.verdict ?? []);
  const asked = rules.filter((rule) => verdictsOf(rule).length > 0);
  const telling = asked.filter((rule) => verdictsOf(rule).some((verdict) => verdict !== 'clear'));
  const clear = asked.filter((rule) => !telling.includes(rule));
  if (asked.length === 0) return [];
  const parts = Array.from({ length: Math.ceil(rows.length / mostColumns) }, (_, i) =>
    rows.slice(i * mostColumns, (i + 1) * mostColumns),
  );
  return [
    paragraph(`${markLegend} The numbers are those of the plans above; each leads to the plan’s own page.`),
    ...(telling.length === 0 ? [] : parts.map((some) => marksTable(some, telling))),
    ...(clear.length === 0
      ? []
      : [paragraph(`Clear in every plan that was asked: ${clear.map((rule) => userText(rule, 60)).join(', ')}.`)]),
  ];
}

function marksTable(rows: readonly ClassRow[], rules: readonly string[]): Block {
  const head = rows.map(({ no, page }) => ({ head: page === null ? String(no) : pageLink(String(no), page) }));
  const cells = rules.map((rule): readonly Cell[] => [
    userText(rule, 60),
    ...rows.map(({ marks }): Cell => {
      const mark = marks.get(rule);
      return mark === undefined ? '' : markSign[mark.verdict];
    }),
  ]);
  return table([{ head: 'Rule' }, ...head], cells);
}
