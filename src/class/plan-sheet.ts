import { formatLength } from '../base/units-format.js';
import { remembered } from '../base/remembered.js';
import { lipStrips, type LipStrip } from '../cutting/lip-strips.js';
import type { PlacedPiece } from '../cutting/boards/layout.js';
import type { CutPlan } from '../cutting/boards/purchase.js';
import { foldFindings } from '../findings/summary.js';
import type { Audit } from '../report/audit-view.js';
import { userText } from '../report/clean-text.js';
import { benchSheetSection } from '../report/sections/bench-sheet.js';
import { pieceNotes } from '../report/sections/piece-rows.js';
import { telling } from '../report/telling.js';
import { bullets, heading, paragraph, setApart, strong, table, type Block, type Cell } from '../report/tree.js';
import { aboutsInWords } from '../report/words/about.js';
import { barsInWords, cornersInWords } from '../report/words/build.js';
import { stockNames } from '../report/words/stock.js';
import { auditSentence, badge } from '../report/words/verdict.js';
import type { Pooled } from './pooled.js';

/** So many changes stand on a plan's sheet of the pack; its own page has all. */
const mostChanges = 3;

/**
 * One plan's sheet of the pack, in two parts: what to cut stands between them and comes from the boards that all buy
 * together.
 */
export interface PlanSheet {
  /** Position of the plan among the rows. */
  readonly row: number;
  readonly head: readonly Block[];
  readonly foot: readonly Block[];
}

/**
 * One plan of a class, by its place `no` among the files, on one sheet of paper: verdict, up to three things to change,
 * and, where it may be cut, how its pieces lie and the blanks of the bench.
 */
export function planSheet(audit: Audit, no: number, row: number): PlanSheet {
  const told = telling(audit);
  const { plan } = audit;
  const folded = foldFindings(audit.findings);
  const wrong = folded.filter(({ finding }) => finding.verdict !== 'clear' && finding.do.length > 0);
  const mayCut = audit.verdict === 'clear' || audit.verdict === 'caution';
  const notes = pieceNotes(told, audit.cut);
  const bench = benchSheetSection(told).blocks.filter(({ type }) => type === 'table');
  const head = [
    heading(2, `${no} · ${userText(plan.name, 80)}`),
    setApart(paragraph(strong(badge(audit.verdict, auditSentence(audit))))),
    paragraph(
      `${plan.student === null ? '' : `${userText(plan.student, 60)}. `}Face ${told.length(plan.face.width_mm)} wide, ${told.length(plan.face.height_mm)} high; bars: ${barsInWords(audit)}; corners: ${cornersInWords(audit)}. Diagonal ${told.said('frame.diagonal_mm')}.`,
    ),
    ...(wrong.length === 0
      ? []
      : [
          heading(3, 'What to change first'),
          bullets(
            wrong
              .slice(0, mostChanges)
              .map(({ finding, abouts }): Cell => [
                strong(badge(finding.verdict)),
                `, ${aboutsInWords(abouts)}: ${finding.say} ${finding.do[0] ?? ''}`,
              ]),
          ),
          ...(wrong.length > mostChanges
            ? [paragraph(`${wrong.length - mostChanges} more on the plan’s own page.`)]
            : []),
        ]),
    ...(mayCut ? [] : [paragraph(strong('Nothing to cut yet.'), ' What to cut is printed once the plan may be cut.')]),
  ];
  return {
    row,
    head,
    foot: mayCut ? [...(notes.length === 0 ? [] : [bullets(notes)]), heading(3, 'Bench sheet'), ...bench] : [],
  };
}

/** What one plan chalks: its pieces, each with its board counted from 1, and the strips of its lip. */
interface Chalked {
  readonly pieces: { readonly stock: string; readonly board: number; readonly placed: PlacedPiece }[];
  readonly lips: LipStrip[];
}

/** The same of every plan of a cutting, gone through once. */
const chalkedOf = remembered((cut: CutPlan): ReadonlyMap<number, Chalked> => {
  const known = new Map<number, Chalked>();
  const of = (plan: number): Chalked => {
    const one = known.get(plan) ?? { pieces: [], lips: [] };
    known.set(plan, one);
    return one;
  };
  for (const { stock, boards } of cut.stocks)
    boards.forEach(({ pieces }, i) =>
      pieces.forEach((placed) => of(placed.plan).pieces.push({ stock, board: i + 1, placed })),
    );
  for (const strip of lipStrips(cut)) of(strip.plan).lips.push(strip);
  return known;
});

/**
 * A plan's pieces on the boards that all buy together, with what to chalk on each; nothing for a plan that is not among
 * them.
 */
export function chalkBlocks({ cut, plans }: Pooled, plan: number): readonly Block[] {
  const units = plans[plan]?.units ?? cut.units;
  const length = (mm: number): string => formatLength(mm, units);
  const named = stockNames({ ...cut, units });
  const { pieces = [], lips = [] } = chalkedOf(cut).get(plan) ?? {};
  const rows = [
    ...pieces.map(({ stock, board, placed: { tag, piece, from_mm } }): readonly Cell[] => [
      tag,
      named(stock),
      `${board}, at ${length(from_mm)}`,
      length(piece.cut_mm),
      piece.ends === 'mitre' ? length(piece.short_mm) : '',
      piece.ends === 'mitre' ? '45°' : 'square',
      '☐',
    ]),
    ...lips.map(({ tag, cut_mm }): readonly Cell[] => [tag, 'strip for the lip', '', length(cut_mm), '', '45°', '☐']),
  ];
  if (rows.length === 0) return [];
  const heads = [
    { head: 'Chalk on it' },
    { head: 'Stock' },
    { head: 'Board of the class, from its start' },
    { head: 'Cut to', align: 'right' as const },
    { head: 'Short side', align: 'right' as const },
    { head: 'Ends' },
    { head: 'Cut' },
  ];
  return [
    heading(3, 'Cut list, and what to chalk on each piece'),
    table(heads, rows),
    paragraph(
      'The boards are those that the class buys together; the teacher’s pages show each of them, and the order at the saw.',
    ),
  ];
}
