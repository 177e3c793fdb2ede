import { countVerdicts, foldFindings } from '../../findings/summary.js';
import { userText } from '../clean-text.js';
import { barSection } from '../drawings/bar-section.js';
import { frontView } from '../drawings/front-view.js';
import { bullets, paragraph, picture, setApart, strong, table, type Block, type Cell } from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { aboutsInWords } from '../words/about.js';
import { barsInWords, cornersInWords } from '../words/build.js';
import { verdictSentence } from '../words/verdict.js';
import { frontViewOf, barSectionOf } from './picture-data.js';

/** Part 1: the verdict in one sentence, what stands in the way, the picture and the plan at a glance. */
export function verdictSection(told: Telling): Section {
  const { audit } = told;
  const pictures = [frontView(frontViewOf(audit)), barSection(barSectionOf(audit))];
  const graves = audit.findings.filter((f) => f.verdict === audit.verdict && f.verdict !== 'clear');
  const sayings = foldFindings(graves).map(({ finding, abouts }) => (abouts.length === 1 ? finding.say : `${finding.say} (${aboutsInWords(abouts)})`));
  const blocks: Block[] = [
    setApart(paragraph(strong(verdictSentence(audit.verdict, countVerdicts(audit.findings), audit.measured !== undefined)))),
    ...(sayings.length === 0 ? [] : [bullets(sayings.slice(0, 5))]),
    ...(sayings.length > 5 ? [paragraph(`${sayings.length - 5} more under “The checks”.`)] : []),
    ...pictures.slice(0, 1).map(picture),
    table([{ head: 'At a glance' }, { head: '' }], glance(told)),
    ...pictures.slice(1).map(picture),
  ];
  return { title: 'Verdict', blocks, pictures };
}

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
    ['Reserve against twisting', reserve === null ? 'unknown' : `${said('frame.twist_reserve')} times the peak pull`],
    ...(door === 'yes' || door === 'no' ? [['Goes through the door', door] as const] : []),
    ['Judged by', `ruleset “${userText(audit.ruleset_name)}”, shelf “${userText(audit.shelf.name)}”`],
  ];
  return rows;
}

function weight(told: Telling): string {
  const people = told.number('frame.lift_people');
  return `${told.said('frame.weight_kg')}${people === null ? '' : people <= 1 ? ', one person lifts it' : `, ${people} people lift it`}`;
}
