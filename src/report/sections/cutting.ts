import { formatShare } from '../../base/units-format.js';
import { pickedOverNeeded } from '../../cost/board-lines.js';
import type { CutPlan } from '../../cutting/boards/purchase.js';
import { userText } from '../clean-text.js';
import {
  bullets,
  heading,
  paragraph,
  picture,
  setApart,
  steps,
  strong,
  table,
  type Block,
  type Cell,
} from '../tree.js';
import { mustStop, notToTheSaw, type Section, type Telling } from '../telling.js';
import {
  besidesColumns,
  besidesRows,
  boardColumns,
  boardRow,
  orderBlocks,
  pricesOf,
  sheetsInWords,
  type Prices,
} from '../words/supply.js';
import { boardPictures } from './board-pictures.js';
import { pieceColumns, pieceNotes, pieceRows } from './piece-rows.js';
import { sightingBlocks } from './sighting.js';
import { allOf } from '../words/plural.js';
import { stockNames } from '../words/stock.js';

/** Part 5: what to buy, what to cut, in which order, and a picture of each board. */
export function cuttingSection(told: Telling): Section {
  const { cut, supplies } = told.audit;
  const prices = pricesOf(supplies);
  const pictures = boardPictures(cut);
  const sighting = sightingBlocks(told);
  const shown = pictures.slice(0, 3);
  const stopped = mustStop(told);
  const blocks: Block[] = [
    ...missing(told, cut),
    heading(3, 'Cut list'),
    paragraph(
      'T, B, L, R are the top, bottom, left and right bar, a figure after it the ply; C are crossbars, two letters a corner brace. Lengths go up to the next mark of the tape, so that no joint opens; a mitred piece is measured on its long side, point to point.',
    ),
    table(pieceColumns(told.audit.plan.count), pieceRows(told, cut)),
    ...notes(told, cut),
    ...assembly(told, cut),
    heading(3, 'Buying list'),
    ...orderBlocks(told.audit.supplies, told.units),
    ...buying(told, prices),
    ...everythingElse(told, prices),
    ...sighting.blocks,
    ...(stopped ? [] : shown.map(picture)),
    ...(!stopped && pictures.length > shown.length
      ? [
          paragraph(
            'The boards that follow are cut in the same way; the cut list as CSV names every piece on its board.',
          ),
        ]
      : []),
    ...(stopped
      ? [heading(3, 'At the saw'), setApart(paragraph(strong('Not to the saw yet.'), ` ${notToTheSaw}`))]
      : atTheSaw(told)),
  ];
  return { title: 'What to buy and cut', blocks, pictures: [...(stopped ? [] : shown), ...sighting.pictures] };
}

function notes(told: Telling, cut: CutPlan): readonly Block[] {
  const list = pieceNotes(told, cut);
  return list.length === 0 ? [] : [bullets(list)];
}

function missing(told: Telling, cut: CutPlan): readonly Block[] {
  const long = cut.too_long.map(({ piece, needs_mm, longest_mm, alternatives, stock }): Cell => {
    const ways = alternatives.map((way) => {
      switch (way.kind) {
        case 'longer-board':
          return `find a board of at least ${told.length(upwards(told, way.length_mm))}`;
        case 'other-stock':
          return `use ${userText(way.stock, 40)}, sold at ${told.length(way.length_mm)}`;
        case 'smaller-face':
          return `make the ${way.side} at most ${told.length(downwards(told, way.most_mm))}`;
        case 'shorter-leg':
          return `make the braces’ leg at most ${told.length(downwards(told, way.most_mm))}`;
      }
    });
    return `${piece.tag} needs ${told.length(needs_mm)} of ${userText(stock, 40)}, but the longest board is ${told.length(longest_mm)}: ${ways.join(', or ')}. Do not join boards end to end.`;
  });
  if (long.length > 0) return [setApart(paragraph(strong('Not every piece can be cut.'))), bullets(long)];
  return cut.uncut.length === 0
    ? []
    : [setApart(paragraph(strong('The buying list is not complete.'))), bullets(cut.uncut.map(({ reason }) => reason))];
}

/** The next mark of the tape: a millimetre or a sixteenth of an inch. */
const mark_mm = ({ units }: Telling): number => (units === 'metric' ? 1 : 25.4 / 16);
const upwards = (told: Telling, mm: number): number => Math.ceil(mm / mark_mm(told) - 1e-9) * mark_mm(told);
const downwards = (told: Telling, mm: number): number => Math.floor(mm / mark_mm(told) + 1e-9) * mark_mm(told);

function assembly(told: Telling, cut: CutPlan): readonly Block[] {
  const list = cut.lists[0];
  const made = told.audit.sheets.assembly;
  if (list === undefined || made === null) return [];
  if (!made.fits)
    return [setApart(paragraph(strong('The pieces do not make the frame.'), ` ${made.faults.join(' ')}`))];
  const tight =
    made.tight_mm > 0.01
      ? ` Crossbars come out up to ${told.length(made.tight_mm)} long: plane them to a snug fit.`
      : '';
  return [
    paragraph(
      `Checked: put together, these pieces make a frame of ${told.length(made.width_mm)} by ${told.length(made.height_mm)} with every joint closed, around an opening of ${told.length(list.opening.width_mm)} by ${told.length(list.opening.height_mm)}.${tight}`,
    ),
  ];
}

function buying({ audit: { supplies }, units }: Telling, prices: Prices): readonly Block[] {
  const { cut, boards, boards_cost } = supplies;
  if (boards.length === 0) return [paragraph('Nothing can be said of boards to buy.')];
  const { money } = prices;
  const waste =
    cut.waste_share === null
      ? ''
      : ` ${formatShare(cut.waste_share)} of the wood that is cut is kerf, trim and leftovers.`;
  const sentence =
    boards_cost === null
      ? 'The cost of all boards is unknown.'
      : `Boards in all: ${money(boards_cost)}. ${proof(cut, money)}${waste}`;
  return [
    table(
      boardColumns,
      boards.map((line) => boardRow(line, units, prices)),
    ),
    paragraph(
      sentence,
      ...knots(cut).map((text) => ` ${text}`),
      ...(boards.some(({ role }) => role === 'spare') ? [` ${sparesWords}`] : []),
    ),
  ];
}

const sparesWords = `Picked boards are chosen from more than are cut, about ${pickedOverNeeded} times as many: bring back or keep what is left.`;

/** What is kept back of each board for knots, one sentence for each share. */
function knots(cut: CutPlan): readonly string[] {
  const named = stockNames(cut);
  return cut.stocks
    .filter(({ knot_share }) => knot_share > 0)
    .map(
      ({ stock, knot_share }) =>
        `Of each new ${named(stock)} ${formatShare(knot_share)} is kept back for knots, as the plan says how knotty the boards are; the proof counts with it.`,
    );
}

/** Cloth, ground, fastenings, glue and hardware, and the sum of everything. */
function everythingElse({ audit: { supplies }, units }: Telling, prices: Prices): readonly Block[] {
  const { frames, total_cost, used_cost, rest_cost, reason } = supplies;
  const { money, remark } = prices;
  const all = frames === 1 ? '' : ` for ${allOf(frames)} frames`;
  const sum =
    total_cost === null
      ? `The cost of everything is unknown. ${reason ?? ''} What can be bought and has a price comes to ${money(rest_cost)}${all}.`
      : `Everything together${all}: ${money(total_cost)} at the till. Of that ${money(used_cost)} is used up; the rest stays in boxes and bottles. Tools and paint are not in it.`;
  return [
    table(besidesColumns(supplies), besidesRows(supplies, units, prices)),
    paragraph([sheetsInWords(supplies), sum, remark].filter((text) => text !== '').join(' ')),
  ];
}

function proof(cut: CutPlan, money: Prices['money']): string {
  return cut.proven
    ? 'No other choice of these boards costs less; that was proven by trying them all.'
    : `The search was cut short: no choice can cost less than ${money(cut.bound)}.`;
}

function atTheSaw({
  audit: {
    sheets: { marking: order },
    tools,
    cut,
  },
}: Telling): readonly Block[] {
  const named = stockNames(cut);
  const several = new Set(order.tests.map(({ stock }) => stock)).size > 1;
  const of = ({ stock }: { readonly stock: string }): string => (several ? `${named(stock)}: ` : '');
  const all = [
    ...order.tests.map((t) => `${of(t)}${t.words}`),
    ...order.steps.map((s) => `${of(s)}${withMatching(s.words, s.matching)}`),
    ...order.later.map(
      (s) =>
        `${of(s)}${several ? 'when' : 'When'} the glue of the blanks has set, ${lowerFirst(withMatching(s.words, s.matching))}`,
    ),
    ...order.lips.map((s) => withMatching(s.words, s.matching)),
  ];
  return all.length === 0
    ? []
    : [
        heading(3, tools?.saw === 'none' ? 'For the shop that saws, in this order' : 'At the saw, in this order'),
        steps(all),
      ];
}

const lowerFirst = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

function withMatching(words: string, matching: readonly (readonly string[])[]): string {
  return matching.length === 0
    ? words
    : `${words} Must come out equal: ${matching.map((tags) => tags.join(' and ')).join('; ')}.`;
}
