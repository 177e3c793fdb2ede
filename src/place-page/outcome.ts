import { capital } from '../base/capital.js';
import { chanceInWords } from '../base/chance-words.js';
import { formatLength, formatShare } from '../base/units-format.js';
import { noWarpWords, readingInWords } from '../base/warp-words.js';
import type { PileBoard } from '../pile/pile.js';
import type { PlacedFrame, PlacedPile } from '../place/result.js';
import { userText } from '../report/clean-text.js';
import { bullets, heading, paragraph, setApart, strong, type Block } from '../report/tree.js';
import { markOf } from './chalk.js';
import { listed } from './lie-words.js';

export const frameName = ({ plan, copy }: PlacedFrame): string =>
  `${userText(plan.name, 80)}${plan.count > 1 ? `, frame ${copy}` : ''}`;

/**
 * What comes of every frame as its boards are placed, by luck and at worst; what counts as lifted and bowed is told
 * where it is new.
 */
export function outcomes(frames: readonly PlacedFrame[]): readonly Block[] {
  const told = new Set<string>();
  return frames.flatMap((frame) => {
    const meaning = meaningOf(frame);
    const known = meaning === '' || told.has(meaning);
    told.add(meaning);
    return outcome(frame, frames.length > 1, known ? [] : [paragraph(meaning)]);
  });
}

function meaningOf({ lift, plan, bow_chance }: PlacedFrame): string {
  if (lift === null) return '';
  const bowed =
    bow_chance === null
      ? '. How far single bars bow cannot be said here.'
      : '; “bowed”, that a bar bends further out of line than the rules allow.';
  return `“Lifted” means that in the finished frame, under the pull of its cloth, one corner stands more than ${formatLength(lift.limit_mm, plan.units)} off the wall while the other three touch${bowed}`;
}

function outcome(frame: PlacedFrame, several: boolean, meaning: readonly Block[]): readonly Block[] {
  const { lift, luck, plan, bow_chance } = frame;
  const mm = (length: number): string => formatLength(length, plan.units);
  const name = several ? [heading(3, frameName(frame))] : [];
  if (lift === null)
    return [
      ...name,
      setApart(
        paragraph(
          strong('The lift of the corner is unknown.'),
          ` ${frame.reason === null ? '' : noWarpWords[frame.reason]}`,
        ),
      ),
    ];
  const both = bow_chance === null ? 'a lifted corner' : 'a lifted corner or a bowed bar';
  const chance = Math.min(1, lift.chance + (bow_chance ?? 0));
  return [
    ...name,
    setApart(
      paragraph(
        strong(
          `Placed like this, ${chanceInWords(chance)} of such frames will have ${both}${luck === null ? '' : `; with boards taken as they come, ${chanceInWords(luck.mean_chance)} will have a lifted corner, bowed bars not counted`}.`,
        ),
      ),
    ),
    ...meaning,
    bullets([
      `As placed here: ${mm(Math.abs(lift.mean_mm))} of lift to expect, nine in ten under ${mm(lift.p90_mm)}${bow_chance === null || bow_chance < 0.005 ? '' : `; a bowed bar in ${chanceInWords(bow_chance)} at most`}.`,
      ...(luck === null
        ? []
        : [
            `Boards taken as they come: a lifted corner in ${chanceInWords(luck.mean_chance)}.`,
            `The worst way to place them: up to ${mm(luck.worst_mm)} of lift.`,
          ]),
    ]),
  ];
}

/** How sure it is that no other placing is better. */
export function proof({ proven, bound, aim }: PlacedPile): string {
  if (proven) return 'No other way to place these boards is better: that was proven, not guessed.';
  return `The search was cut short. The chances of lifted corners and bowed bars come to ${formatShare(aim)} together; no placing can bring them below ${formatShare(bound)}.`;
}

/** Readings that settle less are not worth the walk. */
const worth_reading = 0.05;

/** What one more reading would tell of the lift, or why nothing would. */
export function readingBlocks(frame: PlacedFrame, several: boolean): readonly Block[] {
  const useful = frame.readings.filter(({ settles }) => settles >= worth_reading).slice(0, 3);
  const name = several ? [heading(3, frameName(frame))] : [];
  if (useful.length > 0)
    return [
      ...name,
      bullets(
        useful.map(
          ({ of, settles }) =>
            `${capital(readingInWords(of))} would settle ${formatShare(settles)} of the doubt about the lift that is left.`,
        ),
      ),
    ];
  if (frame.lift === null) return [];
  const unread = [...new Set(frame.places.map(({ board }) => board))].flatMap(unreadOf);
  const open =
    unread.length === 0
      ? 'Twist, bow and crook of all these boards were read'
      : `What was not read (${unread.join('; ')}) keeps the spread of its kind`;
  return [
    ...name,
    paragraph(
      `Little: no reading that is left would settle as much as ${formatShare(worth_reading)} of the doubt about the lift. ${open}; the rest of the doubt is the error of the readings that were taken, and what the boards may still dry.`,
    ),
  ];
}

/** What was not read of a board: `bow and crook of D`. */
function unreadOf(board: PileBoard): readonly string[] {
  const missing = (
    [
      ['twist', board.twist_rad_per_m],
      ['bow', board.bow_per_m],
      ['crook', board.crook_per_m],
    ] as const
  )
    .filter(([, value]) => value === null)
    .map(([what]) => what);
  return missing.length === 0 ? [] : [`${listed(missing)} of ${markOf(board)}`];
}
