import type { Root } from 'mdast';
import { lazily } from '../base/lazily.js';
import type { Audit } from './audit-view.js';
import { userText } from './clean-text.js';
import type { Picture } from './drawings/picture.js';
import { sheetFor, type Sheet } from './html-print.js';
import { firstSheet } from './card.js';
import type { FirstSheet } from './paper.js';
import { benchSheetSection } from './sections/bench-sheet.js';
import { cautionsSection } from './sections/cautions.js';
import { changesSection } from './sections/changes.js';
import { checksSection } from './sections/checks.js';
import { clothSection } from './sections/cloth.js';
import { cuttingSection } from './sections/cutting.js';
import { fasteningsSection } from './sections/fastenings.js';
import { hangingSection } from './sections/hanging.js';
import { measuredSection } from './sections/measured.js';
import { sourcesSection } from './sections/sources.js';
import { verdictSection } from './sections/verdict.js';
import { warpSection } from './sections/warp.js';
import { whatIfSection } from './sections/what-if.js';
import { workSection } from './sections/work.js';
import { stretchingSection } from './sections/stretching.js';
import { telling, type Section, type Telling } from './telling.js';
import { document, foldedHeading, heading } from './tree.js';

/** A report before it is written: one tree for every format, and its pictures. */
export interface Report {
  readonly tree: Root;
  readonly pictures: readonly Picture[];
}

/** The report of one plan: with what fills the first sheet of paper, and the paper it is for. */
export interface PlanReport extends Report {
  /** Its pictures are among those of the report; only paper asks for it. */
  readonly first: FirstSheet;
  readonly sheet: Sheet;
}

type Part = (told: Telling) => Section | null;

/** What one decides and works from, in that order; a part that has nothing to say is null. */
const atHand: readonly Part[] = [
  verdictSection,
  measuredSection,
  changesSection,
  cuttingSection,
  fasteningsSection,
  workSection,
  clothSection,
  stretchingSection,
  hangingSection,
  benchSheetSection,
  cautionsSection,
];

/** What is read once, at a desk: folded on a screen and left off the paper. */
const atDesk: readonly Part[] = [warpSection, whatIfSection, checksSection, sourcesSection];

/** The report of one audit. The same audit always gives the same report. */
export function composeReport(audit: Audit): PlanReport {
  const told = telling(audit);
  const made = (parts: readonly Part[]): readonly Section[] =>
    parts.map((part) => part(told)).filter((section) => section !== null);
  const [hand, desk] = [made(atHand), made(atDesk)];
  const pictures = [...hand, ...desk].flatMap(({ pictures: own }) => own);
  const tree = document([
    heading(1, reportTitle(audit)),
    ...hand.flatMap(({ title, blocks }) => [heading(2, title), ...blocks]),
    ...desk.flatMap(({ title, blocks }) => [foldedHeading(title), ...blocks]),
  ]);
  return lazily({ first: () => firstSheet(told, pictures) }, { tree, pictures, sheet: sheetFor(audit.plan.units) });
}

/** What the report is called: the plan's own name. */
export const reportTitle = (audit: Audit): string =>
  `${userText(audit.plan.name, 120)}: will it stay flat, square and tight?`;
