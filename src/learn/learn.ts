import type { Sheet } from '../bench-sheet/sheet.js';
import type { Shelf } from '../shelf/shelf.js';
import { answerOf, type PlanAnswer, type SolvedFrame } from './answers.js';
import { chanceAsOdd } from './chances.js';
import { departures, topTenths, type Departure, type TopTenth } from './departures.js';
import { learnEntries, type Beliefs, type LearnedEntry } from './entries.js';
import { gatherEvidence, type BoardRead } from './evidence.js';
import { readFolder, type FiledSheet, type FolderText, type StudioFolder } from './folder.js';
import type { KnownBoth } from './on-a-grid.js';
import { grossReadings, type GrossReading } from './gross.js';
import { roundingOf } from './rounding.js';
import type { KeptPromise } from './promise-ledger.js';
import { promisesOf, type FramePromises } from './promises.js';

/** A reading that is asked about, and the range it was judged by. */
export interface Outlier extends KeptPromise {
  readonly judged: readonly [number, number];
}

/** Everything a folder of plans and sheets says. */
export interface Learned {
  readonly folder: StudioFolder;
  /** Frames with at least one sheet. */
  readonly frames: number;
  readonly promises: readonly KeptPromise[];
  readonly unpromised: FramePromises['unpromised'];
  /**
   * Readings within nine tenths of what was promised, of all; and the chance that luck alone misses nine in ten by as
   * much, either way.
   */
  readonly kept: { readonly within_nine_in_ten: readonly [number, number]; readonly chance: number };
  readonly top_tenths: readonly TopTenth[];
  readonly departures: readonly Departure[];
  /**
   * Groups that still depart once the readings that are asked about are left out, as `group name`; null where none is
   * asked about.
   */
  readonly departing_without: readonly string[] | null;
  /**
   * Readings so far out that one like it is expected less than once in twenty such folders; they count all the same.
   */
  readonly outliers: readonly Outlier[];
  readonly entries: readonly LearnedEntry[];
  /** Board readings that are likelier a slip of the decimal point; they count all the same. */
  readonly gross: readonly GrossReading[];
  /** The same with the outliers and these left out, to show what hangs on them; null without any. */
  readonly without_outliers: readonly LearnedEntry[] | null;
  /** What is believed now, for a later folder to go on from. */
  readonly beliefs: Beliefs;
  readonly known: ReadonlyMap<string, KnownBoth>;
}

/** Share of folders in which an honest promise would name any outlier. */
const outlier_level = 0.05;

/**
 * Plans and sheets as texts → was the promise kept, and what do the frames say of the numbers. The shelf is the one the
 * promises are made with. What an earlier
 * folder left believed goes before what the shelf says. Pure: dates and files are others' business.
 */
export function learn(texts: readonly FolderText[], shelf: Shelf, earlier?: Beliefs): Learned {
  return learnFrames(readFolder(texts, shelf), shelf, earlier);
}

/** The same from a folder that was read. `answers` holds plans that are solved already. */
export function learnFrames(
  folder: StudioFolder,
  shelf: Shelf,
  earlier?: Beliefs,
  answers: Map<string, PlanAnswer | null> = new Map(),
): Learned {
  const solved = folder.frames.flatMap((frame): SolvedFrame[] => {
    const { name } = frame.plan;
    if (!answers.has(name)) answers.set(name, answerOf(frame.plan, shelf));
    const answer = answers.get(name);
    return answer == null ? [] : [{ ...frame, answer }];
  });
  const rounding = roundingOf(folder.frames);
  const told = solved.map((frame) => promisesOf(frame, rounding));
  const ranged = told.flatMap((one) => one.promises);
  const promises = ranged.map(({ allBut: _ranges, ...promise }): KeptPromise => promise);
  const within = promises.filter(({ measured, low, high }) => measured >= low && measured <= high).length;
  const n = promises.length;
  const evidence = gatherEvidence(solved);
  const { entries, beliefs, known } = learnEntries(evidence, shelf, earlier);
  const gross = grossReadings(evidence);
  const outliers = ranged
    .map(({ allBut, ...promise }): Outlier => ({ ...promise, judged: allBut(outlier_level / (2 * n)) }))
    .filter(({ measured, judged: [low, high] }) => measured < low || measured > high);
  const kept =
    outliers.length + gross.length === 0
      ? null
      : solved.map((frame) => ({ ...frame, sheets: frame.sheets.map((filed) => withoutReadings(filed, outliers)) }));
  return {
    folder,
    frames: folder.frames.length,
    promises,
    unpromised: told.flatMap((one) => one.unpromised),
    kept: { within_nine_in_ten: [within, n], chance: n === 0 ? 1 : chanceAsOdd(n, within, 0.9) },
    top_tenths: topTenths(promises),
    departures: departures(promises),
    departing_without:
      outliers.length === 0
        ? null
        : departures(
            promises.filter(
              (one) => !outliers.some(({ file, reading }) => file === one.file && reading === one.reading),
            ),
          )
            .filter(({ alarm }) => alarm)
            .map(({ group, name }) => `${group} ${name}`),
    outliers,
    gross,
    entries,
    without_outliers:
      kept === null
        ? null
        : learnEntries(
            gatherEvidence(kept, (read) => gross.some((one) => sameRead(one, read))),
            shelf,
            earlier,
          ).entries,
    beliefs,
    known,
  };
}

const sameRead = (a: BoardRead, b: BoardRead): boolean =>
  a.kind === b.kind &&
  a.file === b.file &&
  a.plan === b.plan &&
  a.frame === b.frame &&
  a.for === b.for &&
  a.ply === b.ply;

/** A sheet without the readings that are asked about. */
function withoutReadings({ file, sheet }: FiledSheet, outliers: readonly KeptPromise[]): FiledSheet {
  const here = outliers.filter((one) => one.file === file);
  const has = (kind: KeptPromise['kind']): boolean => here.some((one) => one.kind === kind);
  const bars = (kind: 'bow' | 'inward-bow', block: Sheet['bow_mm']): Sheet['bow_mm'] =>
    Object.fromEntries(
      Object.entries(block).filter(([bar]) => !here.some(({ reading }) => reading === `${kind} of ${bar}`)),
    );
  return {
    file,
    sheet: {
      ...sheet,
      corner_lift_mm: has('corner-lift') ? null : sheet.corner_lift_mm,
      winding_mm: has('winding') ? null : sheet.winding_mm,
      bow_mm: bars('bow', sheet.bow_mm),
      inward_bow_mm: bars('inward-bow', sheet.inward_bow_mm),
      tap_Hz: has('tap') ? null : sheet.tap_Hz,
      push: has('push') ? null : sheet.push,
      moisture_pct: has('moisture') ? null : sheet.moisture_pct,
    },
  };
}

/** What `learn --format json` prints: one document. */
export function learnedData({
  folder,
  frames,
  promises,
  unpromised,
  kept,
  departures: departed,
  outliers,
  gross,
  entries,
  without_outliers,
}: Learned): object {
  const known = ({ mean, sd, low, high }: LearnedEntry['prior']): object => ({ mean, sd, low, high });
  return {
    format: 'learn/1',
    frames,
    promises: promises.map(({ plan, frame, file, student, when, reading, unit, measured, rank, low, high }) => ({
      plan,
      frame,
      file,
      student,
      when,
      reading,
      unit,
      measured,
      rank,
      low,
      high,
    })),
    kept,
    departures: departed,
    outliers: outliers.map(({ file, reading, measured, low, high, judged }) => ({
      file,
      reading,
      measured,
      low,
      high,
      judged,
    })),
    gross_readings: gross.map(({ odds, file, plan, frame, kind, value, expected, ...place }) => ({
      file,
      plan,
      frame,
      ...place,
      what: kind,
      value,
      expected,
      odds,
    })),
    entries: entries.map(({ prior, posterior, ...entry }) => ({
      ...entry,
      prior: known(prior),
      posterior: known(posterior),
    })),
    ...(without_outliers === null
      ? {}
      : {
          entries_without_them: without_outliers.map(({ key, what, of, chosen, posterior }) => ({
            key,
            what,
            of,
            chosen,
            posterior: known(posterior),
          })),
        }),
    unpromised,
    plans_without_sheets: folder.plans_without_sheets,
    sheets_without_plan: folder.sheets_without_plan,
    left: folder.left,
    questions: folder.questions,
  };
}
