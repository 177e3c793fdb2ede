import type { UnitSystem } from '../base/names.js';
import { formatLength, formatQuantity } from '../base/units-format.js';
import type { CutPlan } from '../cutting/boards/purchase.js';
import { offCutsOf, type OffCut } from '../place/off-cuts.js';
import type { PlacedPile } from '../place/result.js';
import { userText } from '../report/clean-text.js';
import { stockName } from '../report/words/stock.js';
import { bullets, paragraph, strong, type Block, type Cell } from '../report/tree.js';
import { markOf } from './chalk.js';
import { listed, ringed } from './lie-words.js';

/** Rests that are shorter are scrap. */
const worth_keeping_mm = 50;

/**
 * What goes back on the rack: the rests as they fall from the saw, and the boards that stay whole with their reasons.
 */
export function leftBlocks({ left, frames }: PlacedPile, units: UnitSystem): readonly Block[] {
  if (left.length === 0) return [paragraph('Nothing: every board is used up.')];
  const places = frames.flatMap((frame) => frame.places);
  const alike = new Map<string, { marks: string[]; one: string; several: string; words: string }>();
  for (const { board, whole, why } of left) {
    const rests = whole
      ? []
      : offCutsOf(
          board,
          places.filter((place) => place.board === board),
        ).filter(({ sound }) => sound.some((one) => one.to_mm - one.from_mm >= worth_keeping_mm));
    if (!whole && rests.length === 0) continue;
    const [one, several, words] = whole
      ? (['stays', 'stay', `whole (${formatLength(board.length_mm, units)}). ${why}`] as const)
      : (['leaves', 'leave', `${rests.map((rest) => restWords(rest, units)).join('; and ')}.`] as const);
    const line = alike.get(`${one} ${words}`) ?? { marks: [], one, several, words };
    line.marks.push(markOf(board));
    alike.set(`${one} ${words}`, line);
  }
  return [
    bullets(
      [...alike.values()].map(({ marks, one, several, words }): Cell => [
        strong(marks.join(', ')),
        ` ${marks.length > 1 ? several : one} ${words}`,
      ]),
    ),
    ...(left.every(({ whole }) => whole)
      ? []
      : [
          paragraph(
            'Before a rest goes back on the rack, write its letter and its stroke on it again, on the same face and at the end that lay nearer to the marked end (with a figure after the letter where a board leaves several: A-1, A-2). In the pile give it its new length, write after every reading over what length it was taken (over:), and count its bad places from the new stroke.',
          ),
        ]),
  ];
}

function restWords({ from_mm, to_mm, slanted, bad, sound }: OffCut, units: UnitSystem): string {
  const mm = (length: number): string => formatLength(length, units);
  const clear = slanted === 0 ? '' : ` clear of its ${slanted === 1 ? '45° end' : '45° ends'}`;
  if (bad.length === 0) return `${mm(to_mm - from_mm)}${clear}`;
  const cuts = [...new Set(sound.flatMap((one) => [one.from_mm, one.to_mm]))]
    .filter((at) => at > from_mm && at < to_mm)
    .map(mm);
  const where = bad.map((one) => `${mm(one.from_mm)} to ${mm(one.to_mm)}`).join(', ');
  return `${mm(to_mm - from_mm)}${clear}, with the bad ${bad.length === 1 ? 'place' : 'places'} at ${where} in it: saw square at ${listed(cuts)} from the marked end, and ${listed(sound.map((one) => mm(one.to_mm - one.from_mm)))} of sound wood ${sound.length === 1 ? 'is' : 'are'} left`;
}

/** What the pile lacks. */
export function buyBlocks({ buy, frames }: PlacedPile, units: UnitSystem): readonly Block[] {
  if (buy === null) return [paragraph('No board: the pile gives every piece.')];
  const missing = frames.flatMap((frame) => frame.missing.map(({ tag }) => ringed(tag)));
  const lines = [
    ...buy.stocks.flatMap((stock) =>
      stock.kinds
        .filter(({ on_hand }) => !on_hand)
        .map(
          (kind) =>
            `${kind.count} of ${stockName(stock.stock, stock.lumber, units, 2)}, ${formatLength(kind.length_mm, units)}: ${formatQuantity(kind.price * kind.count, 'cost', units)} ${userText(buy.currency, 8)}`,
        ),
    ),
    ...buy.uncut.map(({ reason }) => reason),
  ];
  return [
    ...(missing.length === 0
      ? []
      : [
          paragraph(
            `The pile has no board for ${missing.join(', ')}. The chances above take boards for them as the plan chooses its boards; read them too and place again.`,
          ),
        ]),
    ...(lines.length === 0 ? [paragraph('No board.')] : [bullets(lines)]),
    ...bracesFromPile(buy, units),
  ];
}

/** What is cut from the rests of the pile besides the bars. */
function bracesFromPile(buy: CutPlan, units: UnitSystem): readonly Block[] {
  const cut = buy.stocks.flatMap(({ boards }) =>
    boards
      .filter(({ mark }) => mark !== null)
      .map(
        ({ mark, pieces }): Cell =>
          `From the rest of ${userText(mark ?? '', 40)}: ${pieces.map(({ tag, piece }) => `${ringed(tag)}, ${formatLength(piece.cut_mm, units)}`).join('; ')}.`,
      ),
  );
  return cut.length === 0 ? [] : [bullets(cut)];
}
