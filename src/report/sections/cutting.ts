import { formatQuantity, formatShare, formatSize } from '../../base/units-format.js';
import { piecesAssemble } from '../../cutting/assemble.js';
import { materials, type MaterialLine } from '../../cost/materials.js';
import { markingOrder } from '../../cutting/marking.js';
import type { CutPlan } from '../../cutting/purchase.js';
import { userText } from '../clean-text.js';
import { bullets, heading, paragraph, picture, setApart, steps, strong, table, type Block, type Cell } from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { boardPictures } from './board-pictures.js';
import { pieceNotes, pieceRows } from './piece-rows.js';

/** Part 5: what to buy, what to cut, in which order, and a picture of each board. */
export function cuttingSection(told: Telling): Section {
  const cut = told.audit.cut;
  const pictures = boardPictures(cut);
  const shown = pictures.slice(0, 3);
  const blocks: Block[] = [
    ...missing(told, cut),
    heading(3, 'Cut list'),
    paragraph('T, B, L, R are the top, bottom, left and right bar, a figure after it the ply; C are crossbars, two letters a corner brace. Lengths go up to the next mark of the tape, so that no joint opens; a mitred piece is measured on its long side, point to point.'),
    table([{ head: 'Piece' }, { head: 'Number', align: 'right' }, { head: 'Stock' }, { head: 'Cut to', align: 'right' }, { head: 'Short side', align: 'right' }, { head: 'Ends' }], pieceRows(told, cut)),
    ...notes(told, cut),
    ...assembly(told, cut),
    heading(3, 'Buying list'),
    ...buying(told, cut),
    ...everythingElse(told, cut),
    ...shown.map(picture),
    ...(pictures.length > shown.length ? [paragraph('The boards that follow are cut in the same way; the cut list as CSV names every piece on its board.')] : []),
    ...atTheSaw(cut),
  ];
  return { title: 'What to buy and cut', blocks, pictures: shown };
}

function notes(told: Telling, cut: CutPlan): readonly Block[] {
  const list = pieceNotes(told, cut);
  return list.length === 0 ? [] : [bullets(list)];
}

function missing(told: Telling, cut: CutPlan): readonly Block[] {
  const long = cut.too_long.map(({ piece, needs_mm, longest_mm, alternatives, stock }): Cell => {
    const ways = alternatives.map((way) => {
      switch (way.kind) {
        case 'longer-board': return `find a board of at least ${told.length(upwards(told, way.length_mm))}`;
        case 'other-stock': return `use ${userText(way.stock, 40)}, sold at ${told.length(way.length_mm)}`;
        case 'smaller-face': return `make the ${way.side} at most ${told.length(downwards(told, way.most_mm))}`;
        case 'shorter-leg': return `make the braces' leg at most ${told.length(downwards(told, way.most_mm))}`;
      }
    });
    return `${piece.tag} needs ${told.length(needs_mm)} of ${userText(stock, 40)}, but the longest board is ${told.length(longest_mm)}: ${ways.join(', or ')}. Do not join boards end to end.`;
  });
  if (long.length > 0) return [setApart(paragraph(strong('Not every piece can be cut.'))), bullets(long)];
  return cut.uncut.length === 0 ? [] : [setApart(paragraph(strong('The buying list is not complete.'))), bullets(cut.uncut.map(({ reason }) => reason))];
}

/** The next mark of the tape: a millimetre or a sixteenth of an inch. */
const mark_mm = ({ units }: Telling): number => (units === 'metric' ? 1 : 25.4 / 16);
const upwards = (told: Telling, mm: number): number => Math.ceil(mm / mark_mm(told) - 1e-9) * mark_mm(told);
const downwards = (told: Telling, mm: number): number => Math.floor(mm / mark_mm(told) + 1e-9) * mark_mm(told);

function assembly(told: Telling, cut: CutPlan): readonly Block[] {
  const list = cut.lists[0];
  if (list === undefined) return [];
  const made = piecesAssemble(list);
  if (!made.fits) return [setApart(paragraph(strong('The pieces do not make the frame. '), made.faults.join(' ')))];
  const tight = made.tight_mm > 0.01 ? ` Crossbars come out up to ${told.length(made.tight_mm)} long: plane them to a snug fit.` : '';
  return [paragraph(`Checked: put together, these pieces make a frame of ${told.length(made.width_mm)} by ${told.length(made.height_mm)} with every joint closed.${tight}`)];
}

function buying(told: Telling, cut: CutPlan): readonly Block[] {
  const { units } = told;
  const money = (amount: number): string => `${formatQuantity(amount, 'cost', units)} ${userText(cut.currency, 8)}`;
  const rows = cut.stocks.flatMap(({ stock, lumber, kinds }) => kinds.map((kind): readonly Cell[] => [
    `${userText(stock, 40)}${lumber.nominal === null ? '' : ` (shops call it ${userText(lumber.nominal, 20)})`}`,
    formatSize(lumber.thickness_mm, lumber.width_mm, units), told.length(kind.length_mm), String(kind.count),
    kind.on_hand ? 'on hand' : money(kind.price), kind.on_hand ? money(0) : money(kind.price * kind.count),
  ]));
  if (rows.length === 0) return [paragraph('Nothing can be said of boards to buy.')];
  const sentence = cut.cost === null ? 'The cost is unknown.' : `Boards in all: ${money(cut.cost)}. ${proof(cut, money)}${cut.waste_share === null ? '' : ` ${formatShare(cut.waste_share)} of the bought wood is kerf, trim and leftovers.`}`;
  return [
    table([{ head: 'Board' }, { head: 'Actual size' }, { head: 'Length', align: 'right' }, { head: 'Number', align: 'right' }, { head: 'Each', align: 'right' }, { head: 'Cost', align: 'right' }], rows),
    paragraph(sentence, cut.demo_prices ? ' All prices are invented for demonstration: put your shop’s own on the shelf.' : ''),
  ];
}

/** Cloth, ground, fastenings, glue and hardware, and the sum of everything. */
function everythingElse(told: Telling, cut: CutPlan): readonly Block[] {
  const { lines, total_cost, reason } = materials(told.audit.model, cut);
  const money = (amount: number | null): string => (amount === null ? 'unknown' : `${formatQuantity(amount, 'cost', told.units)} ${userText(cut.currency, 8)}`);
  const rows = lines.filter((line) => line.what !== 'wood').map((line): readonly Cell[] => [userText(line.what, 60), amount(told, line), money(line.cost)]);
  if (rows.length === 0) return [];
  return [
    table([{ head: 'And besides' }, { head: 'How much', align: 'right' }, { head: 'Cost', align: 'right' }], rows),
    paragraph(total_cost === null ? `The cost of everything is unknown. ${reason ?? ''}` : `Everything together: ${money(total_cost)}. Tools and paint are not in it.`),
  ];
}

function amount(told: Telling, { quantity, unit }: MaterialLine): string {
  if (unit === 'ml') return formatQuantity(quantity, 'ml', told.units);
  if (unit === 'm') return told.length(quantity * 1000);
  return `${Math.round(quantity)} ${unit}`;
}

function proof(cut: CutPlan, money: (amount: number) => string): string {
  return cut.proven ? 'No other choice of these boards costs less; that was proven by trying them all.' : `The search was cut short: no choice can cost less than ${money(cut.bound)}.`;
}

function atTheSaw(cut: CutPlan): readonly Block[] {
  const order = markingOrder(cut);
  const all = [...order.tests.map((t) => t.words), ...order.steps.map((s) => withMatching(s.words, s.matching)), ...order.later.map((s) => `When the glue of the blanks has set, ${lowerFirst(withMatching(s.words, s.matching))}`)];
  return all.length === 0 ? [] : [heading(3, 'At the saw, in this order'), steps(all)];
}

const lowerFirst = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

function withMatching(words: string, matching: readonly (readonly string[])[]): string {
  return matching.length === 0 ? words : `${words} Must come out equal: ${matching.map((tags) => tags.join(' and ')).join('; ')}.`;
}
