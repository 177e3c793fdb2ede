import type { UnitSystem } from '../base/names.js';
import { formatLength } from '../base/units-format.js';
import { isRead, type PileBoard } from '../pile/pile.js';
import type { PlacedPile } from '../place/result.js';
import { userText } from '../report/clean-text.js';
import { strong, type Cell } from '../report/tree.js';
import { listed } from './lie-words.js';

/** What the chalk of a board is told with. */
export interface ChalkWords {
  readonly units: UnitSystem;
  /** Kinds of board that are as thick as wide. */
  readonly square: readonly string[];
}

export const markOf = ({ mark }: Pick<PileBoard, 'mark'>): string => userText(mark, 12);

/** How boards get their chalk, in steps. */
export function chalking({ pile }: Pick<PlacedPile, 'pile'>, used: readonly PileBoard[]): readonly Cell[] {
  return [
    `Letter and stroke: a board that bears them from when it was read keeps them, for the readings hold for those marks. One without gets them now, as the list below says, but only if you know for sure which board it is${used.every(isRead) ? '' : '; of those that nobody has read, any one of the kind will do'}.${lookAlikes(pile.boards, used)}`,
    'For every board: the face with the letter is its marked face, the end with the stroke its marked end. All lengths below are measured from the marked end.',
    'For every board: hold it with the letter towards you and the stroke on your left. The edge on top is its marked edge; put a tick on it. The edge below is “the other edge”.',
  ];
}

/** Boards that only their letter tells apart from one that is used. */
function lookAlikes(boards: readonly PileBoard[], used: readonly PileBoard[]): string {
  const alike = [...new Set(used.filter(isRead))]
    .map((one) =>
      boards.filter(
        ({ stock, length_mm, cut }) => stock === one.stock && length_mm === one.length_mm && cut === one.cut,
      ),
    )
    .filter((group) => group.length > 1);
  const groups = [...new Set(alike.map((group) => listed(group.map(markOf))))];
  return groups.length === 0
    ? ''
    : ` Of the same kind and length, and told apart by their letters alone: ${groups.join('; ')}. If such a letter is gone, read the board anew.`;
}

/**
 * Where the chalk of a board goes, so that its readings hold: which side is the marked face, which the marked edge,
 * which end the marked end.
 */
export function chalkOf(board: PileBoard, words: ChalkWords): Cell {
  const { knots, cut } = board;
  const name = strong(markOf(board));
  const sides = sidesOf(board, words);
  if (!isRead(board) && knots.length === 0 && (cut === null || cut === 'square'))
    return [name, ': nobody has read it, so letter on any face, stroke at either end.'];
  const bad = knots
    .map(({ from_mm, to_mm }) => `${formatLength(from_mm, words.units)} to ${formatLength(to_mm, words.units)}`)
    .join(', ');
  const places = knots.length === 1 ? 'bad place' : 'bad places';
  if (sides.edge !== null) {
    const check =
      knots.length === 0
        ? ''
        : ` The ${places} must then lie at ${bad} from the stroke; if not, the sides were mixed up. ${knots.length === 1 ? 'It stays' : 'They stay'} out of every piece.`;
    return [
      name,
      `: ${sides.face}; marked edge = ${sides.edge}. With the letter towards you and that edge on top, the stroke is at the left end.${check}`,
    ];
  }
  const stroke =
    knots.length === 0
      ? 'stroke at either end'
      : `stroke at the end that its ${places} ${knots.length === 1 ? 'was' : 'were'} measured from`;
  return [
    name,
    `: ${sides.face}, ${stroke}; marked edge = the one on top when the letter is towards you and the stroke on your left.${knots.length === 0 ? '' : ` The ${places} at ${bad} from the stroke ${knots.length === 1 ? 'stays' : 'stay'} out of every piece.`}`,
  ];
}

/** Hollows that differ by less look alike. */
const told_apart_mm = 1;

/** Which side is the marked face, and which the marked edge; an edge of null is whichever comes to lie on top. */
function sidesOf(
  { bow_per_m, crook_per_m, length_mm, stock, cut }: PileBoard,
  { units, square }: ChalkWords,
): { readonly face: string; readonly edge: string | null } {
  const hollow_mm = (curve: number | null): number => (Math.abs(curve ?? 0) * (length_mm / 1000) ** 2 * 1000) / 8;
  const [bow_mm, crook_mm] = [hollow_mm(bow_per_m), hollow_mm(crook_per_m)];
  const [bow, crook] = [bow_mm, crook_mm].map((depth) => `hollow of ${formatLength(depth, units)}`) as [string, string];
  const [bowed, crooked] = [Number(bow_per_m ?? 0), Number(crook_per_m ?? 0)];
  if (!square.includes(stock) || (cut !== null && cut !== 'square')) {
    return {
      face:
        cut === 'mitre-on-edge'
          ? 'cut already, letter on its long side'
          : bowed === 0
            ? 'letter on any wide face'
            : `letter on the ${bowed > 0 ? 'hollow' : 'round'} wide face (${bow} from end to end${bowed > 0 ? '' : ' on the other one'})`,
      edge:
        cut === 'mitre'
          ? 'its long side, cut already'
          : crooked === 0
            ? null
            : `its ${crooked > 0 ? 'hollow' : 'round'} edge (${crook}${crooked > 0 ? '' : ' on the other one'})`,
    };
  }
  if (bowed === 0 && crooked === 0) return { face: 'letter on any face', edge: null };
  if (bowed === 0)
    return {
      face: `letter on any face beside the side with the ${crook}`,
      edge: crooked > 0 ? 'that hollow side' : 'its round edge, across from that hollow',
    };
  const face =
    bowed > 0
      ? `letter on the side with the ${bow} from end to end`
      : `letter on the round side, across from the ${bow}`;
  if (crooked === 0) return { face, edge: null };
  if (Math.abs(bow_mm - crook_mm) < told_apart_mm) {
    return {
      face: `its two hollow sides look alike (${formatLength(bow_mm, units)} and ${formatLength(crook_mm, units)}), so take either as the first: letter ${bowed > 0 ? 'on' : 'across from'} the first`,
      edge: crooked > 0 ? 'the second, its neighbour' : 'the round edge across from the second',
    };
  }
  return {
    face,
    edge:
      crooked > 0
        ? `its hollow edge, the neighbouring side with the ${crook}`
        : `its round edge, across from the neighbouring ${crook}`,
  };
}
