import type { Paragraph } from 'mdast';
import type { Finding } from '../../findings/finding.js';
import { foldFindings, worstVerdict, type FoldedFinding } from '../../findings/summary.js';
import { timesInWords } from '../../base/times-words.js';
import { chanceInWords } from '../../base/chance-words.js';
import type { Audit } from '../audit-view.js';
import { userText } from '../clean-text.js';
import { bullets, paragraph, picture, setApart, strong, table, type Block, type Cell } from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { appliedInWords, relaxedBlocks } from '../words/applied.js';
import { aboutsInWords } from '../words/about.js';
import { barsInWords, cornersInWords } from '../words/build.js';
import { costInWords } from '../words/cost.js';
import { auditSentence, badge } from '../words/verdict.js';
import { bestChangeBlocks, framePictures } from './best-change.js';

/** So many of the gravest findings are said right under the verdict. */
const saidWithVerdict = 3;

/**
 * Part 1, made to fill one screen: the verdict, what to change first, the frame as planned and as changed, the plan at
 * a glance, and why. Where no change is drawn, why comes before the picture.
 */
export function verdictSection(told: Telling): Section {
  const { audit } = told;
  const { front, section } = framePictures(audit);
  const reasons = reasonBlocks(audit);
  const changeDrawn = front.length > 1;
  const blocks: Block[] = [
    setApart(...measuredFirst(audit), paragraph(strong(badge(audit.verdict, auditSentence(audit))))),
    ...bestChangeBlocks(told),
    ...(changeDrawn ? [] : reasons),
    ...front.map(picture),
    table([{ head: 'At a glance' }, { head: '' }], glance(told)),
    ...(changeDrawn ? reasons : []),
    ...relaxedBlocks(audit.applied),
    ...section.map(picture),
  ];
  return { title: 'Verdict', blocks, pictures: [...front, ...section] };
}

/** What every finding as grave as the verdict says. */
export const gravestSayings = (audit: Telling['audit']): readonly string[] => gravest(audit).map(saying);

/** Why: the first of them, and how many more there are. */
export function reasonBlocks(audit: Telling['audit']): readonly Block[] {
  const sayings = gravestSayings(audit);
  return [
    ...(sayings.length === 0 ? [] : [paragraph(strong('Why:')), bullets(sayings.slice(0, saidWithVerdict))]),
    ...(sayings.length > saidWithVerdict
      ? [
          paragraph(
            `${sayings.length - saidWithVerdict} more under ${audit.measured === undefined ? '' : '“What you measured” and '}“What to change”.`,
          ),
        ]
      : []),
  ];
}

/** The sentence of findings folded into one; of several elements it names them. */
export const saying = ({ finding, abouts }: FoldedFinding): string =>
  abouts.length === 1 ? finding.say : `${finding.say} Concerned: ${aboutsInWords(abouts)}.`;

/** The findings as grave as the verdict, those of a rule as one. What was measured leads. */
export function gravest({ findings, verdict }: Pick<Audit, 'findings' | 'verdict'>): readonly FoldedFinding[] {
  const all = findings.filter((f) => f.verdict === verdict && f.verdict !== 'clear');
  const measured = ({ rule }: Finding): boolean => rule.startsWith('measured/');
  return [all.filter(measured), all.filter((f) => !measured(f))].flatMap(foldFindings);
}

/** What the bench sheet says by itself, before what both say together. */
function measuredFirst({ measured }: Telling['audit']): readonly Paragraph[] {
  if (measured === undefined) return [];
  return [
    paragraph(
      ...(measured.findings.length === 0
        ? ['Nothing was measured that can be judged.']
        : ['What you measured: ', strong(badge(worstVerdict(measured.findings))), '.']),
    ),
  ];
}

/** The findings whose sentence stands under the verdict, by rule and verdict: what follows need not say it again. */
export const saidAlready = (audit: Telling['audit']): ReadonlySet<string> =>
  new Set(
    gravest(audit)
      .slice(0, saidWithVerdict)
      .map(({ finding }) => `${finding.rule} ${finding.verdict}`),
  );

function glance(told: Telling): readonly (readonly Cell[])[] {
  const { audit, length, said } = told;
  const { plan } = audit;
  const reserve = told.number('frame.twist_reserve');
  const chance = told.number('warp.corner_lift_chance');
  const door = told.word('frame.fits_door');
  const rows: (readonly [string, string])[] = [
    [
      'Face',
      `${length(plan.face.width_mm)} wide, ${length(plan.face.height_mm)} high${plan.count > 1 ? `, ${plan.count} frames` : ''}`,
    ],
    ['Cost, all bought', costInWords(audit, told.number('cutting.total_cost'))],
    ['Lifted corner', chance === null ? 'unknown' : `${chanceInWords(chance)} frames built like this`],
    ['Bars', barsInWords(audit)],
    ['Corners', cornersInWords(audit)],
    ['Diagonal', told.said('frame.diagonal_mm')],
    ['Weight, finished', weight(told)],
    [
      'Reserve against twisting',
      reserve === null
        ? 'unknown'
        : `${timesInWords(said('frame.twist_reserve'), 'the peak pull')}${reserve < 1 ? ': it gives way before that' : ''}`,
    ],
    ...(door === 'yes' || door === 'no' ? [['Goes through the door', door] as const] : []),
    ['Judged by', `ruleset ${appliedInWords(audit.applied)}; shelf “${userText(audit.shelf.name)}”`],
  ];
  return rows;
}

function weight(told: Telling): string {
  const people = told.number('frame.lift_people');
  return `${told.said('frame.weight_kg')}${people === null ? '' : people <= 1 ? ', one person lifts it' : `, ${people} people lift it`}`;
}
