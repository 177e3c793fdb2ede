import {
  chanceInWords,
  composePlacePage,
  endWords,
  faceWords,
  formatQuantity,
  partWords,
  placePlans,
  readPile,
  readPlanWith,
  writeBoards,
  writeHtml,
  type Bench,
  type PlacedFrame,
  type PlacedPile,
  type UnitSystem,
} from '../../index.js';
import type { NamedText, PlacedSeen } from './protocol.js';

/** The lift alone is exact; nothing is sampled. */
const no_samples = 100;

/** A placing of which nothing can be said but why. */
export const notPlaced = (outcome: string, problems: PlacedSeen['problems'] = []): PlacedSeen => ({
  problems,
  outcome,
  pieces: [],
  missing: [],
  left: [],
  html: null,
  text: null,
});

/** Which board of a pile becomes which piece of a plan, as the command places them. */
export function placeSeen(plan: NamedText, pile: NamedText, bench: Bench): PlacedSeen {
  const read = readPile(pile.text, pile.file, bench.shelf);
  if (!read.ok) return notPlaced('', read.problems);
  const framed = readPlanWith(plan.text, plan.file, bench.shelf);
  if (!framed.ok) return notPlaced('The plan cannot be read as it stands, so no board is placed.', read.warnings);
  const placed = placePlans([framed.value], read.value, { ...bench, samples: no_samples });
  const { frames } = placed;
  const { tree, pictures } = composePlacePage(placed);
  return {
    problems: read.warnings,
    outcome: outcome(placed),
    pieces: frames.flatMap(({ plan: { units, count }, copy, places }) =>
      places.map(({ slot, board, from_mm, lie }) => ({
        board: board.mark,
        tag: count > 1 ? `${slot.tag}, frame ${copy}` : slot.tag,
        part: partWords({ slot, plies: pliesIn(slot.piece.about, places) }),
        from: length(from_mm, units),
        to: length(from_mm + slot.piece.cut_mm, units),
        lies: `letter ${faceWords({ slot, lie })}, marked end ${endWords({ slot, lie })}`,
      })),
    ),
    missing: frames.flatMap(({ plan: { units }, missing }) =>
      missing.map(
        (slot) =>
          `${slot.tag}: ${partWords({ slot, plies: slot.piece.ply })}, ${length(slot.piece.cut_mm, units)} of ${slot.piece.stock}`,
      ),
    ),
    left: leftSeen(placed),
    html: writeHtml(tree, pictures, { title: 'Which board goes where', lang: 'en' }),
    text:
      frames.length === 1 && frames[0]?.missing.length === 0
        ? writeBoards(plan.text, framed.value, frames[0].boards)
        : null,
  };
}

const pliesIn = (about: string, places: PlacedFrame['places']): number =>
  places.filter(({ slot }) => slot.piece.about === about).length;

const length = (mm: number, units: UnitSystem): string => formatQuantity(mm, 'mm', units);

/** What comes of the placing in a sentence or two; a pile that gives no piece says so before anything else. */
function outcome({ frames, proven }: PlacedPile): string {
  const had = frames.reduce((sum, { places }) => sum + places.length, 0);
  const missing = frames.flatMap((frame) => frame.missing);
  const kinds = [...new Set(missing.map(({ piece }) => piece.stock))].join(' and ');
  if (had === 0)
    return `None of these boards can become a piece of this frame: it is made of ${kinds}, and no board here is of that kind, long enough and sound.`;
  const short =
    missing.length === 0
      ? ''
      : `${had} of ${had + missing.length} pieces find a board; the others still need ${kinds}, taken here as the plan chooses its boards. `;
  const lifts = frames.map(({ lift, luck, reason, copy }) => {
    const name = frames.length > 1 ? ` of frame ${copy}` : '';
    if (lift === null) return `The lift of the corner${name} is unknown. ${reason ?? ''}`;
    return `Lifted corner${name}: ${chanceInWords(lift.chance)} as placed${luck === null ? '' : `, ${chanceInWords(luck.mean_chance)} by luck`}.`;
  });
  return `${short}${lifts.join(' ')}${proven ? ' No better way, proven.' : ''}`;
}

/** Boards that stay whole, those left for one reason together. */
function leftSeen({ left }: PlacedPile): PlacedSeen['left'] {
  const whole = left.filter((one) => one.whole);
  return [...new Set(whole.map(({ why }) => why))].map((why) => ({
    boards: whole
      .filter((one) => one.why === why)
      .map(({ board }) => board.mark)
      .join(', '),
    why,
  }));
}
