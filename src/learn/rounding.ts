import { barNames } from '../base/names.js';
import type { BuiltFrame } from './folder.js';

/** The kinds of reading that are held against what was promised. */
export type ReadingKind =
  'corner-lift' | 'winding' | 'bow' | 'inward-bow' | 'diagonals' | 'tap' | 'push' | 'moisture' | 'weight';

/** Half of what a kind of reading is rounded to in this folder. */
export type Rounding = (kind: ReadingKind) => number;

/** What people round to, coarsest first: sixteenths and thirty-seconds of an inch among the millimetres. */
const steps: Readonly<Record<'mm' | 'Hz' | 'pct' | 'kg', readonly number[]>> = {
  mm: [25.4 / 16, 1, 25.4 / 32, 0.5, 0.1],
  Hz: [1, 0.5, 0.25, 0.1],
  pct: [1, 0.5, 0.1],
  kg: [0.1, 0.05, 0.01],
};

/** Fewer readings than this do not show how they were rounded. */
const enough = 4;

/**
 * How each kind of reading was rounded, as all readings of the folder show it: the coarsest step of which each is a
 * multiple; else not at all.
 */
export function roundingOf(frames: readonly BuiltFrame[]): Rounding {
  const sheets = frames.flatMap((frame) => frame.sheets.map(({ sheet }) => sheet));
  const all = (of: (sheet: (typeof sheets)[number]) => readonly (number | null | undefined)[]): readonly number[] =>
    sheets.flatMap((sheet) => of(sheet).filter((value) => value !== null && value !== undefined));
  const found: Readonly<Record<ReadingKind, number>> = {
    'corner-lift': half(
      all(({ corner_lift_mm }) => [corner_lift_mm]),
      steps.mm,
    ),
    winding: half(
      all(({ winding_mm }) => [winding_mm]),
      steps.mm,
    ),
    bow: half(
      all(({ bow_mm }) => barNames.map((bar) => bow_mm[bar])),
      steps.mm,
    ),
    'inward-bow': half(
      all(({ inward_bow_mm }) => barNames.map((bar) => inward_bow_mm[bar])),
      steps.mm,
    ),
    diagonals: half(
      all(({ diagonals_mm }) => diagonals_mm ?? []),
      steps.mm,
    ),
    tap: half(
      all(({ tap_Hz }) => [tap_Hz]),
      steps.Hz,
    ),
    push: half(
      all(({ push }) => [push?.sag_mm]),
      steps.mm,
    ),
    moisture: half(
      all(({ moisture_pct }) => [moisture_pct]),
      steps.pct,
    ),
    weight: half(
      all(({ weight_kg }) => [weight_kg]),
      steps.kg,
    ),
  };
  return (kind) => found[kind];
}

function half(values: readonly number[], possible: readonly number[]): number {
  if (values.length < enough || values.every((value) => value === 0)) return (possible.at(-1) as number) / 2;
  const fits = possible.find((step) =>
    values.every((value) => Math.abs(value / step - Math.round(value / step)) < 1e-6),
  );
  return (fits ?? 0) / 2;
}
