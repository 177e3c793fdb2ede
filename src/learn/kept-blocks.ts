import { userText } from '../report/clean-text.js';
import { bullets, paragraph, table, type Block, type Cell } from '../report/tree.js';
import { counted } from '../report/words/verdict.js';
import { alarm_level, type Departure } from './departures.js';
import type { Learned, Outlier } from './learn.js';
import {
  departureWords,
  grossWords,
  kindInWords,
  outlierWords,
  topTenthWords,
  type OtherReading,
} from './page-words.js';
import type { KeptPromise } from './promise-ledger.js';

/** Whether the readings fell where they were promised, over the picture of their ranks, and which groups depart. */
export function keptBlocks(found: Learned, shown: readonly Block[]): readonly Block[] {
  const { promises, departures, top_tenths, unpromised } = found;
  if (promises.length === 0) return [];
  const alarms = departures.filter(({ alarm }) => alarm);
  return [
    paragraph(
      'Each reading is held against what was known before it was taken: the plan, what was read of its boards, and what was read of the same frame earlier. If the promises are honest, the readings spread evenly over what was promised. A reading that its rounding leaves between two parts is shared between them.',
    ),
    ...shown,
    paragraph(
      'The picture looks at all readings together, the table at the upper end of each kind alone, the list under it at whole groups: each can find what the others do not.',
    ),
    table(
      [{ head: 'Reading' }, { head: 'When' }, { head: 'In the top tenth of what was promised' }],
      top_tenths.map((count): readonly Cell[] => [
        kindInWords(count.kind),
        count.step === 'bare' ? 'bare' : 'cloth on',
        topTenthWords(count),
      ]),
    ),
    ...(alarms.length === 0
      ? [
          paragraph(
            `Looked at by kind of reading, plan, kind of board, step of the work and student: ${counted(departures.length, 'group')}, and none departs by more than luck.`,
          ),
        ]
      : [
          paragraph(
            `Looked at by kind of reading, plan, kind of board, step of the work and student: ${counted(departures.length, 'group')}. Beyond luck:`,
          ),
          bullets(alarms.map((one) => departureWords(one, hangsOnAsked(found, one)))),
        ]),
    paragraph(
      `However many groups are looked at, an honest promise is called broken in at most ${Math.round(alarm_level * 100)} of 100 such folders.`,
    ),
    ...(unpromised.length === 0
      ? []
      : [
          paragraph(
            `${counted(unpromised.length, 'reading')} could not be held against anything: ${[...new Set(unpromised.map(({ why }) => why))].join('; ')} (${userText([...new Set(unpromised.map(({ file }) => file))].join(', '), 300)}).`,
          ),
        ]),
  ];
}

/** Whether a group departs only by the readings that are asked about. */
export const hangsOnAsked = ({ departing_without }: Learned, { group, name }: Departure): boolean =>
  departing_without !== null && !departing_without.includes(`${group} ${name}`);

/** Readings that ask for a second look, each with what was read of the same thing at the other time. */
export function outlierBlocks({ outliers, gross, promises, folder }: Learned): readonly Block[] {
  const unitsOf = (plan: string) => folder.frames.find((frame) => frame.plan.name === plan)?.plan.units ?? 'metric';
  return [
    ...(outliers.length === 0
      ? []
      : [
          paragraph(
            `Among ${counted(promises.length, 'honest reading')}, one as far out as these turns up in fewer than 1 of 20 folders. Correct a sheet that is wrong; a reading that is right stays as it is, and counts:`,
          ),
          bullets(outliers.map((one) => outlierWords(one, otherOf(one, promises, outliers), unitsOf(one.plan)))),
        ]),
    ...(gross.length === 0
      ? []
      : [
          paragraph('A slip of the decimal point is likelier here than a true reading:'),
          bullets(gross.map(grossWords)),
        ]),
  ];
}

/**
 * The same thing read on the same frame at the other time, bare or with the cloth on, and whether that is asked about
 * too.
 */
function otherOf(one: Outlier, promises: readonly KeptPromise[], outliers: readonly Outlier[]): OtherReading | null {
  const other = promises.find(
    ({ plan, frame, reading, when }) =>
      plan === one.plan && frame === one.frame && reading === one.reading && when !== one.when,
  );
  if (other === undefined) return null;
  return {
    measured: other.measured,
    bare: other.when === 'before-cloth',
    asked: outliers.some(({ file, reading }) => file === other.file && reading === other.reading),
  };
}
