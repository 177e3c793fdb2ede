import { worstVerdict } from '../findings/summary.js';
import { findFact } from '../facts/find-fact.js';
import type { Audit, Change } from '../report/audit-view.js';
import { userText } from '../report/clean-text.js';
import { moneyInWords } from '../report/words/cost.js';
import { gravest } from '../report/sections/verdict.js';
import { badge } from '../report/words/verdict.js';
import { tones, type Painted } from './terminal.js';
import { typed } from './typed.js';

/** So many of the gravest reasons are told; where a frame may be cut all the same, the first one is enough. */
const reasonsTold = { stop: 3, unknown: 1, caution: 1, clear: 0 } as const;

/** `✕ STOP  Stairwell banner`. */
export const verdictLine = ({ verdict, plan }: Pick<Audit, 'verdict' | 'plan'>): string =>
  `${badge(verdict, verdict.toUpperCase())}  ${userText(plan.name)}`;

/**
 * What stands under the verdict of one plan: its gravest reasons, the best change with its cost, and what to type next.
 */
export function reasonLines(audit: Audit, file: string): readonly Painted[] {
  const { verdict, measured } = audit;
  const folds = gravest(audit);
  const told = folds.slice(0, reasonsTold[verdict]);
  const more = folds.length - told.length;
  const next =
    measured !== undefined
      ? null
      : verdict === 'stop'
        ? `sightdown suggest ${typed(file)}`
        : verdict === 'clear'
          ? null
          : `sightdown suggest ${typed(file)} --clear`;
  const [best] = measured === undefined ? audit.changes : [];
  const onSheet = measured === undefined || measured.findings.length === 0 ? null : worstVerdict(measured.findings);
  return [
    ...(onSheet === null ? [] : [['  What you measured: ', [tones[onSheet], badge(onSheet)], '.'] satisfies Painted]),
    ...told.map(({ finding }): Painted => ['  ', [tones[verdict], badge(verdict, '')], finding.say]),
    ...(more === 0 ? [] : [[`  ${more} more ${more === 1 ? 'reason' : 'reasons'} in the report.`]]),
    ...(verdict !== 'stop' || best === undefined
      ? []
      : [
          [
            '  ',
            ['strong', 'Best change: '],
            `${best.words} Then: `,
            [tones[best.verdict], badge(best.verdict)],
            `${priceOf(audit, best)}.`,
          ] satisfies Painted,
        ]),
    ...(next === null ? [] : [['  ', ['strong', 'Next: '], next] satisfies Painted]),
  ];
}

/** What a changed plan costs, and how much more or less that is. */
function priceOf(audit: Audit, { cost }: Change): string {
  const before = findFact(audit.facts, 'cutting.total_cost', null);
  if (cost === null) return '';
  const more = before === null ? 0 : Math.round((cost - before) * 100) / 100;
  return `, for ${moneyInWords(audit, cost)}${before === null || more === 0 ? '' : ` (${moneyInWords(audit, Math.abs(more))} ${more > 0 ? 'more' : 'less'})`}`;
}
