import { formatLength } from '../base/units-format.js';
import { userText } from '../report/clean-text.js';
import { paragraph, strong, table, type Block, type Cell } from '../report/tree.js';
import { money as inMoney } from '../report/words/cost.js';
import { besidesColumns, besidesRows, boardColumns, boardRow, orderBlocks, pricesOf } from '../report/words/supply.js';
import type { Shop } from '../shop/shop.js';
import type { Money } from './money.js';

/** Cost of each frame, of the tools shared out, whether making pays, and what to buy for the term. */
export function moneyBlocks(money: Money, shop: Shop): readonly Block[] {
  const { term, frames, count, tools, currency } = money;
  const { units } = term.cut;
  const prices = pricesOf(term);
  const said = (amount: number | null): string => inMoney(amount, currency);
  const compared = shop.compare_with;
  const rows = frames.map(({ plan, material, bought }): readonly Cell[] => [
    `${userText(plan.name, 80)}${plan.count > 1 ? `, each of ${plan.count}` : ''}`,
    said(material),
    ...(tools > 0 ? [said(material === null ? null : material + tools / count)] : []),
    ...(compared === null ? [] : [said(bought)]),
  ]);
  return [
    table(
      [
        { head: 'Frame' },
        { head: 'Material', align: 'right' },
        ...(tools > 0 ? [{ head: 'With its share of the tools', align: 'right' as const }] : []),
        ...(compared === null ? [] : [{ head: 'Bought', align: 'right' as const }]),
      ],
      rows,
    ),
    ...(term.reason === null ? [] : [paragraph(`The cost is unknown. ${userText(term.reason, 300)}`)]),
    paragraph(
      `Material is the share of what all frames take bought together, whole packs with their rests: boards shared by the length of the pieces, cloth by its area, everything else by what each uses.${tools > 0 ? ` The tools come to ${said(tools)}, ${said(tools / count)} a frame.` : ''}`,
    ),
    ...(compared === null
      ? []
      : [
          paragraph(
            strong(payWords(money, said)),
            ` A bought frame is taken to cost ${said(compared.price)} at ${formatLength(compared.width_mm, units)} by ${formatLength(compared.height_mm, units)}, as the file says, and elsewhere in proportion to width and height together, as bars and edges are: a guess, best replaced by the price of your own size. Work and paint are not counted.`,
          ),
        ]),
    paragraph(strong('What the term takes')),
    ...orderBlocks(term, units),
    ...(term.boards.length === 0
      ? []
      : [
          table(
            boardColumns,
            term.boards.map((line) => boardRow(line, units, prices)),
          ),
        ]),
    table(besidesColumns(term), besidesRows(term, units, prices)),
    ...(prices.remark === '' ? [] : [paragraph(prices.remark)]),
  ];
}

/** One line: whether and when making pays. */
export function payWords({ saved, pays_from, count, tools }: Money, said: (amount: number | null) => string): string {
  if (saved === null) return 'Whether making pays cannot be told: a cost is not known.';
  if (pays_from === null)
    return `Making does not pay: the average frame costs ${said(-saved)} more than a bought one, before tools.`;
  if (tools === 0)
    return `Making pays from the first frame: the average one costs ${said(saved)} less than a bought one.`;
  return pays_from <= count
    ? `Making pays from frame ${pays_from} on: the average one costs ${said(saved)} less than a bought one, and you plan ${count}.`
    : `Making pays only from frame ${pays_from} on, and you plan ${count}: the average one costs ${said(saved)} less than a bought one.`;
}
