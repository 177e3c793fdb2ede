import { capital } from '../base/capital.js';
import { chanceTimes } from '../base/chance-words.js';
import type { UnitSystem } from '../base/names.js';
import { formatNumber, formatQuantity, trueMinus } from '../base/units-format.js';
import { userText } from '../report/clean-text.js';
import { counted } from '../report/words/verdict.js';
import type { Departure, TopTenth } from './departures.js';
import type { LearnedEntry } from './entries.js';
import type { NextStep } from './settle-next.js';
import type { GrossReading } from './gross.js';
import type { Outlier } from './learn.js';
import type { ReadingKind } from './rounding.js';

const kindWords: Readonly<Record<ReadingKind, string>> = {
  'corner-lift': 'lift of a corner off the table',
  winding: 'lift seen over the sticks',
  bow: 'bow out of the plane',
  'inward-bow': 'bow inward',
  diagonals: 'difference of the diagonals',
  tap: 'note of the cloth',
  push: 'sag under the weight',
  moisture: 'moisture',
  weight: 'weight',
};

/** A kind of reading, capital first. */
export const kindInWords = (kind: ReadingKind): string => capital(kindWords[kind]);

const stepWords: Readonly<Record<string, string>> = {
  'before-cloth': 'readings before the cloth',
  'after-cloth': 'readings with the cloth on',
  'after-ground': 'readings with the ground dry',
  finished: 'readings on the finished piece',
};

/** How often luck alone does this: `1 time in 6`. */
export function luckWords(chance: number): string {
  if (chance > 0.3) return 'as luck has it';
  return `luck alone would do this ${chanceTimes(chance)}`;
}

const straighter = ' Sight the boards, and let the shelf learn how much they twist.';
const easier = ' The cloth is pulled harder than planned: ease it, or write the pull you reach into the plans.';
const tighter = ' The cloth is slacker than planned: pull again, or write the pull you reach into the plans.';

/** What to do where a kind of reading departs. */
const adviceFor: Readonly<Partial<Record<ReadingKind, Readonly<Partial<Record<Departure['way'], string>>>>>> = {
  'corner-lift': {
    higher: straighter,
    wider: straighter,
    lower: ' Your frames are flatter than the shelf says: let it learn that.',
  },
  winding: { higher: straighter, wider: straighter },
  bow: { higher: ' The boards bow more than the shelf says: pick straighter ones, and let the shelf learn it.' },
  'inward-bow': { higher: ' Corners give more, or the cloth pulls more, than was reckoned: load a test corner.' },
  diagonals: { higher: ' Check the saw’s angle with a square, and the bars of a pair against each other.' },
  tap: { higher: easier, lower: tighter },
  push: { higher: tighter, lower: easier },
  moisture: {
    higher: ' Let boards settle longer, or write what you read into the plans.',
    lower: ' Write what you read into the plans: less warp is to come than they say.',
  },
  weight: {
    higher: ' The wood is heavier than the shelf says: weigh a board and put its density on the shelf.',
    lower: ' The wood is lighter than the shelf says, and lighter wood is often softer: measure its sag.',
  },
};

/**
 * Which group departs and how, in a sentence, and what to do about it; `luck_without` says that nothing is left of it
 * without the readings that are asked about.
 */
export function departureWords(
  { group, name, readings, way, chance_of_all }: Departure,
  luck_without: boolean,
): string {
  const who = {
    all: 'All readings together',
    kind: `Readings of ${kindWords[name as ReadingKind] ?? name}`,
    plan: `The frames of “${userText(name, 60)}”`,
    boards: `Lifts and bows of ${userText(name.replace(',', ' chosen'), 60)}`,
    step: capital(stepWords[name] ?? name),
    student: `The frames of ${userText(name, 60)}`,
  }[group];
  const does = {
    higher: 'run higher than was promised',
    lower: 'run lower than was promised',
    wider: 'scatter wider than was promised',
  }[way];
  const advice =
    group === 'kind'
      ? (adviceFor[name as ReadingKind]?.[way] ?? '')
      : group === 'student'
        ? ' Look together at how the boards are chosen and how the readings are taken.'
        : '';
  const told = `${who} ${does} (${counted(readings, 'reading')}; with everything that was looked at, ${luckWords(chance_of_all)}).`;
  return luck_without
    ? `${told} This hangs on the readings to look at again: without them it is no more than luck.${advice === '' ? '' : ` If they prove right:${advice}`}`
    : `${told}${advice}`;
}

/** `Said 1 in 10: 3 of 14 (luck alone would do this 1 time in 6)`. */
export function topTenthWords({ happened, of, chance }: TopTenth): string {
  return `said 1 in 10: ${happened} of ${of} (${luckWords(chance)})`;
}

/** What was read of the same thing at the other time. */
export interface OtherReading {
  readonly measured: number;
  readonly bare: boolean;
  /** Asked about as well. */
  readonly asked: boolean;
}

/** A reading with the range it was judged by, what was read of the same thing at the other time, and the question. */
export function outlierWords(
  { file, reading, measured, judged, unit }: Outlier,
  other: OtherReading | null,
  units: UnitSystem,
): string {
  const said = (value: number): string =>
    unit === 'Hz' ? `${formatNumber(value, 3)} Hz` : formatQuantity(Number(value.toPrecision(3)), unit, units);
  const [least, most] = judged.map(said) as [string, string];
  const expected = `where ${least} to ${most} was to be expected${other?.bare === true ? `, going by the ${said(other.measured)} read bare` : ''}`;
  return `${userText(file, 80)}: ${reading.replaceAll('-', ' ')} ${said(measured)}, ${expected}. ${otherWords(other, said)}Is the point in the right place, the unit right, the sheet with the right frame?`;
}

function otherWords(other: OtherReading | null, said: (value: number) => string): string {
  if (other === null) return '';
  if (other.asked) return 'The two sheets of this frame disagree, so one of them is likely wrong. ';
  return other.bare ? '' : `With the cloth on it was ${said(other.measured)}, and that agrees with it. `;
}

/** A board's reading that is likelier a slip of the point, and the question. */
export function grossWords({ kind, value, odds, expected, file, plan, frame, for: bar, ply }: GrossReading): string {
  const unit = kind === 'twist' ? ('deg/m' as const) : ('/m' as const);
  const said = (number: number): string => amount(kind === 'twist' ? (number * 180) / Math.PI : number, { unit });
  const where =
    file === null
      ? `The plan “${userText(plan, 80)}”`
      : `${userText(file, 80)}, frame ${frame} of “${userText(plan, 80)}”`;
  const times = odds > 1000 ? 'more than a thousand' : formatNumber(odds, 2);
  return `${where}: the board for ${bar}, ply ${ply}, is said to have ${whatWords[kind]} ${said(value)}; others of its kind lie within ${said(Math.abs(expected.mean) + 2 * expected.sd)}. That its point is one place off is ${times} times as likely as that it is true. Read the board again.`;
}

const whatWords: Readonly<Record<LearnedEntry['what'], string>> = {
  twist: 'twist',
  bow: 'bow',
  crook: 'crook',
  give: 'give of the corners',
  pull: 'pull reached',
  moisture: 'moisture on the day against the plan',
};

/** What a learned number is, in words. */
export function entryWords({ key, what, of, chosen }: LearnedEntry): string {
  if (what === 'give') return `Give of corners “${key}”`;
  if (what === 'pull') return `Pull reached with ${key}`;
  if (what === 'moisture') return 'Moisture on the day, less what the plan says';
  return `${capital(whatWords[what])} of ${key}, ${chosen}: ${of === 'spread' ? 'how far boards scatter' : 'the usual board'}`;
}

/** A learned number with its unit. */
export function amount(value: number, { unit }: Pick<LearnedEntry, 'unit'>): string {
  const told = {
    'deg/m': [value, 2, '°/m'],
    '/m': [value * 1000, 1, '‰/m'],
    'bar-widths': [value, 1, 'bar-widths'],
    'N/m': [value, 0, 'N/m'],
    pct: [value, 1, '% of moisture'],
  } as const;
  const [number, decimals, words] = told[unit];
  return `${trueMinus(number.toFixed(decimals).replace(/^-(?=0(?:\.0+)?$)/u, ''))} ${words}`;
}

/** From how many of what. */
export function fromWords({ from, boards, joints }: LearnedEntry): string {
  return [
    counted(from, 'frame'),
    ...(boards > 0 ? [counted(boards, 'board')] : []),
    ...(joints > 0 ? [counted(joints, 'test corner')] : []),
  ].join(', ');
}

/** What would settle a number, in a sentence. */
export function nextWords({ entry, times, more, frames, enough }: NextStep): string {
  const known = `${entryWords(entry)}: the upper end of its range is ${formatNumber(times, 2)} times the lower`;
  if (times <= enough) return `${known}, which is near enough.`;
  const steps = [
    ...(more === null
      ? []
      : [
          more.what === 'boards'
            ? `sight ${counted(more.count, 'more board')} of that kind and write what you read on the sheet`
            : `load ${counted(more.count, 'more test corner')} at the bench`,
        ]),
    ...(frames === null
      ? []
      : [`${more === null ? 'measure' : 'or wait for'} ${counted(frames, 'more frame')} like those so far`]),
  ];
  return `${known}. To bring that to ${formatNumber(enough, 2)}${steps.length === 0 ? ', more readings are needed than anyone would take' : `: ${steps.join(', ')}`}.`;
}
