import type { Root } from 'mdast';
import type { Audit } from './audit-view.js';
import { userText } from './clean-text.js';
import type { Picture } from './drawings/picture.js';
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
import { document, heading } from './tree.js';

/** A report before it is written: one tree for every format, and its pictures. */
export interface Report {
  readonly tree: Root;
  readonly pictures: readonly Picture[];
}

/** The parts of the report in the order of reading; a part that has nothing to say is null. */
const parts: readonly ((told: Telling) => Section | null)[] = [
  verdictSection, measuredSection, changesSection, warpSection, whatIfSection, checksSection, cuttingSection, fasteningsSection, clothSection, stretchingSection, workSection, hangingSection, cautionsSection, sourcesSection,
  benchSheetSection,
];

/** The report of one audit. The same audit always gives the same report. */
export function composeReport(audit: Audit): Report {
  const told = telling(audit);
  const sections = parts.map((part) => part(told)).filter((section) => section !== null);
  return {
    tree: document([heading(1, reportTitle(audit)), ...sections.flatMap(({ title, blocks }) => [heading(2, title), ...blocks])]),
    pictures: sections.flatMap(({ pictures }) => pictures),
  };
}

/** What the report is called: the plan's own name. */
export const reportTitle = (audit: Audit): string => `${userText(audit.plan.name, 120)}: will it stay flat, square and tight?`;
