import type { Finding } from '../../findings/finding.js';
import { countVerdicts, foldFindings, type FoldedFinding } from '../../findings/summary.js';
import { userText } from '../clean-text.js';
import { barSection } from '../drawings/bar-section.js';
import { frontView } from '../drawings/front-view.js';
import { bullets, paragraph, picture, setApart, strong, table, type Block, type Cell } from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { appliedInWords, relaxedBlocks } from '../words/applied.js';
import { aboutsInWords } from '../words/about.js';
import { barsInWords, cornersInWords } from '../words/build.js';
import { verdictSentence } from '../words/verdict.js';
import { frontViewOf, barSectionOf } from './picture-data.js';

/** So many of the gravest findings are said right under the verdict. */
const saidWithVerdict = 5;

/** Part 1: the verdict in one sentence, what stands in the way, the picture and the plan at a glance. */
export function verdictSection(told: Telling): Section {
  const { audit } = told;
  const pictures = [frontView(frontViewOf(audit)), barSection(barSectionOf(audit))];
  const sayings = foldFindings(gravest(audit)).map(saying);
  const blocks: Block[] = [
    setApart(paragraph(strong(verdictSentence(audit.verdict, countVerdicts(foldFindings(audit.findings).map(({ finding }) => finding)), audit.measured !== undefined)))),
    ...(sayings.length === 0 ? [] : [bullets(sayings.slice(0, saidWithVerdict))]),
    ...(sayings.length > saidWithVerdict ? [paragraph(`${sayings.length - saidWithVerdict} more under “The checks”.`)] : []),
    ...relaxedBlocks(audit.applied),
    ...pictures.slice(0, 1).map(picture),
    table([{ head: 'At a glance' }, { head: '' }], glance(told)),
    ...pictures.slice(1).map(picture),
  ];
  return { title: 'Verdict', blocks, pictures };
}

/** The sentence of findings folded into one; of several elements it names them. */
export const saying = ({ finding, abouts }: FoldedFinding): string => (abouts.length === 1 ? finding.say : `${finding.say} (${aboutsInWords(abouts)})`);

const gravest = ({ findings, verdict }: Telling['audit']): readonly Finding[] => findings.filter((f) => f.verdict === verdict && f.verdict !== 'clear');

/** The findings whose sentence stands under the verdict, by rule and verdict: what follows need not say it again. */
export const saidAlready = (audit: Telling['audit']): ReadonlySet<string> => new Set(foldFindings(gravest(audit)).slice(0, saidWithVerdict).map(({ finding }) => `${finding.rule} ${finding.verdict}`));

function glance(told: Telling): readonly (readonly Cell[])[] {
  const { audit, length, said } = told;
  const { plan } = audit;
  const reserve = told.number('frame.twist_reserve');
  const door = told.word('frame.fits_door');
  const rows: (readonly [string, string])[] = [
    ['Face', `${length(plan.face.width_mm)} wide, ${length(plan.face.height_mm)} high${plan.count > 1 ? `, ${plan.count} frames` : ''}`],
    ['Bars', barsInWords(plan)],
    ['Corners', cornersInWords(plan)],
    ['Diagonal, corner to corner', told.said('frame.diagonal_mm')],
    ['Weight, finished', weight(told)],
    ['Reserve against twisting', reserve === null ? 'unknown' : `${said('frame.twist_reserve')} times the peak pull${reserve < 1 ? ': it gives way before that' : ''}`],
    ...(door === 'yes' || door === 'no' ? [['Goes through the door', door] as const] : []),
    ['Judged by', `ruleset ${appliedInWords(audit.applied)}; shelf “${userText(audit.shelf.name)}”`],
  ];
  return rows;
}

function weight(told: Telling): string {
  const people = told.number('frame.lift_people');
  return `${told.said('frame.weight_kg')}${people === null ? '' : people <= 1 ? ', one person lifts it' : `, ${people} people lift it`}`;
}
