import type { SawAtHand } from '../base/saw.js';
import { formatLength } from '../base/units-format.js';
import { compareText } from './boards/layout.js';
import type { PooledPiece } from './pieces/pool.js';
import type { CutPlan, StockPurchase } from './boards/purchase.js';
import { nests } from './boards/stock-problem.js';
import { lipStrips } from './lip-strips.js';

/** Shorter than this a leftover is not safe to hold at a saw, mm (practice). */
const shortestTest_mm = 200;

/** One setting of saw and stop, and every piece cut with it, in order. */
export interface SawStep {
  readonly stock: string;
  readonly ends: 'square' | 'mitre';
  /** Set the stop to this: long point to long point for a mitre. */
  readonly stop_mm: number;
  /** Board (1-based, within its stock) and piece, in the order they come off. */
  readonly cuts: readonly { readonly board: number; readonly tag: string; readonly turn: boolean }[];
  /** Tags of pieces that must come out equal, cut one after the other without touching the stop. */
  readonly matching: readonly (readonly string[])[];
  readonly words: string;
}

/**
 * The trial before the first cut: on the shortest leftover that can be held, sawn off its board first. Board null = use
 * any scrap.
 */
export interface TestCut {
  readonly stock: string;
  /** What is tried, all of it on the one leftover. */
  readonly ends: readonly ('square' | 'mitre')[];
  readonly board: number | null;
  readonly length_mm: number | null;
  readonly words: string;
}

/**
 * How to go through the work at the saw. `later` comes when the glue of the blanks has set, the strips of raised lips
 * last.
 */
export interface MarkingOrder {
  readonly tests: readonly TestCut[];
  readonly steps: readonly SawStep[];
  readonly later: readonly SawStep[];
  readonly lips: readonly SawStep[];
}

/**
 * The order of marking and sawing: a trial on the shortest leftover; then square ends, then mitres, so the saw is
 * turned once; within each the longest
 * length first, one stop setting per length, every board's pieces in the order they lie on it. What is cut already is
 * left out. The words fit the saw at hand.
 */
export function markingOrder(cut: CutPlan, saw?: SawAtHand): MarkingOrder {
  const tests: TestCut[] = [];
  const steps: SawStep[] = [];
  const later: SawStep[] = [];
  for (const stock of cut.stocks) {
    const all = stock.boards.flatMap((board, i) =>
      board.ready ? [] : board.pieces.map((piece) => ({ board: i + 1, piece })),
    );
    const key = ({ piece }: PooledPiece): string =>
      `${nests(piece) ? piece.across_mm : 0}/${piece.ends}/${piece.cut_mm}`;
    const settings = [...new Map(all.map(({ piece }) => [key(piece), piece])).values()];
    settings.sort((p, q) => across(p) - across(q) || q.piece.cut_mm - p.piece.cut_mm || compareText(key(p), key(q)));
    for (const setting of settings) {
      const here = all.filter(({ piece }) => key(piece) === key(setting));
      const cuts = here.map(({ board, piece }) => ({ board, tag: piece.tag, turn: piece.long_side === 'lower' }));
      steps.push(
        step(
          cut,
          saw,
          stock.stock,
          setting.piece.ends,
          setting.piece.cut_mm,
          cuts,
          here.map(({ piece }) => piece),
        ),
      );
    }
    const kinds = (['square', 'mitre'] as const).filter((ends) => settings.some(({ piece }) => piece.ends === ends));
    if (kinds.length > 0)
      tests.push(
        testCut(
          cut,
          saw,
          stock,
          kinds,
          all.some(({ piece: { piece } }) => piece.part === 'bar' && piece.laps.length > 0),
        ),
      );
    later.push(...afterGlue(cut, saw, stock));
  }
  return { tests, steps, later, lips: lipSteps(cut, saw) };
}

/** The strips of raised lips, one setting per length; they come off strips, so no board is named. */
function lipSteps(cut: CutPlan, saw: SawAtHand | undefined): SawStep[] {
  const strips = lipStrips(cut);
  const lengths = [...new Set(strips.map(({ cut_mm }) => cut_mm))].sort((a, b) => b - a);
  return lengths.map((cut_mm): SawStep => {
    const here = strips.filter((strip) => strip.cut_mm === cut_mm);
    const frames = [...new Set(here.map(({ plan, copy }) => `${plan}/${copy}`))];
    const matching = frames.map((frame) =>
      here.filter(({ plan, copy }) => `${plan}/${copy}` === frame).map(({ tag }) => tag),
    );
    const { words, ...rest } = worded(
      cut,
      saw,
      {
        stock: 'strip for the lip',
        ends: 'mitre',
        stop_mm: cut_mm,
        cuts: here.map(({ tag }) => ({ board: 0, tag, turn: false })),
        matching,
      },
      [],
    );
    return { ...rest, words: `Strips of the lip: ${words.charAt(0).toLowerCase()}${words.slice(1)}` };
  });
}

/**
 * Square ends first, then mitres, narrow before wide, as they lie on the boards: what is sawn to a width of 38.1 mm
 * does
 * not nest with 38 mm.
 */
const across = ({ piece }: PooledPiece): number => (nests(piece) ? piece.across_mm : 0);

function afterGlue(cut: CutPlan, saw: SawAtHand | undefined, stock: StockPurchase): SawStep[] {
  const blanks = stock.boards.flatMap(({ pieces }) =>
    pieces.filter(({ piece }) => piece.later !== null && piece.ply === 1),
  );
  const lengths = [...new Set(blanks.map(({ piece }) => `${piece.later?.ends}/${piece.later?.cut_mm}`))];
  const groups = lengths.map((length) =>
    blanks.filter(({ piece }) => `${piece.later?.ends}/${piece.later?.cut_mm}` === length),
  );
  groups.sort((p, q) => (q[0]?.piece.later?.cut_mm ?? 0) - (p[0]?.piece.later?.cut_mm ?? 0));
  return groups.map((group) => {
    const first = group[0]?.piece.later as NonNullable<PooledPiece['piece']['later']>;
    const cuts = group.map(({ tag }) => ({ board: 0, tag: tag.replace(/1$/, ''), turn: false }));
    return step(
      cut,
      saw,
      stock.stock,
      first.ends,
      first.cut_mm,
      cuts,
      group.map((item) => ({ ...item, tag: item.tag.replace(/1$/, '') })),
    );
  });
}

function step(
  cut: CutPlan,
  saw: SawAtHand | undefined,
  stock: string,
  ends: 'square' | 'mitre',
  stop_mm: number,
  cuts: SawStep['cuts'],
  pieces: readonly PooledPiece[],
): SawStep {
  const groups = new Map<string, string[]>();
  for (const { plan, copy, piece, tag } of pieces) {
    const key = `${plan}/${copy}/${piece.part}/${piece.part === 'crossbar' ? piece.about : piece.ply}`;
    groups.set(key, [...(groups.get(key) ?? []), tag]);
  }
  return worded(
    cut,
    saw,
    { stock, ends, stop_mm, cuts, matching: [...groups.values()].filter((tags) => tags.length > 1) },
    pieces,
  );
}

function worded(
  cut: CutPlan,
  saw: SawAtHand | undefined,
  step: Omit<SawStep, 'words'>,
  pieces: readonly PooledPiece[],
): SawStep {
  const { ends, stop_mm, cuts } = step;
  const length = formatLength(stop_mm, cut.units);
  const how = ends === 'mitre' ? `45° at both ends, ${length} from long point to long point` : `square ends, ${length}`;
  const boards = [...new Set(cuts.map(({ board }) => board))];
  const list = boards
    .map(
      (board) =>
        `${cuts
          .filter((c) => c.board === board)
          .map(({ tag }) => tag)
          .join(', ')}${board > 0 ? ` from board ${board}` : ''}`,
    )
    .join('; ');
  return {
    ...step,
    words: `${setting(saw, cuts.length > 1)} ${how}. ${saw === 'none' ? 'Have cut' : saw === 'hand' ? 'Saw' : 'Cut'} ${list}.${ends === 'mitre' ? ` ${turning(cut, saw, cuts, pieces)}` : ''}`,
  };
}

/** How pieces of one length come out equal: against a stop, or by hand marked from one stick. */
function setting(saw: SawAtHand | undefined, several: boolean): string {
  if (saw === 'hand')
    return several ? 'Cut one stick to the length and mark every piece from it:' : 'Mark with square and knife:';
  return saw === 'none' ? 'In the shop, against one stop:' : 'Set the stop once:';
}

const otherEnd = {
  power: 'Swing the saw over for the other end and keep the same face up.',
  'mitre-box': 'Take the other 45° slot for the other end and keep the same face up.',
  either: 'Swing the saw over for the other end, in a mitre box take the other slot, and keep the same face up.',
} as const;

/**
 * How a mitre's second end is cut. Nested pieces lie the other way round on the board: with the same face up their
 * short side lies at the fence, so the stop stands nearer for them.
 * By hand each piece is marked when the one before it is off, so that the saw cut takes nothing from it.
 */
function turning(
  cut: CutPlan,
  saw: SawAtHand | undefined,
  cuts: SawStep['cuts'],
  pieces: readonly PooledPiece[],
): string {
  const turned = cuts.filter(({ turn }) => turn).map(({ tag }) => tag);
  const short_mm = pieces.find(({ tag }) => turned.includes(tag))?.piece.short_mm;
  const nested = turned.length > 0 && short_mm !== undefined;
  if (saw === 'hand' || saw === 'none') {
    const turn = nested
      ? ` ${turned.join(', ')} ${turned.length === 1 ? 'lies' : 'lie'} the other way round on the board, ${formatLength(short_mm, cut.units)} from short point to short point.`
      : '';
    return saw === 'none'
      ? `The two ends lean towards each other.${turn}`
      : `Mark the ends with a mitre square, leaning towards each other, and the next piece only when this one is off.${turn}`;
  }
  return `${otherEnd[saw ?? 'either']}${nested ? ` Short side to the fence for ${turned.join(', ')}: there set the stop to ${formatLength(short_mm, cut.units)}.` : ''}`;
}

/** A saw that swings one way only brings every long side to the fence, but adds up what its blade leans. */
const oneWaySaw =
  ' If your saw swings to one side only, turn the board over after every cut instead: every stop is then the long one, but the blade must stand upright, because what it leans adds up.';

const trials = {
  square: 'one square cut and check it with a square',
  mitre: 'two 45° cuts and hold them together against a square',
} as const;

function testCut(
  cut: CutPlan,
  saw: SawAtHand | undefined,
  { stock, boards }: StockPurchase,
  ends: TestCut['ends'],
  lapped: boolean,
): TestCut {
  const fit = boards
    .map(({ left_mm }, i) => ({ board: i + 1, left_mm }))
    .filter(({ left_mm }) => left_mm >= shortestTest_mm);
  fit.sort((p, q) => p.left_mm - q.left_mm);
  const best = fit[0];
  const check = [...ends.map((one) => trials[one]), ...(lapped ? ['the trial lap of the order of work'] : [])].join(
    ', then on the same piece ',
  );
  const oneWay = ends.includes('mitre') && (saw === undefined || saw === 'power') ? oneWaySaw : '';
  if (saw === 'none')
    return {
      stock,
      ends,
      board: null,
      length_mm: null,
      words: `Ask for a trial on scrap of the same size first: ${check}.`,
    };
  if (best === undefined)
    return {
      stock,
      ends,
      board: null,
      length_mm: null,
      words: `No leftover is long enough to hold safely: try ${check} on any scrap of the same size.${oneWay}`,
    };
  const words = `Saw the leftover of ${formatLength(best.left_mm, cut.units)} off the end of board ${best.board} first and use it for the trial: make ${check}.${oneWay}`;
  return { stock, ends, board: best.board, length_mm: best.left_mm, words };
}
