import { formatLength, formatNumber, formatQuantity } from '../base/units-format.js';
import type { Verdict } from '../findings/finding.js';
import { padOn } from '../mechanics/cloth/cloth-sheet.js';
import { pushSpan } from '../mechanics/cloth/frame-spans.js';
import { pushSag_mm } from '../mechanics/cloth/push-test.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import { findingOf, type JudgedFinding } from './make-finding.js';
import { promisedNote, pullOfPush, pullOfTap, pullRead, type PullRead } from './pull-read.js';
import type { Promised } from './promised.js';
import { clothOn, readingError, type Sheet } from './sheet.js';
import { cornerStiffener, crossbarToAdd } from './stiffen.js';

/** A pull read by a weight may be this many times too low or too high (`proposal`). */
export const pull_within = 1.25;
/** Least reserve against twisting at the pull that was read (`proposal`): below it a caution, below one a stop. */
export const least_reserve = 1.5;

/** Note and sag against those of the working pull, and the reserve against twisting at the pull that was read. */
export function judgePull(promised: Promised, sheet: Sheet): readonly JudgedFinding[] {
  if (!clothOn(sheet)) return [];
  return [...tap(promised, sheet), ...push(promised, sheet), ...reserve(promised, pullRead(promised.model, sheet))];
}

function tap(promised: Promised, sheet: Sheet): readonly JudgedFinding[] {
  const read = pullOfTap(promised.model, sheet);
  if (read === null || sheet.tap_Hz === null) return [];
  const { low_Hz, high_Hz } = promisedNote(promised.model, promised.solution, sheet);
  const side =
    sheet.tap_Hz < low_Hz - readingError.note_Hz
      ? 'slack'
      : sheet.tap_Hz > high_Hz + readingError.note_Hz
        ? 'tight'
        : 'right';
  const band = `${formatNumber(low_Hz, 2)} to ${formatNumber(high_Hz, 2)} Hz`;
  return [
    findingOf({
      rule: 'tap',
      about: 'cloth',
      verdict: verdictOf(side, read, promised),
      fact: 'cloth.tap_note_low_Hz',
      actual: sheet.tap_Hz,
      limit: band,
      unit: 'Hz',
      source: 'rayleigh',
      say: `The cloth sounds at ${formatNumber(sheet.tap_Hz, 3)} Hz, which means a pull of ${pullWords(read, promised)}; ${band} was promised: ${sideWords[side]}.`,
      do: adviceFor(side, promised),
    }),
  ];
}

function push(promised: Promised, sheet: Sheet): readonly JudgedFinding[] {
  const { model, plan } = promised;
  const read = pullOfPush(model, sheet);
  if (read === null || sheet.push === null) return [];
  const { weight_g, sag_mm, pad_mm } = sheet.push;
  const span = pushSpan(model);
  const promised_mm = pushSag_mm(
    span,
    plan.cloth.working,
    weight_g,
    Math.min(pad_mm ?? padOn(model), span.width_mm, span.height_mm),
  );
  const [least_mm, most_mm] = [
    promised_mm / pull_within - readingError.sag_mm,
    promised_mm * pull_within + readingError.sag_mm,
  ];
  const side = sag_mm > most_mm ? 'slack' : sag_mm < least_mm ? 'tight' : 'right';
  const said = (mm: number): string => formatLength(Number(mm.toPrecision(2)), plan.units);
  const band = `${said(Math.max(0, least_mm))} to ${said(most_mm)}`;
  return [
    findingOf({
      rule: 'push',
      about: 'cloth',
      verdict: verdictOf(side, read, promised),
      fact: 'cloth.push_sag_mm',
      actual: sag_mm,
      limit: band,
      unit: 'mm',
      source: 'proposal',
      say: `The weight sank ${formatLength(sag_mm, plan.units)}, which means a pull of ${pullWords(read, promised)}; at the working pull it sinks ${said(promised_mm)} (${band} is near enough): ${sideWords[side]}.`,
      do: adviceFor(side, promised),
    }),
  ];
}

type Side = 'slack' | 'right' | 'tight';
const sideWords: Readonly<Record<Side, string>> = {
  slack: 'slack',
  right: 'as promised',
  tight: 'tighter than planned',
};

/**
 * Slack is a caution. Tight is one too, and a stop when even the least pull that the reading allows is past the plan's
 * peak.
 */
function verdictOf(side: Side, read: PullRead, { plan: { cloth } }: Promised): Verdict {
  if (side === 'right') return 'clear';
  const peak = Math.min(cloth.peak.x_N_per_m / cloth.working.x_N_per_m, cloth.peak.y_N_per_m / cloth.working.y_N_per_m);
  return side === 'tight' && read.low > peak ? 'stop' : 'caution';
}

function adviceFor(side: Side, { plan: { cloth, units } }: Promised): readonly string[] {
  const working = formatQuantity(Math.max(cloth.working.x_N_per_m, cloth.working.y_N_per_m), 'N/m', units);
  return side === 'slack'
    ? [`Pull again, middles first, until note or weight tells of ${working}; or open the keys a little.`]
    : [
        `Ease it: lift the staples from the middle of each side outwards and fix the cloth again at ${working}.`,
        'If it is meant to be that tight, write this pull into the plan and audit it again.',
      ];
}

function pullWords(read: PullRead, { plan: { cloth, units } }: Promised): string {
  const at = (share: number): string =>
    formatQuantity(
      Number((share * Math.max(cloth.working.x_N_per_m, cloth.working.y_N_per_m)).toPrecision(2)),
      'N/m',
      units,
    );
  const band = at(read.low) === at(read.high) ? '' : ` (${at(read.low)} to ${at(read.high)})`;
  return `about ${at(read.value)}${band}`;
}

/** The reserve at the highest pull the readings allow: fifth-percentile stiffness × critical pull over that pull. */
function reserve(promised: Promised, read: PullRead | null): readonly JudgedFinding[] {
  if (read === null) return [];
  const factor = promised.solution.stability.load_factor;
  const actual = factor === null ? null : (shelfNumber(promised.model.shelf, 'stiffness-share') * factor) / read.high;
  const verdict = actual === null ? 'unknown' : actual < 1 ? 'stop' : actual < least_reserve ? 'caution' : 'clear';
  return [
    findingOf({
      rule: 'twist-reserve',
      verdict,
      fact: 'frame.critical_pull_N_per_m',
      actual,
      limit: verdict === 'stop' ? 1 : least_reserve,
      unit: 'ratio',
      source: 'physics',
      at_least: true,
      say:
        actual === null
          ? 'At which pull this flat frame would turn into a propeller is not known, so neither is the reserve at the pull that was read.'
          : `At the most that was read (${formatQuantity(Number((read.high * Math.max(promised.plan.cloth.working.x_N_per_m, promised.plan.cloth.working.y_N_per_m)).toPrecision(2)), 'N/m', promised.plan.units)}) the reserve against twisting is ${formatNumber(actual, 2)}; at least ${formatNumber(least_reserve, 2)} is wanted, and below 1 soft boards give way.`,
      do: [
        'Ease the cloth to the working pull before it takes a set.',
        `Glue ${cornerStiffener(promised.plan)}, or ${crossbarToAdd(promised.plan)}, while the frame is held flat.`,
      ],
    }),
  ];
}
