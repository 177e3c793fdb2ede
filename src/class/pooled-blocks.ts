import type { UnitSystem } from '../base/names.js';
import { formatLength, formatShare } from '../base/units-format.js';
import { piecesAssemble } from '../cutting/pieces/assemble.js';
import type { SawAtHand } from '../base/saw.js';
import { lipStrips } from '../cutting/lip-strips.js';
import { markingOrder } from '../cutting/marking.js';
import { tagOrder } from '../cutting/pieces/pool.js';
import type { CutPlan, TooLong } from '../cutting/boards/purchase.js';
import { userText } from '../report/clean-text.js';
import { stockNames } from '../report/words/stock.js';
import { bullets, heading, paragraph, setApart, steps, strong, table, type Block, type Cell } from '../report/tree.js';
import type { Supplies } from '../cost/supplies.js';
import {
  besidesColumns,
  besidesRows,
  boardColumns,
  boardRow,
  orderBlocks,
  pricesOf,
  sheetsInWords,
  type Prices,
} from '../report/words/supply.js';
import type { Pooled } from './pooled.js';

/** Which number stands for which plan; nothing for a single one. */
export function numberBlocks({ plans, numbers }: Pooled): readonly Block[] {
  if (plans.length < 2) return [];
  return [
    bullets(
      plans.map((plan, i): Cell => [
        strong(String(numbers[i])),
        ` ${userText(plan.name)}${plan.count > 1 ? `, ${plan.count} frames` : ''}`,
      ]),
    ),
  ];
}

/** Plans of both unit systems are bought by one rule; nothing where all are of one. */
function mixedUnits({ plans, cut: { units } }: Pooled): readonly Block[] {
  if (plans.every((plan) => plan.units === units)) return [];
  return [
    paragraph(
      'Some of these plans are in inches and some in millimetres: boards, rolls, sheets and strips are bought, and told here, as a shop that sells in millimetres has them. Each piece keeps its own length; in its own plan’s units it stands in brackets.',
    ),
  ];
}

/**
 * What stands in the way of cutting everything: pieces too long, stocks without boards, pieces that do not make their
 * frame.
 */
export function troubleBlocks({ cut, supplies }: Pooled): readonly Block[] {
  const long = cut.too_long.map(
    (one): Cell =>
      `${one.piece.tag} needs ${formatLength(one.needs_mm, cut.units)} of ${userText(one.stock, 40)}, but the longest board is ${formatLength(one.longest_mm, cut.units)}: ${ways(one, cut).join(', or ')}. Do not join boards end to end.`,
  );
  const uncut = cut.uncut
    .filter(({ stock }) => !cut.too_long.some((one) => one.stock === stock))
    .map(({ reason }): Cell => reason);
  const faults = cut.lists.flatMap((list, i) => {
    const made = piecesAssemble(list);
    return made.fits ? [] : [`${userText(cut.plan_names[i] ?? '')}: ${made.faults.join(' ')}`];
  });
  return [
    ...orderBlocks(supplies, cut.units),
    ...(long.length === 0 ? [] : [setApart(paragraph(strong('Not every piece can be cut.'))), bullets(long)]),
    ...(uncut.length === 0 ? [] : [setApart(paragraph(strong('The buying list is not complete.'))), bullets(uncut)]),
    ...(faults.length === 0 ? [] : [setApart(paragraph(strong('The pieces do not make the frame.'))), bullets(faults)]),
  ];
}

function ways({ alternatives }: TooLong, { units }: CutPlan): string[] {
  return alternatives.map((way) => {
    switch (way.kind) {
      case 'longer-board':
        return `find a board of at least ${formatLength(way.length_mm, units)}`;
      case 'other-stock':
        return `use ${userText(way.stock, 40)}, sold at ${formatLength(way.length_mm, units)}`;
      case 'smaller-face':
        return `make the ${way.side} at most ${formatLength(way.most_mm, units)}`;
      case 'shorter-leg':
        return `make the braces’ leg at most ${formatLength(way.most_mm, units)}`;
    }
  });
}

/** What to buy for all plans together, and what it costs. */
export function buyingBlocks(pooled: Pooled): readonly Block[] {
  const { cut, supplies, total_cost, reason } = pooled;
  const prices = pricesOf(supplies);
  const all =
    total_cost === null
      ? `The cost of everything is unknown. ${userText(reason ?? '', 300)} What can be bought and has a price comes to ${prices.money(supplies.rest_cost)}.`
      : `Everything together: ${prices.money(total_cost)}. Tools and paint are not in it.`;
  return [
    ...mixedUnits(pooled),
    ...(supplies.boards.length === 0
      ? [paragraph('Nothing can be said of boards to buy.')]
      : [
          table(
            boardColumns,
            supplies.boards.map((line) => boardRow(line, cut.units, prices)),
          ),
        ]),
    paragraph(boardsSentence(supplies, prices)),
    table(besidesColumns(supplies), besidesRows(supplies, cut.units, prices)),
    paragraph([sheetsInWords(supplies), all, prices.remark].filter((text) => text !== '').join(' ')),
  ];
}

function boardsSentence({ cut, boards_to_buy, full_boards_cost, boards_bound }: Supplies, { money }: Prices): string {
  if (full_boards_cost === null) return 'The cost of the boards is unknown.';
  const proof = cut.proven
    ? 'No other choice of the boards that are cut costs less; that was proven by trying them all.'
    : `The search was cut short: no choice can cost less than ${money(boards_bound)}.`;
  const named = stockNames(cut);
  const knots = cut.stocks
    .filter(({ knot_share }) => knot_share > 0)
    .map(({ stock, knot_share }) => ` Of each new ${named(stock)} ${formatShare(knot_share)} is kept back for knots.`);
  return `Boards in all: ${boards_to_buy} for ${money(full_boards_cost)}. ${proof}${knots.join('')}${cut.waste_share === null ? '' : ` ${formatShare(cut.waste_share)} of the wood is kerf, trim and leftovers.`}`;
}

/** Every piece of every plan, equal pieces in one row, the longest first. */
export function cutListBlocks({ cut, plans }: Pooled): readonly Block[] {
  const rows = new Map<string, { tags: string[]; cut_mm: number; cells: readonly [string, string, string, string] }>();
  const named = stockNames(cut);
  for (const { stock, boards } of cut.stocks)
    for (const { piece, tag, plan } of boards.flatMap((board) => board.pieces)) {
      const length = (mm: number): string => inOwnUnits(mm, cut.units, plans[plan]?.units ?? cut.units);
      const later =
        piece.later === null
          ? ''
          : `, after the plies are joined ${piece.later.ends === 'mitre' ? '45° at both ends' : 'square'} to ${length(piece.later.cut_mm)}`;
      const cells = [
        named(stock),
        length(piece.cut_mm),
        piece.ends === 'mitre' ? length(piece.short_mm) : '',
        `${piece.ends === 'mitre' ? '45°' : 'square'}${later}`,
      ] as const;
      const row = rows.get(cells.join('/')) ?? { tags: [], cut_mm: piece.cut_mm, cells };
      row.tags.push(tag);
      rows.set(cells.join('/'), row);
    }
  for (const { plan, tag, cut_mm } of lipStrips(cut)) {
    const cells = [
      'strip for the lip',
      inOwnUnits(cut_mm, cut.units, plans[plan]?.units ?? cut.units),
      '',
      '45°',
    ] as const;
    const row = rows.get(cells.join('/')) ?? { tags: [], cut_mm, cells };
    row.tags.push(tag);
    rows.set(cells.join('/'), row);
  }
  if (rows.size === 0) return [];
  const sorted = [...rows.values()]
    .map((row) => ({ ...row, tags: row.tags.sort((p, q) => (tagOrder(p) < tagOrder(q) ? -1 : 1)) }))
    .sort((a, b) => b.cut_mm - a.cut_mm);
  return [
    paragraph(
      `${plans.length > 1 ? 'The number before the dash is the plan’s. ' : ''}T, B, L, R are the top, bottom, left and right bar, a figure after it the ply; C are crossbars, two letters a corner brace. A mitred piece is measured on its long side, point to point.`,
    ),
    table(
      [
        { head: 'Cut to' },
        { head: 'Number', align: 'right' },
        { head: 'Stock' },
        { head: 'Short side', align: 'right' },
        { head: 'Ends' },
        { head: 'Pieces' },
      ],
      sorted.map(({ tags, cells: [stock, long, short, ends] }): readonly Cell[] => [
        long,
        String(tags.length),
        stock,
        short,
        ends,
        tags.join(', '),
      ]),
    ),
  ];
}

/** A length in the units of the page, and in those of its plan behind it where they differ. */
const inOwnUnits = (mm: number, page: UnitSystem, own: UnitSystem): string =>
  page === own ? formatLength(mm, page) : `${formatLength(mm, page)} (${formatLength(mm, own)})`;

/** One setting of the saw after the other, in words that fit it. */
export function sawBlocks({ cut }: Pooled, saw?: SawAtHand): readonly Block[] {
  const order = markingOrder(cut, saw);
  const named = stockNames(cut);
  const equal = (groups: readonly (readonly string[])[]): string =>
    groups.length === 0 ? '' : ` Must come out equal: ${groups.map((tags) => tags.join(' and ')).join('; ')}.`;
  const of = ({ stock }: { readonly stock: string }): string => (cut.stocks.length > 1 ? `${named(stock)}: ` : '');
  const lines = [
    ...order.tests.map((t) => `${of(t)}${t.words}`),
    ...order.steps.map((s) => `${of(s)}${s.words}${equal(s.matching)}`),
    ...order.later.map((s) => `${of(s)}When the glue of the blanks has set: ${s.words}${equal(s.matching)}`),
    ...order.lips.map((s) => `${s.words}${equal(s.matching)}`),
  ];
  return lines.length === 0
    ? []
    : [
        heading(3, saw === 'none' ? 'For the shop that saws, in this order' : 'At the saw, in this order'),
        steps(lines),
      ];
}
