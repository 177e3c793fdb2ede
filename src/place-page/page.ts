import { isRead, type PileBoard } from '../pile/pile.js';
import type { PlacedPile } from '../place/result.js';
import { userText } from '../report/clean-text.js';
import type { Picture } from '../report/drawings/picture.js';
import { bullets, document, heading, paragraph, picture, steps, type Block } from '../report/tree.js';
import { markingBlocks, sawing } from './at-the-saw.js';
import { pileBoardPictures } from './board-picture.js';
import { chalking, chalkOf } from './chalk.js';
import { framePicture } from './frame-picture.js';
import { inFrame } from './in-frame.js';
import { buyBlocks, leftBlocks } from './on-the-rack.js';
import { frameName, outcomes, proof, readingBlocks } from './outcome.js';

/** A page before it is written. */
export interface PlacePage {
  readonly tree: ReturnType<typeof document>;
  readonly pictures: readonly Picture[];
}

/**
 * The page to take to the bench: what comes of the placing, the chalk, the saw, the frame, what stays and what to buy.
 */
export function composePlacePage(placed: PlacedPile): PlacePage {
  const units = placed.frames[0]?.plan.units ?? placed.pile.units;
  const frames = placed.frames.map((frame, i) => framePicture(frame, i === 0 ? 'place.svg' : `place-${i + 1}.svg`));
  const boards = pileBoardPictures(placed, units);
  const used = boardsUsed(placed);
  const several = placed.frames.length > 1;
  const part = (title: string, blocks: readonly Block[]): readonly Block[] =>
    blocks.length === 0 ? [] : [heading(2, title), ...blocks];
  return {
    tree: document([
      heading(1, `Which board goes where${several ? '' : `: ${userText(placed.frames[0]?.plan.name ?? '', 120)}`}`),
      ...part('What comes of it', [...outcomes(placed.frames), paragraph(proof(placed))]),
      ...part(
        'First chalk the boards',
        used.length === 0
          ? []
          : [
              steps(chalking(placed, used)),
              bullets(used.map((board) => chalkOf(board, { units, square: placed.square }))),
            ],
      ),
      ...part(
        'Then mark the pieces and saw',
        used.length === 0 ? [] : [...markingBlocks(placed, units), ...boards.map(picture), ...sawing(placed)],
      ),
      ...placed.frames.flatMap((frame, i) =>
        part(several ? `In the frame: ${frameName(frame)}` : 'In the frame', [
          picture(frames[i] as Picture),
          ...inFrame(frame),
        ]),
      ),
      ...part('What stays on the rack', leftBlocks(placed, units)),
      ...part('What to buy besides', buyBlocks(placed, units)),
      ...part(
        'What one more reading would tell',
        placed.frames.flatMap((frame) => readingBlocks(frame, several)),
      ),
      ...part('What this rests on', [paragraph(...basis(placed))]),
    ]),
    pictures: [...boards, ...frames],
  };
}

/** The boards that are cut or used, in the order of their pieces. */
const boardsUsed = ({ frames }: PlacedPile): readonly PileBoard[] => [
  ...new Set(frames.flatMap((frame) => frame.places).map(({ board }) => board)),
];

function basis({ pile, frames }: PlacedPile): readonly string[] {
  const chosen = frames[0]?.plan.lumber.chosen ?? 'plain';
  const places = frames.flatMap((frame) => frame.places);
  const shared = places.length > new Set(places.map(({ board }) => board)).size;
  return [
    `Pile “${userText(pile.name, 80)}”, ${pile.boards.length} ${pile.boards.length === 1 ? 'board' : 'boards'}, ${pile.boards.filter(isRead).length} of them read. What was not read keeps the spread of its kind, chosen as the plan says (${chosen}). `,
    ...(pile.boards.some(({ marked }) => !marked)
      ? ['u1, u2 and so on are boards of the pile that have no letter. ']
      : []),
    `Twist and bend are taken as even along a board${shared ? '; where two pieces come from one board, each may differ from its reading in its own way' : ''}.`,
  ];
}
