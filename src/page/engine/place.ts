import {
  chanceInWords, composePlacePage, endWords, faceWords, formatQuantity, partWords, placePlans, readPile, readPlanWith, writeBoards, writeHtml, type Bench, type PlacedFrame, type UnitSystem,
} from '../../index.js';
import type { NamedText, PlacedSeen } from './protocol.js';

/** The lift alone is exact; nothing is sampled. */
const no_samples = 100;

/** Which board of a pile becomes which piece of a plan, as the command places them. */
export function placeSeen(plan: NamedText, pile: NamedText, bench: Bench): PlacedSeen {
  const none = { problems: [], outcome: '', pieces: [], missing: [], html: null, text: null } as const;
  const read = readPile(pile.text, pile.file, bench.shelf);
  if (!read.ok) return { ...none, problems: read.problems };
  const framed = readPlanWith(plan.text, plan.file, bench.shelf);
  if (!framed.ok) return { ...none, problems: read.warnings, outcome: 'The plan cannot be read as it stands, so no board is placed.' };
  const placed = placePlans([framed.value], read.value, { ...bench, samples: no_samples });
  const [frame] = placed.frames;
  if (frame === undefined) return none;
  const { tree, pictures } = composePlacePage(placed);
  return {
    problems: read.warnings,
    outcome: outcome(frame, placed.proven),
    pieces: placed.frames.flatMap(({ plan: { units, count }, copy, places }) => places.map(({ slot, board, from_mm, lie }) => ({
      board: board.mark, tag: count > 1 ? `${slot.tag}, frame ${copy}` : slot.tag, part: partWords({ slot, plies: pliesIn(slot.piece.about, places) }),
      from: length(from_mm, units), to: length(from_mm + slot.piece.cut_mm, units), lies: `letter ${faceWords({ slot, lie })}, marked end ${endWords({ slot, lie })}`,
    }))),
    missing: frame.missing.map((slot) => `${slot.tag}: ${partWords({ slot, plies: slot.piece.ply })}, ${length(slot.piece.cut_mm, frame.plan.units)}`),
    html: writeHtml(tree, pictures, { title: 'Which board goes where', lang: 'en' }),
    text: placed.frames.length === 1 && frame.missing.length === 0 ? writeBoards(plan.text, framed.value, frame.boards) : null,
  };
}

const pliesIn = (about: string, places: PlacedFrame['places']): number => places.filter(({ slot }) => slot.piece.about === about).length;

const length = (mm: number, units: UnitSystem): string => formatQuantity(mm, 'mm', units);

function outcome({ lift, luck, reason }: PlacedFrame, proven: boolean): string {
  if (lift === null) return `The lift of the corner is unknown. ${reason ?? ''}`;
  const better = proven ? ' No better way, proven.' : '';
  return `Lifted corner: ${chanceInWords(lift.chance)} as placed${luck === null ? '' : `, ${chanceInWords(luck.mean_chance)} by luck`}.${better}`;
}
