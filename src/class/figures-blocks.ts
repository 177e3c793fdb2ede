import { chanceInWords } from '../base/chance-words.js';
import { series } from '../base/series.js';
import type { UnitSystem } from '../base/names.js';
import { formatQuantity } from '../base/units-format.js';
import { userText } from '../report/clean-text.js';
import { bullets, paragraph, strong, table, type Block, type Cell } from '../report/tree.js';
import { figures, usualChoices, type UsualChoice } from './choices.js';
import type { ClassRow } from './class-row.js';
import { spreadOf } from './spread.js';

/** How the class lies in figures, and who departs from its usual choices; nothing for a single plan. */
export function figuresBlocks(rows: readonly ClassRow[], currency: string): readonly Block[] {
  if (rows.length < 2) return [];
  const units: UnitSystem = rows.every((row) => row.units === 'inch') ? 'inch' : 'metric';
  const lines = figures.flatMap(({ words, unit }, i): (readonly Cell[])[] => {
    const spread = spreadOf(rows.map((row) => row.figures[i] ?? null));
    if (spread === null) return [];
    const said = (value: number): string =>
      unit === 'chance'
        ? chanceInWords(value)
        : formatQuantity(
            unit === 'mm' && units === 'metric' ? Math.round(value) : value,
            unit,
            units,
            userText(currency, 8),
          );
    const whose = ({ value, at }: { readonly value: number; readonly at: number }): string =>
      `${said(value)} (${rows[at]!.no})`;
    const missing = rows.length - spread.known;
    return [
      [
        `${words}${missing === 0 ? '' : `, unknown in ${missing}`}`,
        said(spread.median),
        `${said(spread.low)} to ${said(spread.high)}`,
        whose(spread.least),
        whose(spread.most),
      ],
    ];
  });
  const usual = usualChoices(rows);
  return [
    table(
      [
        { head: 'In this class' },
        { head: 'Median' },
        { head: 'Middle half' },
        { head: 'Least (plan)' },
        { head: 'Most (plan)' },
      ],
      lines,
    ),
    ...(usual.length === 0
      ? []
      : [
          paragraph('What most chose alike, and who chose otherwise:'),
          bullets(
            usual.map(({ what, usual: word, plans, others }): Cell => [
              strong(`${what}: ${userText(word, 60)}`),
              ` in ${plans} of ${plans + others.length}; ${departing(others, rows)}.`,
            ]),
          ),
        ]),
  ];
}

/** `edge in plans 2, 3 and 4`, one for each other choice, in the order of the first plan that made it. */
function departing(others: UsualChoice['others'], rows: readonly ClassRow[]): string {
  return [...new Set(others.map(({ chose }) => chose))]
    .map((chose) => {
      const numbers = others.filter((one) => one.chose === chose).map(({ row }) => String(rows[row]!.no));
      return `${userText(chose, 60)} in ${numbers.length === 1 ? 'plan' : 'plans'} ${series(numbers)}`;
    })
    .join('; ');
}
