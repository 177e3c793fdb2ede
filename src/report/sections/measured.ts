import { capital } from '../../base/capital.js';
import { spokenName } from '../../base/names.js';
import type { Diagnosis } from '../../bench-sheet/diagnose.js';
import type { Sheet } from '../../bench-sheet/sheet.js';
import { formatQuantity, type QuantityUnit } from '../../base/units-format.js';
import type { Finding } from '../../findings/finding.js';
import { foldFindings, sortFindings } from '../../findings/summary.js';
import { userText } from '../clean-text.js';
import { bullets, heading, paragraph, strong, table, type Block, type Cell } from '../tree.js';
import { rescueBlocks } from './rescue.js';
import { saidAlready, saying } from './verdict.js';
import type { Section, Telling } from '../telling.js';
import { aboutInWords } from '../words/about.js';
import { badge } from '../words/verdict.js';

const readingWords: Readonly<Record<string, string>> = {
  plan: 'Plan',
  diagonals: 'Diagonals differ by',
  size: 'Diagonals off the plan by',
  'corner-lift': 'Corner lift, table',
  winding: 'Corner lift, sticks',
  'bar-bow': 'Bow out of plane',
  'inward-bow': 'Bow inward',
  tap: 'Note of the cloth',
  push: 'Sag under the weight',
  'twist-reserve': 'Reserve against twisting',
  weight: 'Weight',
  'hook-factor': 'Rating of a hook over its load',
  moisture: 'Moisture',
};

const stageWords: Readonly<Record<Sheet['when'], string>> = {
  'before-cloth': 'before the cloth was on',
  'after-cloth': 'with the cloth on',
  'after-ground': 'with the ground dry',
  finished: 'on the finished piece',
};

/** What was measured while building, held against what was promised; null when no sheet was given. */
export function measuredSection(told: Telling): Section | null {
  const { measured } = told.audit;
  if (measured === undefined) return null;
  const { sheet, diagnosis, rescue } = measured;
  const findings = sortFindings(measured.findings);
  const advice = foldFindings(findings.filter(({ verdict, do: steps }) => verdict !== 'clear' && steps.length > 0));
  const said = saidAlready(told.audit);
  const steps = advice.flatMap(({ finding }) => finding.do);
  const blocks: Block[] = [
    paragraph(
      `Read ${stageWords[sheet.when]}${sheet.when_said ? '' : ' (taken so, as the sheet does not say)'}. ${findings.length === 0 ? 'Nothing was measured.' : 'A good reading clears nothing that the plan itself leaves open.'}`,
    ),
    ...(findings.length === 0
      ? []
      : [
          table(
            [
              { head: 'Reading' },
              { head: 'Yours', align: 'right' },
              { head: 'Good up to, or between', align: 'right' },
              { head: 'Verdict' },
            ],
            findings.map((f) => row(told, f)),
          ),
        ]),
    ...(advice.length === 0
      ? []
      : [
          heading(3, 'What to do now'),
          bullets(
            advice.map((fold): Cell => [
              strong(badge(fold.finding.verdict)),
              said.has(`${fold.finding.rule} ${fold.finding.verdict}`)
                ? `, ${fold.finding.title}: ${fold.finding.do.join(' ')}`
                : `: ${userText(saying(fold), 600)} ${fold.finding.do.join(' ')}`,
            ]),
          ),
        ]),
    ...(diagnosis === null ? [] : causes(told, diagnosis, steps)),
    ...(rescue === null ? [] : rescueBlocks(told, rescue)),
  ];
  return { title: 'What you measured', blocks, pictures: [] };
}

function row({ units }: Telling, f: Finding): readonly Cell[] {
  const amount = (value: Finding['actual']): string =>
    typeof value === 'string' ? userText(value, 80) : formatQuantity(value, f.unit as QuantityUnit, units);
  const name = readingWords[f.rule.replace('measured/', '')] ?? f.rule;
  const least = f.rule === 'measured/twist-reserve' || f.rule === 'measured/hook-factor' ? 'at least ' : '';
  return [
    f.about === 'frame' || f.about === 'cloth' || f.about === 'hanging' ? name : `${name}, ${aboutInWords(f.about)}`,
    amount(f.actual),
    `${f.limit === null ? '' : least}${f.limit === null ? 'unknown' : amount(f.limit)}`,
    badge(f.verdict),
  ];
}

function causes(
  { small, length }: Telling,
  { causes: list, lift_mm, lifted, corner_said }: Diagnosis,
  above: readonly string[],
): readonly Block[] {
  const part = (mm: number | null): string =>
    mm === null ? 'at work' : mm < 0 ? `${small(-mm)} the other way` : small(mm);
  const side = corner_said
    ? `The ${spokenName(lifted)} corner stands up ${length(Math.abs(lift_mm))}.`
    : `Which corner stands up ${length(Math.abs(lift_mm))} was not written down; the likelier side is taken.`;
  return [
    heading(3, 'Why it twists, most likely first'),
    paragraph(
      `${side} Each cause is given the part it most likely has in that, from how much boards and cuts of this kind vary; together they make the whole.`,
    ),
    table(
      [{ head: 'Likely cause' }, { head: 'Its part', align: 'right' }, { head: 'Cure' }],
      list.map(({ name, part_mm, cure }): readonly Cell[] => [
        capital(name),
        part(part_mm),
        cure !== '' && above.some((step) => step.includes(cure)) ? 'said above' : cure,
      ]),
    ),
  ];
}
