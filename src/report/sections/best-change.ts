import { chanceInWords } from '../../base/chance-words.js';
import { compareGravity, sortFindings, worstVerdict } from '../../findings/summary.js';
import type { Verdict } from '../../findings/finding.js';
import type { Audit, Change, Drawn } from '../audit-view.js';
import { barSection } from '../drawings/bar-section.js';
import { frontView } from '../drawings/front-view.js';
import type { Picture } from '../drawings/picture.js';
import type { Telling } from '../telling.js';
import { paragraph, strong, type Block } from '../tree.js';
import { moneyInWords } from '../words/cost.js';
import { badge } from '../words/verdict.js';
import { barSectionOf, frontViewOf } from './picture-data.js';

/** The verdict of the plan by itself, whatever was measured on the frame. */
export const planVerdict = ({ findings }: Pick<Audit, 'findings'>): Verdict =>
  worstVerdict(findings.filter(({ rule }) => !rule.startsWith('measured/')));

/**
 * The change to make first, with what it costs and does; where none of those tried betters the verdict, what the
 * gravest check asks for.
 */
export function bestChangeBlocks(told: Telling): readonly Block[] {
  const best = bestChange(told.audit);
  if (best !== null)
    return [
      paragraph(
        strong('Change first:'),
        ` ${best.words} Then: `,
        strong(badge(best.verdict)),
        `${effect(told, best)}.`,
      ),
    ];
  const steps = firstSteps(told.audit);
  return steps.length === 0 ? [] : [paragraph(strong('Change first:'), ` ${steps.join(' ')}`)];
}

/** The most useful of the changes tried, if it betters the verdict; null when none does or the frame is cut already. */
export function bestChange(audit: Audit): Change | null {
  const [first] = audit.changes;
  return first !== undefined && audit.measured === undefined && compareGravity(first.verdict, planVerdict(audit)) < 0
    ? first
    : null;
}

/** What the gravest check of the plan advises first, where no change that was tried stands for it. */
export function firstSteps(audit: Audit): readonly string[] {
  if (audit.measured !== undefined || bestChange(audit) !== null) return [];
  const graveFirst = sortFindings(audit.findings);
  return graveFirst.find(({ verdict, do: steps }) => verdict !== 'clear' && steps.length > 0)?.do.slice(0, 1) ?? [];
}

function effect({ audit, number }: Telling, { cost, lift_chance }: Change): string {
  const now = number('cutting.total_cost');
  const money = (amount: number): string => moneyInWords(audit, amount);
  const more =
    cost === null || now === null
      ? ''
      : Math.abs(cost - now) < 0.005
        ? ', which is as much as now'
        : `, ${money(Math.abs(cost - now))} ${cost > now ? 'more' : 'less'} than now`;
  return [
    ...(cost === null ? [] : [`; cost ${money(cost)}${more}`]),
    ...(lift_chance === null ? [] : [`; a lifted corner in ${chanceInWords(lift_chance)}`]),
  ].join('');
}

/**
 * The frame as planned and, where the best change shows from the front, as changed; where it shows in the bars only,
 * their section as changed.
 */
export function framePictures(audit: Audit): {
  readonly front: readonly Picture[];
  readonly section: readonly Picture[];
} {
  const changed = bestChange(audit)?.drawn ?? audit;
  const differs = (of: (drawn: Drawn) => unknown): boolean => JSON.stringify(of(audit)) !== JSON.stringify(of(changed));
  const [planned, better] = ['As planned', 'With the change'];
  if (differs(frontViewOf)) {
    const after = {
      name: 'front-changed.svg',
      title: 'The frame as changed',
      note: 'From the front, cloth off',
      head: better,
    };
    return {
      front: [frontView(frontViewOf(audit), { head: planned }), frontView(frontViewOf(changed), after)],
      section: [barSection(barSectionOf(audit))],
    };
  }
  const front = [frontView(frontViewOf(audit))];
  if (!differs(barSectionOf)) return { front, section: [barSection(barSectionOf(audit))] };
  const after = { name: 'section-changed.svg', title: 'Section through a bar as changed', head: better };
  return {
    front,
    section: [barSection(barSectionOf(audit), { head: planned }), barSection(barSectionOf(changed), after)],
  };
}
