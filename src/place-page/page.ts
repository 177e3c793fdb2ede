import { chanceInWords } from '../base/chance-words.js';
import type { UnitSystem } from '../base/names.js';
import { formatLength, formatQuantity, formatShare } from '../base/units-format.js';
import type { CutPlan } from '../cutting/boards/purchase.js';
import { isRead, type PileBoard } from '../pile/pile.js';
import type { LeftBoard, Place, PlacedFrame, PlacedPile } from '../place/result.js';
import { userText } from '../report/clean-text.js';
import type { Picture } from '../report/drawings/picture.js';
import { bullets, document, heading, paragraph, picture, setApart, steps, strong, table, type Block, type Cell } from '../report/tree.js';
import { pileBoardPictures } from './board-picture.js';
import { chalking, chalkOf } from './chalk.js';
import { framePicture } from './frame-picture.js';
import { endWords, faceWords, longSideWords, partWords } from './lie-words.js';

/** A page before it is written. */
export interface PlacePage {
  readonly tree: ReturnType<typeof document>;
  readonly pictures: readonly Picture[];
}

/** The page to take to the bench: what comes of the placing, the chalk, the saw, the frame, what stays and what to buy. */
export function composePlacePage(placed: PlacedPile): PlacePage {
  const units = placed.frames[0]?.plan.units ?? placed.pile.units;
  const frames = placed.frames.map((frame, i) => framePicture(frame, i === 0 ? 'place.svg' : `place-${i + 1}.svg`));
  const boards = pileBoardPictures(placed, units);
  const several = placed.frames.length > 1;
  const part = (title: string, blocks: readonly Block[]): readonly Block[] => (blocks.length === 0 ? [] : [heading(2, title), ...blocks]);
  return {
    tree: document([
      heading(1, `Which board goes where${several ? '' : `: ${userText(placed.frames[0]?.plan.name ?? '', 120)}`}`),
      ...part('What comes of it', [...placed.frames.flatMap((frame) => outcome(frame, several)), paragraph(proof(placed))]),
      ...part('First chalk the boards', [steps(chalking), bullets(boardsUsed(placed).map((board) => chalkOf(board, units)))]),
      ...part('Then mark the pieces and saw', [paragraph(marking), bullets(onBoards(placed, units)), ...boards.map(picture), ...sawing(placed)]),
      ...placed.frames.flatMap((frame, i) => part(several ? `In the frame: ${frameName(frame)}` : 'In the frame', [picture(frames[i] as Picture), ...inFrame(frame)])),
      ...part('What stays on the rack', leftBlocks(placed.left, units)),
      ...part('What to buy besides', buyBlocks(placed, units)),
      ...part('What one more reading would tell', placed.frames.flatMap((frame) => readingBlocks(frame, several))),
      ...part('What this rests on', [paragraph(...basis(placed))]),
    ]),
    pictures: [...boards, ...frames],
  };
}

const frameName = ({ plan, copy }: PlacedFrame): string => `${userText(plan.name, 80)}${plan.count > 1 ? `, frame ${copy}` : ''}`;

function outcome(frame: PlacedFrame, several: boolean): readonly Block[] {
  const { lift, luck, plan, bow_chance } = frame;
  const mm = (length: number): string => formatLength(length, plan.units);
  const name = several ? [heading(3, frameName(frame))] : [];
  if (lift === null) return [...name, setApart(paragraph(strong('The lift of the corner is unknown.'), ` ${frame.reason ?? ''}`))];
  const rows: readonly (readonly Cell[])[] = [
    ['As placed here', [strong(chanceInWords(lift.chance))], `${mm(Math.abs(lift.mean_mm))}, nine in ten under ${mm(lift.p90_mm)}`],
    ...(luck === null ? [] : [
      ['Boards taken as they come', chanceInWords(luck.mean_chance), ''] as const,
      ['The worst way to place them', '', `up to ${mm(luck.worst_mm)}`] as const,
    ]),
  ];
  const bow = bow_chance === null || bow_chance < 0.005 ? '' : ` A bar that bows too far: ${chanceInWords(bow_chance)} at most.`;
  return [
    ...name,
    setApart(paragraph(strong(`Placed like this, ${chanceInWords(lift.chance)} of such frames will stand more than ${mm(lift.limit_mm)} off the wall at one corner${luck === null ? '' : `; with boards taken as they come, ${chanceInWords(luck.mean_chance)}`}.`))),
    table([{ head: 'How the boards go in' }, { head: 'Frames with a lifted corner' }, { head: 'Lift to expect' }], rows),
    ...(bow === '' ? [] : [paragraph(bow.trim())]),
  ];
}

function proof({ proven, bound, aim }: PlacedPile): string {
  if (proven) return 'No other way to place these boards is better: that was proven, not guessed.';
  return `The search was cut short. The chances of lifted corners and bowed bars come to ${formatShare(aim)} together; no placing can bring them below ${formatShare(bound)}.`;
}

/** The boards that are cut or used, in the order of their pieces. */
const boardsUsed = ({ frames }: PlacedPile): readonly PileBoard[] => [...new Set(frames.flatMap((frame) => frame.places).map(({ board }) => board))];

const marking = 'Lay each board with its letter up and the marked end on your left. Before you saw, write on every piece, on the marked face, its name as below with a ring round it, so that nobody takes it for the letter of a board, and an arrow to the marked end: once it is sawn off, nothing else tells which way round it was. The gap between two pieces is the saw cut. A figure after a name is the ply (1 is the outer or front one).';

function onBoards({ frames }: PlacedPile, units: UnitSystem): readonly Cell[] {
  const places = frames.flatMap((frame) => frame.places.map((place) => ({ ...place, name: `${partWords({ slot: place.slot, plies: pliesOf(frame, place) })} (${place.slot.tag})` })));
  const boards = [...new Set(places.map(({ board }) => board))];
  return boards.map((board): Cell => {
    const own = places.filter((place) => place.board === board).sort((a, b) => a.from_mm - b.from_mm);
    if (board.cut !== null) return [strong(`${userText(board.mark, 12)}`), ` (${userText(board.stock, 40)}) is cut already: as it is it becomes ${own.map(({ name }) => name).join()}. Do not saw it.`];
    const each = own.map((place) => `${place.name} from ${formatLength(place.from_mm, units)} to ${formatLength(place.from_mm + place.slot.piece.cut_mm, units)}${sidePhrase(place)}`);
    return [strong(`${userText(board.mark, 12)}`), ` (${userText(board.stock, 40)}, ${formatLength(board.length_mm, units)}${isRead(board) ? '' : ', nobody has read it: any one of its kind will do'}): ${each.join('; ')}.`];
  });
}

function sidePhrase(place: Place): string {
  const side = longSideWords(place);
  return side === null ? ', square ends' : `, 45° at both ends, long side on the ${side}`;
}

function sawing({ frames }: PlacedPile): readonly Block[] {
  const later = frames.some(({ places }) => places.some(({ slot }) => slot.piece.later !== null));
  return [
    ...(later ? [paragraph('Plies that are glued are cut square and a little long here; they are cut to their final length once they are one bar, as the cut list of the plan says.')] : []),
    paragraph('Wear eye protection, keep hands clear of the blade, and clamp short pieces rather than holding them.'),
  ];
}

/** Plies of the bar or crossbar a piece belongs to. */
const pliesOf = ({ plan }: PlacedFrame, { slot: { piece } }: Place): number => (piece.part === 'bar' ? plan.bars.plies : (plan.crossbars[Number(piece.about.replace('crossbar-', '')) - 1]?.plies ?? 1));

function inFrame(frame: PlacedFrame): readonly Block[] {
  const { places, plan } = frame;
  const edge = places.some(({ slot }) => slot.piece.lay === 'edge');
  return [
    bullets(places.map((place): Cell => {
      const { board, slot, from_mm } = place;
      const turned = isRead(board) ? `marked face ${faceWords(place)}, marked end ${endWords(place)}` : board.cut === null || board.cut === 'square' ? 'any way round' : 'its long side outwards';
      return [strong(slot.tag), ` ${partWords({ slot, plies: pliesOf(frame, place) })}: board ${userText(board.mark, 12)}, ${turned}; ${board.cut === null ? `cut ${formatLength(slot.piece.cut_mm, plan.units)} from ${formatLength(from_mm, plan.units)}` : 'as it is'}.`];
    })),
    paragraph(`Lay the pieces out as you see them from the front, before you glue. “To you” is the side of the cloth, “to the wall” the back.${edge ? ' Bars on edge show a narrow side to you: their marked face looks outwards (away from the middle of the frame) or inwards.' : ''}`),
  ];
}

function leftBlocks(left: readonly LeftBoard[], units: UnitSystem): readonly Block[] {
  if (left.length === 0) return [paragraph('Nothing: every board is used up.')];
  const alike = new Map<string, { marks: string[]; words: string }>();
  for (const one of left) {
    const rest = one.left.map(({ from_mm, to_mm }) => formatLength(to_mm - from_mm, units)).join(' and ');
    const words = one.whole ? `stays whole (${formatLength(one.board.length_mm, units)}). ${one.why}` : `${rest} left.`;
    const line = alike.get(words) ?? { marks: [], words };
    line.marks.push(userText(one.board.mark, 12));
    alike.set(words, line);
  }
  return [bullets([...alike.values()].map(({ marks, words }): Cell => [strong(marks.join(', ')), ` ${marks.length > 1 ? words.replace(/^stays/u, 'stay') : words}`]))];
}

function buyBlocks({ buy, frames }: PlacedPile, units: UnitSystem): readonly Block[] {
  if (buy === null) return [paragraph('No board: the pile gives every piece.')];
  const missing = frames.flatMap((frame) => frame.missing.map(({ tag }) => tag));
  const lines = [...buy.stocks.flatMap((stock) => stock.kinds.filter(({ on_hand }) => !on_hand).map((kind) => `${kind.count} of ${userText(stock.stock, 40)}, ${formatLength(kind.length_mm, units)}: ${formatQuantity(kind.price * kind.count, 'cost', units)} ${userText(buy.currency, 8)}`)), ...buy.uncut.map(({ reason }) => reason)];
  return [
    ...(missing.length === 0 ? [] : [paragraph(`The pile has no board for ${missing.join(', ')}. The chances above take boards for them as the plan chooses its boards; read them too and place again.`)]),
    ...(lines.length === 0 ? [paragraph('No board.')] : [bullets(lines)]),
    ...bracesFromPile(buy, units),
  ];
}

/** What is cut from the rests of the pile besides the bars. */
function bracesFromPile(buy: CutPlan, units: UnitSystem): readonly Block[] {
  const cut = buy.stocks.flatMap(({ boards }) => boards.filter(({ mark }) => mark !== null).map(({ mark, pieces }): Cell => `From the rest of ${userText(mark ?? '', 40)}: ${pieces.map(({ tag, piece }) => `${tag}, ${formatLength(piece.cut_mm, units)}`).join('; ')}.`));
  return cut.length === 0 ? [] : [bullets(cut)];
}

/** Readings that settle less are not worth the walk. */
const worth_reading = 0.05;

function readingBlocks(frame: PlacedFrame, several: boolean): readonly Block[] {
  const useful = frame.readings.filter(({ settles }) => settles >= worth_reading).slice(0, 3);
  if (useful.length === 0) return several ? [] : [paragraph('Little: what is left of the doubt lies in the readings themselves.')];
  return [...(several ? [heading(3, frameName(frame))] : []), bullets(useful.map(({ of, settles }) => `${of.charAt(0).toUpperCase()}${of.slice(1)} would settle ${formatShare(settles)} of the doubt that is left.`))];
}

function basis({ pile, frames }: PlacedPile): readonly string[] {
  const chosen = frames[0]?.plan.lumber.chosen ?? 'plain';
  return [
    `Pile “${userText(pile.name, 80)}”, ${pile.boards.length} boards, ${pile.boards.filter(isRead).length} of them read. What was not read keeps the spread of its kind, chosen as the plan says (${chosen}). `,
    ...(pile.boards.some(({ marked }) => !marked) ? ['u1, u2 and so on are boards of the pile that have no letter. '] : []),
    'Twist and bend are taken as even along a board; where two pieces come from one board, each may differ from its reading in its own way. A board keeps the hand of its twist however it is turned; bow turns over with the face. ',
    'Lift is what stands off the wall at one corner when the other three touch, in the assembled frame under the working pull.',
  ];
}
