import type { Verdict } from '../findings/finding.js';
import { foldFindings } from '../findings/summary.js';
import { timesInWords } from '../base/times-words.js';
import { formatNumber } from '../base/units-format.js';
import { chanceInWords } from '../base/chance-words.js';
import type { Audit, Drawn } from './audit-view.js';
import { cleanText, userText } from './clean-text.js';
import { barSection } from './drawings/bar-section.js';
import { frontView } from './drawings/front-view.js';
import type { Picture } from './drawings/picture.js';
import { cautionsFor, waitForProfessional } from './sections/cautions.js';
import { barSectionOf, frontViewOf } from './sections/picture-data.js';
import { saying } from './sections/verdict.js';
import { telling } from './telling.js';
import { appliedInWords } from './words/applied.js';
import { costInWords } from './words/cost.js';
import { auditSentence, verdictWord } from './words/verdict.js';

/** One reason for a verdict: what was found, and what to do about it. */
export interface Reason {
  readonly rule: string;
  readonly verdict: Exclude<Verdict, 'clear'>;
  /** The verdict as one word. */
  readonly word: string;
  readonly say: string;
  readonly do: readonly string[];
}

/**
 * What a screen shows first of an audit, in the words of the report: plain data, every text cleaned, nothing that takes
 * long to compose.
 */
export interface Glance {
  readonly name: string;
  readonly verdict: Verdict;
  readonly word: string;
  readonly sentence: string;
  /** Gravest first; empty when all is clear. */
  readonly reasons: readonly Reason[];
  /** Amounts said in the plan's own units. */
  readonly amounts: readonly { readonly name: string; readonly said: string }[];
  readonly cautions: readonly string[];
  readonly professional: string;
  readonly judged_by: { readonly ruleset: string; readonly shelf: string };
  readonly pictures: readonly Picture[];
}

/**
 * What is seen first of an audit: verdict, reasons, the amounts one asks for, cautions, and the pictures of frame and
 * section.
 */
export function glanceOf(audit: Audit): Glance {
  const told = telling(audit);
  const folded = foldFindings(audit.findings);
  const chance = told.number('warp.corner_lift_chance');
  const reserve = told.number('frame.twist_reserve');
  return {
    name: userText(audit.plan.name, 200),
    verdict: audit.verdict,
    word: verdictWord[audit.verdict],
    sentence: auditSentence(audit),
    reasons: folded.flatMap((fold) => {
      const { rule, verdict, do: next } = fold.finding;
      return verdict === 'clear'
        ? []
        : [{ rule, verdict, word: verdictWord[verdict], say: cleanText(saying(fold)), do: next.map(cleanText) }];
    }),
    amounts: [
      {
        name: 'Reserve against twisting',
        said: reserve === null ? 'unknown' : timesInWords(formatNumber(reserve, 2), 'the peak pull'),
      },
      { name: 'Frames with a lifted corner', said: chance === null ? 'unknown' : chanceInWords(chance) },
      { name: 'Cost', said: costInWords(audit, told.number('cutting.total_cost')) },
      { name: 'Weight', said: told.said('frame.weight_kg') },
      { name: 'Diagonal', said: told.said('frame.diagonal_mm') },
    ],
    cautions: cautionsFor(audit).map(cleanText),
    professional: waitForProfessional,
    judged_by: { ruleset: appliedInWords(audit.applied), shelf: userText(audit.shelf.name) },
    pictures: [frontPicture(audit), barSection(barSectionOf(audit))],
  };
}

/** The frame from the front, to scale, as the report draws it. */
export const frontPicture = (drawn: Drawn): Picture => frontView(frontViewOf(drawn));
